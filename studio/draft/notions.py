"""What else to have ready: buttons or hooks, interfacing, thread."""

from studio.brief import Brief
from studio.brief.conditions import BANDS, ZIPS
from studio.words import phrase, tr

from .draft import Notion
from .fastening import hole_length, hook_count
from .thread import lockstitch_thread, overedge_thread
from .zip import zip_notion

LIGNE = 0.635
"""A button's line, 1/40 in, mm."""


def closing_notions(brief: Brief) -> tuple[Notion, ...]:
    """The zip, and what closes the band: buttons with the hole each needs, hooks and bars, or snaps."""
    kind = brief.opening.kind
    if kind == "none":
        return ()
    zips = (zip_notion(brief.opening, brief.stop),) if kind in ZIPS else ()
    return (*zips, _fastening(brief))


PAIRS = {
    "hook and bar": ("{n:count} hook and bar", "{n:count} hooks and bars"),
    "snap": ("{n:count} snap", "{n:count} snaps"),
}


def _fastening(brief: Brief) -> Notion:
    f = brief.fastening
    if f.kind in PAIRS or brief.waistband.kind not in BANDS:
        kind = f.kind if f.kind in PAIRS else "hook and bar"
        n = hook_count(brief.waistband.depth)
        return Notion(kind, phrase(PAIRS[kind][n > 1], n=n), {"count": n})
    hole = hole_length(f.button, f.button_diameter, f.button_height)
    lignes = round(f.button_diameter / LIGNE)
    text = "{n:count} {s:word} button {d} ({l:count} L), hole {h}"
    words = phrase(
        text if f.count == 1 else "{n:count} {s:word} buttons {d} ({l:count} L), holes {h}",
        n=f.count, s=tr(f.button), d=f.button_diameter, l=lignes, h=hole,
    )  # fmt: skip
    sizes = {"count": f.count, "diameter": f.button_diameter, "height": f.button_height, "hole": hole}
    return Notion("button", words, sizes)


def thread_notion(seams: float, edges: float) -> Notion:
    """Thread for `seams` mm of lockstitch; and for neatening `edges` mm, should an overedge be used."""
    lock, over = lockstitch_thread(seams), overedge_thread(edges)
    words = phrase("thread {t:metres}; for overedging {o:metres} more", t=lock, o=over)
    return Notion("thread", words, {"length": lock, "overedge": over})
