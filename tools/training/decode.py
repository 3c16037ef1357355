"""Heatmaps to coordinates, as the reader of model folders does it."""
import torch
import torch.nn.functional as F

RADIUS = 3


def decode(heatmaps, stride, radius=RADIUS):
    """Coordinates [n, k, 2] in input pixels and the share of the map they rest on [n, k].

    Softmax over the map, then the mean over the cells within `radius` of the peak. Cell i covers input pixels
    i·stride … (i+1)·stride; its centre is (i + 0.5)·stride.
    """
    n, k, h, w = heatmaps.shape
    p = F.softmax(heatmaps.float().reshape(n, k, h * w), 2)
    index = p.argmax(2)
    row, column = torch.div(index, w, rounding_mode="floor"), index % w
    ys = torch.arange(h, device=p.device)
    xs = torch.arange(w, device=p.device)
    near_y = ((ys - row[..., None]).abs() <= radius).float()
    near_x = ((xs - column[..., None]).abs() <= radius).float()
    p = p.reshape(n, k, h, w)
    rows = torch.matmul(p, near_x.unsqueeze(3)).squeeze(3) * near_y
    columns = torch.matmul(p.transpose(2, 3), near_y.unsqueeze(3)).squeeze(3) * near_x
    share = rows.sum(2)
    x = (columns * (xs + 0.5)).sum(2) / share * stride
    y = (rows * (ys + 0.5)).sum(2) / share * stride
    return torch.stack([x, y], 2), share
