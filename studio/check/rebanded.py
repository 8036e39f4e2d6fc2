"""Another waistband: the edit that gives one which fits the cloth and leaves the skirt below it as it is."""

import math
from typing import Any

from msgspec.structs import replace

from studio.brief import Brief, Waistband
from studio.brief.records import CASING
from studio.draft.bands.contour import contour_height, most_less
from studio.words import Phrase, phrase

NAMES = {
    "folded": phrase("Folded band"), "two-piece": phrase("Two-piece band"), "contour": phrase("Contour band"),
    "elastic": phrase("Elastic band"), "bound": phrase("Bound edge"), "faced": phrase("Faced edge"),
}  # fmt: skip
"""What a remedy says that changes the kind."""


def rebanded(brief: Brief, kind: str) -> dict[str, Any]:
    """The edit to another kind of band: no wider than the cloth takes, the skirt no shorter where the band counts."""
    edit: dict[str, Any] = {"waistband.kind": kind} | narrowed(brief, kind)
    fields = {path.removeprefix("waistband."): value for path, value in edit.items()}
    band: Waistband = replace(brief.waistband, **fields)
    if kind == "contour":
        most = most_less(replace(brief, waistband=band))
        edit |= {"waistband.upper_less": float(math.floor(most))} if band.upper_less > most else {}
    if brief.skirt.length_includes_band and band.depth != brief.waistband.depth:
        edit["skirt.length"] = min(1500.0, max(100.0, brief.finished_length + band.depth))
    return edit


def narrowed(brief: Brief, kind: str) -> dict[str, Any]:
    """The edit that makes a band of that kind fit between the selvedges, if it does not."""
    room, band = brief.usable_width - 2 * brief.seams.allowance, brief.waistband
    path, have, most = {
        "folded": ("waistband.width", band.width, room / 2),
        "elastic": ("waistband.elastic", band.elastic, room / 2 - CASING),
    }.get(kind, ("waistband.width", band.width, room))
    if kind in ("bound", "faced") or have <= most:
        return {}
    return {path: float(math.floor(most))}


def narrower(brief: Brief) -> tuple[dict[str, Any], Phrase]:
    """The edit for a band that does not fit between the selvedges; a curved one is cut straight first."""
    kind = brief.waistband.kind
    if kind == "contour":
        return rebanded(brief, "two-piece"), NAMES["two-piece"]
    edit = narrowed(brief, kind)
    width = next(iter(edit.values()), brief.waistband.width)
    return edit, phrase("Elastic {w}", w=width) if kind == "elastic" else phrase("Band {w}", w=width)


def contour_fits(brief: Brief) -> bool:
    """Whether the band could be shaped and still lie between the selvedges."""
    edit = {path.removeprefix("waistband."): v for path, v in rebanded(brief, "contour").items() if "waistband" in path}
    return contour_height(replace(brief, waistband=replace(brief.waistband, **edit))) <= brief.usable_width
