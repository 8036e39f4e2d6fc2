"""The rule about numbers that a draft could not take as they were typed."""

import math
from collections.abc import Iterator, Mapping
from typing import Any

from studio.draft.drawn import Drawn
from studio.styles import rack

from .finding import Finding, Worked, edit_words, tried, within


def as_typed(w: Worked) -> Iterator[Finding]:
    """Every number is drafted as it was typed, or said to be drawn in: a sweep that so few gores cannot take, a slit
    longer than its seam, tiers deeper than the skirt. The remedy sets the number to what was made of it, or leaves
    it to the draft.
    """
    for one in w.draft.drawn:
        edit = _mends(w, one)
        does = None if edit is None else (one.does or edit_words(w.brief, edit))
        yield Finding("as-typed", "doubt", one.says, one.path, _piece(w, one.path), edit, does)


def _mends(w: Worked, one: Drawn) -> Mapping[str, Any] | None:
    """The edit after which the number is as it was asked; none that the form would not take."""
    edit = one.instead
    if edit is None:
        made = _rounded(w, one)
        if not within(w, one.path, made):
            return None
        edit = {one.path: made}
    return None if any(d.path == one.path for d in tried(w, edit).draft.drawn) else edit


def _rounded(w: Worked, one: Drawn) -> float:
    """What was made, in whole millimetres, to the side on which it can be had."""
    if rack.declarations(w.brief)[one.path].kind == "count":
        return round(one.made)
    return float(math.floor(one.made) if one.made < one.asked else math.ceil(one.made))


def _piece(w: Worked, path: str) -> str:
    """The first piece that shows the number."""
    shown = (p.id for p in w.draft.pieces if any(d.path == path for d in p.dimensions))
    return next(shown, "skirt")
