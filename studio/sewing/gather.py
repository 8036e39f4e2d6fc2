"""Gather rows: how many, how far apart, where they start and stop; and tiers, drawn up and joined one to another."""

from collections.abc import Iterator

from studio.brief import Brief
from studio.draft import Draft, Piece
from studio.draft.gathers import BREAK, row_heights
from studio.draft.making import Making, Shown
from studio.draft.seam import Seam, walked
from studio.words import Phrase, phrase, tr

from .saying import in_rows, panels, top_panel

THREADS = 100.0
"""Thread ends are left so long (mm) to be drawn by (common practice, no source)."""


def gather(brief: Brief, draft: Draft) -> Iterator[Making]:
    """The rows at the waist; they are drawn up when the band goes on."""
    piece = top_panel(draft)
    if not any(m.role == "gather" for m in piece.lines):
        return
    gap = brief.gathers.end_gap if any(m.role == "row stop" for m in piece.lines) else 0.0
    says = [*_rows(brief, draft, piece)]
    if gap:
        says.append(phrase("Beside the opening start and stop {g} from the seam line: that stays flat.", g=gap))
    says.append(phrase("Draw them up when the band is pinned, not before."))
    shown = Shown(piece.id, (), ("gather", "row stop"), "top")
    yield Making("gather", "gather", tr("Stitch the gather rows"), tuple(says), shown, ("needle",))


def tiers(brief: Brief, draft: Draft) -> Iterator[Making]:
    """Each tier gathered to the one above, from the top down."""
    by_id = {p.id: p for p in draft.pieces}
    for number, seam in enumerate((s for s in draft.seams if s.name == "tier"), 2):
        yield _tier(brief, draft, seam, by_id, number)


def _tier(brief: Brief, draft: Draft, seam: Seam, by_id: dict[str, Piece], number: int) -> Making:
    piece = by_id[seam.other[0].piece]
    above, below = walked(seam.one, by_id), _flat(seam, by_id)
    says = [
        *_rows(brief, draft, piece),
        phrase("Pin it to the tier above, right sides together, ends and notches first."),
        phrase("Draw {f} up to {s}, and spread the fullness evenly.", f=below, s=above),
        phrase("Sew {a} from the edge, gathers upwards; press the seam up.", a=brief.seams.allowance),
    ]
    title = f"{tr('Gather and join')}: {piece.name}"
    shown = Shown(piece.id, ("top",), ("gather", "quarter"), "top")
    return Making(f"tier/{number}", "gather", title, tuple(says), shown, ("needle", "pins"))


def _flat(seam: Seam, by_id: dict[str, Piece]) -> float:
    """The tier's whole top edge before it is drawn up, mm."""
    return sum(by_id[p.piece].edge(p.edge).path.length for p in seam.other)


def _rows(brief: Brief, draft: Draft, piece: Piece) -> Iterator[Phrase]:
    a, rows = brief.seams.allowance, brief.gathers.rows
    down = [a + h for h in row_heights(rows, a)]
    length = draft.fact("gather_stitch") if draft.has("gather_stitch") else 4.0
    text = "Stitch {n:count} rows, the stitch set to {l:word} mm and the upper thread looser."
    if rows == 1:
        text = "Stitch one row, the stitch set to {l:word} mm and the upper thread looser."
    yield phrase(text, n=rows, l=f"{length:g}")
    run = "They run {lengths} below the raw edge." if rows > 1 else "It runs {lengths} below the raw edge."
    yield from in_rows(run, down)
    yield from _runs(piece, sum(m.role == "gather" for m in piece.lines) // rows)
    yield phrase("Leave thread ends of {t}, and do not stitch back.", t=THREADS)


def _runs(piece: Piece, runs: int) -> Iterator[Phrase]:
    """Where rows start and stop, from the piece's left cut edge; on a curve only how often they break."""
    found = [m.path for m in piece.lines if m.role == "gather"]
    left = piece.cut_line.box.left
    if runs <= MOST_RUNS and all(p.box.height < 1e-6 for p in found):
        for a, b in sorted({(round(p.box.left, 3), round(p.box.right, 3)) for p in found}):
            yield phrase("From the left cut edge, right side up: start at {a}, stop at {b}.", a=a - left, b=b - left)
    elif runs > 1:
        text = "Break them into {n:count} parts on this piece, {b} short of each break."
        yield phrase(text, n=runs, b=BREAK)


MOST_RUNS = 3
"""More stretches of a row than these are not read out."""


def opens_through_tiers(draft: Draft) -> bool:
    """Whether the opening goes on through more than the first tier: then tiers are joined before it is made."""
    return any(
        e.name.endswith(" opening") and not any(f.name == "waist" for f in p.edges)
        for p in panels(draft.pieces)
        for e in p.edges
    )
