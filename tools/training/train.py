"""Trains the networks on films made as they are needed, and leaves model folders.

    python3 train.py --feed FEED --out OUT --minutes 9                  the three models
    python3 train.py --feed FEED --out OUT --models lateral --gpus 1
    python3 train.py --smoke --out OUT                                  a tiny run on the processor, no feed needed

One process a model. Each stops training `--reserve` seconds before its time is up, then validates and exports.
A termination signal ends training at once and still leaves what there is.
"""
import argparse
import os
import signal
import subprocess
import sys
import time

from trainer import Trainer

HERE = os.path.dirname(os.path.abspath(__file__))
MODELS = ("lateral", "ap", "view")


def parse():
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--feed", nargs="+", help="the feed program (and first arguments, if any)")
    options.add_argument("--out", required=True, help="folder for checkpoints, logs and model folders")
    options.add_argument("--models", default="lateral,ap,view")
    options.add_argument("--minutes", type=float, default=9.0, help="wall clock for everything, validation included")
    options.add_argument("--reserve", type=float, default=45.0, help="seconds kept for validation and export")
    options.add_argument("--resume", help="folder with <model>.pt checkpoints to go on from, where there are any")
    options.add_argument("--gpus", type=int, default=1, help="with 2: lateral on the first, the others on the second")
    options.add_argument("--device", choices=("gpu", "cpu"), default="gpu")
    options.add_argument("--batch", type=int, default=128)
    options.add_argument("--pool", type=int, default=2048, help="films held on the device")
    options.add_argument("--least-reuse", type=float, default=2.0, help="how often a film is drawn before it makes room for new ones")
    options.add_argument("--max-reuse", type=float, default=6.0, help="how often a film is drawn before the feed is waited for")
    options.add_argument("--rate", type=float, default=2e-3, help="peak learning rate; a resumed run takes half")
    options.add_argument("--validation", type=int, default=2048, help="validation films a model")
    options.add_argument("--scale", type=float, default=1.0, help="width of the networks, for trials")
    options.add_argument("--without", choices=("randomisation", "structure", "bending"),
                         help="an ablation: plain pictures, bones without shell and marrow, or shapes as the phantom has "
                              "them; validated on whole films as ever")
    options.add_argument("--compile", action="store_true", help="compile the networks (slow start)")
    options.add_argument("--smoke", action="store_true", help="tiny sizes on the processor; the stand-in feed unless --feed")
    options.add_argument("--child", help=argparse.SUPPRESS)
    a = options.parse_args()
    if a.smoke:
        a.device, a.batch, a.pool, a.validation, a.scale, a.max_reuse = "cpu", 8, 64, 32, 0.25, 1e9
        a.feed = a.feed or [sys.executable, os.path.join(HERE, "smoke_feed.py")]
    a.reserve = min(a.reserve, 0.4 * a.minutes * 60)
    if not a.feed:
        options.error("--feed is needed (or --smoke)")
    return a


def main():
    a = parse()
    os.makedirs(a.out, exist_ok=True)
    if a.child:
        trainer = Trainer(a.child, a)
        signal.signal(signal.SIGTERM, lambda *_: trainer.hurry())
        trainer.run()
        return 0
    models = a.models.split(",")
    unknown = set(models) - set(MODELS)
    if unknown:
        print(f"There is no model {', '.join(sorted(unknown))}; the models are {', '.join(MODELS)}.", file=sys.stderr)
        return 2
    children = {}
    for name in models:
        environment = dict(os.environ, PYTHONUNBUFFERED="1")
        if a.device == "gpu" and a.gpus > 1:
            environment["CUDA_VISIBLE_DEVICES"] = "0" if name == "lateral" else "1"
        command = [sys.executable, os.path.abspath(__file__)] + sys.argv[1:] + ["--child", name]
        children[name] = subprocess.Popen(command, env=environment)
    signal.signal(signal.SIGTERM, lambda *_: [c.terminate() for c in children.values()])
    codes = {name: child.wait() for name, child in children.items()}
    for name in models:
        path = os.path.join(a.out, name, "table.txt")
        if os.path.exists(path):
            with open(path, encoding="utf-8") as file:
                print(file.read())
    for name, code in codes.items():
        if code:
            print(f"{name} ended with exit code {code}: see {os.path.join(a.out, name, 'train.log')}", file=sys.stderr)
    return 1 if any(codes.values()) else 0


if __name__ == "__main__":
    sys.exit(main())
