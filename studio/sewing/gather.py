"""Gather rows: how many, how far apart, where they start and stop."""

from collections.abc import Iterator, Sequence

from studio.brief import Brief
from studio.draft import Draft, Piece
from studio.draft.gathers import BREAK, row_heights
from studio.draft.making import Making, Shown
from studio.words import Phrase, phrase, tr

from .saying import in_rows, panels

THREADS = 100.0
"""Thread ends are left so long (mm) to be drawn by (common practice, no source)."""
MOST_RUNS = 3
"""More stretches of a row than these are not read out."""


def gather(brief: Brief, draft: Draft) -> Iterator[Making]:
    """The rows at the waist; they are drawn up when the band goes on."""
    tops = [p for p in panels(draft.pieces) if any(e.name == "waist" for e in p.edges)]
    gathered = [p for p in tops if any(m.role == "gather" for m in p.lines)]
    if not gathered:
        return
    piece = gathered[0]
    gap = brief.gathers.end_gap if any(m.role == "row stop" for m in piece.lines) else 0.0
    says = [*rows_of(brief, draft, gathered)]
    if gap:
        says.append(phrase("Beside the opening start and stop {g} from the seam line: that stays flat.", g=gap))
    says.append(phrase("Draw them up when the band is pinned, not before."))
    shown = Shown(piece.id, (), ("gather", "row stop"), "top")
    yield Making("gather", "gather", tr("Stitch the gather rows"), tuple(says), shown, ("needle",))


def rows_of(brief: Brief, draft: Draft, pieces: Sequence[Piece]) -> Iterator[Phrase]:
    """How the rows are stitched on panels of one ring, and on each where they start and stop."""
    a, rows = brief.seams.allowance, brief.gathers.rows
    down = [a + h for h in row_heights(rows, a)]
    length = draft.fact("gather_stitch") if draft.has("gather_stitch") else 4.0
    text = "Stitch {n:count} rows, the stitch set to {l:word} mm and the upper thread looser."
    if rows == 1:
        text = "Stitch one row, the stitch set to {l:word} mm and the upper thread looser."
    yield phrase(text, n=rows, l=f"{length:g}")
    run = "They run {lengths} below the raw edge." if rows > 1 else "It runs {lengths} below the raw edge."
    yield from in_rows(run, down)
    for piece in pieces:
        yield from _runs(piece, rows, named=len(pieces) > 1)
    yield phrase("Leave thread ends of {t}, and do not stitch back.", t=THREADS)


def _runs(piece: Piece, rows: int, *, named: bool) -> Iterator[Phrase]:
    """Where rows start and stop, from the piece's left cut edge; on a curve only how often they break."""
    found = [m.path for m in piece.lines if m.role == "gather"]
    left, runs, name = piece.cut_line.box.left, len(found) // rows, tr(piece.name)
    if runs <= MOST_RUNS and all(p.box.height < 1e-6 for p in found):
        text = "From the left cut edge, right side up: start at {a}, stop at {b}."
        if named:
            text = "{p:word}, from the left cut edge, right side up: start at {a}, stop at {b}."
        for a, b in sorted({(round(p.box.left, 3), round(p.box.right, 3)) for p in found}):
            yield phrase(text, p=name, a=a - left, b=b - left)
    elif runs > 1:
        text = "Break them into {n:count} parts on this piece, {b} short of each break."
        if named:
            text = "{p:word}: break them into {n:count} parts, {b} short of each break."
        yield phrase(text, p=name, n=runs, b=BREAK)
