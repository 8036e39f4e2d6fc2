"""Rules about a print that is matched at the seams."""

from collections.abc import Iterator

from studio.cloth.ways import grain_down
from studio.draft import Piece
from studio.styles import rack
from studio.words import phrase

from .finding import Finding, Worked, within

TRUE = 0.5
"""A motif that is off by less (mm) meets itself."""


def print_matches_at_seam(w: Worked) -> Iterator[Finding]:
    """Where the print is matched, each panel along the cloth is a whole number of repeats wide, so that the motif runs
    on across its seams. Gathered and tiered panels are made so: the note says how far that moves the fullness. Of
    others it says how much is over.
    """
    repeat = w.brief.cloth.repeat
    if not w.brief.cloth.match:
        return
    if repeat is None:
        says = phrase("To match the print, its repeat must be known.")
        does = phrase("Leave the seams unmatched")
        yield Finding("print-matches-at-seam", "doubt", says, "cloth.repeat", "", {"cloth.match": False}, does)
        return
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
    """How much the matching moved the fullness."""
    if "skirt.fullness" not in rack.declarations(w.brief):
        return
    asked, made = rack.value(w.brief, "skirt.fullness"), w.draft.fact("flat_width") / w.brief.waist_seam
    whole = rack.value(w.brief, "skirt.cut") == "across" and rack.value(w.brief, "skirt.whole_widths")
    if abs(made - asked) < 0.005 or whole:
        return
    text = "To match the print at the seams the cloth is {m:ratio} times the seam, not {a:ratio}."
    kept = within(w, "skirt.fullness", made)
    edit = {"skirt.fullness": made} if kept else None
    does = phrase("Fullness {m:ratio}", m=made) if kept else None
    says = phrase(text, m=made, a=asked)
    yield Finding("print-matches-at-seam", "note", says, "skirt.fullness", "skirt", edit, does)
