"""What else to have ready: the zip, buttons, hooks or snaps."""

from studio.brief import Brief
from studio.brief.conditions import ZIPS
from studio.words import phrase, tr

from .draft import Notion
from .fastening import held_by, hole_length, hook_count
from .placket import placket_count
from .zip import zip_notion

LIGNE = 0.635
"""A button's line, 1/40 in, mm."""


def closing_notions(brief: Brief) -> tuple[Notion, ...]:
    """The zip, and what closes the band: buttons with the hole each needs, hooks with bars or eyes, or snaps; those
    down a placket counted in, and the snap that holds a wrap's under edge.
    """
    opening, held = brief.opening, held_by(brief)
    found = [zip_notion(opening, brief.stop)] if opening.kind in ZIPS else []
    more = placket_count(brief) if opening.kind == "placket" and held else 0
    snaps = 1 if opening.kind == "wrap" and held else 0
    if held == "buttons":
        found.append(_buttons(brief, brief.fastening.count + more))
    else:
        n = hook_count(brief.waistband.depth)
        snaps += more + (n if held == "snap" else 0)
        found += [_counted(held, n)] if held in PAIRS else []
    return (*found, *([_counted("snap", snaps)] if snaps else []))


PAIRS = {
    "hook and bar": ("{n:count} hook and bar", "{n:count} hooks and bars"),
    "hook and eye": ("{n:count} hook and eye", "{n:count} hooks and eyes"),
}
SNAPS = ("{n:count} snap", "{n:count} snaps")


def _counted(what: str, n: int) -> Notion:
    return Notion(what, phrase(PAIRS.get(what, SNAPS)[n > 1], n=n), {"count": n})


def _buttons(brief: Brief, n: int) -> Notion:
    f = brief.fastening
    hole = hole_length(f.button, f.button_diameter, f.button_height)
    lignes = round(f.button_diameter / LIGNE)
    text = "{n:count} {s:word} button {d} ({l:count} L), hole {h}"
    words = phrase(
        text if n == 1 else "{n:count} {s:word} buttons {d} ({l:count} L), holes {h}",
        n=n, s=tr(f.button), d=f.button_diameter, l=lignes, h=hole,
    )  # fmt: skip
    return Notion("button", words, {"count": n, "diameter": f.button_diameter, "height": f.button_height, "hole": hole})
