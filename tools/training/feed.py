"""Reads the frames a feed program writes to its standard output.

A frame: `EAFEED01`, the JSON length (int32, little-endian), the JSON, then the arrays it lists, raw and little-endian.
"""
import fcntl
import json
import queue
import struct
import subprocess
import sys
import threading
import time

import numpy as np
import torch

MAGIC = b"EAFEED01"
DTYPES = {"float16": torch.float16, "float32": torch.float32, "uint8": torch.uint8, "uint64": torch.int64}
F_SETPIPE_SZ = 1031


class FeedError(Exception):
    """The feed sent nothing, stopped, or sent what is not a frame."""


class Frame:
    """One frame: its view, landmark names and arrays (CPU tensors; `seeds` are int64)."""

    def __init__(self, view, landmarks, arrays):
        self.view, self.landmarks, self.arrays = view, landmarks, arrays
        self.films = arrays["paths"].shape[0]


def read_exactly(stream, view):
    done = 0
    while done < len(view):
        count = stream.readinto(view[done:])
        if not count:
            raise FeedError(f"The feed ended in the middle of a frame, after {done} of {len(view)} bytes of an array.")
        done += count


def read_frame(stream, pinned=False):
    """The next frame, or None at the end of the stream."""
    head = bytearray(12)
    count = stream.readinto(memoryview(head))
    if not count:
        return None
    if count < 12:
        read_exactly(stream, memoryview(head)[count:])
    if bytes(head[:8]) != MAGIC:
        raise FeedError(f"The feed sent {bytes(head[:8])!r} where a frame should begin; nothing else may be written there.")
    text = bytearray(struct.unpack("<i", head[8:])[0])
    read_exactly(stream, memoryview(text))
    header = json.loads(text.decode("utf-8"))
    arrays = {}
    for entry in header["arrays"]:
        shape = tuple(entry["shape"])
        tensor = torch.empty(shape, dtype=DTYPES[entry["dtype"]], pin_memory=pinned)
        if tensor.numel():
            read_exactly(stream, memoryview(tensor.numpy().reshape(-1).view(np.uint8)))
        arrays[entry["name"]] = tensor
    return Frame(header["view"], header["landmarks"], arrays)


class Feed:
    """Runs a feed program and reads its frames on a thread of its own.

    `program` is a path or a list (program and first arguments); `arguments` maps option names to values.
    """

    def __init__(self, program, depth=4, pinned=False, **arguments):
        command = [program] if isinstance(program, str) else list(program)
        for name, value in arguments.items():
            if value is not None:
                command += ["--" + name.replace("_", "-"), str(value)]
        self.command = command
        self.process = subprocess.Popen(command, stdout=subprocess.PIPE, stdin=subprocess.DEVNULL, bufsize=0)
        try:
            fcntl.fcntl(self.process.stdout.fileno(), F_SETPIPE_SZ, 1 << 20)
        except OSError as error:
            print(f"pipe stays at its default size: {error}", file=sys.stderr)
        self.frames = queue.Queue(depth)
        self.stopped = False
        self.pinned = pinned
        self.waited = 0.0
        self.thread = threading.Thread(target=self._read, daemon=True)
        self.thread.start()

    def _read(self):
        item = None
        try:
            while not self.stopped:
                item = read_frame(self.process.stdout, self.pinned)
                if item is None:
                    break
                self._put(item)
        except Exception as error:  # handed to the reader of the queue, which raises it
            self._put(error)
            return
        self._put(None)

    def _put(self, item):
        while not self.stopped:
            try:
                self.frames.put(item, timeout=0.5)
                return
            except queue.Full:
                pass

    def next(self, timeout=60.0):
        """The next frame, or None when the feed has sent all it was asked for."""
        began = time.time()
        try:
            item = self.frames.get(timeout=timeout)
        except queue.Empty:
            raise FeedError(f"The feed sent no frame within {timeout:.0f} s: {' '.join(self.command)}") from None
        self.waited += time.time() - began
        if isinstance(item, Exception):
            raise FeedError(f"The feed failed: {item}") from item
        if item is None and self.process.wait(10) != 0:
            raise FeedError(f"The feed ended with exit code {self.process.returncode}: {' '.join(self.command)}")
        return item

    def ready(self):
        return not self.frames.empty()

    def close(self):
        self.stopped = True
        self.process.kill()
        self.process.wait()
        self.thread.join(5)
        self.process.stdout.close()

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.close()
