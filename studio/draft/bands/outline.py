"""What every band that is cut as a strip has: its edges round, its marks where it meets the skirt, how it laps."""

from collections.abc import Iterator, Mapping

from studio.brief import Brief
from studio.brief.conditions import BANDS, ZIPS
from studio.geometry import Path
from studio.words import Phrase, phrase

from ..fastening import elastic_girth
from ..marks import Station, notch_depth, quarter_name
from ..piece import Dimension, Edge, LineMark, Spot
from ..seam import Part, Seam
from ..turned_over import meeting
from .band import Waist
from .lie import Lie

TO_SKIRT = phrase("seam, to the skirt")
GIRTH = ("body.waist", "waistband.ease")
LAPS = ("waistband.extension",)
LEGIBLE = 20.0
"""Words stand upright on a band at least this tall, mm."""
LAPPED = {
    "centre back": phrase("left laps over right"),
    "side": phrase("front laps over back"),
    "front": phrase("right laps over left"),
}
"""Which end lies on top, on the wearer: in front a woman's right one (New Mexico State Univ. Extension C-232); at the
side the front one, and at the back the left one (common practice, no source)."""


def ring(brief: Brief) -> bool:
    """Whether the band's ends are sewn to each other."""
    return brief.opening.kind == "none" or brief.waistband.kind == "elastic"


def draws_out(brief: Brief) -> bool:
    """Whether the band's end can be drawn out to lap: where it may, and is not held at nothing for being too short."""
    kinds = (brief.waistband.kind, brief.opening.kind)
    return kinds[0] in BANDS and kinds[1] in (*ZIPS, "placket") and brief.lap == brief.waistband.extension


def edges(
    brief: Brief, lie: Lie, high: float, top: tuple[Edge, ...], meets: Mapping[str, str], deep: tuple[str, ...], *,
    words: Phrase = TO_SKIRT, allowance: float | None = None,
) -> tuple[Edge, ...]:  # fmt: skip
    """Clockwise from the top, `high` mm above the waist seam: its edges as given, then the ends and the lower edge.

    `meets` says what each is sewn to, by name; `allowance` is that of the lower edge, where it is not that of seams.
    An edge of no length is none.
    """
    a, seam, end = brief.seams.allowance, brief.waist_seam, brief.band_length
    low = a if allowance is None else allowance
    ends, plain = phrase("extension" if brief.lap else "end"), phrase("plain end")
    if ring(brief):
        meets = {**meets, "extension end": "waistband/plain end", "plain end": "waistband/extension end"}
        ends = plain = phrase("seam, to the other end")

    def edge(name: str, path: Path, allowance: float, words: Phrase | None, governs: tuple[str, ...] = ()) -> Edge:
        return Edge(name, path, allowance, meets.get(name, ""), words=words, governs=governs)

    found = (
        *top,
        edge("extension end", lie.across(end, high, 0), a, ends, LAPS),
        edge("extension", lie.run(end, seam, 0), low, None, LAPS),
        edge("waist", lie.run(seam, 0, 0), low, words, deep),
        edge("plain end", lie.across(0, 0, high), a, plain),
    )
    kept = [e for e in found if e.path.length > 0]
    return meeting(kept) if lie.radius else tuple(kept)


def band_stations(brief: Brief, waist: Waist) -> tuple[Station, ...]:
    """Where a band meets the skirt; where it laps over the opening, that is marked too."""
    end = Station(brief.waist_seam, quarter_name(brief, 0))
    return (*waist.stations, *([end] if brief.lap else []))


def uprights(brief: Brief, waist: Waist, lie: Lie, high: float) -> Iterator[LineMark]:
    """The centre and quarter lines, from the top edge down to the waist seam; without words where a band is too low."""
    for s in band_stations(brief, waist):
        if s.words:
            words = Phrase(s.words) if high >= LEGIBLE else None
            yield LineMark(s.role, lie.across(s.at, high, 0), words, GIRTH)


def notches(
    brief: Brief, waist: Waist, lie: Lie, high: float, top: str, allowance: float | None = None
) -> Iterator[Spot]:  # fmt: skip
    """A notch at each station on the waist edge, and across from it on the top edge of that name."""
    a = brief.seams.allowance if allowance is None else allowance
    for s in band_stations(brief, waist):
        up, laps = lie.up(s.at), s.at >= brief.waist_seam
        on = f"{top} extension" if laps and top == "facing" else top
        yield Spot("notch", lie.at(s.at, high + a), notch_depth(a), up.degrees + 180, on, governs=GIRTH)
        yield Spot(
            "notch", lie.at(s.at, -a), notch_depth(a), up.degrees, "extension" if laps else "waist", governs=GIRTH
        )


def waist_seam(waist: Waist) -> Seam:
    """The skirt's top and the band's waist edge, both from the opening round."""
    return Seam("waist", waist.parts, (Part("waistband", "waist", True),))


def girth_dimensions(brief: Brief, lie: Lie, high: float) -> list[Dimension]:
    """The length of a straight band, and of its extension."""
    seam, end = brief.waist_seam, brief.band_length
    words, path = phrase("{b:bare} closed", b=brief.closed), "body.waist"
    if brief.waistband.kind == "elastic":
        words, path = phrase("{b:bare}, drawn in to {c:bare}", b=seam, c=elastic_girth(brief)), "body.hip"
    elif seam != brief.closed:
        words = phrase("{b:bare}, closes at {c:bare}", b=seam, c=brief.closed)
    found = [Dimension(path, lie.at(0, high), lie.at(seam, high), "above", words)]
    if brief.lap:
        lap = phrase("{x:bare}", x=brief.lap)
        found.append(Dimension("waistband.extension", lie.at(seam, 0), lie.at(end, 0), "below", lap))
    return found
