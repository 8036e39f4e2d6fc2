"""The process in which plans are improved: a problem comes in by the line, and plans go out, one a line.

Run as a module by `planning`, and by nobody else. When the other end of its input closes, it ends, even where its
window could not stop it; a second or two later if the engine is just then at work, which lets nothing else run. What
libraries print goes nowhere, so that the lines stay clean.
"""

import os
import sys
import threading
from typing import BinaryIO

import msgspec

from studio.cloth.plan.problem import Plan, Problem, Spot


class Task(msgspec.Struct, frozen=True):
    """What a worker is asked to do: see `improve.plans`."""

    problem: Problem
    seconds: float
    seed: int
    with_engine: bool
    start: tuple[Spot, ...] = ()


def main() -> None:
    """Read a task, write plans until there is nothing better."""
    lines = os.fdopen(os.dup(1), "wb")
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
    task = msgspec.json.decode(sys.stdin.buffer.readline(), type=Task)
    threading.Thread(target=_watch, args=(sys.stdin.buffer,), daemon=True).start()
    from studio.cloth.plan import improve

    for plan in improve.plans(task.problem, task.seconds, task.seed, task.with_engine, task.start):
        _tell(lines, plan)
    lines.flush()
    os._exit(0)  # the engine's thread may have seconds to go


def _tell(lines: BinaryIO, plan: Plan) -> None:
    lines.write(msgspec.json.encode(plan) + b"\n")
    lines.flush()


def _watch(end: BinaryIO) -> None:
    """Wait for the other end to go away."""
    end.read()
    os._exit(0)


if __name__ == "__main__":
    main()
