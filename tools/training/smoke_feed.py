"""A stand-in for the feed program: bars and discs in the frame format, for trying the trainer without the phantom.

Takes the feed's options and writes its frames. What it draws resembles no elbow.
"""
import argparse
import json
import math
import struct
import sys

import numpy as np

LANDMARKS = ["humerus.anterior.1", "humerus.anterior.2", "humerus.posterior.1", "humerus.posterior.2",
             "capitellum.rim.1", "capitellum.rim.4", "ulna.olecranon", "ulna.coronoid"]


def film(chance, view, size):
    y, x = np.mgrid[0:size, 0:size].astype(np.float32) + 0.5
    unit = size / 12 * chance.uniform(0.8, 1.2)
    turn = chance.uniform(-0.5, 0.5)
    mirror = 1 if chance.random() < 0.5 else -1
    joint = np.array([size / 2, size / 2]) + chance.uniform(-0.1, 0.1, 2) * size
    up = np.array([math.sin(turn), -math.cos(turn)])
    front = np.array([-math.cos(turn), -math.sin(turn)]) * mirror
    bend = {"lateral": 0.0, "ap": 1.2, "oblique": 0.6, "near-miss": 2.2}[view]
    fore = front * math.cos(bend) - up * math.sin(bend)

    def bar(start, along, reach, half):
        u = (x - start[0]) * along[0] + (y - start[1]) * along[1]
        w = (y - start[1]) * along[0] - (x - start[0]) * along[1]
        return np.clip(half - np.abs(w), 0, None) * ((u > 0) & (u < reach))

    disc = np.sqrt(np.clip((0.8 * unit) ** 2 - (x - joint[0]) ** 2 - (y - joint[1]) ** 2, 0, None))
    shaft = bar(joint + up * 0.3 * unit, up, 20 * unit, 0.5 * unit)
    forearm = bar(joint + fore * 0.9 * unit, fore, 20 * unit, 0.45 * unit)
    mm = 20 / unit
    paths = np.zeros((5, size, size), np.float32)
    paths[0] = 50 * (1 - (np.hypot(x - joint[0], y - joint[1]) / size) ** 2)
    paths[1] = 6
    paths[2] = (0.5 * shaft + 0.4 * disc + 0.5 * forearm) * mm
    labels = ((shaft + disc) * mm > 0.8).astype(np.uint8) | ((forearm * mm > 0.8).astype(np.uint8) << 1)
    points, tangents = [], []
    for side in (1, -1):
        for level in (3.0, 1.5):
            points.append(joint + up * level * unit + side * front * 0.5 * unit)
            tangents.append(up)
    points += [joint - up * 0.8 * unit, joint + front * 0.8 * unit, joint - front * 1.0 * unit, joint + fore * 0.9 * unit]
    tangents += [front, up, (np.nan, np.nan), (np.nan, np.nan)]
    locator = [joint + up * 2.5 * unit, joint, joint + fore * 4 * unit, joint - front * unit]
    if view == "near-miss":
        locator = np.full((4, 2), np.nan)
    return paths, labels, np.array(points), np.array(tangents), np.array(locator), mm


def main():
    options = argparse.ArgumentParser()
    options.add_argument("--device", default="cpu")
    options.add_argument("--views", default="lateral=1")
    options.add_argument("--framing", default="crop")
    options.add_argument("--size", type=int, default=256)
    options.add_argument("--batch", type=int, default=8)
    options.add_argument("--first-seed", type=int, default=1_000_000)
    options.add_argument("--step", type=int, default=1)
    options.add_argument("--threads", type=int, default=1)
    options.add_argument("--count", type=int)
    a = options.parse_args()
    shares = {k: float(v) for k, v in (part.split("=") for part in a.views.split(","))}
    seed, sent, out = a.first_seed, 0, sys.stdout.buffer
    while a.count is None or sent < a.count:
        n = a.batch if a.count is None else min(a.batch, a.count - sent)
        chance = np.random.default_rng(seed)
        view = chance.choice(list(shares), p=np.array(list(shares.values())) / sum(shares.values()))
        films = [film(np.random.default_rng(seed + i * a.step), view, a.size) for i in range(n)]
        paths, labels, points, tangents, locator, mm = (np.stack([f[i] for f in films]) for i in range(6))
        names = LANDMARKS if view in ("lateral", "ap") else []
        k = len(names)
        inside = ((points >= 0) & (points <= a.size)).all(2)
        arrays = {"paths": paths.astype("<f2"), "labels": labels, "landmarks": points[:, :k].astype("<f4"),
                  "tangents": tangents[:, :k].astype("<f4"), "visible": inside[:, :k].astype(np.uint8),
                  "locator": locator.astype("<f4"), "viewError": chance.uniform(0, 20, n).astype("<f4"),
                  "pixelMm": mm.astype("<f4"), "unitW": np.full(n, 20, "<f4"),
                  "ageMonths": chance.uniform(6, 900, n).astype("<f4"), "injured": chance.integers(0, 2, n).astype(np.uint8),
                  "seeds": (np.arange(n) * a.step + seed).astype("<u8")}
        kinds = {"<f2": "float16", "<f4": "float32", "|u1": "uint8", "<u8": "uint64"}
        header = json.dumps({"films": n, "view": str(view), "landmarks": names, "arrays": [
            {"name": name, "dtype": kinds[v.dtype.str], "shape": list(v.shape)} for name, v in arrays.items()]}).encode()
        out.write(b"EAFEED01" + struct.pack("<i", len(header)) + header)
        for value in arrays.values():
            out.write(value.tobytes())
        out.flush()
        seed += n * a.step
        sent += n


if __name__ == "__main__":
    try:
        main()
    except BrokenPipeError:
        pass
