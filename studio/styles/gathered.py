"""The gathered skirt: straight panels drawn up to a band.  T = fullness × B."""

# fmt: off
from typing import Annotated, Literal

from studio.brief import Brief, Skirt
from studio.brief.declare import one_of, times, whole, yes_no
from studio.draft import Draft, Fact, Notion, Part, Seam
from studio.draft.fastening import closed_girth
from studio.draft.gathers import gather_ratio, layers_thickness, sections, stitch_length, tightest_ratio
from studio.draft.interfacing import interfacing
from studio.draft.notions import band_notions, interfacing_notion, thread_notion
from studio.draft.panel import Panels, draft_panels, panel_count, zip_stop
from studio.draft.ring import ring_seams
from studio.draft.waistband import folded_band
from studio.draft.zip import zip_notion

from .style import Style

MOST = 24
"""More panels than this are never drafted: the cloth is too small for the skirt, and a finding says so."""


class Gathered(Skirt, frozen=True, tag="gathered"):
    """Straight panels gathered to the band."""

    fullness: Annotated[float, times(
        "Fullness", 1, 5, "Flat width of the cloth, so many times the waist seam.")] = 2.0
    cut: Annotated[Literal["along", "across"], one_of(
        "Cut", "Along: the waist edge lies along the selvedge, as a border print wants. Across: widths are joined."
    )] = "along"
    panels: Annotated[int, whole(
        "Panels", 0, MOST, "How many widths are joined; by cloth: as few as it allows.", blank="by cloth")] = 0
    whole_widths: Annotated[bool, yes_no(
        "Use whole widths", "Let the fullness rise until every panel is as wide as the cloth.",
        when=("skirt.cut", ("across",)))] = False
# fmt: on


def draft(brief: Brief, skirt: Gathered) -> Draft:
    """Band, panels and interfacing."""
    laid = panels(brief, skirt)
    parts = sections(brief, laid.flat_width)
    band = folded_band(brief, parts, "skirt/waist")
    pieces = draft_panels(brief, laid)
    stiffening = interfacing(brief)
    facing = Seam("facing", (Part("waistband", "facing"),), (Part("waistband", "waist", True),))
    return Draft(
        pieces=(band, *pieces, *([stiffening] if stiffening else [])),
        seams=(*ring_seams(laid.count), facing),
        facts=_facts(brief, laid),
        notions=(*_notions(brief, laid), *([interfacing_notion(stiffening)] if stiffening else [])),
    )


def panels(brief: Brief, skirt: Gathered) -> Panels:
    """How many panels, and how wide: a number set by hand, or as few as the cloth allows."""
    flat, a = skirt.fullness * brief.closed, brief.seams.allowance
    if skirt.cut == "across":
        room = brief.usable_width
    else:
        room = (brief.cloth.on_hand or float("inf")) * (1 - brief.cloth.shrinkage)
    count = skirt.panels or min(MOST, panel_count(flat, room, a))
    if skirt.cut == "across" and skirt.whole_widths:
        flat = max(flat, count * (room - 2 * a))
    return Panels(count, flat, skirt.cut, flat / brief.closed, drags=flat == skirt.fullness * brief.closed)


def _facts(brief: Brief, laid: Panels) -> tuple[Fact, ...]:
    ratio = gather_ratio(laid.flat_width, brief.closed, brief.gathers.end_gap)
    tightest = tightest_ratio(laid.flat_width, brief.closed, brief.gathers.end_gap)
    return (
        Fact("waist_seam", "Waist seam", brief.closed),
        Fact("closed_girth", "Closed band", closed_girth(brief)),
        Fact("flat_width", "Flat width", laid.flat_width),
        Fact("gather_ratio", "Gather ratio", ratio, "ratio"),
        Fact("tightest_ratio", "Gather ratio beside the opening", tightest, "ratio"),
        Fact("hem_sweep", "Hem sweep", laid.flat_width),
        Fact("panels", "Panels", laid.count, "count"),
        Fact("seam_thickness", "Gathered seam", layers_thickness(ratio, brief.cloth.weight)),
        Fact("gather_stitch", "Gathering stitch", stitch_length(brief.cloth.weight)),
    )


def _notions(brief: Brief, laid: Panels) -> tuple[Notion, ...]:
    deep = brief.seams.allowance + brief.finished_length + brief.seams.hem
    joins = laid.count * deep
    sewn = joins + laid.flat_width * (1 + brief.gathers.rows) + 2 * brief.closed
    return (
        zip_notion(brief.opening, zip_stop(brief)),
        *band_notions(brief),
        thread_notion(sewn, 2 * joins),
    )


STYLE = Style(Gathered, draft)
