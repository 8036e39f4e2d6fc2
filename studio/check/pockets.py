"""Rules about pockets."""

import math
from collections.abc import Iterator

from studio.cloth.lay import lay_out
from studio.draft import Piece
from studio.draft.pocket import inside
from studio.geometry import Path, Point
from studio.styles import rack
from studio.styles.style import Edit
from studio.words import Phrase, phrase

from .finding import Finding, Worked, within

CLEAR = 20.0
"""Between the end of a zip and a pocket at least this much of the seam is sewn (mm; common practice, no source)."""


def pocket_at_side_seam(w: Worked) -> Iterator[Finding]:
    """A pocket in the side seam wants a seam at the side that is long enough for it. The remedies: an opening at the
    side, which makes one; a shorter pocket; patches instead.
    """
    if w.brief.pockets.kind != "in seam" or any(p.id == "pocket-bag" for p in w.draft.pieces):
        return
    says = phrase("There is no side seam that holds a pocket of {p} from {t} down.",
                  p=w.brief.pockets.opening, t=w.brief.pockets.top)  # fmt: skip
    tries: tuple[tuple[Edit, Phrase], ...] = (
        ({"skirt.panels": 4}, phrase("Four panels")),
        ({"skirt.gores": 8}, phrase("Eight gores")),
        ({"opening.place": "side"}, phrase("Open at the side")),
    )
    for edit, does in tries:
        if edit.keys() <= rack.declarations(w.brief).keys() and _mends(w, edit):
            yield Finding("pocket-at-side-seam", "stop", says, "pockets.kind", "skirt", edit, does)
            return
    yield Finding("pocket-at-side-seam", "stop", says, "pockets.kind", "skirt", {"pockets.kind": "none"},
                  phrase("No pockets"))  # fmt: skip


def _mends(w: Worked, edit: Edit) -> bool:
    """Whether the pocket finds its seam once the brief is edited so, and the cloth still holds every piece."""
    after = rack.edit(w.brief, edit)
    drafted = rack.draft(after)
    bags = any(p.id == "pocket-bag" for p in drafted.pieces)
    at_side = after.opening.place == "side" and after.opening.kind != "none"
    clear = not at_side or after.pockets.top >= after.stop + CLEAR
    return bags and clear and len(lay_out(drafted.pieces, after.cloth).misfits) <= len(w.lay.misfits)


def pocket_clear_of_opening(w: Worked) -> Iterator[Finding]:
    """No pocket crosses the zip: with the opening at the side, it begins below the stop, or the opening moves to the
    centre back.
    """
    brief = w.brief
    if brief.pockets.kind != "in seam" or brief.opening.place != "side" or brief.opening.kind == "none":
        return
    need = brief.stop + CLEAR
    if brief.pockets.top >= need - 1e-9 or not any(p.id == "pocket-bag" for p in w.draft.pieces):
        return
    text = "The pocket begins {t} down, and the opening beside it ends at {s}."
    says = phrase(text, t=brief.pockets.top, s=brief.stop)
    top = math.ceil(need / 5 - 1e-9) * 5.0
    tries: tuple[tuple[Edit, Phrase], ...] = (
        ({"opening.place": "centre back"}, phrase("Open at the back")),
        ({"pockets.top": top}, phrase("From {t}", t=top)),
    )
    for edit, does in tries:
        if all(within(w, p, v) for p, v in edit.items() if isinstance(v, float)) and _mends(w, edit):
            yield Finding("pocket-clear-of-opening", "doubt", says, "pockets.top", "skirt", edit, does)
            return
    yield Finding("pocket-clear-of-opening", "doubt", says, "pockets.top", "skirt", {"pockets.kind": "none"},
                  phrase("No pockets"))  # fmt: skip


def patch_fits(w: Worked) -> Iterator[Finding]:
    """A patch lies on its panel as a whole, above the hem, and across no dart and no fold. The remedy is the highest
    place below the waist where it does; where there is none, to leave it out.
    """
    if w.brief.pockets.kind != "patch":
        return
    found = [(p, m.path) for p in w.draft.pieces for m in p.lines if m.role == "pocket"]
    if found and all(_lies(p, path) for p, path in found):
        return
    text = "A patch of {a} by {b} does not lie clear on its panel."
    says = phrase(text, a=w.brief.pockets.width, b=w.brief.pockets.depth)
    places = (float(t) for t in range(0, 301, 10) if found and all(_lies(p, _moved(w, path, t)) for p, path in found))
    top = next(places, None)
    remedy: Edit = {"pockets.kind": "none"} if top is None else {"pockets.top": top}
    does = phrase("No pockets") if top is None else phrase("From {t}", t=top)
    piece = found[0][0].id if found else "skirt"
    yield Finding("patch-fits", "doubt", says, next(iter(remedy)), piece, remedy, does)


def _moved(w: Worked, patch: Path, top: float) -> Path:
    """The same patch, begun so far below the waist (mm)."""
    into = patch.curves[1].direction(0)
    by = top - w.brief.pockets.top
    return patch.moved(into.x * by, into.y * by)


def _lies(piece: Piece, patch: Path) -> bool:
    corners = tuple(c.start for c in patch.curves)
    if not inside(piece.seam_line, corners):
        return False
    lines = [m.path for m in piece.lines if m.role in ("dart", "pleat fold", "placement")]
    return not any(inside(patch, (p,)) for path in lines for p in _along(path))


def _along(path: Path) -> Iterator[Point]:
    """Places along a line, near enough that none steps over a pocket."""
    return (path.at(path.length * k / 24) for k in range(25))
