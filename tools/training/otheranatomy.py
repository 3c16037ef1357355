"""Material paths of limbs and trunks that are no elbow, made on the device from tubes of bone in soft tissue.

Beside the feed's near misses they teach a view model to refuse what also consists of bones: hands and feet (fans of
many short bones), knees, ankles and wrists (broad ends that meet), ribs and spines (rows of like parts), hips and
shoulders (a ball in a bowl). They are drawn, not modelled: only their character counts.
"""
import math

import torch


class OtherAnatomy:
    """Draws paths [n, 5, s, s] in mm, in the order of the feed, with the random numbers of a film maker."""

    def __init__(self, maker):
        self.maker = maker

    def __call__(self, n):
        kinds = [self.fan, self.meeting, self.row, self.ball, self.shaft_cross]
        each = -(-n // len(kinds))
        out = torch.cat([kind(each) for kind in kinds])
        return out[torch.randperm(len(out), device=out.device)[:n]]

    def number(self, n, lo, hi):
        return self.maker.uniform(n, lo, hi)

    def frame(self, n):
        """A turned, scaled, shifted and mirrored frame of each film: coordinates u (along) and w (across)."""
        m = self.maker
        turn, size = m.uniform(n, 0, 2 * math.pi), m.uniform(n, 0.7, 1.4)
        x, y = m.x - m.uniform(n, -0.3, 0.3), m.y - m.uniform(n, -0.3, 0.3)
        flip = torch.where(m.chance(n, 0.5), -1.0, 1.0)
        u = (x * torch.cos(turn) + y * torch.sin(turn)) / size
        w = (y * torch.cos(turn) - x * torch.sin(turn)) / size * flip
        return u, w

    def tube(self, u, w, start, end, r0, r1, flare=0.0):
        """Path through a tube and through its marrow, in units of its frame; ends rounded, broadened by `flare`."""
        (u0, w0), (u1, w1) = start, end
        du, dw = u1 - u0, w1 - w0
        length = (du ** 2 + dw ** 2 + 1e-6) ** 0.5
        t = ((u - u0) * du + (w - w0) * dw) / length ** 2
        t = t.clamp(0, 1)
        distance2 = (u - u0 - t * du) ** 2 + (w - w0 - t * dw) ** 2
        ends = torch.exp(-((t / 0.16) ** 2)) + torch.exp(-(((1 - t) / 0.16) ** 2))
        radius = r0 + (r1 - r0) * t
        radius = radius * (1 + flare * ends)
        outer = 2 * torch.sqrt((radius ** 2 - distance2).clamp(min=0))
        # The cortex is thick in the middle of a shaft and thin at its ends.
        inside = radius * (0.62 + 0.3 * ends.clamp(max=1))
        return outer, 2 * torch.sqrt((inside ** 2 - distance2).clamp(min=0))

    def flesh(self, u, w, start, end, radius):
        outer, _ = self.tube(u, w, start, end, radius, radius)
        return outer

    def paths(self, n, tubes, flesh):
        """From tubes (outer, marrow) and soft tissue, in frame units, to mm of each material."""
        mm = self.number(n, 55, 130)  # half a film side
        bone = sum((outer - marrow) + marrow * self.number(n, 0.08, 0.25) for outer, marrow in tubes)
        solid = sum(outer for outer, _ in tubes)
        tissue = torch.maximum(flesh, solid)
        soft = (tissue - bone).clamp(min=0)
        fat = torch.minimum(flesh * 0.15, torch.full_like(flesh, 0.08))
        nothing = torch.zeros_like(flesh)
        return torch.cat([(soft - fat).clamp(min=0) * mm, fat * mm, bone * mm, nothing, nothing], 1).clamp(0, 400)

    def fan(self, n):
        """Hand or foot: rays of three or four bones, wrist or tarsal bones, sometimes the two bones beyond."""
        u, w = self.frame(n)
        tubes, flesh = [], self.flesh(u, w, (-0.9, 0.0), (0.1, 0.0), self.number(n, 0.28, 0.4))
        spread = self.number(n, 0.1, 0.35)
        for ray in range(5):
            angle = (ray - 2) * spread + self.number(n, -0.05, 0.05)
            at, reach = 0.0, self.number(n, 0.8, 1.1)
            radius = self.number(n, 0.035, 0.055)
            base = (ray - 2) * 0.09
            for length in (0.42, 0.26, 0.17, 0.1):
                begin, stop = at + 0.02, at + length * reach - 0.02
                ends = [(c * torch.cos(angle), base + c * torch.sin(angle)) for c in (begin, stop)]
                tubes.append(self.tube(u, w, ends[0], ends[1], radius, radius * 0.85, 0.35))
                at, radius = at + length * reach, radius * 0.85
            flesh = torch.maximum(flesh, self.flesh(u, w, (0.0, base), (at * torch.cos(angle), base + at * torch.sin(angle)),
                                                    self.number(n, 0.09, 0.13)))
        for _ in range(7):
            c = (self.number(n, -0.28, -0.02), self.number(n, -0.22, 0.22))
            tubes.append(self.tube(u, w, c, (c[0] + 0.03, c[1] + 0.02), self.number(n, 0.05, 0.09), 0.06))
        for side in (-0.12, 0.13):
            tubes.append(self.tube(u, w, (-1.6, side), (-0.34, side), self.number(n, 0.06, 0.08), 0.1, 0.15))
        return self.paths(n, tubes, flesh)

    def meeting(self, n):
        """Knee, ankle or wrist: broad ends that meet, a second bone beside, a round one in front."""
        u, w = self.frame(n)
        gap, bend = self.number(n, 0.02, 0.06), self.number(n, -0.25, 0.25)
        r = self.number(n, 0.11, 0.2)
        tubes = [self.tube(u, w, (-1.8, 0.0), (-gap - r, 0.0), r, r, self.number(n, 0.4, 0.9)),
                 self.tube(u, w, (gap + r, 0.0), (1.8, 2 * bend), r * self.number(n, 0.8, 1.1), r * 0.9, self.number(n, 0.4, 0.9)),
                 self.tube(u, w, (0.25, self.number(n, 0.2, 0.3)), (1.8, 2 * bend + 0.25), r * 0.4, r * 0.4, 0.4)]
        cap = (self.number(n, -0.3, 0.1), self.number(n, -0.35, 0.0))
        tubes.append(self.tube(u, w, cap, (cap[0] + 0.12, cap[1]), self.number(n, 0.04, 0.12), 0.07))
        flesh = torch.maximum(self.flesh(u, w, (-2.0, 0.0), (0.0, 0.0), self.number(n, 0.35, 0.55)),
                              self.flesh(u, w, (0.0, 0.0), (2.0, 2 * bend), self.number(n, 0.3, 0.45)))
        return self.paths(n, tubes, flesh)

    def row(self, n):
        """Spine or ribs: a row of blocks with bars that leave them, in a broad trunk."""
        u, w = self.frame(n)
        pitch, block = self.number(n, 0.2, 0.34), self.number(n, 0.08, 0.14)
        slope, reach = self.number(n, -0.4, 0.6), self.number(n, 0.1, 1.0)
        tubes = []
        for i in range(-4, 5):
            c = i * pitch
            tubes.append(self.tube(u, w, (c, -block * 0.6), (c, block * 0.6), block, block, 0.1))
            for side in (-1, 1):
                tubes.append(self.tube(u, w, (c, side * block), (c + slope * reach, side * (block + reach)), 0.03, 0.025))
        return self.paths(n, tubes, self.flesh(u, w, (-2.0, 0.0), (2.0, 0.0), self.number(n, 0.6, 1.2)))

    def ball(self, n):
        """Hip or shoulder: a ball on a neck, a bowl beside it, a broad flat bone beyond."""
        u, w = self.frame(n)
        r = self.number(n, 0.14, 0.22)
        tubes = [self.tube(u, w, (0.0, 0.0), (0.01, 0.0), r, r),
                 self.tube(u, w, (0.0, 0.0), (0.3, 0.25), r * 0.6, r * 0.7),
                 self.tube(u, w, (0.3, 0.28), (1.9, self.number(n, 0.2, 0.7)), r * 0.8, r * 0.6)]
        for i in range(5):
            a = math.pi * (0.8 + 0.2 * i)
            b = a + math.pi * 0.2
            radius = r * 1.25
            tubes.append(self.tube(u, w, (radius * math.cos(a), radius * math.sin(a)),
                                   (radius * math.cos(b), radius * math.sin(b)), 0.03, 0.03))
        tubes.append(self.tube(u, w, (-0.3, -0.2), (self.number(n, -1.2, -0.7), self.number(n, -0.9, 0.1)), r * 0.7, r * 1.4))
        return self.paths(n, tubes, self.flesh(u, w, (-0.8, -0.4), (1.8, 0.4), self.number(n, 0.5, 0.9)))

    def shaft_cross(self, n):
        """A few long bones at any angle, as in a lower leg, a forearm, or limbs laid over each other."""
        u, w = self.frame(n)
        tubes, flesh = [], self.flesh(u, w, (-2.0, 0.0), (2.0, 0.0), self.number(n, 0.25, 0.5))
        for _ in range(3):
            tilt, side = self.number(n, -0.25, 0.25), self.number(n, -0.2, 0.2)
            r = self.number(n, 0.03, 0.13)
            tubes.append(self.tube(u, w, (self.number(n, -2.0, -0.4), side - tilt), (self.number(n, 0.4, 2.0), side + tilt), r, r, 0.4))
        return self.paths(n, tubes, flesh)
