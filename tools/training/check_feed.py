"""Asks a feed for a few frames of each kind, as training will, and says how fast they come. Fails loudly.

    python3 check_feed.py --device gpu --films 1024 FEED
"""
import argparse
import sys
import time

import torch

from evaluate import FRAMING_OF_MODEL, VIEWS_OF_MODEL
from feed import Feed, FeedError


def main():
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("feed", nargs="+")
    options.add_argument("--device", default="gpu")
    options.add_argument("--films", type=int, default=1024)
    options.add_argument("--batch", type=int, default=128)
    options.add_argument("--models", default="lateral,ap,view")
    options.add_argument("--patience", type=float, default=30, help="seconds to wait for a frame")
    a = options.parse_args()
    for name in a.models.split(","):
        began = time.time()
        with Feed(a.feed, device=a.device, views=VIEWS_OF_MODEL[name], framing=FRAMING_OF_MODEL[name], size=256,
                  batch=a.batch, first_seed=1_000_000, step=1, count=a.films) as feed:
            frame = feed.next(timeout=a.patience)
            first, films, views = time.time() - began, frame.films, {frame.view}
            again = time.time()
            while True:
                following = feed.next(timeout=a.patience)
                if following is None:
                    break
                frame, films = following, films + following.films
                views.add(frame.view)
        rate = (films - a.batch) / max(1e-6, time.time() - again)
        paths = frame.arrays["paths"].float()
        lit = [f"{float((paths[:, i] > 0.5).float().mean()):.1%}" for i in range(5)]
        print(f"{name}: {films} films, first after {first:.1f} s, then {rate:.0f} films/s, views {sorted(views)}, "
              f"{len(frame.landmarks)} landmarks; share of pixels with soft, fat, bone, metal, cast: {', '.join(lit)}", flush=True)
        if not bool(torch.isfinite(paths).all()) or float((paths[:, 2] > 0.8).float().mean()) < 0.005:
            raise FeedError("The films are empty or not finite.")


if __name__ == "__main__":
    try:
        main()
    except FeedError as error:
        sys.exit(f"The feed is not fit for training. {error}")
