"""Trains and exports two networks of different build as a stranger would: one gives heatmaps, the other points.

They find the brightest and the darkest spot of a 64-pixel picture and call them two landmarks. Debian 12:
apt-get install python3-torch; python3 make_models.py. The folders are committed; a minute on one core.
"""
import os
import sys

import torch
from torch import nn

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(HERE, "..", "..", "..", "tools", "training", "foreign"))
from model_folder import write_model_folder  # noqa: E402

SIDE, STEPS, BATCH = 64, 700, 32
NAMES = ["humerus.fossa.roof", "humerus.waist"]
LATERAL = [line.strip() for line in open(os.path.join(HERE, "lateral-landmarks.txt"), encoding="ascii")]


def block(inside, outside, stride=1):
    return nn.Sequential(nn.Conv2d(inside, outside, 3, stride, 1), nn.ReLU())


class Heatmaps(nn.Module):
    """Down and up again with a shortcut; heatmap logits at half the size, visibility from the highest of each."""

    def __init__(self):
        super().__init__()
        self.first, self.second, self.deep = block(1, 8, 2), block(8, 16, 2), block(16, 16)
        self.up, self.join, self.head = nn.Upsample(scale_factor=2, mode="nearest"), block(24, 8), nn.Conv2d(8, 2, 1)

    def forward(self, film):
        half = self.first(film)
        maps = self.head(self.join(torch.cat([half, self.up(self.deep(self.second(half)))], 1)))
        return maps, torch.amax(maps, dim=(2, 3))


class Points(nn.Module):
    """Soft attention by separable convolutions, places as the attention's mean: coordinates come out, no heatmap."""

    def __init__(self):
        super().__init__()
        self.body = nn.Sequential(
            nn.Conv2d(1, 8, 5, 2, 2), nn.GELU(), nn.Conv2d(8, 8, 5, 1, 2, groups=8), nn.Conv2d(8, 16, 1), nn.GELU(), nn.Conv2d(16, 2, 1))
        axis = (torch.arange(SIDE // 2) + 0.5) * 2
        self.register_buffer("x", axis.repeat(SIDE // 2))
        self.register_buffer("y", axis.repeat_interleave(SIDE // 2))
        self.spread = nn.Parameter(torch.zeros(2))

    def forward(self, film):
        attention = torch.softmax(self.body(film).flatten(2), dim=2)
        points = torch.stack([(attention * self.x).sum(2), (attention * self.y).sum(2)], 2)
        variance = torch.exp(self.spread).expand(points.shape[0], 2)
        return points, torch.stack([variance, torch.zeros_like(variance), variance], 2)


def pictures(random, count):
    """Standardised noise with a bright and a dark spot, and where they lie."""
    places = 8 + (SIDE - 16) * torch.rand(count, 2, 2, generator=random)
    axis = torch.arange(SIDE) + 0.5
    film = 0.3 * torch.randn(count, 1, SIDE, SIDE, generator=random)
    for spot, sign in ((0, 4.0), (1, -4.0)):
        x, y = places[:, spot, 0], places[:, spot, 1]
        film[:, 0] += sign * torch.exp(-(((axis[None, None] - x[:, None, None]) ** 2) + ((axis[None, :, None] - y[:, None, None]) ** 2)) / 18)
    return (film - film.mean((1, 2, 3), keepdim=True)) / (film.std((1, 2, 3), keepdim=True) + 0.03), places


def train(net, loss, random):
    optimiser = torch.optim.Adam(net.parameters(), 4e-3)
    for _ in range(STEPS):
        film, places = pictures(random, BATCH)
        optimiser.zero_grad()
        loss(net(film), places).backward()
        optimiser.step()


def heatmap_loss(given, places):
    cells = (places / 2).long().clamp(0, SIDE // 2 - 1)
    target = cells[..., 1] * (SIDE // 2) + cells[..., 0]
    return nn.functional.cross_entropy(given[0].flatten(2).flatten(0, 1), target.flatten())


def point_loss(given, places):
    points, covariance = given
    square = ((points - places) ** 2).sum(2)
    return (square / (2 * covariance[..., 0]) + torch.log(covariance[..., 0])).mean()


if __name__ == "__main__":
    torch.set_num_threads(1)
    for name, net, loss, outputs in (("foreign-heatmaps", Heatmaps, heatmap_loss, ["heatmaps", "visibility"]),
                                     ("foreign-points", Points, point_loss, ["points", "covariance"])):
        torch.manual_seed(1)
        random = torch.Generator().manual_seed(2)
        net = net()
        train(net, loss, random)
        film, places = pictures(torch.Generator().manual_seed(3), 1)
        write_model_folder(
            os.path.join(HERE, name), net, name, "lateral", NAMES, outputs, LATERAL, side=SIDE, film=film,
            trained_on="Drawn spots; for tests only.", data_licence="Apache-2.0", licence="Apache-2.0", limits=["Finds spots, not bones."])
        test, at = pictures(torch.Generator().manual_seed(4), 200)
        with torch.no_grad():
            given = net(test)[0]
        print(name, sum(p.numel() for p in net.parameters()), "parameters; golden places", [[round(float(v), 2) for v in p] for p in places[0]],
              *(["mean error", round(float((given - at).norm(dim=2).mean()), 3)] if outputs[0] == "points" else []))
