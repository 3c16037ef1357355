"""Pictures that are no radiograph: what someone may open by mistake. Made on the device, a batch at once."""
import math

import torch
import torch.nn.functional as F

from drawing import line_mask
from picture import blur


class NonRadiographs:
    """Draws pictures [n, 1, s, s], 0…1, of eight kinds, with the random numbers of a film maker."""

    def __init__(self, maker):
        self.maker = maker

    def __call__(self, n):
        kinds = [self.gradient, self.leaves, self.clouds, self.page, self.drawing, self.pattern, self.noise, self.blank]
        each = -(-n // len(kinds))
        out = torch.cat([kind(each) for kind in kinds])
        out = out[torch.randperm(len(out), device=out.device)[:n]]
        low, high = out.amin((1, 2, 3), keepdim=True), out.amax((1, 2, 3), keepdim=True)
        return (out - low) / (high - low + 1e-3)

    def gradient(self, n):
        m = self.maker
        turn, bend = m.uniform(n, 0, 2 * math.pi), m.uniform(n, -1, 1)
        v = torch.cos(turn) * m.x + torch.sin(turn) * m.y + bend * (m.x ** 2 + m.y ** 2)
        return v + m.strength(n, 0.5, 0, 0.1) * torch.randn_like(v)

    def leaves(self, n, count=40):
        """Overlapping discs and boxes with shading and grain: edges and areas as photographs have them."""
        m = self.maker
        v = m.uniform(n, 0, 1).expand(n, 1, m.size, m.size).clone()
        for i in range(count):
            x, y = m.x - m.uniform(n, -1.1, 1.1), m.y - m.uniform(n, -1.1, 1.1)
            turn = m.uniform(n, 0, math.pi)
            u, w = x * torch.cos(turn) + y * torch.sin(turn), y * torch.cos(turn) - x * torch.sin(turn)
            size = 0.9 * (1 - i / count) * m.uniform(n, 0.3, 1.0) + 0.03
            aspect = m.uniform(n, 0.3, 1.0)
            box = torch.maximum(u.abs(), (w / aspect).abs())
            disc = (u ** 2 + (w / aspect) ** 2).sqrt()
            inside = torch.sigmoid((size - torch.where(m.chance(n, 0.5), box, disc)) / 0.006)
            shade = m.uniform(n, 0, 1) + m.uniform(n, -0.4, 0.4) * u
            v = v + inside * (shade - v)
        return v + m.strength(n, 0.7, 0, 0.06) * torch.randn_like(v)

    def clouds(self, n):
        m, v = self.maker, 0
        fall = m.uniform(n, 0.35, 0.8)
        for octave in range(7):
            side = 2 ** (octave + 1)
            grain = torch.randn(n, 1, side, side, device=m.device)
            v = v + fall ** octave * F.interpolate(grain, size=(m.size, m.size), mode="bilinear", align_corners=False)
        return v

    def page(self, n):
        """Rows of small letters on paper."""
        m, s = self.maker, self.maker.size
        lines = 16
        pick = torch.randint(len(m.atlas), (n, lines * 4), device=m.device)
        tiles = F.avg_pool2d(m.atlas, 2)[:, 0, :16, :]
        rows = F.interpolate(tiles[pick].reshape(n * lines * 4, 1, 16, 32), size=(s // lines, s // 4))
        ink = rows.reshape(n, lines, 4, s // lines, s // 4).permute(0, 1, 3, 2, 4).reshape(n, 1, s, s)
        margin = ((m.x.abs() < m.uniform(n, 0.6, 1)) & (m.y.abs() < m.uniform(n, 0.6, 1))).float()
        return 1 - ink * margin * m.uniform(n, 0.4, 1)

    def drawing(self, n):
        m, v = self.maker, 0
        for _ in range(12):
            v = torch.maximum(v, line_mask(m, n, (0.003, 0.02), (0.2, 1.6))) if torch.is_tensor(v) else line_mask(
                m, n, (0.003, 0.02), (0.2, 1.6))
        return torch.where(m.chance(n, 0.5), 1 - v, v)

    def pattern(self, n):
        m = self.maker
        turn, rate = m.uniform(n, 0, math.pi), m.uniform(n, 4, 60)
        u = torch.sin((m.x * torch.cos(turn) + m.y * torch.sin(turn)) * rate)
        w = torch.sin((m.y * torch.cos(turn) - m.x * torch.sin(turn)) * rate)
        v = torch.where(m.chance(n, 0.5), u * w, u)
        return torch.where(m.chance(n, 0.5), (v > 0).float(), v * 0.5 + 0.5)

    def noise(self, n):
        white = torch.randn(n, 1, self.maker.size, self.maker.size, device=self.maker.device)
        return torch.where(self.maker.chance(n, 0.5), white, 3 * blur(white, 2.0))

    def blank(self, n):
        m = self.maker
        v = m.uniform(n, 0, 1).expand(n, 1, m.size, m.size).clone()
        return m.write(v, 0.5, anywhere=1.0)
