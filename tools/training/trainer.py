"""One model's training, from the feed's first frame to its model folder."""
import csv
import json
import math
import os
import time

import torch

import checkpoint
import export
from evaluate import FRAMING_OF_MODEL, VIEWS_OF_MODEL, build, evaluate, table
from feed import Feed, FeedError
from film import FilmMaker
from loss import landmark_loss, landmark_weights, view_loss
from network import cost
from nonradiograph import NonRadiographs
from otheranatomy import OtherAnatomy
from pool import Pool, drawn_frame, make_batch, with_nonradiographs

FIRST_SEED = {"lateral": 1_000_000, "ap": 1_300_000_000, "view": 2_600_000_000}
RESERVED_SEED = 4_000_000_000
CLASS_SHARES = {"lateral": 0.32, "ap": 0.32, "oblique": 0.16, "not-an-elbow": 0.20}
NONRADIOGRAPH_SHARE = 1 / 8
OTHER_EVERY = 12  # steps between two batches of drawn anatomy, of half the size of a training batch
WARM_UP_STEPS = {"cuda": 200, "cpu": 10}
EMA_DECAY = 0.998


class Trainer:
    """Trains `name` with the options of train.py; writes into <out>/<name> and <out>/<name>.pt."""

    def __init__(self, name, options):
        self.began = time.time()
        self.deadline = self.began + options.minutes * 60
        self.name, self.options = name, options
        self.cuda = options.device == "gpu"
        if self.cuda and not torch.cuda.is_available():
            raise SystemExit("No GPU is visible to PyTorch; use --device cpu or --smoke.")
        self.device = torch.device("cuda" if self.cuda else "cpu")
        self.folder = os.path.join(options.out, name)
        os.makedirs(self.folder, exist_ok=True)
        self.log_file = open(os.path.join(self.folder, "train.log"), "a", encoding="utf-8")
        self.scale, self.landmarks = options.scale, []
        self.steps, self.films, self.seconds, self.stop = 0, 0, 0.0, False
        self.curve = []

    def say(self, text):
        line = f"[{self.name} {time.time() - self.began:6.1f}s] {text}"
        print(line, flush=True)
        self.log_file.write(line + "\n")
        self.log_file.flush()

    def hurry(self):
        """Ends training now; validation and export get what little time a terminated process may take."""
        self.stop = True
        self.deadline = min(self.deadline, time.time() + 40)

    def next_seed(self):
        return self.first_seed + self.fed

    # ---- setting up

    def start(self):
        if self.cuda:
            torch.backends.cudnn.benchmark = True
            torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = True
            torch.set_num_threads(4)
        else:
            torch.set_num_threads(1)
        o = self.options
        state = None
        path = os.path.join(o.resume, self.name + ".pt") if o.resume else None
        if path and os.path.exists(path):
            state = checkpoint.load(path)
        self.first_seed = state["next_seed"] if state else FIRST_SEED[self.name]
        if not FIRST_SEED[self.name] <= self.first_seed < RESERVED_SEED:
            raise SystemExit(f"Seed {self.first_seed} is not a training seed of {self.name}.")
        self.feed = Feed(o.feed, pinned=self.cuda, device=o.device, views=VIEWS_OF_MODEL[self.name],
                         framing=FRAMING_OF_MODEL[self.name], size=256, batch=o.batch, first_seed=self.first_seed, step=1, threads=4,
                         bones="solid" if o.without == "structure" else None)
        torch.manual_seed(self.first_seed % 2**31 + 7)
        self.maker = FilmMaker(self.device, plain=o.without == "randomisation")
        self.pictures = NonRadiographs(self.maker)
        self.other = OtherAnatomy(self.maker)
        self.patience = 120 if self.cuda else 600  # seconds; a processor renders slowly
        frame = self.feed.next(self.patience)
        self.say(f"first frame: {frame.films} films, view {frame.view}, {len(frame.landmarks)} landmarks, "
                 f"feed {' '.join(self.feed.command)}")
        self.landmarks = frame.landmarks if self.name != "view" else []
        self.weights = landmark_weights(self.landmarks).to(self.device)
        self.pool = Pool(max(o.pool, 2 * o.batch), self.device, self.landmarks if self.name != "view" else None)
        self.pool.add(frame)
        self.fed = frame.films
        self.check_frame(frame)
        self.net = build(self.name, self.landmarks, self.scale).to(self.device)
        self.ema = build(self.name, self.landmarks, self.scale).to(self.device).eval()
        if state:
            self.restore_weights(state)
        else:
            self.ema.load_state_dict(self.net.state_dict())
        parameters, macs = cost(self.net)
        self.say(f"{parameters / 1e6:.3f} M parameters, {macs / 1e9:.3f} GMAC a film, {self.device}"
                 + (f" {torch.cuda.get_device_name()}" if self.cuda else "") + f", torch {torch.__version__}")
        self.net.to(memory_format=torch.channels_last)
        self.ema.to(memory_format=torch.channels_last)
        extra = {"fused": True} if self.cuda else {}
        self.optimiser = torch.optim.AdamW(self.net.parameters(), lr=1e-4, weight_decay=1e-2, betas=(0.9, 0.99), **extra)
        if state:
            checkpoint.restore_moments(self.optimiser, self.net.parameters(), state["moments"], state["steps"])
        self.peak_rate = o.rate * (0.5 if state else 1.0)
        self.forward = torch.compile(self.net) if o.compile else self.net
        self.run_steps = 0

    def restore_weights(self, state):
        if state["landmarks"] != self.landmarks:
            raise SystemExit("The checkpoint was trained on other landmarks than the feed sends.")
        for net, weights in ((self.net, state["net"]), (self.ema, state["ema"])):
            net.load_state_dict({k: v.float() if v.is_floating_point() else v for k, v in weights.items()})
        self.steps, self.films, self.seconds = state["steps"], state["films"], state["seconds"]
        self.say(f"going on from step {self.steps}, {self.films} films, {self.seconds:.0f} s")

    def check_frame(self, frame):
        """Fails early on a feed that renders nothing, rather than training on it."""
        a = frame.arrays
        seeds = a["seeds"]
        if bool((seeds < FIRST_SEED[self.name]).any() or (seeds >= RESERVED_SEED).any()):
            raise FeedError("The feed sent seeds that are not training seeds.")
        paths = a["paths"].float()
        if not bool(torch.isfinite(paths).all()) or float(paths.min()) < -1e-3:
            raise FeedError("The feed sent path lengths that are negative or not finite.")
        soft, bone = float((paths[:, 0] > 5).float().mean()), float((paths[:, 2] > 0.8).float().mean())
        if soft < 0.02 or bone < 0.005:
            raise FeedError(f"The feed's films are almost empty: {soft:.1%} of pixels show soft tissue, {bone:.1%} bone.")
        text = f"soft tissue in {soft:.0%} of pixels, bone in {bone:.0%}, pixel {float(a['pixelMm'].mean()):.3f} mm"
        if self.name != "view":
            seen = a["visible"].float().mean()
            known = torch.isfinite(a["landmarks"]).all(2)
            if bool(((a["visible"] > 0) & ~known).any()):
                raise FeedError("The feed calls a landmark visible that has no coordinates.")
            text += f", landmarks visible {float(seen):.0%}"
        self.say(text)

    # ---- steps

    def supply(self):
        """Takes frames while films are drawn faster than they come; waits when they would be drawn too often."""
        pool, o = self.pool, self.options
        while self.fed < 2 * o.batch or pool.drawn > o.max_reuse * self.fed:
            self.take()
        # Rendering shares the device with training: more films than are needed to keep the pool fresh cost steps.
        taken = 0
        while taken < 4 and self.feed.ready() and o.least_reuse * self.fed < pool.drawn + pool.capacity:
            self.take()
            taken += 1
        if self.name == "view" and self.run_steps % OTHER_EVERY == 0:
            with torch.no_grad():
                pool.add(drawn_frame(self.other(o.batch // 2)))

    def take(self):
        frame = self.feed.next(self.patience)
        if frame is None:
            raise FeedError("The feed ended although it was asked to go on.")
        self.pool.add(frame)
        self.fed += frame.films

    def batch(self):
        o, view = self.options, self.name == "view"
        with torch.no_grad():
            raw = self.pool.draw(o.batch, CLASS_SHARES if view else None)
            data = make_batch(raw, self.maker, view, elastic=0.0 if o.without == "bending" else 4.0)
            if view:
                data = with_nonradiographs(data, self.maker, self.pictures, max(1, int(o.batch * NONRADIOGRAPH_SHARE)))
        data["film"] = data["film"].contiguous(memory_format=torch.channels_last)
        return data

    def step(self, fraction):
        rate = self.peak_rate * min(1.0, (self.run_steps + 1) / WARM_UP_STEPS[self.device.type])
        rate *= 0.5 * (1 + math.cos(math.pi * min(1.0, fraction))) * 0.99 + 0.01
        for group in self.optimiser.param_groups:
            group["lr"] = rate
        data = self.batch()
        t_film = self.clock()
        self.net.train()
        with torch.autocast(self.device.type, dtype=torch.bfloat16, enabled=self.cuda):
            out = self.forward(data["film"], masks=True)
        total, parts = view_loss(out, data) if self.name == "view" else landmark_loss(out, data, self.weights)
        self.optimiser.zero_grad(set_to_none=True)
        total.backward()
        norm = torch.nn.utils.clip_grad_norm_(self.net.parameters(), 5.0)
        # A step on a gradient that is not finite would spoil the weights for good.
        if not self.cuda and not bool(torch.isfinite(norm)):
            self.optimiser.zero_grad(set_to_none=True)
        else:
            if self.cuda:
                for p in self.net.parameters():
                    if p.grad is not None:
                        torch.nan_to_num_(p.grad, nan=0.0, posinf=0.0, neginf=0.0)
            self.optimiser.step()
        self.average()
        self.steps += 1
        self.run_steps += 1
        self.films += self.options.batch
        return {"loss": total.detach(), **{k: v.detach() for k, v in parts.items()}}, t_film, rate

    @torch.no_grad()
    def average(self):
        decay = min(EMA_DECAY, (self.steps + 1) / (self.steps + 10))
        mine, theirs = list(self.ema.parameters()), list(self.net.parameters())
        torch._foreach_mul_(mine, decay)
        torch._foreach_add_(mine, [p.detach() for p in theirs], alpha=1 - decay)
        for a, b in zip(self.ema.buffers(), self.net.buffers()):
            if a.is_floating_point():
                a.lerp_(b, 1 - decay)
            else:
                a.copy_(b)

    def clock(self, timed=range(30, 40)):
        """The time, after the device has caught up, during the few steps whose parts are timed."""
        if self.cuda and self.run_steps in timed:
            torch.cuda.synchronize()
        return time.time()

    def run(self):
        self.start()
        end = self.deadline - self.options.reserve
        began, before = time.time(), self.seconds
        split, recent, every = [0.0, 0.0, 0.0], [], 50 if self.cuda else 10
        last_time, last_save = began, time.time()
        while not self.stop and time.time() < end:
            t0 = self.clock()
            self.supply()
            t1 = self.clock()
            parts, t2, rate = self.step((time.time() - began) / max(1.0, end - began))
            t3 = self.clock()
            recent.append(parts)
            if self.run_steps in range(31, 41):
                split = [s + b - a for s, a, b in zip(split, (t0, t1, t2), (t1, t2, t3))]
            if self.run_steps == 40:
                memory = f", {torch.cuda.max_memory_allocated() / 2**30:.1f} GiB" if self.cuda else ""
                self.say("ms a step: feed %.1f, film %.1f, network %.1f" % tuple(100 * s for s in split) + memory)
            if self.run_steps % every == 0:
                self.report(recent, rate, every, last_time)
                recent, last_time = [], time.time()
            self.seconds = before + time.time() - began
            if time.time() - last_save > 100:
                checkpoint.save(os.path.join(self.options.out, self.name + ".pt"), self)
                last_save = time.time()
        self.finish()

    def report(self, recent, rate, every, last_time):
        means = {k: float(torch.stack([r[k] for r in recent]).mean()) for k in recent[0]}
        speed = every * self.options.batch / (time.time() - last_time)
        self.curve.append({"step": self.steps, "films": self.films, "rate": rate, **means})
        if self.run_steps % (4 * every) == 0 or not self.cuda or self.run_steps <= 2 * every:
            self.say(f"step {self.steps} " + " ".join(f"{k} {v:.3f}" for k, v in means.items())
                     + f" | rate {rate:.5f}, {speed:.0f} films/s, reuse {self.pool.drawn / self.fed:.1f}, "
                     f"waited {self.feed.waited:.1f} s")

    # ---- leaving

    def finish(self):
        if not self.run_steps:
            self.say("NOTHING WAS TRAINED: the time was over before the first step; give more --minutes or less --reserve")
        self.say(f"trained {self.run_steps} steps; closing the feed, {self.deadline - time.time():.0f} s left")
        checkpoint.save(os.path.join(self.options.out, self.name + ".pt"), self)
        self.feed.close()
        self.write_curve()
        o = self.options
        result, golden = None, None
        torch.backends.cudnn.benchmark = False  # too few films to pay for tuning
        try:
            began = time.time()
            result, golden = evaluate(self.name, self.ema, o.feed, o.validation, FilmMaker(self.device), o.device,
                                      min(o.batch, o.validation), deadline=self.deadline - 25)
            result["trained"] = {"steps": self.steps, "films": self.films, "seconds": round(self.seconds)}
            text = table(self.name, result)
            self.say(f"validated in {time.time() - began:.1f} s\n{text}")
            with open(os.path.join(self.folder, "table.txt"), "w", encoding="utf-8") as file:
                file.write(text + "\n")
            with open(os.path.join(self.folder, "evaluation.json"), "w", encoding="utf-8") as file:
                json.dump(result, file, indent=1)
        except Exception as error:  # an export without figures is better than none
            self.say(f"validation failed: {type(error).__name__}: {error}")
        if golden is None:
            golden = self.batch()["film"][:1].cpu()
        difference = export.write_model_folder(os.path.join(self.folder, "model"), self.name, self.ema, self.landmarks,
                                               self.scale, golden.contiguous(), result)
        self.say(f"model folder written; export differs by at most {difference}; {time.time() - self.began:.0f} s in all")

    def write_curve(self):
        if not self.curve:
            return
        path = os.path.join(self.folder, "loss.csv")
        new = not os.path.exists(path) or not self.options.resume
        with open(path, "w" if new else "a", newline="", encoding="utf-8") as file:
            writer = csv.DictWriter(file, self.curve[0].keys())
            if new:
                writer.writeheader()
            writer.writerows({k: f"{v:.6g}" if isinstance(v, float) else v for k, v in row.items()} for row in self.curve)
