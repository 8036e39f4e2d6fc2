"""How short the planner's lay plans are, and how soon: the table of docs/lay-plan.md.

Lengths in mm, or in a research instance's own unit; densities against the best published (arXiv:2509.13329).
"""

import sys
import time
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "cloth" / "plan"))
from cases import kept
from checker import faults

from studio.cloth.plan.improve import first_plan, plans
from studio.cloth.plan.planning import Planning

PROVEN = {"skirt_i_border": 2100, "skirt_ii_rect": 2104, "skirt_iii_tiers_0": 1550, "skirt_vi_grid": 2340}
SHORT = {"skirt_v_gores_twoway": 1110, "skirt_xii_border_gores": 1265, "skirt_viii_40": 3720}
DENSE = {"trousers": (92.6, 3), "fu": (92.4, 3), "albano": (89.8, 3), "swim": (79.8, 6)}
"""The best published density, per cent, and how many points below it are allowed."""
FIRST = {"skirt_viii_40": 0.5}
"""Seconds to the first plan; 0.1 for up to 12 parts."""


@pytest.mark.parametrize("name", [*PROVEN, *SHORT])
def test_first_plan(name: str):
    """A sound plan at once."""
    problem = kept(name)
    first_plan(problem)
    taken = []
    for _ in range(3):
        start = time.perf_counter()
        plan = first_plan(problem)
        taken.append(time.perf_counter() - start)
    print(f"\nfirst plan of {name}: {plan.length:.0f} in {1000 * min(taken):.0f} ms")
    assert min(taken) <= FIRST.get(name, 0.1)


@pytest.mark.parametrize(("name", "least"), PROVEN.items())
def test_proven(name: str, least: int):
    """Proven best in at most 2 s."""
    start = time.perf_counter()
    *_, plan = plans(kept(name), seconds=10.0)
    took = time.perf_counter() - start
    print(f"\n{name}: {plan.length:.0f} / {plan.bound:.0f} in {took:.2f} s")
    assert plan.proven and abs(plan.length - least) < 0.5
    assert took <= 2.0


@pytest.mark.parametrize(("name", "most"), SHORT.items())
def test_short(name: str, most: int):
    """Short enough within 10 s."""
    problem = kept(name)
    *_, plan = plans(problem, seconds=10.0)
    print(f"\n{name}: {plan.length:.0f} / {plan.bound:.0f} in 10 s")
    assert [] == faults(problem, plan)
    assert plan.length <= most


@pytest.mark.parametrize(("name", "best"), DENSE.items())
def test_dense(name: str, best: tuple[float, int]):
    """Within some points of the best published density in 60 s."""
    problem = kept(name)
    *_, plan = plans(problem, seconds=60.0)
    ground = sum(abs(_area(p.outline)) * p.count for p in problem.parts)
    density = 100 * ground / (problem.width * plan.length)
    print(f"\n{name}: {density:.1f} per cent; published {best[0]}")
    assert [] == faults(problem, plan)
    assert density >= best[0] - best[1]


def test_stop():
    """Stopped within 50 ms."""
    planning = Planning(kept("skirt_viii_40"), 60.0)
    planning.start()
    time.sleep(2.0)
    start = time.perf_counter()
    planning.stop()
    took = time.perf_counter() - start
    print(f"\nstopped in {1000 * took:.0f} ms")
    assert took <= 0.05


def _area(outline: tuple[tuple[float, float], ...]) -> float:
    after = (*outline[1:], outline[0])
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(outline, after, strict=True)) / 2
