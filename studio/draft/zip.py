"""Zips: which length to buy, and what to do with one that is too long."""

from studio.brief import Opening
from studio.words import phrase, tr

from .draft import Notion

ZIPS = (100.0, 120.0, 150.0, 180.0, 200.0, 230.0, 250.0, 300.0, 350.0, 400.0, 450.0, 500.0, 550.0, 600.0, 650.0, 700.0)
"""Lengths sold, mm (common practice, no source; 7, 9, 12, 14, 18, 20, 22 and 24 in are the same to the centimetre)."""
PAST_STOP = {"invisible": 25.0, "lapped": 0.0, "centred": 0.0}
"""How far a zip must run on past the stop, mm: an invisible one is sewn down to it from above
(common practice, no source)."""

BELOW_TACK = 20.0
"""Tape left below the bar-tack when a zip is shortened, mm (common practice, no source)."""


def shortest_zip(opening: Opening, stop: float) -> float:
    """Shortest zip that serves an opening down to `stop`, mm."""
    return stop + PAST_STOP[opening.kind]


def zip_sold(need: float) -> float:
    """The next length sold, mm; the longest there is where none is long enough."""
    return next((z for z in ZIPS if z >= need - 1e-9), ZIPS[-1])


def too_long(have: float, need: float) -> bool:
    """Whether a zip is shortened: one no longer than the next length sold is sewn in as it is."""
    return have > max(need, zip_sold(need)) + 1e-9


def zip_end(opening: Opening, stop: float) -> float:
    """How far below the waist seam the zip ends, mm: as it is sold, or where a longer one is cut."""
    need, have = shortest_zip(opening, stop), opening.zip_on_hand
    if have is None:
        return max(need, zip_sold(need))
    return min(have, need + BELOW_TACK) if too_long(have, need) else max(have, need)


def zip_notion(opening: Opening, stop: float) -> Notion:
    """The zip to buy, or the one on hand and where to shorten it."""
    need = shortest_zip(opening, stop)
    sizes: dict[str, float | int | str] = {"kind": opening.kind}
    if opening.zip_on_hand is None:
        length = zip_sold(need)
        return Notion("zip", phrase("{k:word} zip, {l}", k=tr(opening.kind), l=length), sizes | {"length": length})
    have = opening.zip_on_hand
    sizes["length"] = have
    if not too_long(have, need):
        return Notion("zip", phrase("{k:word} zip, {l}, on hand", k=tr(opening.kind), l=have), sizes)
    cut = min(have, need + BELOW_TACK)
    text = "{k:word} zip, {l}, on hand: bar-tack at {t}, cut at {c}"
    words = phrase(text, k=tr(opening.kind), l=have, t=need, c=cut)
    return Notion("zip", words, sizes | {"bar_tack": need, "cut_at": cut})
