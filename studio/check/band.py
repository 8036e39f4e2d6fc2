"""Rules about the waistband and what closes it."""

import math
from collections.abc import Iterator
from typing import Any

from studio.draft import Piece
from studio.draft.fastening import closed_girth, inset, laps, over
from studio.geometry import Arc, Line
from studio.words import phrase

from .finding import Finding, Worked
from .rebanded import NAMES, contour_fits, rebanded

SHAPED = 50.0
"""A band wider than this (mm) is better shaped to the body (common practice, no source)."""
HOLDS = 1.0
"""A closed band this near (mm) to what was meant is right."""


def closed_girth_holds(w: Worked) -> Iterator[Finding]:
    """Closed, the band measures B: with the hole's outer end i from the extension's end and the button b from the
    plain end it closes at B + x − i − b, where x is the extension or a wrap's overlap. The remedy puts the button
    where the band closes true. Where one end is too short to lap over the other at all, it makes it longer.
    """
    off = closed_girth(w.brief) - w.brief.closed
    if abs(off) < HOLDS or not laps(w.brief):
        return
    words = "The band closes {d} too loose." if off > 0 else "The band closes {d} too tight."
    place = "fastening.button_inset"
    remedy: dict[str, Any] = {place: None}
    does = phrase("Button where it closes true")
    if over(w.brief) < inset(w.brief):
        wrap, wide = w.brief.opening.kind == "wrap", math.ceil(inset(w.brief) / 5) * 5.0
        place = "opening.overlap" if wrap else "waistband.extension"
        remedy = {place: wide, **remedy}
        does = phrase("Overlap {w}" if wrap else "Extension {w}", w=wide)
    piece = "" if w.brief.waistband.kind == "faced" else "waistband"
    yield Finding("closed-girth-holds", "doubt", phrase(words, d=abs(off)), place, piece, remedy, does)


def band_needs_shape(w: Worked) -> Iterator[Finding]:
    """A straight band wider than 5 cm stands away from the body at its top. The remedy is a contour band, or 5 cm where
    the cloth is too narrow for its curve.
    """
    width = w.brief.waistband.width
    if width > SHAPED + 1e-9 and w.brief.waistband.kind in ("folded", "two-piece"):
        says = phrase(
            "A straight band of {w} stands away at the top; above {m} shape it to the body.", w=width, m=SHAPED
        )
        remedy, does = {"waistband.width": SHAPED}, phrase("Band {m}", m=SHAPED)
        shaped = rebanded(w.brief, "contour")
        if contour_fits(w.brief, shaped):
            remedy, does = shaped, NAMES["contour"]
        yield Finding("band-needs-shape", "note", says, "waistband.width", "waistband", remedy, does)


def binding_on_bias(w: Worked) -> Iterator[Finding]:
    """A strip along the grain binds a straight edge; round a curve it puckers, so there it is cut on the bias, at 45
    degrees to the grain (common practice, no source). The strip lies along the cloth in the plan, so the square that
    gives it on the bias, (length + width) / √2 a side (derived), is said.
    """
    if w.brief.waistband.kind != "bound" or _curved(w) <= CURVED:
        return
    box = next(p for p in w.draft.pieces if p.id == "waistband").cut_line.box
    text = (
        "The waist is curved: cut the binding on the bias, at 45 degrees to the grain, in one from a square of {s} or "
        "pieced; the plan lays it along the cloth."
    )
    says = phrase(text, s=(box.width + box.height) / math.sqrt(2))
    yield Finding("binding-on-bias", "note", says, "waistband.kind", "waistband")


CURVED = 45.0
"""A waist that turns through more than this all round (degrees) is bound on the bias (common practice, no source)."""


def _curved(w: Worked) -> float:
    """How far the arcs of the waist turn as it is cut, all round, degrees."""
    pieces = {p.id: p for p in w.draft.pieces}
    waist = next(s for s in w.draft.seams if s.name == "waist")
    edges = (pieces[part.piece].edge(part.edge) for part in waist.one)
    return sum(abs(c.sweep) for e in edges for c in e.path.curves if isinstance(c, Arc))


def interfacing_fits(w: Worked) -> Iterator[Finding]:
    """Interfacing lies within the cut edges of the piece it stiffens."""
    pieces = {p.id: p for p in w.draft.pieces}
    for inner in w.draft.pieces:
        if inner.cloth != "interfacing":
            continue
        outer = pieces.get("waistband" if inner.id == "interfacing" else inner.id.removeprefix("interfacing-"))
        if outer is not None and _beyond(inner, outer) > SHOWS:
            says = phrase("The interfacing is larger than the band.")
            if outer.id != "waistband":
                says = phrase("The interfacing is larger than the piece it stiffens: {p:word}.", p=outer.name)
            yield Finding("interfacing-fits", "stop", says, "waistband.interfacing", inner.id)


SHOWS = 0.1
"""Interfacing that reaches no further (mm) past a cut edge does not show."""


def _beyond(inner: Piece, outer: Piece) -> float:
    """How far a piece reaches past another's cut edges, mm: its box, and on curves its corners and middles too."""
    a, b = inner.cut_line.box, outer.cut_line.box
    far = max(b.left - a.left, a.right - b.right, b.top - a.top, a.bottom - b.bottom)
    if all(isinstance(c, Line) for c in outer.cut_line.curves):
        return far
    for c in inner.cut_line.curves:
        for share in (0.0, 0.5):
            along, off = outer.cut_line.nearest(c.at(share))
            if off > SHOWS:
                outward = outer.cut_line.direction(along).outward()
                far = max(far, outer.cut_line.at(along).to(c.at(share)).dot(outward))
    return far
