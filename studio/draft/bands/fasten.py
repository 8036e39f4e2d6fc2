"""What holds a band, marked on it: holes and buttons, hooks and bars, snaps, each at its place along the waist seam."""

from collections.abc import Iterator

from msgspec import Struct

from studio.brief import Brief
from studio.geometry import Line, Path
from studio.words import Phrase, phrase

from ..fastening import HOOK, SNAP, SNAP_INSET, button_place, even_places, held_by, hole_length, hook_count, inset
from ..piece import Handle, LineMark, Spot, Spotted
from .lie import Lie

ON = ("fastening.kind", "waistband.extension")
PLACED = ("fastening.button_inset", "fastening.count", "fastening.edge_inset", "fastening.button_diameter")
HOLED = ("fastening.end_inset", "fastening.count", "fastening.edge_inset", "fastening.button_height")


class Held(Struct, frozen=True):
    """The marks of a band's fastening, and the handles that move it."""

    lines: tuple[LineMark, ...] = ()
    spots: tuple[Spot, ...] = ()
    handles: tuple[Handle, ...] = ()


def fasten(brief: Brief, lie: Lie, high: float) -> Held:
    """The fastening of a band whose outside face is `high` mm tall. A wrap's under end is held by a snap inside."""
    held = held_by(brief)
    if not held:
        return Held()
    pull, plain = brief.band_length - inset(brief), button_place(brief)
    inside = tuple(_inside(brief, lie, high / 2)) if brief.opening.kind == "wrap" else ()
    if held == "buttons":
        return _buttons(brief, lie, high, pull, plain, inside)
    n = hook_count(high)
    ups = even_places(n, high * (1 - 1 / (2 * n)), high / (2 * n))
    if held == "snap":
        pairs = [(pull, "snap, underneath"), (plain, "snap")]
        return Held(spots=(*(_snap(lie, s, u, phrase(w)) for s, w in pairs for u in ups), *inside))
    other = "eye" if held == "hook and eye" else "bar"
    marks: list[tuple[Spotted, float, str]] = [("hook", pull - HOOK / 2, "hook, underneath"), ("bar", plain, other)]
    spots = (Spot(role, lie.at(s, u), HOOK, words=phrase(w), governs=ON) for role, s, w in marks for u in ups)
    return Held(spots=(*spots, *inside))


def _snap(lie: Lie, along: float, up: float, words: Phrase) -> Spot:
    return Spot("snap", lie.at(along, up), SNAP, words=words, governs=ON)


def _inside(brief: Brief, lie: Lie, up: float) -> Iterator[Spot]:
    """A snap on the under end, and its other half inside where that end comes to lie."""
    yield _snap(lie, SNAP_INSET, up, phrase("snap, holds the under edge"))
    yield _snap(lie, brief.closed + SNAP_INSET, up, phrase("snap, inside"))


def _buttons(brief: Brief, lie: Lie, high: float, pull: float, plain: float, inside: tuple[Spot, ...]) -> Held:
    f = brief.fastening
    downs = even_places(f.count, f.edge_inset, high - f.edge_inset)
    long = hole_length(f.button, f.button_diameter, f.button_height)
    holed, placed = phrase("buttonhole {l}", l=long), phrase("button {d}", d=f.button_diameter)
    holes = tuple(LineMark("buttonhole", _hole(lie, pull, high - y, long), holed, HOLED) for y in downs)
    buttons = tuple(
        Spot("button", lie.at(plain, high - y), f.button_diameter, words=placed, governs=PLACED) for y in downs
    )
    if lie.radius:  # on a curve no place moves straight along
        return Held(holes, (*buttons, *inside))
    handles = [
        Handle("fastening.button_inset", buttons[-1].at, "x", 1.0),
        Handle("fastening.end_inset", holes[-1].path.end, "x", -1.0),
    ]
    if f.count > 1:
        handles.append(Handle("fastening.edge_inset", buttons[0].at, "y", 1.0))
    return Held(holes, (*buttons, *inside), tuple(handles))


def _hole(lie: Lie, outer: float, up: float, long: float) -> Path:
    """A hole of its true length, straight, with its outer end where the pull comes."""
    end = lie.at(outer, up)
    return Path((Line(end.along(lie.way(outer), -long), end),))
