"""Rules about curved hems, whatever skirt they are on, and about cloth that hangs on the bias."""

import math
from collections.abc import Iterator

from studio.brief.hems import usual_hem
from studio.draft import Edge, Piece
from studio.geometry import Arc, Curve
from studio.styles.style import Edit
from studio.words import Phrase, phrase

from .finding import Finding, Worked, hem_edit, within

EASED = 0.04
"""A turned hem's edge may be this much longer than where it is sewn, share of it: more does not ease in (common
practice, no source; it lets pass a circle's hem of 0.6 to 1.5 cm and a flared one's of 2 to 2.5)."""
BIAS = 30.0
"""From so far off the straight of the cloth (degrees; 45 is the true bias) a hem drops (common practice, no source)."""


def hem_too_deep_for_curve(w: Worked) -> Iterator[Finding]:
    """A hem turned up along a curve has too much edge: its depth times the angle that it turns through, 2πf·h on
    f of a circle, whatever the radius (derived). What is more than the cloth eases in is a doubt.

    The remedy is the hem that suits the skirt, 2 to 2.5 cm on a flared one and 0.6 to 1.5 on a circle (common
    practice; 4-H L-87 gives bounds that agree); where even that is too deep, the deepest that eases in.
    """
    hems = [(p, e, sum(_turn(c) for c in e.path.curves)) for p in w.draft.pieces for e in p.edges if e.hem]
    share, piece = max(((turn / e.path.length, p) for p, e, turn in hems), key=lambda one: one[0], default=(0.0, None))
    hem = w.brief.hem
    if piece is None or hem * share <= EASED + 1e-9:
        return
    more = hem * sum(turn * p.cut * (2 if p.on_fold else 1) for p, _, turn in hems)
    edit, does = _shallower(w, EASED / share)
    says = phrase("Turned up {h}, the hem’s edge is {x} too long for its curve.", h=hem, x=more)
    yield Finding("hem-too-deep-for-curve", "doubt", says, "seams.hem", piece.id, edit, does)


def _shallower(w: Worked, most: float) -> tuple[Edit | None, Phrase | None]:
    """The usual hem, or the deepest of `most` mm, in whole millimetres."""
    usual = usual_hem(w.brief.skirt.flare, w.brief.seams.hem_kind, w.brief.cloth.weight)
    if usual <= most + 1e-9:
        return {"seams.hem": None}, phrase("Hem {m}", m=usual)
    deep = float(math.floor(most + 1e-9))
    if not within(w, "seams.hem", deep):
        return None, None
    return hem_edit(w.brief, deep), phrase("Hem {m}", m=deep)


def level_after_hanging(w: Worked) -> Iterator[Finding]:
    """A hem on the bias drops, so the skirt hangs before it is hemmed: at least overnight (common practice, no
    source); "a day" (USDA, Fitting Dresses); two or three days, weighted (The New Dressmaker, 1921).
    """
    piece = next((p for p in w.draft.pieces if any(e.hem and _on_bias(p, e) for e in p.edges)), None)
    if piece is not None:
        says = phrase("Where the hem lies on the bias it drops: let the skirt hang a day, level it, then hem.")
        yield Finding("level-after-hanging", "note", says, "seams.hem", piece.id)


def _turn(c: Curve) -> float:
    """The angle a curve turns through, radians; clockwise, as a piece's hem bulges, is more than 0."""
    if isinstance(c, Arc):
        return math.radians(c.sweep)
    first, last = c.direction(0), c.direction(1)
    return math.atan2(first.cross(last), first.dot(last))


def _on_bias(piece: Piece, hem: Edge) -> bool:
    """Whether some stretch of a hem runs well off both grains of the cloth."""
    grain = piece.grain[0].to(piece.grain[1]).degrees
    return any(_off_grain(c.direction(0).degrees - grain, math.degrees(_turn(c))) >= BIAS for c in hem.path.curves)


def _off_grain(start: float, turn: float) -> float:
    """The most that ways from `start` on, through `turn`, lie off the nearer grain, degrees."""
    low, high = sorted((start, start + turn))
    if math.ceil((low - 45) / 90) <= math.floor((high - 45) / 90):
        return 45.0
    return max(abs((way + 45) % 90 - 45) for way in (low, high))
