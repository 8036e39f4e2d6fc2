"""The rule about how much cloth a seam takes, whatever is gathered to what."""

import math
from collections.abc import Iterator

from msgspec import Struct

from studio.brief import OVER_HIPS, Brief
from studio.draft import Draft
from studio.draft.gathers import tightest_ratio
from studio.styles import rack
from studio.styles.style import Edit
from studio.words import Phrase, phrase, tr

from .finding import Finding, Worked, edit_words, redrafted

MOST_GATHERS = ((60.0, 3.0), (150.0, 2.5), (350.0, 2.0), (math.inf, 1.5))
"""Up to this weight (g/m²) cloth gathers to at most this ratio: sheer, light, medium, heavy
(common practice, no source)."""
UNKNOWN_WEIGHT = 3.0


class Gathering(Struct, frozen=True):
    """A gathered seam: the first piece that is drawn up to it, how far at the most, and the brief path that says so."""

    piece: str
    name: str
    ratio: float
    path: str
    at_waist: bool


def gathers_too_bulky(w: Worked) -> Iterator[Finding]:
    """The heavier the cloth, the less of it goes into a seam, at the waist or where tiers join; with no weight known,
    three times is the limit.

    The quarters beside the opening are judged: part of them lies flat, so the rest is drawn up more. The remedy is
    the fullness that gathers just so.
    """
    grams, most, tight = w.brief.cloth.weight, most_gathers(w.brief), tightest(w.brief, w.draft)
    if tight is None or tight.ratio <= most + 1e-9:
        return
    edit = _less(w, most)
    yield Finding(
        "gathers-too-bulky", "doubt", _says(tight, most, grams), tight.path, tight.piece, edit,
        edit_words(w.brief, edit) if edit else None,
    )  # fmt: skip


def most_gathers(brief: Brief) -> float:
    """How far this cloth may be drawn up before it is bulky."""
    grams = brief.cloth.weight
    return UNKNOWN_WEIGHT if grams is None else next(r for g, r in MOST_GATHERS if grams <= g)


def tightest(brief: Brief, draft: Draft) -> Gathering | None:
    """The gathered seam that is drawn up most; None where none is."""
    return max(gathered_seams(brief, draft), key=lambda s: round(s.ratio, 6), default=None)


def bulky(brief: Brief, draft: Draft) -> bool:
    """Whether some seam takes more cloth than it should."""
    tight = tightest(brief, draft)
    return tight is not None and tight.ratio > most_gathers(brief) + 1e-9


def _says(tight: Gathering, most: float, grams: float | None) -> Phrase:
    texts = {
        (True, False): "Beside the opening the cloth is gathered {r:ratio} to 1; more than {m:ratio} is bulky in most "
        "cloth.",
        (True, True): "Beside the opening the cloth is gathered {r:ratio} to 1; at {g:count} g/m² more than {m:ratio} "
        "is bulky.",
        (False, False): "{p:word} is gathered {r:ratio} to 1 where it joins; more than {m:ratio} is bulky in most "
        "cloth.",
        (False, True): "{p:word} is gathered {r:ratio} to 1 where it joins; at {g:count} g/m² more than {m:ratio} is "
        "bulky.",
    }
    says = {"r": tight.ratio, "m": most} | ({} if tight.at_waist else {"p": tr(tight.name)})
    return phrase(texts[tight.at_waist, grams is not None], **says, **({} if grams is None else {"g": round(grams)}))


def gathered_seams(brief: Brief, draft: Draft) -> tuple[Gathering, ...]:
    """Every seam that cloth is drawn up to, from the waist down."""
    pieces, found = {p.id: p for p in draft.pieces}, []
    for seam in draft.seams:
        if seam.name not in ("waist", "tier"):
            continue
        parts = seam.one if seam.name == "waist" else seam.other
        edges = [pieces[p.piece].edge(p.edge) for p in parts]
        if edges[0].ratio <= 1 + 1e-9:
            continue
        first = pieces[parts[0].piece]
        opened = any(e.name.endswith(" opening") for e in first.edges)
        flat, sewn = sum(e.path.length for e in edges), sum(e.sewn for e in edges)
        sides = (e for e in first.edges if e.name.startswith(("left", "right")) and not e.name.endswith(" opening"))
        path = next((e.governs[0] for e in sides if e.governs), "skirt.style")
        ratio = tightest_ratio(flat, sewn, brief.gathers.end_gap if opened else 0.0)
        found.append(Gathering(first.id, first.name, ratio, path, seam.name == "waist"))
    return tuple(found)


def _less(w: Worked, most: float) -> Edit | None:
    """The fullness that gathers just so, where the hips still pass."""
    edit = rack.loosened(w.brief, most)
    if edit is None:
        return None
    brief = rack.edit(w.brief, edit)
    if rack.girth(brief, brief.hip_depth) < (brief.body.hip or 0) + OVER_HIPS:
        return None
    brief, draft = redrafted(w, edit)
    left = (s.ratio for s in gathered_seams(brief, draft))
    return None if any(r > most + 1e-9 for r in left) else edit
