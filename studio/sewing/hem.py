"""The hem: levelled where it drops, then turned, faced or narrow."""

from collections.abc import Iterator

from studio.brief import Brief
from studio.draft import Draft
from studio.draft.making import Making, Shown
from studio.words import Phrase, phrase, tr

from .cautions import childs, hem_cautions
from .saying import panels

EDGE = 2.0
"""Stitched so far (mm) from a fold: the width of a presser foot's inner edge (common practice, no source)."""
EASE_ROW = 6.0
"""A long stitch this far (mm) from the raw edge draws a curved hem in: 1/4 in (common practice, no source)."""


def hem(brief: Brief, draft: Draft) -> Iterator[Making]:
    """Level, then hem."""
    if levels(brief):
        yield _level(brief, draft)
    kind = brief.seams.hem_kind
    says = [*_TURNS[kind](brief)]
    if draft.has("hem_sweep"):
        says.append(phrase("All round it is {s}.", s=draft.fact("hem_sweep")))
    title = tr("Face the hem") if kind == "faced" else tr("Turn the hem")
    yield Making("hem", "hem", title, tuple(says), _foot(draft), ("iron", *childs(brief, "cords")))


def levels(brief: Brief) -> bool:
    """Whether its hem drops as it hangs, and is levelled before it is turned."""
    return brief.skirt.flare in ("flared", "circle")


def _foot(draft: Draft) -> Shown | None:
    """The foot of a panel that is hemmed."""
    piece = next((p for p in panels(draft.pieces) if any(e.name == "hem" for e in p.edges)), None)
    return Shown(piece.id, ("hem",), ("hem", "first turn"), "foot") if piece else None


def _level(brief: Brief, draft: Draft) -> Making:
    says = (
        phrase("Hang the skirt by its waist for a day: cloth on the bias drops."),
        phrase("On the wearer, chalk a level line up from the floor, {l} below the waist seam at the side.",
               l=brief.finished_length),
        phrase("Trim level, {h} below the line.", h=brief.hem),
    )  # fmt: skip
    return Making("level", "hem", tr("Let it hang, then level"), says, _foot(draft))


def _twice(brief: Brief) -> Iterator[Phrase]:
    first, rest = brief.first_turn, brief.hem - brief.first_turn
    if not 0 < first < brief.hem:
        yield from _single(brief)
        return
    yield from _eased(brief)
    yield phrase("Press {t} under at the raw edge, then {r} up to the hem line.", t=first, r=rest)
    yield phrase("Stitch {e} from the upper fold, or slip-stitch for a hem unseen.", e=EDGE)


def _single(brief: Brief) -> Iterator[Phrase]:
    yield from _eased(brief)
    yield phrase("Turn {h} up along the hem line and press.", h=brief.hem)
    yield phrase("Catch-stitch the neatened edge by hand, without pulling.")


def _narrow(brief: Brief) -> Iterator[Phrase]:
    half = brief.hem / 2
    yield phrase("Stitch round {h} above the raw edge.", h=half)
    yield phrase("Fold there, then once more {h}, and stitch {e} from the inner fold.", h=half, e=min(EDGE, half / 2))
    yield phrase("Stretch nothing: let the feed take the curve.")


def _faced(brief: Brief) -> Iterator[Phrase]:
    a, deep = brief.seams.allowance, brief.seams.hem_facing
    yield phrase("Join the facing’s ends, then sew it to the hem, right sides together, {a} from the edge.", a=a)
    yield phrase("Grade and clip the allowances.")
    yield phrase("Turn the facing in, {d} deep, roll the seam inside, press.", d=deep)
    yield phrase("Catch its neatened edge by hand.")


def _eased(brief: Brief) -> Iterator[Phrase]:
    if brief.skirt.flare != "straight":
        yield phrase("Stitch a long row {e} from the raw edge, and draw the fullness in by it.", e=EASE_ROW)


_TURNS = {"turned twice": _twice, "single": _single, "narrow": _narrow, "faced": _faced}


def finish(brief: Brief, draft: Draft) -> Iterator[Making]:
    """Press, and wear."""
    press = (
        phrase("Press from the wrong side, with the grain, and over a cloth on the right side."),
        phrase("Let it hang until it is dry and cool."),
    )
    yield Making("press", "press", tr("Press"), press, cautions=("iron",))
    wear = [
        phrase("Measure once more: waist {c}, length {l}.", c=draft.fact("closed_girth"), l=brief.finished_length),
        phrase("Hang it by the waist."),
        phrase("Wash it as the cloth was washed."),
    ]
    cautions = (*hem_cautions(brief, draft), *childs(brief, "small parts"), "general")
    yield Making("wear", "press", tr("Wear"), tuple(wear), cautions=cautions)
