"""Rules about a print that is matched at the seams."""

from collections.abc import Iterator

from msgspec.structs import replace

from studio.brief import Held
from studio.cloth.placed import Placed
from studio.cloth.ways import grain_down, phase_point
from studio.draft import Piece
from studio.styles import rack
from studio.words import phrase

from .finding import Finding, Worked, tried, within
from .held import InHand, in_hand, righted

TRUE = 0.5
"""A motif that is off by less (mm) meets itself."""


def print_matches_at_seam(w: Worked) -> Iterator[Finding]:
    """Where the print is matched, each panel along the cloth is a whole number of repeats wide, so that the motif runs
    on across its seams, and all lie at one place of the repeat. Gathered and tiered panels are made so: the note says
    how far that moves the fullness. Of others it says how much is over. A panel that is held elsewhere in the repeat
    is moved to the next motif, or let go.
    """
    repeat = w.brief.cloth.repeat
    if not w.brief.cloth.match:
        return
    if repeat is None:
        says = phrase("To match the print, its repeat must be known.")
        does = phrase("Leave the seams unmatched")
        yield Finding("print-matches-at-seam", "doubt", says, "cloth.repeat", "", {"cloth.match": False}, does)
        return
    yield from _held_off(w)
    for piece in w.draft.pieces:
        over = _over(piece, repeat)
        if over is not None and TRUE < over < repeat - TRUE:
            text = "{p:word} is {over} wider than whole repeats of {r}; the motif breaks at its seam."
            says = phrase(text, p=piece.name, over=over, r=repeat)
            yield Finding("print-matches-at-seam", "doubt", says, "cloth.match", piece.id)
            return
    yield from _moved(w)


def _over(piece: Piece, repeat: float) -> float | None:
    """How much wider than whole repeats a panel is between its side seams (mm), or None for what is no such panel."""
    if piece.cloth != "main" or grain_down(piece) or not 0 < piece.row < 10:
        return None
    return piece.seam_line.box.width % repeat


def _moved(w: Worked) -> Iterator[Finding]:
    """How much the matching alone moved the fullness."""
    path = rack.its_style(w.brief).fullness
    if not path:
        return
    asked, made = rack.value(w.brief, path), w.draft.fact("flat_width") / w.brief.waist_seam
    unmatched = tried(w, {"cloth.match": False}).draft.fact("flat_width") / w.brief.waist_seam
    if abs(made - asked) < 0.005 or abs(unmatched - asked) > 1e-9:
        return
    text = "To match the print at the seams the cloth is {m:ratio} times the seam, not {a:ratio}."
    kept = within(w, path, made)
    edit = {path: made} if kept else None
    does = phrase("Fullness {m:ratio}", m=made) if kept else None
    says = phrase(text, m=made, a=asked)
    yield Finding("print-matches-at-seam", "note", says, path, "skirt", edit, does)


def _held_off(w: Worked) -> Iterator[Finding]:
    """Panels held where the motif would not meet itself at their seams."""
    ill = _adrift(w)
    if ill:
        off = [_past(w, i.placed) for i in ill]
        text = "{p:word} is held {d} from where a motif starts; the print breaks at its seams."
        says = phrase(text, p=ill[0].placed.piece.name, d=abs(off[0]))
        moved = [_moved_to(w, i.held, i.held.x - d) for i, d in zip(ill, off, strict=True)]
        edit, does = righted(w, ill, moved, _adrift, (phrase("Move it to a motif"), phrase("Move them to a motif")))
        yield Finding("print-matches-at-seam", "doubt", says, "cloth.held", ill[0].held.piece, edit, does)


def _moved_to(w: Worked, held: Held, x: float) -> Held:
    return replace(held, x=x if x >= 0 else x + (w.brief.cloth.repeat or 0.0))


def _adrift(w: Worked) -> list[InHand]:
    """Held panels that are not where a motif starts; none where all panels are out by the same, and so agree."""
    if not w.brief.cloth.held:
        return []
    r, panels = w.brief.cloth.repeat or 1.0, [_past(w, p) for p in w.lay.placed if phase_point(p.piece, w.brief.cloth)]
    if all(abs((p - panels[0] + r / 2) % r - r / 2) <= TRUE for p in panels):
        return []
    return [i for i in in_hand(w) if phase_point(i.placed.piece, w.brief.cloth) and abs(_past(w, i.placed)) > TRUE]


def _past(w: Worked, placed: Placed) -> float:
    """How far past the nearest start of a motif a panel begins, mm."""
    cloth = w.brief.cloth
    at, repeat = phase_point(placed.piece, cloth), cloth.repeat or 1.0
    along = (placed.on_cloth(at).x if at else 0.0) - cloth.offset
    return along - round(along / repeat) * repeat
