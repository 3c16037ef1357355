"""Makes the tiny networks of the tests. Needs python3-onnx (Debian); the networks are committed."""
import os
import sys

import numpy as np
import onnx
from onnx import TensorProto, helper, numpy_helper

SIDE = 256


def save(name, nodes, constants, inputs, outputs):
    graph = helper.make_graph(
        nodes, name,
        [helper.make_tensor_value_info(n, TensorProto.FLOAT, s) for n, s in inputs],
        [helper.make_tensor_value_info(n, TensorProto.FLOAT, s) for n, s in outputs],
        [numpy_helper.from_array(np.asarray(v, dtype=np.int64 if np.asarray(v).dtype.kind == "i" else np.float32), n)
         for n, v in constants.items()])
    model = helper.make_model(graph, opset_imports=[helper.make_opsetid("", 17)], producer_name="tests")
    model.ir_version = 8
    onnx.checker.check_model(model)
    onnx.save(model, os.path.join(os.path.dirname(os.path.abspath(__file__)), name + ".onnx"))


def anchored(name):
    """Nodes that tie a constant output to the film, so that no output is independent of the input."""
    return [helper.make_node("ReduceMean", ["film"], ["mean_" + name], keepdims=0),
            helper.make_node("Mul", ["mean_" + name, "zero"], ["nothing_" + name]),
            helper.make_node("Add", ["constant_" + name, "nothing_" + name], [name])]


def layout_maps(name, points, cells, stride, sigma):
    """Heatmap logits -d²/2σ² about fixed points given in input pixels, made from two short vectors."""
    points = np.asarray(points, dtype=np.float32)
    axis = (np.arange(cells) + 0.5) * stride
    x = -((axis[None, :] - points[:, 0:1]) ** 2) / (2 * sigma ** 2)
    y = -((axis[None, :] - points[:, 1:2]) ** 2) / (2 * sigma ** 2)
    constants = {"across_" + name: x[None, :, None, :], "down_" + name: y[None, :, :, None]}
    nodes = [helper.make_node("ReduceMean", ["film"], ["mean_" + name], keepdims=0),
             helper.make_node("Mul", ["mean_" + name, "zero"], ["nothing_" + name]),
             helper.make_node("Add", ["across_" + name, "down_" + name], ["maps_" + name]),
             helper.make_node("Add", ["maps_" + name, "nothing_" + name], [name])]
    return nodes, constants


def spots():
    """64 × 64: two landmarks, the brightest and the darkest place of the film; stated spread, visibility, view error."""
    nodes = [helper.make_node("AveragePool", ["film"], ["small"], kernel_shape=[2, 2], strides=[2, 2]),
             helper.make_node("Mul", ["small", "gains"], ["heatmaps"]),
             helper.make_node("ReduceMean", ["film"], ["features_"], axes=[2, 3], keepdims=0),
             helper.make_node("Identity", ["features_"], ["features"])]
    constants = {"zero": 0.0, "gains": np.array([8.0, -8.0]).reshape(1, 2, 1, 1),
                 "constant_covariance": np.array([[[4.0, 1.0, 2.0], [1.0, 0.0, 1.0]]]),
                 "constant_visibility": np.array([[2.0, -2.0]]), "constant_view_error": np.array([[7.0, 3.0]])}
    for name in ("covariance", "visibility", "view_error"):
        nodes += anchored(name)
    save("spots", nodes, constants, [("film", [1, 1, 64, 64])],
         [("heatmaps", [1, 2, 32, 32]), ("covariance", [1, 2, 3]), ("visibility", [1, 2]), ("view_error", [1, 2]),
          ("features", [1, 1])])


def points():
    """64 × 64: two landmarks at fixed points, given as coordinates."""
    save("points", anchored("points"), {"zero": 0.0, "constant_points": np.array([[[10.5, 20.25], [40.0, 50.0]]])},
         [("film", [1, 1, 64, 64])], [("points", [1, 2, 2])])


def layout(name, places, view_error):
    """256 × 256: landmarks at fixed places of the crop, whatever the film shows."""
    count = len(places)
    nodes, constants = layout_maps("heatmaps", places, 128, 2, 4.0)
    constants.update(zero=0.0, constant_covariance=np.tile([1.0, 0.0, 1.0], (1, count, 1)),
                     constant_visibility=np.full((1, count), 4.0), constant_view_error=np.array([view_error]))
    for output in ("covariance", "visibility", "view_error"):
        nodes += anchored(output)
    save(name, nodes, constants, [("film", [1, 1, SIDE, SIDE])],
         [("heatmaps", [1, count, 128, 128]), ("covariance", [1, count, 3]), ("visibility", [1, count]), ("view_error", [1, 2])])


def view(name, logits, locator=((150, 30), (140, 160), (40, 170), (185, 150))):
    """256 × 256: a fixed view and fixed locator points."""
    nodes, constants = layout_maps("locator", locator, 64, 4, 6.0)
    constants.update(zero=0.0, constant_view=np.array([logits]), constant_view_error=np.array([[6.0, 3.0]]))
    nodes += anchored("view") + anchored("view_error")
    save(name, nodes, constants, [("film", [1, 1, SIDE, SIDE])],
         [("view", [1, 5]), ("locator", [1, 4, 64, 64]), ("view_error", [1, 2])])


def lateral_places():
    """A lateral elbow flexed to a right angle in a 256-pixel crop: shaft up, forearm to the left, W = 26 pixels."""
    w, roof, axis = 26.0, np.array([158.0, 138.0]), 158.0
    levels = [3.0, 2.5, 2.0, 1.5, 1.0]
    centre, r = np.array([146.0, 166.0]), 15.0

    def rim(angle, centre=centre, r=r):
        # 0° distal (down), 90° anterior (left).
        a = np.radians(angle)
        return centre + r * np.array([-np.sin(a), np.cos(a)])

    places = [(axis - w / 2, roof[1] - k * w) for k in levels] + [(axis + w / 2, roof[1] - k * w) for k in levels]
    places += [tuple(roof), (156.0, 146.0)]
    places += [tuple(rim(30 * i)) for i in range(12)]
    places += [tuple(rim(140)), tuple(rim(220))]
    places += [tuple(rim(a, np.array([149.0, 168.0]), 19.0)) for a in (-30, 0, 30, 60, 90)]
    head = 128.0
    places += [(head - d * 22, 166.0 - h) for d, h in ((0.6, 8), (0.85, 8), (2.0, 9), (2.6, 9))]
    places += [(head - d * 22, 166.0 + h) for d, h in ((0.6, 8), (0.85, 8), (2.0, 9), (2.6, 9))]
    places += [(head, 155.0), (head, 177.0)]
    places += [(128.0, 184.0), (186.0, 158.0)]
    places += [(138.0, 193.0), (150.0, 195.0), (163.0, 192.0), (174.0, 182.0)]
    places += [(166.0 - 26 * k, 212.0) for k in (2, 4, 6)]
    places += [(126.0, 130.0), (144.0, 112.0), (176.0, 130.0)]
    return places


if __name__ == "__main__":
    spots()
    points()
    layout("lateral-layout", lateral_places(), [5.0, 3.0])
    layout("lateral-layout-rotated", lateral_places(), [33.0, 3.0])
    view("view-lateral", [8.0, 0, 0, 0, 0])
    view("view-oblique", [0, 0, 8.0, 0, 0])
    view("view-unsure", [5.2, 5.1, 5.2, 0, 0])
    view("view-other-joint", [0, 0, 0, 8.0, 0])
    view("view-no-radiograph", [0, 0, 0, 0, 8.0])
    print(len(lateral_places()), "places", file=sys.stderr)
