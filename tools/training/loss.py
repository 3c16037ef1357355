"""What training pays for.

Landmarks: cross-entropy of the heatmap against a Gaussian that is narrow across an edge and long along it, the decoded
coordinate's error (mainly across the edge), the likelihood of the error under the predicted covariance, visibility,
bone masks, view error. A landmark that is not visible costs nothing but its visibility.
"""
import math

import torch
import torch.nn.functional as F

from decode import decode
from network import VIEW_CLASSES

SIGMA_POINT = 1.3      # cells
SIGMA_NORMAL = 1.1     # cells, across an edge
SIGMA_TANGENT = 2.4    # cells, along an edge
SLIP_WEIGHT = 0.25     # of an error along an edge against one across it
PHYSIS_WEIGHT = 3.0    # of the ends of a physis: a short line, whose angle suffers from every tenth of a millimetre
OUTLIER = 25.0         # squared Mahalanobis distance from which an error counts by its logarithm


def axes(tangents):
    """Unit tangents [n, k, 2], (1, 0) for points, and whether each landmark is a contour point [n, k]."""
    contour = torch.isfinite(tangents).all(2)
    fallback = torch.zeros_like(tangents)
    fallback[..., 0] = 1
    t = torch.where(contour.unsqueeze(2), tangents, fallback)
    return t / t.norm(dim=2, keepdim=True).clamp(min=1e-6), contour


def split_error(error, tangents):
    """Error along and across the edge; for a point the two parts are x and y."""
    t, contour = axes(tangents)
    along = error[..., 0] * t[..., 0] + error[..., 1] * t[..., 1]
    across = -error[..., 0] * t[..., 1] + error[..., 1] * t[..., 0]
    return along, across, contour


def heatmap_target(points, tangents, size, stride):
    """Gaussians [n, k, size, size], each summing to 1, around points given in input pixels."""
    t, contour = axes(tangents)
    s_along = torch.where(contour, SIGMA_TANGENT, SIGMA_POINT).to(points.dtype)[..., None, None]
    s_across = torch.where(contour, SIGMA_NORMAL, SIGMA_POINT).to(points.dtype)[..., None, None]
    centre = (torch.arange(size, device=points.device, dtype=points.dtype) + 0.5)
    dx = (centre - points[..., 0:1] / stride).unsqueeze(2)
    dy = (centre - points[..., 1:2] / stride).unsqueeze(3)
    tx, ty = t[..., 0, None, None], t[..., 1, None, None]
    # The quadratic form written out per x and y, so that only one map of full size is made.
    ixx = tx * tx / s_along**2 + ty * ty / s_across**2
    iyy = ty * ty / s_along**2 + tx * tx / s_across**2
    ixy = tx * ty * (1 / s_along**2 - 1 / s_across**2)
    g = torch.exp(-0.5 * (ixx * dx * dx + iyy * dy * dy + 2 * ixy * dx * dy))
    return g / g.sum((2, 3), keepdim=True).clamp(min=1e-6)


def heatmap_cross_entropy(logits, target):
    """Per landmark, against a target that sums to 1."""
    flat = logits.float().flatten(2)
    return torch.logsumexp(flat, 2) - (flat * target.flatten(2)).sum(2)


def mahalanobis_squared(error, covariance):
    xx, xy, yy = covariance.unbind(2)
    det = (xx * yy - xy * xy).clamp(min=1e-6)
    ex, ey = error.unbind(2)
    return (yy * ex * ex - 2 * xy * ex * ey + xx * ey * ey) / det, det


def error_likelihood(error, covariance):
    """Negative log-likelihood of a coordinate error; a gross outlier stops pulling the covariance wide."""
    d2, det = mahalanobis_squared(error, covariance)
    robust = torch.where(d2 < OUTLIER, d2, OUTLIER * (1 + torch.log(d2.clamp(min=OUTLIER) / OUTLIER)))
    return 0.5 * (robust + torch.log(det)) + math.log(2 * math.pi)


def view_error_loss(predicted, truth):
    known = torch.isfinite(truth)
    truth = torch.where(known, truth, torch.zeros_like(truth))
    z2 = ((predicted[:, 0] - truth) / predicted[:, 1]) ** 2
    each = 0.5 * z2.clamp(max=16.0) + torch.log(predicted[:, 1]) + 0.02 * F.smooth_l1_loss(
        predicted[:, 0], truth, reduction="none")
    return mean_of(each, known.float())


def mean_of(values, weights):
    return (values * weights).sum() / weights.sum().clamp(min=1.0)


def masks_loss(logits, labels, films):
    """Bone masks, binary cross-entropy over the films with weight; `labels` are 0…1 at the input size."""
    target = F.avg_pool2d(labels, labels.shape[3] // logits.shape[3])
    each = F.binary_cross_entropy_with_logits(logits.float(), target, reduction="none")
    return mean_of(each.mean((1, 2, 3)), films)


def landmark_weights(names):
    """What an error of each landmark costs, 1 for most."""
    return torch.tensor([PHYSIS_WEIGHT if ".physis." in name else 1.0 for name in names])


def landmark_loss(out, batch, weights):
    """Total and parts; `batch` holds size, landmarks, tangents, visible, view_error, labels; `weights` [k]."""
    heat = out["heatmaps"]
    stride = batch["size"] // heat.shape[3]
    seen = batch["visible"].float()
    points = torch.where(batch["visible"].unsqueeze(2), batch["landmarks"], torch.full_like(batch["landmarks"], 1.0))
    target = heatmap_target(points, batch["tangents"], heat.shape[3], stride)
    costs = seen * weights
    parts = {"heat": mean_of(heatmap_cross_entropy(heat, target), costs)}
    coordinates, _ = decode(heat, stride)
    error = coordinates - points
    along, across, contour = split_error(error, batch["tangents"])
    weight = torch.where(contour, SLIP_WEIGHT, 1.0)
    huber = F.smooth_l1_loss(across, torch.zeros_like(across), reduction="none") + weight * F.smooth_l1_loss(
        along, torch.zeros_like(along), reduction="none")
    parts["coordinate"] = mean_of(huber.clamp(max=20.0), costs)
    parts["spread"] = mean_of(error_likelihood(error.detach(), out["covariance"].float()), seen)
    parts["visible"] = F.binary_cross_entropy_with_logits(out["visibility"].float(), seen)
    parts["turn"] = view_error_loss(out["view_error"].float(), batch["view_error"])
    parts["masks"] = masks_loss(out["masks"], batch["labels"], torch.ones_like(batch["view_error"]))
    total = (parts["heat"] + 0.1 * parts["coordinate"] + 0.1 * parts["spread"] + 0.5 * parts["visible"]
             + 0.1 * parts["turn"] + parts["masks"])
    parts["pixels"] = mean_of(error.detach().norm(dim=2), seen)
    return total, parts


def view_loss(out, batch):
    """Total and parts; `batch` holds size, locator, locator_visible, view_class, view_error, labels."""
    heat = out["locator"]
    stride = batch["size"] // heat.shape[3]
    elbow = batch["view_class"] < VIEW_CLASSES.index("not-an-elbow")
    seen = (batch["locator_visible"] & elbow.unsqueeze(1)).float()
    points = torch.where(seen.unsqueeze(2) > 0, batch["locator"], torch.full_like(batch["locator"], 1.0))
    target = heatmap_target(points, torch.full_like(points, float("nan")), heat.shape[3], stride)
    parts = {"heat": mean_of(heatmap_cross_entropy(heat, target), seen),
             "view": F.cross_entropy(out["view"].float(), batch["view_class"], label_smoothing=0.02)}
    truth = torch.where(elbow, batch["view_error"], torch.full_like(batch["view_error"], float("nan")))
    parts["turn"] = view_error_loss(out["view_error"].float(), truth)
    parts["masks"] = masks_loss(out["masks"], batch["labels"], elbow.float())
    total = parts["heat"] + parts["view"] + 0.1 * parts["turn"] + parts["masks"]
    coordinates, _ = decode(heat.detach(), stride)
    parts["pixels"] = mean_of((coordinates - points).norm(dim=2), seen)
    parts["right"] = (out["view"].argmax(1) == batch["view_class"]).float().mean()
    return total, parts
