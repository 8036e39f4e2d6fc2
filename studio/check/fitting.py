"""What makes a piece fit between the selvedges: cloth laid open, more panels, a join, or wider cloth."""

import math
from collections.abc import Iterator

from studio.brief import Cloth
from studio.cloth.ways import across, grain_down, left_bare
from studio.draft import Piece
from studio.styles import rack
from studio.styles.style import Edit
from studio.words import Phrase, phrase, tr

from .finding import Rule, Worked, edit_words, off_cloth, tried, within
from .held import held_on_cloth
from .opening import opening_passes_hips
from .pockets import pocket_at_side_seam
from .rebanded import NAMES, narrower, rebanded

Way = tuple[Edit, Phrase]
OPEN: Edit = {"cloth.lies": "open"}
MAY_STOP: tuple[Rule, ...] = (opening_passes_hips, pocket_at_side_seam, held_on_cloth)
"""What other panels, or a cloth that lies otherwise, might put a stop to."""


def fitted(w: Worked, piece: Piece) -> Way | None:
    """The first edit after which this piece fits, and all that does so now, without a new stop; None where none does.

    The skirt as it is comes first: by cloth, laid open; then cut otherwise; then cloth just so wide.
    What keeps a border on the skirt comes before what takes it off, on the same cloth.
    """
    now = off_cloth(w)
    others = now - {"waistband"} if piece.id == "waistband" else now & {"waistband"}
    fit = (way for way in _ways(w, piece) if _fits(w, way[0], others))
    first = next(fit, None)
    if first is None or not _off_border(w, first[0]):
        return first
    return next((way for way in fit if "cloth.width" not in way[0] and not _off_border(w, way[0])), first)


def _off_border(w: Worked, edit: Edit) -> bool:
    """Whether an edit leaves a band of the print bare that a piece lies along now."""
    after = tried(w, edit)
    now, then = (len([*left_bare(one.draft.pieces, one.brief.cloth)]) for one in (w, after))
    return then > now


def harmless(w: Worked, edit: Edit) -> Edit | None:
    """An edit that leaves on the cloth what is on it now and brings no new stop, if need be with what is held by hand
    let go, for it was held on another cloth or as another piece; None where it does not even so.
    """
    tries = [edit, {**edit, "cloth.held": ()}] if w.brief.cloth.held else [edit]
    return next((one for one in tries if _fits(w, one, off_cloth(w))), None)


def _fits(w: Worked, edit: Edit, others: set[str]) -> bool:
    """Whether an edit leaves no more than these off the cloth, and brings no stop that was not there."""
    after = tried(w, edit)
    return off_cloth(after) <= others and _stopped(after) <= _stopped(w)


def _ways(w: Worked, piece: Piece) -> Iterator[Way]:
    folded = w.brief.cloth.lies == "folded"
    yield from _bands(w) if piece.id == "waistband" else _by_cloth(w)
    if folded:
        yield OPEN, phrase("Lay the cloth open")
    if piece.id != "waistband":
        yield from _across(w)
        for path, n in _parted(w, piece):
            yield {path: n}, edit_words(w.brief, {path: n})
        for path, n in _parted(w, piece) if folded else ():
            name = tr(rack.declarations(w.brief)[path].words)
            yield {**OPEN, path: n}, phrase("Open cloth, {n:word}: {v:count}", n=name, v=n)
    yield from _wider(w, piece)


def _by_cloth(w: Worked) -> Iterator[Way]:
    if edit := rack.by_cloth(w.brief):
        yield edit, phrase("As many panels as the cloth asks")


def _across(w: Worked) -> Iterator[Way]:
    if edit := rack.laid(w.brief, "across"):
        off = "Cut across, off the border"
        yield edit, phrase(off if _off_border(w, edit) else "Cut across, as few panels as fit")


def _bands(w: Worked) -> Iterator[Way]:
    """A band that takes less of the width: narrower, or of two pieces."""
    edit, does = narrower(w.brief)
    if all(within(w, path, value) for path, value in edit.items() if isinstance(value, float)):
        yield edit, does
    if w.brief.waistband.kind == "folded":
        yield rebanded(w.brief, "two-piece"), NAMES["two-piece"]


def _parted(w: Worked, piece: Piece) -> Iterator[tuple[str, int]]:
    """More pieces, by one at a time; what is cut along the cloth is no less deep for them."""
    path = rack.its_style(w.brief).parts
    if path and grain_down(piece):
        one = rack.declarations(w.brief)[path]
        first = max(math.ceil(one.least), rack.value(w.brief, path)) + 1
        yield from ((path, n) for n in range(first, math.floor(one.most) + 1))


def _wider(w: Worked, piece: Piece) -> Iterator[Way]:
    """Cloth just so wide, to the next whole centimetre, as it is before the wash."""
    cloth = w.brief.cloth
    widest = max(across(p, cloth) for p in w.lay.misfits if (p.id == "waistband") == (piece.id == "waistband"))
    layers = 2 if cloth.lies == "folded" else 1
    seen = layers * (widest + cloth.selvedge * (2 / layers))
    least = math.ceil(seen / (1 - cloth.shrinkage_across) / 10 - 1e-6) * 10.0
    if within(w, "cloth.width", least):
        yield {"cloth.width": least}, phrase("Cloth {w} wide", w=least)


def _stopped(w: Worked) -> set[tuple[str, str, str]]:
    """What puts a stop to it: rule, path and piece."""
    return {(f.rule, f.where, f.piece) for rule in MAY_STOP for f in rule(w) if f.weight == "stop"}


def joined(piece: Piece, cloth: Cloth, allowance: float) -> tuple[int, float] | None:
    """In how few parts a piece would fit, joined along its grain, and how wide each is then cut (mm); None where the
    cloth holds no more than the allowances.

    n parts of a piece c wide, each with the allowance a at its joins, are (c + 2a(n - 1)) / n wide.
    """
    room, wide = cloth.usable - 2 * allowance, across(piece, cloth) - 2 * allowance
    if room <= 0:
        return None
    n = max(2, math.ceil(wide / room - 1e-9))
    return n, (wide + 2 * allowance * n) / n
