"""Writes a model folder: the network as ONNX, its manifest, its card, a golden case; and checks them.

    python3 export.py --checkpoint lateral.pt --out models/lateral [--evaluation evaluation.json] [--film input.bin]
"""
import argparse
import hashlib
import inspect
import json
import os
import shutil

import numpy as np
import onnx
import torch

import checkpoint
import evaluate
import onnx_check
from card import card, limits
from decode import decode
from network import LOCATOR_POINTS, VIEW_CLASSES, fold

OPSET = 17
VERSION = "1.0.0"
LICENCE = "Apache-2.0"
TRAINED_ON = ("Simulated radiographs of ElbowAssist's own phantom, made as they were needed (seeds from 1000000). "
              "No patient's film and no other data set trained, calibrated or selected this model.")
OUTPUTS = {"landmarks": ["heatmaps", "covariance", "visibility", "view_error", "features"],
           "view": ["view", "locator", "view_error"]}
TOLERANCE = 1e-3


class Exported(torch.nn.Module):
    """The network with its outputs in a fixed order."""

    def __init__(self, net, names):
        super().__init__()
        self.net, self.names = net, names

    def forward(self, film):
        out = self.net(film)
        return tuple(out[name] for name in self.names)


def plain_copy(name, net, landmarks, scale):
    """A single-precision copy on the processor, normalisation folded, in evaluation mode."""
    copy = evaluate.build(name, landmarks, scale)
    copy.load_state_dict({k: v.detach().cpu().float() if v.is_floating_point() else v.detach().cpu()
                          for k, v in net.state_dict().items()})
    return fold(copy.eval())


def write_onnx(path, net, names):
    model = Exported(net, names).eval()
    options = {"opset_version": OPSET, "input_names": ["film"], "output_names": names}
    if "dynamo" in inspect.signature(torch.onnx.export).parameters:
        options["dynamo"] = False  # the newer exporter writes opset 18 and later only
    with torch.no_grad():
        torch.onnx.export(model, torch.zeros(1, 1, 256, 256), path, **options)
    onnx.checker.check_model(path)


def runners():
    """Ways to run an exported network on this machine: (name, function of path and film)."""
    found = [("own check", lambda path, film: onnx_check.run(path, {"film": film}))]
    try:
        import onnxruntime
    except ImportError:
        return found

    def with_runtime(path, film):
        session = onnxruntime.InferenceSession(path, providers=["CPUExecutionProvider"])
        return dict(zip([o.name for o in session.get_outputs()], session.run(None, {"film": film})))
    return found + [("onnxruntime " + onnxruntime.__version__, with_runtime)]


def check(path, net, names, film):
    """Largest difference, relative to the size of each output, between the network and its export, by runner."""
    with torch.no_grad():
        expected = dict(zip(names, (t.numpy() for t in Exported(net, names)(film))))
    worst = {}
    for runner, run in runners():
        try:
            got = run(path, film.numpy())
        except ValueError as error:  # an exporter that writes operators the own check does not know
            worst[runner] = str(error)
            continue
        worst[runner] = max(float(np.abs(got[n] - expected[n]).max() / max(1.0, np.abs(expected[n]).max())) for n in names)
        if not worst[runner] < TOLERANCE:
            raise RuntimeError(f"The export of {path} differs from the network by {worst[runner]:.2g} in {runner}.")
    return worst, expected


def golden_case(folder, task, landmarks, film, expected):
    os.makedirs(folder, exist_ok=True)
    film.numpy().astype("<f4").tofile(os.path.join(folder, "input.bin"))
    maps, names = ("heatmaps", landmarks) if task == "landmarks" else ("locator", LOCATOR_POINTS)
    heat = torch.from_numpy(expected[maps])
    at, share = decode(heat, 256 // heat.shape[3])

    def numbers(values, digits=5):
        return [round(float(v), digits) for v in values]

    case = {"input": {"file": "input.bin", "shape": [1, 1, 256, 256], "type": "float32, little-endian"},
            "tolerance": {"pixels": 0.05, "relative": 0.01},
            "points": [{"name": n, "x": round(float(p[0]), 3), "y": round(float(p[1]), 3), "share": round(float(s), 4)}
                       for n, p, s in zip(names, at[0], share[0])],
            "viewError": {"mean": round(float(expected["view_error"][0, 0]), 4),
                          "sd": round(float(expected["view_error"][0, 1]), 4)}}
    if task == "landmarks":
        case["covariance"] = [numbers(c, 4) for c in expected["covariance"][0]]
        case["visibility"] = numbers(expected["visibility"][0], 4)
    else:
        case["view"] = numbers(expected["view"][0], 4)
    with open(os.path.join(folder, "output.json"), "w", encoding="utf-8") as file:
        json.dump(case, file, indent=1)
        file.write("\n")


def manifest(name, task, landmarks, sha256, figures):
    outputs = {"viewError": {"name": "view_error"}}
    if task == "landmarks":
        outputs.update(heatmaps={"name": "heatmaps", "stride": 2}, covariance={"name": "covariance"},
                       visibility={"name": "visibility"}, features={"name": "features"})
    else:
        outputs.update(view={"name": "view", "classes": VIEW_CLASSES},
                       locator={"name": "locator", "stride": 4, "points": LOCATOR_POINTS})
    return {
        "schema": "elbowassist/model/1", "name": f"elbowassist-{name}", "version": VERSION, "task": task,
        "views": [name] if task == "landmarks" else ["lateral", "ap", "oblique"],
        "onnx": {"file": "model.onnx", "sha256": sha256, "opset": OPSET},
        "input": {"name": "film", "width": 256, "height": 256, "channels": 1,
                  "normalisation": {"recipe": "standardised-crop", "version": 1}},
        "outputs": outputs,
        # Every name is anatomical, so a landmark of a mirrored film keeps its own name.
        "landmarks": [{"name": n, "mirror": n} for n in landmarks],
        "calibration": None, "evaluation": figures or {},
        "training": {"data": TRAINED_ON, "licence": LICENCE},
        "limits": limits(task), "licence": LICENCE,
    }


def write_model_folder(folder, name, net, landmarks, scale, film, figures):
    """Writes and checks the folder; gives the export's largest relative difference by runner."""
    task = "view" if name == "view" else "landmarks"
    shutil.rmtree(folder, ignore_errors=True)
    os.makedirs(folder)
    path = os.path.join(folder, "model.onnx")
    copy = plain_copy(name, net, landmarks, scale)
    write_onnx(path, copy, OUTPUTS[task])
    worst, expected = check(path, copy, OUTPUTS[task], film)
    with open(path, "rb") as file:
        sha256 = hashlib.sha256(file.read()).hexdigest()
    content = manifest(name, task, landmarks, sha256, figures)
    with open(os.path.join(folder, "model.json"), "w", encoding="utf-8") as file:
        json.dump(content, file, indent=1)
        file.write("\n")
    golden_case(os.path.join(folder, "golden"), task, landmarks, film, expected)
    with open(os.path.join(folder, "CARD.md"), "w", encoding="utf-8") as file:
        file.write(card(content, os.path.getsize(path)))
    return worst


def main():
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--checkpoint", required=True)
    options.add_argument("--out", required=True)
    options.add_argument("--evaluation", help="figures to write into manifest and card")
    options.add_argument("--film", help="a standardised film, float32, for the golden case; noise without it")
    a = options.parse_args()
    state = checkpoint.load(a.checkpoint)
    net = evaluate.build(state["model"], state["landmarks"], state["scale"])
    net.load_state_dict({k: v.float() if v.is_floating_point() else v for k, v in state["ema"].items()})
    film, figures = torch.randn(1, 1, 256, 256), None
    if a.film:
        film = torch.from_numpy(np.fromfile(a.film, "<f4").reshape(1, 1, 256, 256))
    if a.evaluation:
        with open(a.evaluation, encoding="utf-8") as file:
            figures = json.load(file)
    print(write_model_folder(a.out, state["model"], net, state["landmarks"], state["scale"], film, figures))


if __name__ == "__main__":
    main()
