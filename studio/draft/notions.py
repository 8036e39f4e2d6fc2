"""What else to have ready: buttons or hooks, interfacing, thread."""

from studio.brief import Brief
from studio.words import phrase, tr

from .draft import Notion
from .fastening import hole_length, hook_count
from .piece import Piece
from .thread import lockstitch_thread, overedge_thread

LIGNE = 0.635
"""A button's line, 1/40 in, mm."""


def band_notions(brief: Brief) -> tuple[Notion, ...]:
    """Buttons with the hole each needs, or hooks and bars."""
    f = brief.fastening
    if f.kind == "hook and bar":
        n = hook_count(brief.waistband.width)
        pairs = "{n:count} hook and bar" if n == 1 else "{n:count} hooks and bars"
        return (Notion("hook and bar", phrase(pairs, n=n), {"count": n}),)
    hole = hole_length(f.button, f.button_diameter, f.button_height)
    lignes = round(f.button_diameter / LIGNE)
    text = "{n:count} {s:word} button {d} ({l:count} L), hole {h}"
    words = phrase(
        text if f.count == 1 else "{n:count} {s:word} buttons {d} ({l:count} L), holes {h}",
        n=f.count, s=tr(f.button), d=f.button_diameter, l=lignes, h=hole,
    )  # fmt: skip
    sizes = {"count": f.count, "diameter": f.button_diameter, "height": f.button_height, "hole": hole}
    return (Notion("button", words, sizes),)


def interfacing_notion(piece: Piece) -> Notion:
    """The strip of interfacing, as cut."""
    box = piece.cut_line.box
    words = phrase("interfacing {l} × {w}", l=box.width, w=box.height)
    return Notion("interfacing", words, {"length": box.width, "width": box.height})


def thread_notion(seams: float, edges: float) -> Notion:
    """Thread for `seams` mm of lockstitch; and for neatening `edges` mm, should an overedge be used."""
    lock, over = lockstitch_thread(seams), overedge_thread(edges)
    words = phrase("thread {t:metres}; for overedging {o:metres} more", t=lock, o=over)
    return Notion("thread", words, {"length": lock, "overedge": over})
