"""Makes a model folder of a PyTorch network that was made elsewhere: the ONNX file, the manifest, a card, a golden case.

    from model_folder import write_model_folder
    write_model_folder("models/mine", net, name="mine", view="lateral", landmarks=[...], outputs=["heatmaps", "visibility"])

The network takes [1, 1, side, side] and gives a tuple of tensors in the order of `outputs`: either "heatmaps" [1, K, h, w]
(logits) or "points" [1, K, 2] (x, y in input pixels, (0, 0) the top-left corner), and if it has them "covariance" [1, K, 3]
(xx, xy, yy in squared input pixels), "visibility" [1, K] (logits), "view_error" [1, 2] (mean and standard deviation in
degrees), "features" [1, F]. Needs PyTorch and numpy, nothing of this project.
"""
import hashlib
import inspect
import json
import os

import numpy as np
import torch

OPSET = 17
RADIUS = 3  # cells about the highest that the program averages over


def decode(logits, stride):
    """Places and shares of heatmap logits [K, h, w] as the program decodes them."""
    count, height, width = logits.shape
    share = np.exp(logits - logits.reshape(count, -1).max(1)[:, None, None])
    share /= share.sum(axis=(1, 2), keepdims=True)
    found = []
    for one in share:
        row, column = np.unravel_index(one.argmax(), one.shape)
        rows = np.arange(max(0, row - RADIUS), min(height, row + RADIUS + 1))
        columns = np.arange(max(0, column - RADIUS), min(width, column + RADIUS + 1))
        part = one[np.ix_(rows, columns)]
        found.append((float((part.sum(0) * (columns + 0.5)).sum() / part.sum() * stride),
                      float((part.sum(1) * (rows + 0.5)).sum() / part.sum() * stride), float(part.sum())))
    return found


def write_model_folder(folder, net, name, view, landmarks, outputs, all_landmarks, side=256, film=None,
                       trained_on="", data_licence="", licence="", limits=(), version="1.0.0"):
    """Writes the folder. `all_landmarks` are the names of the view, in any order; those the network lacks are listed as absent."""
    os.makedirs(os.path.join(folder, "golden"), exist_ok=True)
    film = torch.zeros(1, 1, side, side) if film is None else film
    net = net.eval()
    path = os.path.join(folder, "model.onnx")
    options = {"dynamo": False} if "dynamo" in inspect.signature(torch.onnx.export).parameters else {}
    with torch.no_grad():
        torch.onnx.export(net, torch.zeros(1, 1, side, side), path, opset_version=OPSET, input_names=["film"], output_names=list(outputs), **options)
        given = dict(zip(outputs, (t.numpy() for t in net(film))))
    with open(path, "rb") as file:
        sha256 = hashlib.sha256(file.read()).hexdigest()

    named = {"heatmaps": "heatmaps", "points": "points", "covariance": "covariance", "visibility": "visibility",
             "view_error": "viewError", "features": "features"}
    described = {named[o]: {"name": o} for o in outputs}
    if "heatmaps" in given:
        stride = side // given["heatmaps"].shape[3]
        described["heatmaps"]["stride"] = stride
        places = decode(given["heatmaps"][0].astype(np.float64), stride)
    else:
        places = [(float(x), float(y), 1.0) for x, y in given["points"][0]]
    golden = {"tolerance": {"pixels": 0.05, "relative": 0.01},
              "points": [{"name": n, "x": round(x, 3), "y": round(y, 3), "share": round(s, 4)} for n, (x, y, s) in zip(landmarks, places)]}
    for output in ("covariance", "visibility"):
        if output in given:
            golden[output] = np.round(given[output][0].astype(float), 5).tolist()
    if "view_error" in given:
        golden["viewError"] = {"mean": float(given["view_error"][0, 0]), "sd": float(given["view_error"][0, 1])}
    manifest = {
        "schema": "elbowassist/model/1", "name": name, "version": version, "task": "landmarks", "views": [view],
        "onnx": {"file": "model.onnx", "sha256": sha256, "opset": OPSET},
        "input": {"name": "film", "width": side, "height": side, "channels": 1, "normalisation": {"recipe": "standardised-crop", "version": 1}},
        "outputs": described,
        "landmarks": [{"name": n, "mirror": n} for n in landmarks],
        "absent": [n for n in all_landmarks if n not in landmarks],
        "calibration": None, "evaluation": None,
        "training": {"data": trained_on or "not said", "licence": data_licence or "not said"},
        "limits": list(limits) or ["Not calibrated: run models calibrate."], "licence": licence or "not said",
    }
    film.numpy().astype("<f4").tofile(os.path.join(folder, "golden", "input.bin"))
    for file, content in (("model.json", manifest), (os.path.join("golden", "output.json"), golden)):
        with open(os.path.join(folder, file), "w", encoding="utf-8") as out:
            json.dump(content, out, indent=1)
            out.write("\n")
    with open(os.path.join(folder, "CARD.md"), "w", encoding="utf-8") as out:
        out.write(f"# {name} {version}\n\nTrained on: {manifest['training']['data']}\n\nLimits: {' '.join(manifest['limits'])}\n\n"
                  "**Not a medical device, not validated on patients. For a second look only: the reader decides. Nothing here excludes a fracture.**\n")
