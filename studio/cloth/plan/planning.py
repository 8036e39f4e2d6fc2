"""Planning beside a window: plans are improved in another process, fetched when it suits, and dropped at once.

`start`, then `poll` now and then (from a timer), and `stop`. None of them waits for a plan. A process is used rather
than a thread because the engine can neither be stopped nor trusted not to end the process it is in.
"""

import os
import subprocess
import sys
import threading
from collections import deque
from contextlib import suppress
from pathlib import Path
from typing import Final

import msgspec
from msgspec.structs import replace

from studio.cloth.plan.installed import engine_installed
from studio.cloth.plan.problem import Plan, Problem
from studio.cloth.plan.worker import Task

_ROOT = str(Path(__file__).parents[3])
_WORKER = "studio.cloth.plan.worker"
_PATIENCE: Final = 1.0  # s


class Planning:
    """One search for one problem without misfits, which starts from a plan made at once."""

    def __init__(self, problem: Problem, seconds: float = 60.0, seed: int = 1, with_engine: bool | None = None) -> None:
        """Get ready; nothing is begun."""
        self.with_engine = engine_installed() if with_engine is None else with_engine
        self.trouble: str | None = None
        """What ended the search before its time, in the worker's last words; the plan in hand stays good."""
        self._task = Task(problem, seconds, seed, self.with_engine)
        self._worker: subprocess.Popen[bytes] | None = None
        self._plans: deque[Plan] = deque()
        self._reader: threading.Thread | None = None
        self._stopped = False

    def start(self) -> Plan:
        """Make a plan at once, by rows, and set the worker to better it."""
        from studio.cloth.plan import improve

        plan = improve.first_plan(self._task.problem)
        if not plan.proven:
            self.begin(plan)
        return plan

    def begin(self, plan: Plan | None = None) -> None:
        """Set the worker to better a plan, or to make one; this takes some milliseconds. Where no process can be had,
        `trouble` says so.
        """
        if self._worker is not None:
            return
        try:
            self._worker = _begun()
        except OSError as fault:
            self.trouble = str(fault)
            return
        task = replace(self._task, start=plan.spots) if plan else self._task
        self._reader = threading.Thread(target=self._read, args=(self._worker, task, plan), daemon=True)
        self._reader.start()

    def poll(self) -> Plan | None:
        """The best plan since the last time, if there is a better one."""
        plan = None
        while self._plans:
            plan = self._plans.popleft()
        return plan

    @property
    def running(self) -> bool:
        """Whether better plans may yet come; where not, `poll` once more for the last."""
        return self._reader is not None and self._reader.is_alive()

    def stop(self) -> None:
        """End the search; no process is left behind. It may be called at any time, and again, and waits a second or
        two at most: a process that the system is slow to end is seen off by the reader.
        """
        self._stopped = True
        if self._worker is not None:
            self._worker.kill()
            with suppress(subprocess.TimeoutExpired):
                self._worker.wait(_PATIENCE)
        if self._reader is not None:
            self._reader.join(_PATIENCE)

    def _read(self, worker: "subprocess.Popen[bytes]", task: Task, best: Plan | None) -> None:
        """Hand on the worker's plans, each better than the last; then say how it ended."""
        assert worker.stdin and worker.stdout and worker.stderr
        with worker.stdin, worker.stdout, worker.stderr:
            try:
                worker.stdin.write(msgspec.json.encode(task) + b"\n")
                worker.stdin.flush()
            except OSError:
                pass  # it has ended already, and says why below
            for line in worker.stdout:
                try:
                    plan = msgspec.json.decode(line, type=Plan)
                except msgspec.DecodeError:
                    continue  # cut short as the worker ended
                if (
                    best is None
                    or plan.length < best.length - 1e-6
                    or plan.bound > best.bound + 1e-6
                    or plan.proven > best.proven
                ):
                    best = plan
                    self._plans.append(plan)
            words = worker.stderr.read().decode(errors="replace").strip().splitlines()
            ended = worker.wait()
        if ended and not self._stopped:
            self.trouble = words[-1] if words else f"the worker ended with {ended}"


def _begun() -> "subprocess.Popen[bytes]":
    """A worker. It takes nothing from the folder it is begun in (-P), where a file may bear a library's name."""
    return subprocess.Popen(
        [sys.executable, "-P", "-m", _WORKER],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        env={**os.environ, "PYTHONPATH": os.pathsep.join(filter(None, (_ROOT, os.environ.get("PYTHONPATH"))))},
        creationflags=getattr(subprocess, "CREATE_NO_WINDOW", 0),
    )
