"""The gathered skirt: straight panels drawn up to a band.  T = fullness × B."""

# fmt: off
from typing import Annotated, Literal

from studio.brief import Brief, Skirt
from studio.brief.declare import one_of, times, whole, yes_no
from studio.draft import Draft, Fact
from studio.draft.gathers import gather_facts, loosest, lowered, open_gap, raised, sections
from studio.draft.hang import Hung, hang
from studio.draft.marks import stations
from studio.draft.match import matched, matches_along
from studio.draft.straight_panel import MOST, Panels, cloth_room, panel_count, straight_panels

from .style import Edit, Style


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
        when=(("skirt.cut", ("across",)),))] = False
# fmt: on


def draft(brief: Brief, skirt: Gathered) -> Draft:
    """Panels gathered to the band."""
    laid = panels(brief, skirt)
    met = stations(brief, sections(brief, laid.flat_width))
    ring, pieces = straight_panels(brief, laid, met)
    facts = (
        Fact("flat_width", "Flat width", laid.flat_width),
        *gather_facts(brief, laid.flat_width, laid.sewn),
        Fact("hem_sweep", "Hem sweep", laid.flat_width),
        Fact("panels", "Panels", laid.count, "count"),
    )
    return hang(brief, Hung(ring, met, pieces, facts))


def panels(brief: Brief, skirt: Gathered) -> Panels:
    """How many panels, and how wide: a number set by hand, or as few as the cloth allows."""
    seam = brief.waist_seam
    flat, room = skirt.fullness * seam, cloth_room(brief, skirt.cut)
    count = skirt.panels or min(MOST, panel_count(flat, room, brief.seams.allowance))
    wanted = flat
    if skirt.cut == "across" and skirt.whole_widths:
        flat = max(flat, count * (room - 2 * brief.seams.allowance))
    flat = matched(brief, skirt.cut, flat, count, room)
    gain = 1 / seam if flat == wanted and not matches_along(brief, skirt.cut) else 0.0
    return Panels(count, flat, seam, brief.finished_length, skirt.cut, gain=gain)


def girth(brief: Brief, skirt: Gathered, _depth: float) -> float:
    """The flat width, at any depth."""
    return panels(brief, skirt).flat_width


def fuller(brief: Brief, _skirt: Gathered, girth: float) -> Edit:
    """The fullness that gives a girth, rounded up to a twentieth."""
    return {"skirt.fullness": raised(girth / brief.waist_seam), "skirt.panels": 0}


def looser(brief: Brief, skirt: Gathered, most: float) -> Edit:
    """The fullness that is gathered just so, rounded down to a twentieth."""
    edit = {"skirt.fullness": lowered(loosest(most, brief.waist_seam, open_gap(brief)))}
    return edit | ({"skirt.whole_widths": False} if skirt.whole_widths else {})


ICON = "M6.5 3h7v2h-7z M6.5 5c-.8 4.5-2.8 8-3.5 12h14c-.7-4-2.7-7.5-3.5-12 M8.3 5.5l-.8 4 M10 5.5v5.5 M11.7 5.5l.8 4"

STYLE = Style(
    Gathered, draft, girth, icon=ICON, widen=fuller, clear=fuller, loosen=looser, uses=lambda _: ("gathers",),
    parts="skirt.panels", lies="skirt.cut", fullness="skirt.fullness", takes=("skirt.fullness",),
)  # fmt: skip
