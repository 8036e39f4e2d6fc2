"""Rules about pockets."""

import math
from collections.abc import Iterable, Iterator
from itertools import combinations

from studio.draft.patch import drawn_top, seat_of
from studio.draft.patch_bed import Bed, bed, overlap
from studio.draft.side_pocket import down, need_of
from studio.styles import rack
from studio.styles.style import Edit
from studio.words import Phrase, phrase

from .finding import Finding, Worked, edit_words, tried, within

CLEAR = 20.0
"""Between the end of a zip and a pocket at least this much of the seam is sewn (mm; common practice, no source)."""
LOW = 140.0
"""A pocket in the seam that begins deeper than this (mm) is no longer reached (common practice, no source)."""
HIGHEST, LOWEST = 20.0, 200.0
"""A patch is moved no nearer to the waist, and no deeper below it, than this (mm; common practice, no source)."""
NARROW, SHALLOW = 100.0, 120.0
"""A patch narrower or shallower than this (mm) holds no hand (common practice, no source)."""

NONE: tuple[Edit, Phrase] = ({"pockets.kind": "none"}, phrase("No pockets"))
PATCHES: tuple[Edit, Phrase] = ({"pockets.kind": "patch"}, phrase("Patch pockets"))
BESIDE: tuple[Edit, Phrase] = ({"opening.place": "side"}, phrase("Open at the side"))


def pocket_at_side_seam(w: Worked) -> Iterator[Finding]:
    """A pocket in the side seam wants a seam at the side that is long enough for it. The remedy is the first of these
    that gives it one: the next number of panels that four divides, an opening at the side; else patches, or no pockets.
    Where every seam is too short, more of them are of no use.
    """
    if w.brief.pockets.kind != "in seam" or _bags(w):
        return
    says = phrase("There is no side seam that holds a pocket of {p} from {t} down.",
                  p=w.brief.pockets.opening, t=w.brief.pockets.top)  # fmt: skip
    tries = [*_quartered(w), BESIDE] if _deep(w) else []
    edit, does = next((one for one in (*tries, PATCHES) if _mends(w, one[0])), NONE)
    yield Finding("pocket-at-side-seam", "stop", says, "pockets.kind", "skirt", edit, does)


def _quartered(w: Worked) -> Iterator[tuple[Edit, Phrase]]:
    """The edit to the next number of panels that four divides, so that there is a seam at each side."""
    path = rack.its_style(w.brief).parts
    edit = rack.parted(w.brief, 4 * (rack.value(w.brief, path) // 4 + 1)) if path else None
    if edit:
        yield edit, edit_words(w.brief, edit)


def pocket_clear_of_opening(w: Worked) -> Iterator[Finding]:
    """No pocket crosses the opening, for one edge cannot take both: with the opening at the side, the pocket begins
    below the stop, or the opening moves to the centre back; else there are patches, or none.
    """
    if w.brief.pockets.kind != "in seam" or not _bags(w) or not _crosses(w):
        return
    text = "The pocket begins {t} down, and the opening beside it ends at {s}."
    says = phrase(text, t=w.brief.pockets.top, s=w.brief.stop)
    top = math.ceil((w.brief.stop + CLEAR) / 5 - 1e-9) * 5.0
    tries: list[tuple[Edit, Phrase]] = [({"opening.place": "centre back"}, phrase("Open at the back"))]
    if top <= LOW and within(w, "pockets.top", top):
        tries.insert(0, ({"pockets.top": top}, phrase("Pocket from {t} down", t=top)))
    edit, does = next((one for one in (*tries, PATCHES) if _mends(w, one[0])), NONE)
    yield Finding("pocket-clear-of-opening", "stop", says, next(iter(edit)), "skirt", edit, does)


def patch_fits(w: Worked) -> Iterator[Finding]:
    """A patch lies on its panel as a whole, above the hem, and across no dart, no fold and no other patch. The remedy
    is the nearest place higher or lower where it does; else a narrower or a shallower patch; else none.
    """
    if w.brief.pockets.kind != "patch":
        return
    beds = _beds(w)
    p = w.brief.pockets
    if beds and _clear(beds, p.top, p.width, p.depth):
        return
    says = phrase("A patch of {a} by {b} does not lie clear on its panel.", a=p.width, b=p.depth)
    edit, does = next(_refitted(w, beds), NONE) if beds else NONE
    piece = beds[0][0] if beds else "skirt"
    yield Finding("patch-fits", "doubt", says, next(iter(edit)), piece, edit, does)


def _deep(w: Worked) -> bool:
    """Whether any seam down from the waist, or the side of a panel that might become one, would hold the pocket."""
    panels = (p for p in w.draft.pieces if any(e.name == "waist" for e in p.edges) and p.row == 1)
    return any(down(p, side).length > need_of(w.brief) for p in panels for side in ("left", "right"))


def _bags(w: Worked) -> bool:
    return any(p.id == "pocket-bag" for p in w.draft.pieces)


def _crosses(w: Worked) -> bool:
    """Whether the opening is at the side, and a pocket in that seam would begin before it ends."""
    at_side = w.brief.opening.place == "side" and w.brief.opening.kind != "none"
    return at_side and w.brief.pockets.top < w.brief.stop + CLEAR - 1e-9


def _mends(w: Worked, edit: Edit) -> bool:
    """Whether the brief has its pockets once it is edited so, clear of all, and the cloth still holds every piece."""
    if all(rack.value(w.brief, path) == v for path, v in edit.items()):
        return False
    then = tried(w, edit)
    p = then.brief.pockets
    if p.kind == "patch":
        beds = _beds(then)
        placed = bool(beds) and _clear(beds, p.top, p.width, p.depth)
    else:
        placed = _bags(then) and not _crosses(then)
    return placed and _unfit(then) <= _unfit(w)


def _unfit(w: Worked) -> set[str]:
    """The pieces that are named as too wide for the cloth: the band, and the first of the panels."""
    ids = [p.id for p in w.lay.misfits]
    return {i for i in ids if i == "waistband"} | set([i for i in ids if i != "waistband"][:1])


def _beds(w: Worked) -> list[tuple[str, Bed]]:
    """What each patch lies on, with the panel's id."""
    return [
        (p.id, bed(p, seat_of(m.path, drawn_top(w.brief, p))))
        for p in w.draft.pieces for m in p.lines if m.role == "pocket"
    ]  # fmt: skip


def _clear(beds: Iterable[tuple[str, Bed]], top: float, width: float, depth: float) -> bool:
    """Whether every patch, so placed and so large, lies clear."""
    return all(b.room(width).holds(top, depth) for _, b in beds) and _apart(beds, top, width, depth)


def _apart(beds: Iterable[tuple[str, Bed]], top: float, width: float, depth: float) -> bool:
    """Whether no two patches lie over each other."""
    drawn = [(piece, b.seat.outline(top, width, depth)) for piece, b in beds]
    return not any(a == b and overlap(one, other) for (a, one), (b, other) in combinations(drawn, 2))


def _refitted(w: Worked, beds: list[tuple[str, Bed]]) -> Iterator[tuple[Edit, Phrase]]:
    """Edits that let the patches lie clear, the nearest first."""
    p = w.brief.pockets
    rooms = [b.room(p.width) for _, b in beds]

    def fits(top: float, depth: float) -> bool:
        return all(r.holds(top, depth) for r in rooms) and _apart(beds, top, p.width, depth)

    steps = [HIGHEST + 10 * k for k in range(int((LOWEST - HIGHEST) / 10) + 1)]
    for top in sorted(steps, key=lambda t: abs(t - p.top)):
        if fits(top, p.depth):
            yield {"pockets.top": top}, phrase("Patch from {t} down", t=top)
    for width in _less(p.width, NARROW):
        if _clear(beds, p.top, width, p.depth):
            yield {"pockets.width": width}, phrase("Patch {a} wide", a=width)
    for depth in _less(p.depth, SHALLOW):
        if fits(p.top, depth):
            yield {"pockets.depth": depth}, phrase("Patch {b} deep", b=depth)


def _less(size: float, least: float) -> Iterator[float]:
    """Whole centimetres below a size, down to the least."""
    return (10.0 * k for k in range(math.ceil(size / 10) - 1, math.ceil(least / 10) - 1, -1))
