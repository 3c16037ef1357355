"""Image operations with fixed shapes: blurs, quantiles, compression."""
import math

import torch

_CACHE = {}


def weights(size, sigma, device):
    """Gaussian weights of every pixel of a row for every other, rows summing to 1: [s, s], or [n, s, s] for a tensor."""
    at = torch.arange(size, device=device, dtype=torch.float32)
    away = (at.view(-1, 1) - at) ** 2
    sigma = sigma.view(-1, 1, 1) if torch.is_tensor(sigma) else torch.tensor(float(sigma), device=device)
    k = torch.softmax(-0.5 * away / sigma ** 2, -1)
    return torch.where(k < 1e-8, torch.zeros_like(k), k)  # denormal numbers are slow on a processor


def blur(v, sigma):
    """Gaussian blur of [n, 1, s, s]; sigma in pixels is a number, or [n, 1, 1, 1] for a width of its own per film.

    Two products with a square matrix: faster on these shapes than convolutions of one channel, and exact for any width.
    """
    if torch.is_tensor(sigma):
        k = weights(v.shape[3], sigma.clamp(min=0.15), v.device).unsqueeze(1)
    else:
        key = (v.shape[3], sigma, v.device)
        if key not in _CACHE:
            _CACHE[key] = weights(*key)
        k = _CACHE[key]
    return torch.matmul(k, torch.matmul(v, k.transpose(-1, -2)))


def quantiles(v, mask, low, high, step=4):
    """Two quantiles per film over the pixels where `mask` is not 0, from every `step`-th pixel each way."""
    n = len(v)
    offset = step // 2
    sample = v[:, :, offset::step, offset::step].reshape(n, -1)
    inside = mask[:, :, offset::step, offset::step].reshape(n, -1) > 0.5
    count = inside.sum(1, keepdim=True)
    inside = inside | (count < 16)
    count = inside.sum(1, keepdim=True)
    ordered = torch.where(inside, sample, torch.full_like(sample, float("inf"))).sort(1).values
    index = [(q.reshape(n, 1) * (count - 1)).round().long() for q in (low, high)]
    return [ordered.gather(1, i).view(n, 1, 1, 1) for i in index]


# Luminance quantisation table of ITU-T T.81, annex K.
LUMINANCE = (16, 11, 10, 16, 24, 40, 51, 61, 12, 12, 14, 19, 26, 58, 60, 55, 14, 13, 16, 24, 40, 57, 69, 56, 14, 17, 22,
             29, 51, 87, 80, 62, 18, 22, 37, 56, 68, 109, 103, 77, 24, 35, 55, 64, 81, 104, 113, 92, 49, 64, 78, 87, 103,
             121, 120, 101, 72, 92, 95, 98, 112, 100, 103, 99)


def _transform(device):
    if ("jpeg", device) not in _CACHE:
        i = torch.arange(8, dtype=torch.float32)
        d = torch.cos((2 * i[None] + 1) * i[:, None] * math.pi / 16) / 2
        d[0] /= math.sqrt(2)
        _CACHE["jpeg", device] = d.to(device), torch.tensor(LUMINANCE, dtype=torch.float32).view(8, 8).to(device)
    return _CACHE["jpeg", device]


def jpeg(v, quality):
    """What lossy compression at a quality of 1…99 leaves of grey values 0…1."""
    d, table = _transform(v.device)
    n, _, h, w = v.shape
    blocks = v.reshape(n, h // 8, 8, w // 8, 8).permute(0, 1, 3, 2, 4) * 255 - 128
    scale = torch.where(quality < 50, 5000 / quality, 200 - 2 * quality) / 100
    steps = torch.floor(table * scale.view(n, 1, 1, 1, 1) + 0.5).clamp(min=1)
    rounded = torch.round(d @ blocks @ d.t() / steps) * steps
    out = (d.t() @ rounded @ d + 128) / 255
    return out.permute(0, 1, 3, 2, 4).reshape(n, 1, h, w).clamp(0, 1)
