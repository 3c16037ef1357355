"""Films held on the device, from which training batches are drawn.

Frames of the feed have one view each; a batch needs many kinds. The pool mixes them, and lets the trainer draw a film
more than once, with a fresh turn, exposure and processing, when the feed is slower than the trainer.
"""
import math

import torch
import torch.nn.functional as F

from feed import Frame
from film import sample_at
from network import VIEW_CLASSES

CLASS_OF_VIEW = {"lateral": "lateral", "ap": "ap", "oblique": "oblique", "near-miss": "not-an-elbow"}
PER_FILM = ("locator", "viewError", "pixelMm", "unitW", "ageMonths", "injured", "seeds")
PER_LANDMARK = ("landmarks", "tangents", "visible")


class Pool:
    """A ring of films; the newest frame overwrites the oldest."""

    def __init__(self, capacity, device, landmarks=None):
        self.capacity, self.device = capacity, torch.device(device)
        self.names = landmarks
        self.store, self.received, self.drawn, self.at = {}, 0, 0, 0

    @property
    def count(self):
        return min(self.received, self.capacity)

    def add(self, frame):
        """Copies a frame in; landmark names must stay the same in every frame of a landmark pool."""
        arrays = dict(frame.arrays)
        if self.names is None:
            for name in PER_LANDMARK:
                arrays.pop(name, None)
        elif frame.landmarks != self.names:
            raise ValueError(f"The feed sent {len(frame.landmarks)} landmarks of view {frame.view}, other than before.")
        arrays["view_class"] = torch.full((frame.films,), VIEW_CLASSES.index(CLASS_OF_VIEW[frame.view]),
                                          device=arrays["seeds"].device)
        index = (torch.arange(frame.films) + self.at) % self.capacity
        for name, value in arrays.items():
            if name not in self.store:
                self.store[name] = torch.zeros((self.capacity,) + tuple(value.shape[1:]), dtype=value.dtype,
                                               device=self.device)
            begin, end = self.at, self.at + frame.films
            if end <= self.capacity:
                # Pinned memory is not handed out again before its copy is done, so nothing need wait here.
                self.store[name][begin:end].copy_(value, non_blocking=True)
            else:
                self.store[name][index.to(self.device)] = value.to(self.device)
        self.at = (self.at + frame.films) % self.capacity
        self.received += frame.films

    def draw(self, n, class_weights=None):
        """Raw arrays of n random films. `class_weights` maps view classes to their share."""
        if class_weights is None:
            index = torch.randint(self.count, (n,), device=self.device)
        else:
            classes = self.store["view_class"][:self.count]
            weight = torch.zeros(len(classes), device=self.device)
            for name, share in class_weights.items():
                member = classes == VIEW_CLASSES.index(name)
                weight = weight + member * (share / member.sum().clamp(min=1))
            index = torch.multinomial(weight, n, replacement=True)
        self.drawn += n
        return {name: value[index] for name, value in self.store.items()}

    def all_of(self, frame):
        """Raw arrays of one frame on the device, in order (for validation)."""
        raw = {name: value.to(self.device) for name, value in frame.arrays.items()}
        raw["view_class"] = torch.full((frame.films,), VIEW_CLASSES.index(CLASS_OF_VIEW[frame.view]), device=self.device)
        return raw


def drawn_frame(paths):
    """A frame of films that show no elbow and were drawn on the device, as if the feed had sent near misses."""
    n, size, device = len(paths), paths.shape[3], paths.device

    def full(*shape, value=float("nan"), dtype=torch.float32):
        return torch.full((n,) + shape, value, dtype=dtype, device=device)

    return Frame("near-miss", [], {
        "paths": paths.half(), "labels": full(size, size, value=0, dtype=torch.uint8), "locator": full(4, 2),
        "viewError": full(), "pixelMm": full(), "unitW": full(), "ageMonths": full(),
        "injured": full(value=0, dtype=torch.uint8), "seeds": full(value=0, dtype=torch.int64)})


class Placement:
    """A small turn, scaling, shift and elastic warp for each film of a batch; moves images and points alike.

    The warp makes bones of shapes that the phantom does not know; `bent` says which films have it.
    """

    def __init__(self, n, size, device, turn=5.0, shift=0.03, elastic=4.0, share=0.7):
        self.size = size

        def signed(*shape):
            return torch.rand(*shape, device=device) * 2 - 1

        on = (torch.rand(n, device=device) < share).float()
        angle = signed(n) * math.radians(turn) * on
        factor = torch.exp((signed(n) * 0.05 - 0.035) * on)  # mostly a little closer, which shows no border
        c, s = torch.cos(angle) * factor, torch.sin(angle) * factor
        self.scale = factor
        self.linear = torch.stack([torch.stack([c, -s], 1), torch.stack([s, c], 1)], 1)
        self.offset = signed(n, 2) * shift * on.unsqueeze(1)
        amount = torch.rand(n, 1, 1, 1, device=device) * elastic
        bend = amount * (torch.rand(n, 1, 1, 1, device=device) < 0.4) * 2 / size
        self.bent = bend.flatten() > 0
        self.field = F.interpolate(torch.randn(n, 2, 5, 5, device=device), size=(size, size), mode="bicubic",
                                   align_corners=True) * bend
        axis = (torch.arange(size, device=device, dtype=torch.float32) + 0.5) / size * 2 - 1
        y, x = torch.meshgrid(axis, axis, indexing="ij")
        plain = torch.stack([x, y], 2).reshape(1, size * size, 2)
        grid = torch.matmul(plain, self.linear.transpose(1, 2)).reshape(n, size, size, 2)
        self.grid = grid + self.offset.view(n, 1, 1, 2) + self.field.permute(0, 2, 3, 1)
        self.inside = (self.grid.abs().amax(3) <= 1).float().unsqueeze(1)

    def image(self, image, mode="bilinear"):
        return F.grid_sample(image, self.grid, mode=mode, padding_mode="border", align_corners=False)

    def points(self, points):
        """Where points [n, k, 2], in pixels, come to lie; NaN stays NaN."""
        inverse = torch.linalg.inv(self.linear).transpose(1, 2)
        target = points / self.size * 2 - 1 - self.offset.unsqueeze(1)
        at = torch.matmul(target, inverse)
        for _ in range(5):
            where = torch.nan_to_num(at).clamp(-1, 1).unsqueeze(1)
            warp = F.grid_sample(self.field, where, align_corners=False, padding_mode="border")[:, :, 0].transpose(1, 2)
            at = torch.matmul(target - warp, inverse)
        return (at + 1) / 2 * self.size

    def directions(self, points, tangents):
        moved = self.points(points + tangents) - self.points(points - tangents)
        return moved / moved.norm(dim=2, keepdim=True).clamp(min=1e-6)


def film_edge(n, size, device, share=0.25):
    """1 on the film, 0 beyond a straight edge in any direction, for a share of the films."""
    axis = (torch.arange(size, device=device, dtype=torch.float32) + 0.5) / size * 2 - 1
    turn = torch.rand(n, 1, 1, 1, device=device) * 2 * math.pi
    away = torch.cos(turn) * axis.view(1, 1, 1, -1) + torch.sin(turn) * axis.view(1, 1, -1, 1)
    limit = torch.rand(n, 1, 1, 1, device=device) * 0.6 + 0.5
    limit = torch.where(torch.rand(n, 1, 1, 1, device=device) < share, limit, torch.full_like(limit, 9.0))
    return (away < limit).float()


def letterbox(n, size, device, keep, share=0.7):
    """1 on the film, 0 in the bars that make it square; no bars where they would hide the points `keep` [n, p, 2]."""
    axis = (torch.arange(size, device=device, dtype=torch.float32) + 0.5) / size * 2 - 1
    half = 1 - torch.rand(n, 1, 1, 1, device=device) * 0.4
    upright = torch.rand(n, 1, 1, 1, device=device) < 0.6
    away = torch.where(upright, axis.view(1, 1, 1, -1).expand(1, 1, size, size), axis.view(1, 1, -1, 1).expand(1, 1, size, size))
    bars = (away.abs() < half).float()
    hidden = (torch.isfinite(keep).all(2) & (sample_at(bars, keep) < 0.5)).any(1)
    plain = (torch.rand(n, device=device) > share) | hidden
    return torch.where(plain.view(n, 1, 1, 1), torch.ones_like(bars), bars)


def make_batch(raw, maker, view_model, move=True, elastic=4.0):
    """From raw arrays to a batch for the network: films and everything the losses and the evaluation ask for."""
    n, size = raw["paths"].shape[0], raw["paths"].shape[3]
    device = raw["paths"].device
    place = Placement(n, size, device, share=0.7 if move else 0.0, elastic=elastic if move else 0.0)
    paths = place.image(raw["paths"].float())
    bits = torch.tensor([1, 2, 4], device=device, dtype=torch.uint8).view(1, 3, 1, 1)
    labels = place.image(((raw["labels"].unsqueeze(1) & bits) > 0).float(), "nearest")
    locator = place.points(raw["locator"])
    joint = locator[:, 1:2]
    on_film = place.inside * (letterbox(n, size, device, joint) if view_model else film_edge(n, size, device))
    film, field = maker(paths, on_film, keep=joint if view_model else None)
    # A bent elbow looks turned or true by its bend, and teaches nothing about the view.
    batch = {"film": film, "size": size, "labels": labels * field, "field": field,
             "view_error": torch.where(place.bent, math.nan, raw["viewError"].float()), "view_class": raw["view_class"], "locator": locator,
             "locator_visible": shown(locator, field),
             "pixel_mm": raw["pixelMm"] * place.scale, "unit_w": raw["unitW"], "age_months": raw["ageMonths"],
             "injured": raw["injured"] > 0}
    if not view_model:
        batch["landmarks"] = place.points(raw["landmarks"])
        batch["tangents"] = place.directions(raw["landmarks"], raw["tangents"])
        batch["visible"] = (raw["visible"] > 0) & shown(batch["landmarks"], field)
    return batch


def shown(points, field):
    """Whether points [n, k, 2] exist and lie in the exposed field."""
    size = field.shape[3]
    inside = torch.isfinite(points).all(2) & (points >= 0).all(2) & (points <= size).all(2)
    return inside & (sample_at(field, points) > 0.5)


def with_nonradiographs(batch, maker, pictures, count):
    """Replaces the last `count` films of a view batch by pictures that are no radiograph."""
    n = len(batch["film"])
    ones = torch.ones(count, 1, maker.size, maker.size, device=batch["film"].device)
    film, _ = maker.finish(pictures(count), ones, maker.collimation(count, None) if count else ones)
    batch["film"] = torch.cat([batch["film"][:n - count], film])
    batch["view_class"] = batch["view_class"].clone()
    batch["view_class"][n - count:] = VIEW_CLASSES.index("not-a-radiograph")
    return batch
