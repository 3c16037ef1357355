"""Runs an exported network without its runtime: one PyTorch call per node, for machines that lack the runtime."""
import numpy as np
import onnx
import torch
import torch.nn.functional as F
from onnx import numpy_helper


def attributes(node):
    return {a.name: onnx.helper.get_attribute_value(a) for a in node.attribute}


def pads(a, spatial):
    p = a.get("pads", [0] * 2 * spatial)
    if p[:spatial] != p[spatial:]:
        raise ValueError("uneven padding")
    return p[:spatial]


def axes_of(a, args, rank):
    axes = a["axes"] if "axes" in a else (args[1].tolist() if len(args) > 1 else list(range(rank)))
    return [x % rank for x in axes]


def resize(a, args):
    x = args[0]
    size = args[3].tolist()[2:] if len(args) > 3 and args[3] is not None else [
        int(round(float(s) * d)) for s, d in zip(args[2].tolist()[2:], x.shape[2:])]
    if a["mode"] != b"nearest":
        raise ValueError("only nearest resizing is known")
    return F.interpolate(x, size=size, mode="nearest")


def pad(a, args):
    p = args[1].tolist()
    half = len(p) // 2
    flat = [v for i in range(half - 1, -1, -1) for v in (p[i], p[half + i])]
    return F.pad(args[0], flat, value=float(args[2]) if len(args) > 2 and args[2] is not None else 0.0)


def take(a, args):
    axis, index = a.get("axis", 0), args[1].long()
    out = torch.index_select(args[0], axis, index.reshape(-1))
    return out.squeeze(axis) if index.dim() == 0 else out


def part(a, args):
    starts, ends, axes = (args[i].tolist() for i in (1, 2, 3))
    steps = args[4].tolist() if len(args) > 4 else [1] * len(starts)
    x = args[0]
    for start, end, axis, step in zip(starts, ends, axes, steps):
        x = x[(slice(None),) * (axis % x.dim()) + (slice(start, min(end, x.shape[axis]), step),)]
    return x


def cast(a, args):
    kinds = {onnx.TensorProto.FLOAT: torch.float32, onnx.TensorProto.INT64: torch.int64, onnx.TensorProto.BOOL: torch.bool}
    return args[0].to(kinds[a["to"]])


def reduce(name):
    def run(a, args):
        x, keep = args[0], bool(a.get("keepdims", 1))
        return getattr(x, name)(dim=axes_of(a, args, x.dim()), keepdim=keep)
    return run


def clip(a, args):
    low = args[1] if len(args) > 1 and args[1] is not None else torch.tensor(a.get("min", -3.4e38))
    high = args[2] if len(args) > 2 and args[2] is not None else torch.tensor(a.get("max", 3.4e38))
    return torch.minimum(torch.maximum(args[0], low), high)


def reshape(a, args):
    shape = [args[0].shape[i] if s == 0 else s for i, s in enumerate(args[1].tolist())]
    return args[0].reshape(shape)


OPERATORS = {
    "Conv": lambda a, v: F.conv2d(v[0], v[1], v[2] if len(v) > 2 else None, a["strides"], pads(a, 2), a["dilations"],
                                  a["group"]),
    "Relu": lambda a, v: F.relu(v[0]), "Add": lambda a, v: v[0] + v[1], "Sub": lambda a, v: v[0] - v[1],
    "Mul": lambda a, v: v[0] * v[1], "Div": lambda a, v: v[0] / v[1], "Sqrt": lambda a, v: v[0].sqrt(),
    "Exp": lambda a, v: v[0].exp(), "Log": lambda a, v: v[0].log(), "Softplus": lambda a, v: F.softplus(v[0]),
    "MatMul": lambda a, v: torch.matmul(v[0], v[1]), "Concat": lambda a, v: torch.cat(v, a["axis"]),
    "Softmax": lambda a, v: torch.softmax(v[0], a["axis"]), "Transpose": lambda a, v: v[0].permute(*a["perm"]),
    "Gemm": lambda a, v: F.linear(v[0], v[1] if a.get("transB") else v[1].t(), v[2]),
    "AveragePool": lambda a, v: F.avg_pool2d(v[0], a["kernel_shape"], a["strides"], pads(a, 2)),
    "Identity": lambda a, v: v[0], "Constant": lambda a, v: torch.from_numpy(np.array(numpy_helper.to_array(a["value"]))),
    "Unsqueeze": lambda a, v: unsqueeze(v[0], v[1].tolist()), "Squeeze": lambda a, v: squeeze(v[0], v[1].tolist()),
    "Resize": resize, "Pad": pad, "Gather": take, "Slice": part, "Cast": cast, "Clip": clip, "Reshape": reshape,
    "ReduceMean": reduce("mean"), "ReduceSum": reduce("sum"), "ReduceMax": reduce("amax"),
    "Flatten": lambda a, v: v[0].flatten(a.get("axis", 1)), "GlobalAveragePool": lambda a, v: v[0].mean((2, 3), keepdim=True),
}


def unsqueeze(x, axes):
    for axis in sorted(axes):
        x = x.unsqueeze(axis)
    return x


def squeeze(x, axes):
    for axis in sorted((a % x.dim() for a in axes), reverse=True):
        x = x.squeeze(axis)
    return x


def run(path, feeds):
    """Outputs by name, as arrays, for inputs by name."""
    graph = onnx.load(path).graph
    values = {i.name: torch.from_numpy(np.array(numpy_helper.to_array(i))) for i in graph.initializer}
    values.update({name: torch.from_numpy(np.asarray(value)) for name, value in feeds.items()})
    values[""] = None
    for node in graph.node:
        if node.op_type not in OPERATORS:
            raise ValueError(f"operator {node.op_type} is not known to this check")
        values[node.output[0]] = OPERATORS[node.op_type](attributes(node), [values[i] for i in node.input])
    return {o.name: values[o.name].numpy() for o in graph.output}
