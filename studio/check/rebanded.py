"""Another waistband: the edit that gives one which fits the cloth and leaves the skirt below it as it is."""

import math
from collections.abc import Mapping
from typing import Any

from msgspec.structs import replace

from studio.brief import Brief, Waistband
from studio.brief.conditions import BANDS
from studio.brief.records import CASING
from studio.draft.bands.contour import contour_height, most_less
from studio.draft.placket import LEAST
from studio.words import Phrase, phrase

NAMES = {
    "folded": phrase("Folded band"), "two-piece": phrase("Two-piece band"), "contour": phrase("Contour band"),
    "elastic": phrase("Elastic band"), "bound": phrase("Bound edge"), "faced": phrase("Faced edge"),
}  # fmt: skip
"""What a remedy says that changes the kind."""
USUAL_LAP = 40.0
"""The extension a placket is given where its band has none to speak of, mm."""


def rebanded(brief: Brief, kind: str) -> dict[str, Any]:
    """The edit to another kind of band: no wider than the cloth takes, the skirt no shorter where the band counts."""
    edit: dict[str, Any] = {"waistband.kind": kind} | narrowed(brief, kind)
    fields = {path.removeprefix("waistband."): value for path, value in edit.items()}
    band: Waistband = replace(brief.waistband, **fields)
    if kind == "contour":
        most = most_less(replace(brief, waistband=band))
        edit |= {"waistband.upper_less": float(math.floor(most))} if band.upper_less > most else {}
    if kind in BANDS and brief.opening.kind == "placket" and band.extension < LEAST:
        edit["waistband.extension"] = USUAL_LAP
    if brief.skirt.length_includes_band and band.depth != brief.waistband.depth:
        edit["skirt.length"] = min(1500.0, max(100.0, brief.finished_length + band.depth))
    return edit


def narrowed(brief: Brief, kind: str) -> dict[str, Any]:
    """The edit that makes a band of that kind fit between the selvedges, if it does not."""
    room, band = brief.cloth.usable - 2 * brief.seams.allowance, brief.waistband
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


def contour_fits(brief: Brief, edit: Mapping[str, Any]) -> bool:
    """Whether a band that is shaped, or edited in another way, would lie between the selvedges on its curve."""
    fields = {path.removeprefix("waistband."): v for path, v in edit.items() if path.startswith("waistband.")}
    band = replace(brief.waistband, **fields)
    return band.kind != "contour" or contour_height(replace(brief, waistband=band)) <= brief.cloth.usable
