"""What the planner remembers: a plan found once comes back with its skirt, and no search begins from nothing."""

import pytest
from opening import settle
from PySide6.QtWidgets import QWidget

from studio.brief import Brief
from studio.cloth.better import plans
from studio.cloth.outlines import Task, spots, task
from studio.cloth.placed import Lay
from studio.cloth.plan.improve import first_plan
from studio.cloth.plan.improve import plans as improved
from studio.cloth.plan.problem import Plan
from studio.styles import rack
from studio.units import spell
from studio.window.layplan import planner as module
from studio.window.layplan.planner import ASIDE, Planner
from studio.window.layplan.view import words
from studio.window.shop import Shop
from studio.workroom import Docket, make_up, relaid


class Told:
    """A search that finds nothing, and notes what it was begun with."""

    trouble: str | None = None
    running = True
    start: Plan | None = None

    def begin(self, plan: Plan) -> None:
        """Note it."""
        self.start = plan

    def poll(self) -> Plan | None:
        """Nothing better."""
        return None

    def stop(self) -> None:
        """No more."""
        self.running = False


@pytest.fixture
def planner(bench: QWidget, monkeypatch: pytest.MonkeyPatch) -> tuple[Planner, list[Told]]:
    """A planner, and the searches that it began."""
    begun: list[Told] = []

    def searching(_problem: object, _seconds: float) -> Told:
        begun.append(Told())
        return begun[-1]

    monkeypatch.setattr(module, "Planning", searching)
    return Planner(bench), begun


@pytest.fixture(scope="module")
def gored() -> Docket:
    """Gores as they are laid at a glance, in rows."""
    return make_up(rack.usual("cm", "gored"))


@pytest.fixture(scope="module")
def found(gored: Docket) -> Lay:
    """A shorter lay of them."""
    *_, lay = plans(gored.pieces, gored.brief.cloth, 1.0)
    assert lay.length < gored.lay.length
    assert not lay.proven
    return lay


def longer(brief: Brief) -> Docket:
    """The same with another length."""
    return make_up(rack.edit(brief, {"skirt.length": 655.0}))


def test_a_search_that_ended_is_not_begun_again(planner: tuple[Planner, list[Told]], gored: Docket):
    """Looked to the end, edited and taken back: it is left at that, until the maker asks."""
    one, begun = planner
    one.plan(gored)
    one._begin()
    begun[0].running = False
    one._fetch()
    assert not one.running
    one.plan(longer(gored.brief))
    assert one.running
    one.plan(gored)
    assert not one.running
    one.again()
    assert one.running
    assert 2 == len(begun)
    one.halt()
    one.plan(longer(gored.brief))
    one.plan(gored)
    assert not one.running


def test_a_search_that_broke_off_is_told(planner: tuple[Planner, list[Told]], gored: Docket):
    """Ended by trouble it may be begun again, and the line of the lay plan says so until it is."""
    one, begun = planner
    one.plan(gored)
    one._begin()
    begun[0].trouble, begun[0].running = "MemoryError", False
    one._fetch()
    assert not one.running
    assert one.trouble
    assert "broke off" in spell(words(gored, True, one.trouble is not None), "cm")
    one.again()
    assert one.running
    assert one.trouble is None
    one.stop()


def test_aside_is_a_shorter_look(planner: tuple[Planner, list[Told]], gored: Docket):
    """While another view is seen it is looked once, and not again; seen, it is looked at length; and what was looked at
    length, or stopped by the maker, is left alone aside too. Each edit puts the look off.
    """
    one, begun = planner
    one.plan(gored, ASIDE)
    one.plan(longer(gored.brief), ASIDE)
    assert [] == begun
    one.plan(gored, ASIDE)
    one._begin()
    begun[0].running = False
    one._fetch()
    one.plan(longer(gored.brief), ASIDE)
    one.plan(gored, ASIDE)
    assert not one.running
    one.plan(gored)
    assert one.running
    one.halt()
    one.plan(gored, ASIDE)
    assert not one.running
    assert 1 == len(begun)


def test_a_glance_aside_does_not_wait(planner: tuple[Planner, list[Told]], gored: Docket):
    """Gone to another view and back while a search runs, it begins anew at the pace of what is seen."""
    one, begun = planner
    one.plan(gored, ASIDE)
    one._begin()
    one.plan(gored)
    assert not begun[0].running
    one._begin()
    one.plan(gored, ASIDE)
    assert not begun[1].running
    one.stop()


def test_a_search_goes_on_from_the_plan_in_hand(planner: tuple[Planner, list[Told]], gored: Docket, found: Lay):
    """Broken off by an edit and taken up again, it begins with the plan that was found, not with rows."""
    one, begun = planner
    one.plan(relaid(gored, found))
    one._begin()
    one.plan(longer(gored.brief))
    one.plan(relaid(gored, found))
    one._begin()
    assert [found.length, found.length] == [told.start.length for told in begun if told.start]
    one.stop()


def test_a_name_or_a_button_leaves_the_search_alone(planner: tuple[Planner, list[Told]], gored: Docket):
    """What touches no piece on the cloth neither ends a search nor begins one."""
    one, begun = planner
    one.plan(gored)
    one._begin()
    for edit in ({"cloth.name": "Blue"}, {"fastening.button_diameter": 22.0}, {"cloth.price": 12.0}):
        one.plan(make_up(rack.edit(gored.brief, edit)))
        assert begun[0].running
    assert 1 == len(begun)
    one.stop()


def test_an_undo_brings_the_found_plan_back(shop: Shop, found: Lay):
    """On the desk: found, edited, taken back, made again; the cloth to buy follows."""
    desk = shop.desk
    desk.edit("skirt.style", "gored")
    settle(shop)
    at_once = desk.docket.lay.length
    desk.relay(desk.docket, found)
    bought = desk.docket.fact("cloth_needed")
    desk.edit("skirt.length", 655.0)
    settle(shop)
    assert found.length != desk.docket.lay.length
    desk.undo()
    settle(shop)
    assert found.length == desk.docket.lay.length < at_once
    assert bought == desk.docket.fact("cloth_needed")
    desk.edit("cloth.name", "Blue")
    settle(shop)
    assert found.length == desk.docket.lay.length


@pytest.mark.parametrize("style", ["gored", "straight", "circle", "tiered"])
@pytest.mark.parametrize("lies", ["open", "folded"])
def test_the_search_knows_a_lay_again(style: str, lies: str):
    """A lay handed back to the search is the plan it was: no plan of the next search is longer."""
    docket = make_up(rack.edit(rack.usual("cm", style), {"cloth.lies": lies, "cloth.width": 1600.0}))
    asked: Task = task(docket.pieces, docket.brief.cloth)
    *_, lay = plans(docket.pieces, docket.brief.cloth, 0.7)
    again = next(improved(asked.problem, 0.1, with_engine=False, start=spots(lay, asked)))
    assert again.length <= lay.length + 1e-6
    assert lay.length <= first_plan(asked.problem).length + 1e-6
