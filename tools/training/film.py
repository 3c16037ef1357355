"""Material paths to films as a reader meets them, on the device, a whole batch at once.

Exposure (spectrum, scatter, noise, blur), processing (windowing, local contrast, tone), what is laid over or cut off
(collimation, film edge, text, lines), what copies do to it (low resolution, compression), then the recipe
`standardised-crop` version 1, by which every film reaches a network. All shapes are fixed, so that no kernel is
tuned twice.
"""
import math

import torch
import torch.nn.functional as F

import markers
from attenuation import Spectrum
from drawing import line_mask, rectangle_distance
from picture import blur, jpeg, quantiles

FILL = 0.0


class FilmMaker:
    """Makes standardised films from paths. Random numbers come from torch's generator of the device.

    A plain maker takes the middle of every range and leaves out what happens to some films only: what training would be
    without randomised pictures.
    """

    def __init__(self, device, size=256, plain=False):
        self.device, self.size, self.plain = torch.device(device), size, plain
        self.spectrum = Spectrum(self.device)
        self.atlas = markers.atlas(160).to(self.device)
        axis = (torch.arange(size, device=self.device, dtype=torch.float32) + 0.5) / size * 2 - 1
        self.x = axis.view(1, 1, 1, size)
        self.y = axis.view(1, 1, size, 1)

    def uniform(self, n, lo, hi):
        if self.plain:
            return torch.full((n, 1, 1, 1), (lo + hi) / 2, device=self.device)
        return torch.rand(n, 1, 1, 1, device=self.device) * (hi - lo) + lo

    def chance(self, n, p):
        if self.plain:
            return torch.zeros(n, 1, 1, 1, dtype=torch.bool, device=self.device)
        return torch.rand(n, 1, 1, 1, device=self.device) < p

    def strength(self, n, p, lo, hi):
        """A number in lo…hi for a share p of the films, 0 for the rest."""
        return self.uniform(n, lo, hi) * self.chance(n, p)

    def __call__(self, paths, on_film, keep=None):
        """Standardised films [n, 1, s, s] and the exposed field [n, 1, s, s], 0…1.

        `paths` [n, 5, s, s] in mm; `on_film` [n, 1, s, s] is 1 where the film is (0 beyond its edge); `keep`
        [n, p, 2] are points in pixels that collimation must not hide (NaN: none).
        """
        field = self.collimation(len(paths), keep)
        v = self.process(self.expose(paths), on_film)
        return self.finish(v, on_film, field)

    def finish(self, v, on_film, field):
        """From processed grey values 0…1 (bone bright) to standardised films."""
        v, wrong = self.overlay(v, field)
        v = self.copy(v)
        return self.standardise(v, on_film, field, wrong), field * on_film

    # ---- exposure

    def expose(self, paths):
        """Log exposure [n, 1, s, s], bone bright."""
        n, s = len(paths), self.size
        paths = torch.cat([paths[:, 0:2], paths[:, 2:3] * self.bone_texture(n), self.metal(paths[:, 3:4]),
                           paths[:, 4:5] * self.cast_mesh(n)], 1)
        weights, mu = self.spectrum.sample(n)
        depth = torch.bmm(mu, paths.reshape(n, 5, s * s))
        primary = (torch.exp(-depth) * weights.unsqueeze(2)).sum(1).reshape(n, 1, s, s)
        thick = (paths[:, 0:3].sum(1, keepdim=True) / 80).clamp(max=1.5)
        scatter = self.uniform(n, 0.0, 0.8) * blur(primary * thick, 24)
        heel = 1 + self.uniform(n, -0.2, 0.2) * self.x + self.uniform(n, -0.2, 0.2) * self.y
        signal = blur((primary + scatter) * heel, self.uniform(n, 0.0, 1.6))
        quanta = torch.exp(self.uniform(n, math.log(1000.0), math.log(60000.0)))
        white = torch.randn_like(signal)
        noise = torch.where(self.chance(n, 0.5), white, 2.2 * blur(white, 0.8))
        signal = signal + noise * torch.sqrt(signal.clamp(min=1e-4) / quanta)
        return -torch.log(signal.clamp(min=2e-3))

    def bone_texture(self, n):
        """A factor about 1: coarse and fine unevenness of trabecular bone."""
        s = self.size
        fine = torch.randn(n, 1, s // 2, s // 2, device=self.device)
        coarse = torch.randn(n, 1, s // 8, s // 8, device=self.device)
        up = [F.interpolate(t, size=(s, s), mode="bilinear", align_corners=False) for t in (fine, coarse)]
        return (1 + self.strength(n, 0.6, 0, 0.18) * up[0] + self.strength(n, 0.5, 0, 0.15) * up[1]).clamp(0.3, 2)

    def metal(self, metal):
        """Adds wires, pins and plates to what the feed's films already hold."""
        n = len(metal)
        for p, width, depth in ((0.05, (0.006, 0.014), (0.6, 2.0)), (0.04, (0.02, 0.05), (1.5, 3.5)),
                                (0.04, (0.004, 0.009), (0.3, 1.2))):
            metal = metal + line_mask(self, n, width, (0.15, 1.4)) * self.strength(n, p, *depth)
        return metal

    def cast_mesh(self, n):
        turn = self.uniform(n, 0, math.pi)
        u = self.x * torch.cos(turn) + self.y * torch.sin(turn)
        w = self.y * torch.cos(turn) - self.x * torch.sin(turn)
        rate = self.uniform(n, 60, 200)
        return 1 + self.strength(n, 0.6, 0.02, 0.15) * torch.sin(u * rate) * torch.sin(w * rate)

    # ---- processing

    def process(self, p, on_film):
        """Windowing, local contrast, tone: grey values 0…1, bone bright."""
        n = len(p)
        low = self.strength(n, 0.7, 0.0, 0.3)
        high = 1 - self.uniform(n, 0.0, 0.02)
        lo, hi = quantiles(p, on_film, low, high)
        v = (p - lo) / (hi - lo + 0.05)
        v = v + self.strength(n, 0.55, 0, 2.2) * (v - blur(v, 4))
        v = v + self.strength(n, 0.5, 0, 1.2) * (v - blur(v, 14))
        v = v - self.strength(n, 0.5, 0, 0.9) * (blur(v, 30) - 0.45)
        mean = blur(v, 18)
        deviation = blur((v - mean) ** 2, 18).clamp(min=1e-4).sqrt()
        local = 0.45 + 0.22 * (v - mean) / (deviation + self.uniform(n, 0.04, 0.15))
        v = torch.where(self.chance(n, 0.12), local, v)
        sigmoid = torch.sigmoid((v - self.uniform(n, 0.3, 0.7)) * self.uniform(n, 3, 6.5))
        power = v.clamp(0, 1.3) ** torch.exp(self.uniform(n, -0.7, 0.7))
        kind = self.uniform(n, 0, 1)
        v = torch.where(kind < 0.4, sigmoid, torch.where(kind < 0.85, power, v)).clamp(0, 1)
        return ((v - self.uniform(n, -0.05, 0.12)) / self.uniform(n, 0.75, 1.1)).clamp(0, 1)

    # ---- what is cut off and laid over

    def collimation(self, n, keep):
        """The exposed field [n, 1, s, s], 0…1: a turned rectangle, a circle, a straight cut, or all of it."""
        if self.plain:
            return torch.ones(n, 1, self.size, self.size, device=self.device)
        rectangle = rectangle_distance(self, n)
        radius = ((self.x - self.uniform(n, -0.15, 0.15)) ** 2 + (self.y - self.uniform(n, -0.15, 0.15)) ** 2).sqrt()
        circle = radius - self.uniform(n, 0.75, 1.15)
        turn = self.uniform(n, 0, 2 * math.pi)
        cut = self.x * torch.cos(turn) + self.y * torch.sin(turn) - self.uniform(n, 0.45, 1.1)
        kind = self.uniform(n, 0, 1)
        nothing = torch.full_like(circle, -1.0)
        distance = torch.where(kind < 0.4, rectangle, torch.where(kind < 0.47, circle,
                               torch.where(kind < 0.58, cut, nothing)))
        field = torch.sigmoid(-distance / self.uniform(n, 0.002, 0.02))
        if keep is not None:
            hidden = torch.isfinite(keep).all(2) & (sample_at(field, keep) < 0.5)
            field = torch.where(hidden.any(1).view(n, 1, 1, 1), torch.ones_like(field), field)
        return field

    def overlay(self, v, field):
        """Lines, vignette, border, polarity, text. Also says for which films the polarity step will be wrong."""
        n = len(v)
        for p, width in ((0.10, (0.004, 0.012)), (0.08, (0.002, 0.006))):
            on = line_mask(self, n, width, (0.15, 1.2)) * self.chance(n, p)
            shade = torch.where(self.chance(n, 0.8), self.uniform(n, 0.85, 1.0), self.uniform(n, 0.0, 0.2))
            v = v + on * (shade - v)
        away = (self.x - self.uniform(n, -0.3, 0.3)) ** 2 + (self.y - self.uniform(n, -0.3, 0.3)) ** 2
        v = v * (1 - self.strength(n, 0.25, 0, 0.6) * away.clamp(0, 1.5) / 1.5)
        slope = self.uniform(n, 0, 2 * math.pi)
        v = v + self.strength(n, 0.2, 0, 0.25) * (torch.cos(slope) * self.x + torch.sin(slope) * self.y)
        kind = self.uniform(n, 0, 1)
        border = torch.where(kind < 0.7, self.uniform(n, 0, 0.08), torch.where(
            kind < 0.88, self.uniform(n, 0.9, 1.0), self.uniform(n, 0.1, 0.9)))
        wrong = self.chance(n, 0.06)
        v = torch.where(wrong, 1 - v, v)
        v = (v * field + border * (1 - field)).clamp(0, 1)
        for i in range(4):
            v = self.write(v, 0.25, anywhere=0.2, turned=i == 3)
        return v, wrong

    def write(self, v, p, anywhere, turned=False):
        """One picture from the atlas on a share p of the films, mostly near a side."""
        n, s = len(v), self.size
        scale = self.uniform(n, 0.06, 0.3).view(n)
        angle = (torch.rand(n, device=self.device) - 0.5) * (2 * math.pi if turned else 0.3)
        at = torch.rand(n, 2, device=self.device) * 1.8 - 0.9
        side = torch.where(torch.rand(n, 2, device=self.device) < 0.5, -0.85, 0.85)
        which = torch.rand(n, 1, device=self.device) < 0.5
        near = torch.cat([which, ~which], 1) & (torch.rand(n, 1, device=self.device) > anywhere)
        at = torch.where(near, side, at)
        c, d = torch.cos(angle) / scale, torch.sin(angle) / scale
        theta = torch.stack([torch.stack([c, d, -(c * at[:, 0] + d * at[:, 1])], 1),
                             torch.stack([-d, c, d * at[:, 0] - c * at[:, 1]], 1)], 1)
        grid = F.affine_grid(theta, (n, 1, s, s), align_corners=False)
        pick = torch.randint(len(self.atlas), (n,), device=self.device)
        ink = F.grid_sample(self.atlas[pick], grid, align_corners=False) * self.chance(n, p)
        shade = torch.where(self.chance(n, 0.8), self.uniform(n, 0.8, 1.0), self.uniform(n, 0.0, 0.4))
        return v + ink * (shade - v)

    def copy(self, v):
        """Low resolution, compression, eight bits."""
        n, s = len(v), self.size
        small = F.interpolate(F.avg_pool2d(v, 2), size=(s, s), mode="bilinear", align_corners=False)
        v = torch.where(self.chance(n, 0.12), small, v)
        v = torch.where(self.chance(n, 0.3), jpeg(v, self.uniform(n, 20, 95)), v)
        return torch.round(v.clamp(0, 1) * 255) / 255

    # ---- the recipe

    def standardise(self, v, on_film, field, wrong):
        """`standardised-crop` version 1: window over the exposed field, polarity, fill, mean 0 and SD about 1.

        The exposed field is not always found, and the window of a whole film is not the window of a crop: both are
        mimicked by moving the ends of the window. Films in `wrong` stay in reversed polarity.
        """
        n = len(v)
        found = torch.where(self.chance(n, 0.85), field, torch.ones_like(field)) * on_film
        lo, hi = quantiles(v, (found > 0.5).float(), self.uniform(n, 0.0, 0.01), 1 - self.uniform(n, 0.0, 0.01))
        span = (hi - lo).clamp(min=0.02)
        lo, hi = lo - self.strength(n, 0.4, -0.03, 0.15) * span, hi + self.strength(n, 0.4, -0.03, 0.3) * span
        v = ((v - lo) / (hi - lo).clamp(min=0.02)).clamp(0, 1)
        v = torch.where(on_film > 0.5, v, torch.full_like(v, FILL))
        return standard(v)


def standard(v):
    """Mean 0 and standard deviation about 1 over each film."""
    deviation, mean = torch.std_mean(v, (1, 2, 3), unbiased=False, keepdim=True)
    return (v - mean) / (deviation + 0.03)


def sample_at(field, points):
    """Values of `field` [n, 1, s, s] at points [n, p, 2] in pixels; 0 outside."""
    grid = torch.nan_to_num(points, nan=-1e4) / field.shape[3] * 2 - 1
    return F.grid_sample(field, grid.unsqueeze(1), align_corners=False, padding_mode="zeros")[:, 0, 0]
