"""What closes the band: which end carries what, and how far from where."""

from collections.abc import Iterator

from studio.brief import Brief
from studio.draft import Draft
from studio.draft.bands.faced import BELOW
from studio.draft.fastening import (
    HOOK_INSET,
    SNAP_INSET,
    button_place,
    closed_girth,
    even_places,
    held_by,
    hole_length,
    hook_count,
    inset,
    laps,
)
from studio.draft.making import Making, Shown
from studio.draft.placket import ABOVE, OVER, placket_count, placket_step, strip_width
from studio.words import Phrase, phrase, tr

from .cautions import childs
from .saying import in_rows


def fastening(brief: Brief, draft: Draft) -> Iterator[Making]:
    """Buttons and holes, hooks, or snaps: those of the band, then those down a placket."""
    held = held_by(brief)
    if held:
        if held == "buttons":
            yield _holes(brief)
        yield _sewn_on(brief, draft, held)
    if brief.opening.kind == "placket" and any(p.id == OVER for p in draft.pieces):
        yield _down_placket(brief, held)


def _over_end(brief: Brief) -> str:
    """What the end that lies on top is called."""
    return tr("extension") if brief.lap else tr("upper end")


def _under_end(brief: Brief) -> str:
    return tr("plain end")


def _heights(count: int, places: list[float]) -> tuple[Phrase, ...]:
    if count == 1:
        return (phrase("Its middle lies {y} below the top edge.", y=places[0]),)
    return in_rows("They lie {lengths} below the top edge.", places)


def _holes(brief: Brief) -> Making:
    f, high = brief.fastening, brief.waistband.depth
    downs = even_places(f.count, f.edge_inset, high - f.edge_inset)
    one = f.count == 1
    text = "Work a buttonhole {h} long in the {end:word}." if one else (
        "Work {n:count} buttonholes, each {h} long, in the {end:word}."
    )  # fmt: skip
    says = (
        phrase(text, n=f.count, h=hole_length(f.button, f.button_diameter, f.button_height), end=_over_end(brief)),
        phrase("It runs along the band, and begins {i} from that end.", i=inset(brief)) if one
        else phrase("They run along the band, and begin {i} from that end.", i=inset(brief)),
        *_heights(f.count, downs),
        phrase("Try the length on a scrap of the same layers first."),
    )  # fmt: skip
    title = tr("Work the buttonhole") if one else tr("Work the buttonholes")
    shown = Shown("waistband", ("extension end",), ("buttonhole",), "right", right_side=True)
    return Making("holes", "close", title, says, shown, ("point", "needle"))


def _sewn_on(brief: Brief, draft: Draft, held: str) -> Making:
    place, high = button_place(brief), brief.waistband.depth
    if held == "buttons":
        title = tr("Sew the button on") if brief.fastening.count == 1 else tr("Sew the buttons on")
        says = [*_buttons(brief, place)]
    elif held == "snap":
        title, says = tr("Sew the snaps on"), [*_snaps(brief, place, high)]
    else:
        title, says = tr("Sew the hooks on"), [*_hooks(brief, held, place, high)]
    if brief.opening.kind == "wrap":
        says.append(phrase("One more snap holds the under end: its middle {i} from that end.", i=SNAP_INSET))
        says.append(phrase("Its other half lies inside, {p} from the plain end.", p=brief.closed + SNAP_INSET))
    says.append(phrase("Close the waist and measure it: {c}.", c=closed_girth(brief)))
    piece = "waistband" if any(p.id == "waistband" for p in draft.pieces) else ""
    shown = Shown(piece, (), (), "left", right_side=True) if piece else None
    return Making("fastening", "close", title, tuple(says), shown, childs(brief, "small parts"))


def _buttons(brief: Brief, place: float) -> Iterator[Phrase]:
    f = brief.fastening
    text = "Sew a button of {d} to the {end:word}, {b} from that end." if f.count == 1 else (
        "Sew {n:count} buttons of {d} to the {end:word}, {b} from that end."
    )  # fmt: skip
    yield phrase(text, n=f.count, d=f.button_diameter, end=_under_end(brief), b=place)
    yield phrase("Give it a shank as high as the band with its hole is thick.")


def _snaps(brief: Brief, place: float, high: float) -> Iterator[Phrase]:
    balls = "Balls go under the {end:word}, their middles {i} from that end."
    yield phrase(balls, end=_over_end(brief), i=inset(brief))
    yield phrase("Sockets go outside on the {end:word}, {b} from that end.", end=_under_end(brief), b=place)
    yield from _where_high(brief, high)


def _hooks(brief: Brief, held: str, place: float, high: float) -> Iterator[Phrase]:
    if held == "hook and eye" or not laps(brief):
        yield phrase("The ends meet. Sew the hook inside one end, {i} back from its edge.", i=HOOK_INSET)
        yield phrase("Sew the eye inside the other end, so that it stands {o} out.", o=-place)
    else:
        yield phrase("Hooks go under the {end:word}, {i} back from its edge.", end=_over_end(brief), i=HOOK_INSET)
        yield phrase("Bars go outside on the {end:word}, {b} from that end.", end=_under_end(brief), b=place)
    yield from _where_high(brief, high)
    yield phrase("Sew through the inner layers only.")


def _where_high(brief: Brief, high: float) -> Iterator[Phrase]:
    """How far below the top edge; across a band they are spread evenly."""
    if not high:
        yield phrase("They lie {b} below the edge.", b=BELOW)
        return
    n = hook_count(high)
    if n == 1:
        yield phrase("Their middles lie {y} below the top edge.", y=high / 2)
        return
    yield from _heights(n, even_places(n, high / (2 * n), high * (1 - 1 / (2 * n))))


def _down_placket(brief: Brief, held: str) -> Making:
    n, step = placket_count(brief), placket_step(brief)
    says = [phrase("{n:count} down the placket, {s} apart, the first {s} below the waist seam.", n=n, s=step)]
    if held == "buttons":
        says.append(phrase("Holes stand upright in the over strip, each beginning {a} above its button.", a=ABOVE))
        text = "Buttons go on the under edge, {b} in from it, through skirt and strip."
        says.append(phrase(text, b=button_place(brief)))
        title, shown = tr("Button the placket"), Shown(OVER, (), ("buttonhole",), right_side=True)
    else:
        text = "Balls go under the over strip, sockets on the under edge, each {m} from the seam."
        says.append(phrase(text, m=strip_width(brief) / 2))
        title, shown = tr("Snap the placket"), Shown(OVER, right_side=True)
    return Making("placket fastening", "close", title, tuple(says), shown, ("point",) if held == "buttons" else ())
