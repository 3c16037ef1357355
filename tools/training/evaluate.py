"""Figures on validation films: errors in millimetres, honesty of the spread, views, by age band and injury.

    python3 evaluate.py --checkpoint lateral.pt --feed FEED [--films 2048]
"""
import argparse
import json
import re
import time

import torch

import checkpoint
from decode import decode
from feed import Feed, FeedError
from film import FilmMaker
from loss import mahalanobis_squared, split_error
from network import LOCATOR_POINTS, VIEW_CLASSES, LandmarkNet, ViewNet
from nonradiograph import NonRadiographs
from otheranatomy import OtherAnatomy
from pool import Pool, drawn_frame, make_batch, with_nonradiographs

VALIDATION_SEEDS = (10_000, 20_000)
BANDS = (("0-1 y", 0, 24), ("2-4 y", 24, 60), ("5-8 y", 60, 108), ("9-12 y", 108, 156), ("13-17 y", 156, 216),
         ("adult", 216, 1e9))
# 95 % point of the chi-squared distribution with two degrees of freedom, −2 ln 0.05.
CHI_SQUARED_95 = 5.9915
VIEWS_OF_MODEL = {"lateral": "lateral=1", "ap": "ap=1", "view": "lateral=0.3,ap=0.3,oblique=0.2,near-miss=0.2"}
FRAMING_OF_MODEL = {"lateral": "crop", "ap": "crop", "view": "film"}


def build(name, landmarks, scale=1.0):
    return ViewNet(scale) if name == "view" else LandmarkNet(len(landmarks), scale)


def figures(values):
    """Mean, median and 95th percentile, or None without values."""
    if not len(values):
        return None
    values = values.double()
    return {"mean": round(float(values.mean()), 3), "median": round(float(values.median()), 3),
            "p95": round(float(values.quantile(0.95)), 3), "n": len(values)}


def rate(flags):
    return round(float(flags.double().mean()), 4) if len(flags) else None


class Tally:
    """Collects rows over batches."""

    def __init__(self):
        self.rows = {}

    def add(self, **tensors):
        for name, value in tensors.items():
            self.rows.setdefault(name, []).append(value.detach().float().cpu())

    def joined(self):
        return {name: torch.cat(parts) for name, parts in self.rows.items()}


def check_seeds(seeds):
    low, high = VALIDATION_SEEDS
    if bool(((seeds < low) | (seeds >= high)).any()):
        raise FeedError(f"The feed sent validation seeds outside {low}…{high - 1}.")


def evaluate(name, net, feed_program, films, maker, feed_device="cpu", batch=64, deadline=None, move=False):
    """Runs validation films through a network; `deadline` (time.time) ends it early with what is there."""
    device = maker.device
    net = net.eval()
    tally, seed_state = Tally(), torch.random.get_rng_state()
    torch.manual_seed(20_000)
    pictures, other = NonRadiographs(maker), OtherAnatomy(maker)
    landmarks, golden = None, None
    films = max(batch, films // batch * batch)
    with Feed(feed_program, pinned=device.type == "cuda", device=feed_device, views=VIEWS_OF_MODEL[name],
              framing=FRAMING_OF_MODEL[name], size=maker.size, batch=batch, first_seed=VALIDATION_SEEDS[0], step=1,
              count=films) as feed, torch.no_grad():
        pool = Pool(batch, device)
        while True:
            frame = feed.next(120 if device.type == "cuda" else 600)
            late = deadline and tally.rows and time.time() > deadline
            if frame is None or late:
                break
            check_seeds(frame.arrays["seeds"])
            landmarks = frame.landmarks if landmarks is None or name != "view" else landmarks
            data = make_batch(pool.all_of(frame), maker, name == "view", move)
            if name == "view":
                data = with_nonradiographs(data, maker, pictures, max(1, frame.films // 8))
                if frame.view == "near-miss":
                    drawn = make_batch(pool.all_of(drawn_frame(other(batch))), maker, True, move)
                    add_view(tally, net(drawn["film"]), drawn)
            out = net(data["film"])
            golden = data["film"][:1].cpu() if golden is None else golden
            (add_view if name == "view" else add_landmarks)(tally, out, data)
    torch.random.set_rng_state(seed_state)
    rows = tally.joined()
    result = view_figures(rows) if name == "view" else landmark_figures(rows, landmarks)
    result["films"] = len(rows["age"])
    return result, golden


def add_landmarks(tally, out, data):
    stride = data["size"] // out["heatmaps"].shape[3]
    at, share = decode(out["heatmaps"], stride)
    error = at - data["landmarks"]
    along, across, contour = split_error(error, data["tangents"])
    mm = data["pixel_mm"].unsqueeze(1)
    d2, _ = mahalanobis_squared(error, out["covariance"].float())
    tally.add(radial=error.norm(dim=2) * mm, across=across.abs() * mm, along=along.abs() * mm, contour=contour, d2=d2,
              seen=data["visible"], logit=out["visibility"], age=data["age_months"], injured=data["injured"],
              share=share, turn=out["view_error"], turn_true=data["view_error"],
              sigma=(out["covariance"][..., 0] + out["covariance"][..., 2]).float().sqrt() * mm)


def landmark_figures(rows, names):
    seen, contour = rows["seen"] > 0, rows["contour"] > 0

    def of(films, columns=None):
        pick = seen & films.unsqueeze(1)
        if columns is not None:
            pick = pick & columns
        point, edge = pick & ~contour, pick & contour
        return {"point_mm": figures(rows["radial"][point]), "edge_mm": figures(rows["across"][edge]),
                "slip_mm": figures(rows["along"][edge]), "mahalanobis2": round(float(rows["d2"][pick].clamp(max=100).mean()), 2)
                if bool(pick.any()) else None, "coverage95": rate(rows["d2"][pick] < CHI_SQUARED_95)}

    everything = torch.ones(len(rows["age"]), dtype=torch.bool)
    result = {"all": of(everything), "injured": of(rows["injured"] > 0), "uninjured": of(rows["injured"] == 0)}
    result["bands"] = {band: of((rows["age"] >= low) & (rows["age"] < high)) for band, low, high in BANDS}
    families = [re.sub(r"\.\d+$", "", n) for n in names]
    result["families"] = {}
    for family in dict.fromkeys(families):
        columns = torch.tensor([f == family for f in families]).unsqueeze(0)
        result["families"][family] = of(everything, columns)
    result["points_within_2mm"] = rate(rows["radial"][seen & ~contour] <= 2)
    result["edges_within_1mm"] = rate(rows["across"][seen & contour] <= 1)
    result["spread_mm"] = figures(rows["sigma"][seen])
    said = rows["logit"] > 0
    result["visibility"] = {"accuracy": rate(said == seen), "seen_when_visible": rate(said[seen]),
                            "seen_when_hidden": rate(said[~seen])}
    result["view_error"] = turn_figures(rows)
    return result


def turn_figures(rows):
    known = torch.isfinite(rows["turn_true"])
    error = rows["turn"][known, 0] - rows["turn_true"][known]
    return {"degrees": figures(error.abs()), "bias": round(float(error.mean()), 2) if len(error) else None,
            "within_2sd": rate(error.abs() < 2 * rows["turn"][known, 1])}


def add_view(tally, out, data):
    at, share = decode(out["locator"], data["size"] // out["locator"].shape[3])
    elbow = (data["view_class"] < 3).unsqueeze(1)
    nothing = torch.full_like(data["view_error"], float("nan"))
    tally.add(radial=(at - data["locator"]).norm(dim=2), mm=data["pixel_mm"], w=data["unit_w"],
              seen=data["locator_visible"] & elbow, truth=data["view_class"], said=out["view"].float().argmax(1),
              probability=torch.softmax(out["view"].float(), 1), age=data["age_months"], injured=data["injured"],
              turn=out["view_error"], turn_true=torch.where(elbow[:, 0], data["view_error"], nothing))


def view_figures(rows):
    truth, said, seen = rows["truth"].long(), rows["said"].long(), rows["seen"] > 0
    confusion = torch.zeros(5, 5, dtype=torch.long)
    for t, s in zip(truth.tolist(), said.tolist()):
        confusion[t, s] += 1
    in_w = rows["radial"] * (rows["mm"] / rows["w"]).unsqueeze(1)
    result = {"accuracy": rate(truth == said), "confusion": {VIEW_CLASSES[i]: confusion[i].tolist() for i in range(5)},
              "locator_px": {p: figures(rows["radial"][:, i][seen[:, i]]) for i, p in enumerate(LOCATOR_POINTS)},
              "locator_w": {p: figures(in_w[:, i][seen[:, i]]) for i, p in enumerate(LOCATOR_POINTS)},
              "view_error": turn_figures(rows), "bands": {}}
    for band, low, high in BANDS:
        films = (rows["age"] >= low) & (rows["age"] < high) & (truth < 3)
        result["bands"][band] = {"accuracy": rate((truth == said)[films]), "n": int(films.sum()),
                                 "joint_w": figures(in_w[:, 1][films & seen[:, 1]])}
    for flag, films in (("injured", rows["injured"] > 0), ("uninjured", rows["injured"] == 0)):
        films = films & (truth < 3)
        result[flag] = {"accuracy": rate((truth == said)[films]), "joint_w": figures(in_w[:, 1][films & seen[:, 1]])}
    return result


def table(name, result):
    """The figures as one compact table."""
    lines = [f"{name}: {result['films']} validation films"]

    def cell(entry, key="median"):
        return f"{entry[key]:7.2f}" if entry else "      -"

    if name == "view":
        lines.append(f"  right view {result['accuracy']}; view error {result['view_error']}")
        lines += [f"  {k:17} {v}" for k, v in result["confusion"].items()]
        for point in LOCATOR_POINTS:
            p, w = result["locator_px"][point], result["locator_w"][point]
            lines.append(f"  {point:17} px {cell(p)} p95 {cell(p, 'p95')}   W {cell(w)} p95 {cell(w, 'p95')}")
        lines += [f"  {k:17} right {v['accuracy']} joint W {cell(v['joint_w'])} (n {v['n']})"
                  for k, v in result["bands"].items()]
        return "\n".join(lines)
    lines.append("  group              point mm med    p95   edge mm med    p95   slip med    d2  cover95")
    rows = [("all", result["all"]), ("injured", result["injured"]), ("uninjured", result["uninjured"])]
    rows += list(result["bands"].items()) + list(result["families"].items())
    for key, r in rows:
        if r["mahalanobis2"] is None:
            continue
        lines.append(f"  {key:24} {cell(r['point_mm'])} {cell(r['point_mm'], 'p95')}      {cell(r['edge_mm'])} "
                     f"{cell(r['edge_mm'], 'p95')}    {cell(r['slip_mm'])} {r['mahalanobis2']:5.2f} {r['coverage95']}")
    lines.append(f"  points within 2 mm {result['points_within_2mm']}, edges within 1 mm {result['edges_within_1mm']}, "
                 f"visibility {result['visibility']}, view error {result['view_error']}")
    return "\n".join(lines)


def main():
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--checkpoint", required=True)
    options.add_argument("--feed", required=True, nargs="+")
    options.add_argument("--films", type=int, default=1024)
    options.add_argument("--batch", type=int, default=64)
    options.add_argument("--out")
    a = options.parse_args()
    state = checkpoint.load(a.checkpoint)
    device = "cuda" if torch.cuda.is_available() else "cpu"
    net = build(state["model"], state["landmarks"], state["scale"])
    net.load_state_dict({k: v.float() if v.is_floating_point() else v for k, v in state["ema"].items()})
    result, _ = evaluate(state["model"], net.to(device), a.feed, a.films, FilmMaker(device),
                         "gpu" if device == "cuda" else "cpu", a.batch)
    if a.out:
        with open(a.out, "w", encoding="utf-8") as file:
            json.dump(result, file, indent=1)
    print(table(state["model"], result))


if __name__ == "__main__":
    main()
