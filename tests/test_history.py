"""Undo and redo."""

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from studio.brief import Brief, Skirt
from studio.history import STEPS, History

START = Brief(skirt=Skirt())


def long(mm: float) -> Brief:
    """A brief that differs from others by its skirt's length."""
    return Brief(skirt=Skirt(length=mm))


def lengths(*briefs: Brief) -> list[float]:
    """What distinguishes the briefs."""
    return [brief.skirt.length for brief in briefs]


def test_a_new_history_has_nothing_to_take_back() -> None:
    """A skirt just begun or opened is clean, and undo and redo leave it as it is."""
    fresh = History(START)
    assert (False, False, True) == (fresh.can_undo, fresh.can_redo, fresh.clean)
    assert fresh == fresh.undo() == fresh.redo() == fresh.finish() == fresh.saved_at()


def test_each_edit_is_a_step_back_and_forth() -> None:
    """Every edit can be taken back and made again, in order."""
    now = History(long(600)).edit(long(610)).edit(long(620))
    back = now.undo()
    assert (620, 610, 600) == tuple(lengths(now.now, back.now, back.undo().now))
    assert now.now == back.redo().now == back.undo().redo().redo().now
    assert (True, True) == (back.can_undo, back.can_redo)


def test_an_edit_that_changes_nothing_is_no_step() -> None:
    """Typing the same length again leaves nothing to undo, and nothing to redo is lost."""
    back = History(long(600)).edit(long(610)).undo()
    assert back is back.edit(long(600))
    assert back.can_redo


def test_a_new_edit_forgets_what_was_taken_back() -> None:
    """After undo, another edit goes its own way."""
    other = History(long(600)).edit(long(610)).undo().edit(long(700))
    assert not other.can_redo
    assert [600] == lengths(other.undo().now)


def test_a_drag_is_one_step() -> None:
    """However many places a handle passes, one undo brings it back to where it was taken up."""
    drag = History(long(600))
    for mm in range(601, 640):
        drag = drag.edit(long(mm), joins="skirt.length")
    assert [639, 600] == lengths(drag.now, drag.undo().now)


def test_letting_go_ends_the_drag() -> None:
    """Two drags of the same handle are two steps."""
    two = History(long(600)).edit(long(610), joins="hem").finish().edit(long(620), joins="hem")
    assert [610, 600] == lengths(two.undo().now, two.undo().undo().now)


def test_drags_of_different_handles_are_steps_of_their_own() -> None:
    """Edits join only with their like, and never with a plain edit."""
    mixed = History(long(600)).edit(long(610), joins="hem").edit(long(620), joins="band").edit(long(630))
    assert [620, 610, 600] == lengths(mixed.undo().now, mixed.undo().undo().now, mixed.undo().undo().undo().now)
    assert [630] == lengths(mixed.edit(long(640), joins="hem").undo().now)


def test_a_drag_back_to_its_start_is_no_step() -> None:
    """A handle put back where it was leaves nothing to undo; moved on, it is one step again."""
    home = History(long(600)).edit(long(610), joins="hem").edit(long(600), joins="hem")
    assert not home.can_undo
    on = home.edit(long(630), joins="hem").edit(long(640), joins="hem")
    assert [600] == lengths(on.undo().now)
    earlier = History(long(500)).edit(long(600)).edit(long(610), joins="hem").edit(long(600), joins="hem")
    assert [500] == lengths(earlier.edit(long(620), joins="hem").undo().undo().now)


def test_undo_ends_a_drag() -> None:
    """What is dragged after an undo is a step of its own."""
    drag = History(long(600)).edit(long(610)).edit(long(620), joins="hem").undo().edit(long(630), joins="hem")
    assert [610] == lengths(drag.undo().now)
    again = History(long(600)).edit(long(610), joins="hem").undo().redo().edit(long(630), joins="hem")
    assert [610] == lengths(again.undo().now)


def test_what_has_changed_since_it_was_saved() -> None:
    """The skirt is clean exactly when it is as the file holds it, by undo, redo or by hand."""
    saved = History(long(600)).edit(long(610)).saved_at()
    assert saved.clean
    assert not saved.undo().clean
    assert saved.undo().redo().clean
    assert not saved.edit(long(620)).clean
    assert saved.edit(long(620)).edit(long(610)).clean


def test_saving_during_a_drag_is_kept_apart() -> None:
    """What is dragged on after saving is a step of its own, so that undo leads back to what was saved."""
    drag = History(long(600)).edit(long(610), joins="hem").saved_at().edit(long(620), joins="hem")
    assert not drag.clean
    assert drag.undo().clean


def test_a_recovered_skirt_is_not_clean() -> None:
    """A brief that differs from the file it belongs to asks to be saved."""
    assert not History(long(620), saved=long(600)).clean


def test_five_hundred_steps_are_kept() -> None:
    """A long day's work stays in bounds: the oldest steps are forgotten, the last 500 can be taken back."""
    day = History(long(100))
    for step in range(1, STEPS + 101):
        day = day.edit(long(100 + step))
    assert STEPS == len(day.before) == 500
    for _ in range(STEPS):
        day = day.undo()
    assert (False, [200]) == (day.can_undo, lengths(day.now))
    assert not day.clean
    for _ in range(STEPS):
        day = day.redo()
    assert [700] == lengths(day.now)


def test_a_history_is_a_value() -> None:
    """An edit leaves the history before it as it was."""
    first = History(long(600))
    first.edit(long(610)).edit(long(620))
    assert History(long(600)) == first


@given(st.lists(st.tuples(st.sampled_from("eeeurfs"), st.integers(100, 104), st.sampled_from(["", "a", "b"]))))
def test_undoing_everything_leads_back_and_redoing_leads_on(doings: list[tuple[str, int, str]]) -> None:
    """Whatever was done, undo leads to where it all began, without a step that changes nothing, and redo back."""
    now = History(long(100))
    for what, mm, joins in doings:
        doing = {
            "e": lambda h, mm=mm, joins=joins: h.edit(long(mm), joins=joins),
            "u": History.undo,
            "r": History.redo,
            "f": History.finish,
            "s": History.saved_at,
        }
        now = doing[what](now)
    row = [*now.before, now.now, *reversed(now.after)]
    assert all(one != two for one, two in pairwise(row))
    back = now
    while back.can_undo:
        back = back.undo()
    assert long(100) == back.now
    while back.can_redo:
        back = back.redo()
    assert row[-1] == back.now
