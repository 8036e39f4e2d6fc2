"""What else to have ready: buttons or hooks, interfacing, thread."""

import math

from studio.brief import Brief
from studio.words import phrase

from .draft import Notion
from .fastening import hole_length
from .piece import Piece
from .thread import lockstitch_thread, overedge_thread

LIGNE = 0.635
"""A button's line, 1/40 in, mm."""
HOOK_EVERY = 40.0
"""A band wider than this (mm) takes a second hook and bar (common practice, no source)."""


def band_notions(brief: Brief) -> tuple[Notion, ...]:
    """Buttons with the hole each needs, or hooks and bars."""
    f = brief.fastening
    if f.kind == "hook and bar":
        n = math.ceil(brief.waistband.width / HOOK_EVERY)
        return (Notion("hook and bar", phrase("{n:count} hook and bar", n=n), {"count": n}),)
    hole = hole_length(f.button, f.button_diameter, f.button_height)
    lignes = round(f.button_diameter / LIGNE)
    words = phrase(
        "{n:count} {s:word} button {d} ({l:count} L), hole {h}",
        n=f.count, s=f.button, d=f.button_diameter, l=lignes, h=hole,
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
