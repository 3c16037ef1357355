"""Soft masks of straight lines and turned rectangles, over the coordinates −1…1 of a film maker."""
import math

import torch


def line_mask(maker, n, width, length):
    """One straight line per film, 0…1; width and length are ranges in half film sides."""
    x0, y0, turn = maker.uniform(n, -0.9, 0.9), maker.uniform(n, -0.9, 0.9), maker.uniform(n, 0, 2 * math.pi)
    dx, dy = torch.cos(turn), torch.sin(turn)
    reach = maker.uniform(n, *length)
    x, y = maker.x - x0, maker.y - y0
    t = torch.minimum((x * dx + y * dy).clamp(min=0), reach)
    distance = ((x - t * dx) ** 2 + (y - t * dy) ** 2).sqrt()
    return torch.sigmoid((maker.uniform(n, *width) - distance) / 0.003)


def rectangle_distance(maker, n):
    """Signed distance (positive outside) from a turned rectangle about the middle of each film."""
    slight, any_turn = maker.uniform(n, -0.1, 0.1), maker.uniform(n, -math.pi / 4, math.pi / 4)
    turn = torch.where(maker.chance(n, 0.5), slight, any_turn)
    c, s = torch.cos(turn), torch.sin(turn)
    u, w = maker.x * c + maker.y * s, maker.y * c - maker.x * s
    return torch.maximum((u - maker.uniform(n, -0.1, 0.1)).abs() - maker.uniform(n, 0.6, 1.15),
                         (w - maker.uniform(n, -0.1, 0.1)).abs() - maker.uniform(n, 0.6, 1.15))
