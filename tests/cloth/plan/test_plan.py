"""Lay plans by shapes: nothing a second hand would find wrong, over hundreds of problems that nobody thought of."""

import os
import subprocess
import sys
from pathlib import Path

import pytest
from brute import few_boxes, least_length
from cases import NAMES, any_problem, kept, rectangle
from checker import faults

from studio.cloth.plan import prove
from studio.cloth.plan.improve import first_plan, plans
from studio.cloth.plan.installed import engine_installed
from studio.cloth.plan.misfits import misfits
from studio.cloth.plan.planning import Planning
from studio.cloth.plan.problem import Part, Problem, Spot, Way
from studio.cloth.plan.sound import apart, sound
from studio.cloth.plan.table import Laid, Table

PROVEN = {"skirt_i_border": 2100.0, "skirt_ii_rect": 2104.0, "skirt_iii_tiers_0": 1550.0, "skirt_vi_grid": 2340.0}
"""Their least length, mm; derived for the made-up instances by hand and by exhaustive search."""
PATIENCE = 600.0
"""Seconds that no machine takes: what ends by itself is not hurried."""


@pytest.mark.parametrize("batch", range(20))
def test_five_hundred_problems_and_not_a_fault(batch: int):
    """Any parts on any cloth: what cannot be laid is named; the rest is laid without overlap, lost gap, place, fold or
    repeat, and the bound is never above the plan.
    """
    laid = 0
    for seed in range(batch * 26, batch * 26 + 26):
        problem = any_problem(seed)
        if misfits(problem):
            continue
        laid += 1
        assert [] == faults(problem, first_plan(problem)), seed
    assert laid >= 10


@pytest.mark.parametrize("seed", range(3000, 3012))
def test_better_plans_are_sound_and_better(seed: int):
    """Every plan of a search is as sound as the first; none is longer than the one before."""
    problem = any_problem(seed)
    if misfits(problem):
        pytest.skip("it cannot be laid")
    before = float("inf")
    for plan in plans(problem, seconds=1.0):
        assert [] == faults(problem, plan), seed
        assert plan.length <= before + 1e-6
        before = plan.length


@pytest.mark.parametrize("name", NAMES)
def test_kept_problems_are_laid_at_once(name: str):
    """The made-up skirts and the research instances (ESICUP) get a sound plan at once."""
    problem = kept(name)
    assert () == misfits(problem)
    assert [] == faults(problem, first_plan(problem))


@pytest.mark.parametrize(("name", "least"), PROVEN.items())
def test_boxes_are_proven_best(name: str, least: float):
    """Four problems of boxes are laid as short as can be, and that is proven, however slow the machine: the search is
    left as soon as it has found so short a plan, and the proof is given the time it takes.
    """
    problem = kept(name)
    plan = next(p for p in plans(problem, seconds=PATIENCE) if p.length <= least + 0.01)
    assert least == pytest.approx(plan.length, abs=0.01)
    assert plan.bound <= least + 0.01
    assert [] == faults(problem, plan)
    assert least == pytest.approx(prove.least(Table(problem), plan.length + 50, 0.0, PATIENCE), abs=0.01)


@pytest.mark.parametrize("batch", range(8))
def test_what_is_proven_is_so(batch: int):
    """Of a few boxes every plan there is was tried: what is called best possible is, no bound is above the least
    length, and "at least so much of the best possible" is never more than the truth.
    """
    proven = 0
    for seed in range(batch * 12, batch * 12 + 12):
        problem = few_boxes(seed)
        assert () == misfits(problem)
        *_, plan = plans(problem, seconds=0.5, with_engine=False)
        least = least_length(problem, round(plan.length))
        assert plan.length >= least - 0.01, seed
        assert plan.bound <= least + 0.01, seed
        assert plan.share <= least / plan.length + 1e-6, seed
        assert not plan.proven or least == pytest.approx(plan.length, abs=0.01), seed
        proven += plan.proven
    assert proven >= 6


def test_rows_alone_without_the_engine():
    """Where the engine is not installed, plans still come and are sound; nothing tries to load it."""
    code = (
        "import sys; sys.modules['spyrrow'] = None\n"
        "sys.path.insert(0, sys.argv[1])\n"
        "from plan.cases import kept; from plan.checker import faults\n"
        "from studio.cloth.plan.improve import plans\n"
        "problem = kept('skirt_v_gores_twoway')\n"
        "found = list(plans(problem, 1.0, with_engine=False))\n"
        "assert found and not any(faults(problem, p) for p in found), found\n"
    )
    here = os.path.dirname(os.path.dirname(__file__))
    assert 0 == subprocess.run([sys.executable, "-c", code, here], check=False, timeout=120).returncode


def test_what_cannot_be_laid_is_named():
    """Too wide in every way of its own, placed off the cloth, or held where there is none: each by name, and the width
    that would do.
    """
    wide = Part("wide", rectangle(100, 900), (Way(0), Way(180)))
    off = Part("off", rectangle(100, 200), (Way(0, 700.0),))
    fine = Part("fine", rectangle(100, 200))
    held = Spot("fine", 0, 0.0, 750.0)
    found = {m.part: m for m in misfits(Problem(800.0, (wide, off, fine), held=(held,)))}
    assert {"wide": "wide", "off": "place", "fine": "held off"} == {name: m.why for name, m in found.items()}
    assert (900.0, 900.0) == (found["wide"].needed, found["off"].needed)
    turned = Part("wide", rectangle(100, 900), (Way(0), Way(90)))
    assert () == misfits(Problem(800.0, (turned,)))


@pytest.mark.parametrize(
    ("x", "y", "gap", "fine"),
    [
        (100.0, 0.0, 0.0, True), (99.9, 0.0, 0.0, False), (0.0, 50.0, 0.0, True), (0.0, 49.9, 0.0, False),
        (109.9, 0.0, 10.0, False), (110.0, 0.0, 10.0, True), (-0.1, 60.0, 0.0, False), (0.0, 150.1, 0.0, False),
    ],
)  # fmt: skip
def test_what_overlaps_is_refused(x: float, y: float, gap: float, fine: bool):
    """Whoever proposes it, a plan whose pieces lie on each other, within the gap or off the cloth is not taken."""
    table = Table(Problem(200.0, (Part("a", rectangle(100, 50), count=2),), gap))
    stance = table.choices[0][0]
    assert fine == sound(table, [Laid(0, stance, 0.0, 0.0), Laid(1, stance, x, y)])


def test_shapes_are_parted_by_more_than_their_boxes():
    """Two triangles whose boxes overlap may lie so while they do not touch, and not a tenth of a millimetre nearer."""
    wedge = Part("a", ((0, 0), (100, 0), (0, 100)), (Way(0), Way(180)), count=2)
    table = Table(Problem(300.0, (wedge,)))
    one, other = table.choices[0]
    assert apart(table, Laid(0, one, 0.0, 0.0), Laid(1, other, 0.0, 0.0))
    assert not apart(table, Laid(0, one, 0.0, 0.0), Laid(1, other, -0.1, 0.0))


def test_planning_stops_and_leaves_nothing_behind():
    """Stopped at once, however early; its process is gone, and the plan in hand is sound."""
    problem = kept("skirt_viii_40")
    planning = Planning(problem, seconds=60.0)
    plan = planning.start()
    assert [] == faults(problem, plan)
    worker = planning._worker
    assert worker is not None
    planning.stop()
    assert worker.poll() is not None
    assert not planning.running
    planning.stop()


def test_a_worker_that_dies_is_told():
    """When the other process breaks down, that is said, and what was found before stays good."""
    planning = Planning(kept("skirt_v_gores_twoway"), seconds=30.0)
    planning.start()
    worker, reader = planning._worker, planning._reader
    assert worker is not None and reader is not None
    worker.kill()
    reader.join(20)
    assert not planning.running
    assert planning.trouble
    planning.stop()


def test_a_worker_takes_nothing_from_the_folder_it_is_in(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """Begun in a folder with a file that bears a library's name, the search goes on, and the file is not run."""
    for name in ("random", "msgspec", "studio"):
        (tmp_path / f"{name}.py").write_text("open('run', 'w').close(); raise SystemExit(3)", encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    planning = Planning(kept("skirt_v_gores_twoway"), seconds=0.2, with_engine=False)
    planning.start()
    assert planning._reader is not None
    planning._reader.join(60)
    assert planning.trouble is None
    assert not (tmp_path / "run").exists()
    planning.stop()


def test_where_no_process_can_be_had_the_plan_stays(monkeypatch: pytest.MonkeyPatch):
    """The system gives no more processes: that is trouble to tell, not an error, and the plan in hand stays good."""

    def refuse(*_args: object, **_named: object) -> None:
        raise BlockingIOError(11, "Resource temporarily unavailable")

    monkeypatch.setattr(subprocess, "Popen", refuse)
    problem = kept("skirt_v_gores_twoway")
    planning = Planning(problem, seconds=30.0)
    assert [] == faults(problem, planning.start())
    assert not planning.running
    assert "unavailable" in (planning.trouble or "")
    planning.stop()


@pytest.mark.skipif(not engine_installed(), reason="the engine is not installed here")
def test_gores_nest():
    """By shapes, gores take less cloth than by their boxes."""
    problem = kept("skirt_v_gores_twoway")
    boxes = Problem(problem.width, tuple(
        Part(p.id, rectangle(*(max(c) - min(c) for c in zip(*p.outline, strict=True))), p.ways, p.count) for p in problem.parts
    ), problem.gap)  # fmt: skip
    *_, plan = plans(problem, seconds=3.0)
    assert plan.length < first_plan(boxes).length * 0.95
