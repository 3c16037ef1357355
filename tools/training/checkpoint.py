"""Checkpoints small enough to travel: half-precision weights, averaged weights and second moments.

The first moments are left out: they rebuild within a few steps. Seeds go on where they stopped.
"""
import os

import torch


def half(state):
    return {k: v.detach().cpu().half() if v.is_floating_point() else v.detach().cpu() for k, v in state.items()}


def save(path, trainer):
    """Writes through a temporary file, so that a killed run leaves the previous checkpoint whole."""
    moments = []
    for p in trainer.net.parameters():
        state = trainer.optimiser.state.get(p)
        moments.append(state["exp_avg_sq"].sqrt().cpu().half() if state else None)
    torch.save({"model": trainer.name, "landmarks": trainer.landmarks, "scale": trainer.scale, "steps": trainer.steps,
                "films": trainer.films, "seconds": trainer.seconds, "next_seed": trainer.next_seed(),
                "net": half(trainer.net.state_dict()), "ema": half(trainer.ema.state_dict()), "moments": moments},
               path + ".part")
    os.replace(path + ".part", path)


def load(path):
    return torch.load(path, map_location="cpu")


@torch.no_grad()
def restore_moments(optimiser, parameters, moments, steps):
    """Puts second moments back; the step count keeps bias correction from starting anew."""
    for p, root in zip(parameters, moments):
        if root is not None:
            square = root.to(p.device).float() ** 2
            # A half cannot hold the smallest moments; zero there would make the next step huge.
            second = torch.empty_like(p).copy_(square.clamp(min=float(square.mean()) * 1e-4 + 1e-16))
            optimiser.state[p] = {"step": torch.tensor(float(steps), device=p.device), "exp_avg": torch.zeros_like(p),
                                  "exp_avg_sq": second.detach()}
