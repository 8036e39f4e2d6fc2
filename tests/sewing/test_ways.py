"""The way things lie: what laps over what, on which side of the wearer, and which way a dart is pressed."""

import math

import pytest
from briefs import brief
from making import said

from studio.draft import Piece
from studio.draft.bands.outline import LAPPED
from studio.geometry import Path, Point
from studio.sewing import sewing_order
from studio.styles import rack
from studio.units import spell

LAPS = {"centre back": "left over right", "side": "front over back", "front": "right over left"}
"""In front a woman's right laps over (New Mexico State Univ. Extension C-232); the others common practice, no source.
"""
ON_TOP = {
    "centre back": "on the wearer’s left",
    "side": "at the front of the opening",
    "front": "on the wearer’s right",
}


@pytest.mark.parametrize("place", LAPS)
def test_zip_placket_and_band_lap_the_same_way(place: str):
    """What laps over at the opening is one and the same edge for the lapped zip, the placket, the band's end that lies
    on top, and the note on the band itself.
    """
    for kind, key in (("lapped", "zip"), ("placket", "placket")):
        one = brief("straight", opening__kind=kind, opening__place=place)
        assert f"It laps {LAPS[place]}, on the wearer." in said(one, key)
        assert f"goes on past the opening, {ON_TOP[place]}." in said(one, "band")
        over = LAPS[place].replace(" over ", " laps over ")
        notes = [spell(n.words, "cm") for n in rack.draft(one).piece("waistband").notes]
        assert over in notes
        assert over == spell(LAPPED[place], "cm")


@pytest.mark.parametrize(
    ("place", "quarters"),
    [
        ("centre back", ["side", "centre front", "side", "centre back"]),
        ("side", ["centre back", "side", "centre front", "side"]),
        ("front", ["side", "centre back", "side", "centre front"]),
    ],
)
def test_the_extension_lies_where_the_words_say(place: str, quarters: list[str]):
    """Seen from outside the band runs to the right. From the centre back that is round by her right side first, so that
    its far end comes to lie on her left; from her left side it goes round by the back, so that it ends in front.
    """
    one = brief("straight", opening__place=place)
    band = rack.draft(one).piece("waistband")
    marks = sorted((m for m in band.lines if m.role in ("centre", "quarter")), key=lambda m: m.path.start.x)
    assert quarters == [spell(m.words, "cm") for m in marks if m.words]
    assert band.edge("extension end").path.start.x > band.edge("plain end").path.start.x


@pytest.mark.parametrize("panel", ["back", "front", "lining-back", "lining-front"])
def test_a_dart_is_pressed_the_way_its_roof_is_cut(panel: str):
    """Folded the way the words say, the cut top of a dart lies on the waist beside it: the skirt's towards the centre,
    the lining's tucks the other way (common practice, no source).
    """
    one = brief("straight", lining__kind="straight", opening__place="side")
    piece = rack.draft(one).piece(panel)
    centre = not panel.startswith("lining")
    words = said(one, "darts") if centre else said(one, "lining")
    assert ("Press towards the centre" if centre else "the other way from the skirt’s") in words
    found = [(_off(piece, k, towards_centre=centre), _off(piece, k, towards_centre=not centre))
             for k in range(len(piece.edge("waist").closes))]  # fmt: skip
    assert found
    assert all(way < 0.02 for way, _ in found)
    assert max(other for _, other in found) > 0.1


def _off(piece: Piece, k: int, *, towards_centre: bool) -> float:
    """How far the top of a dart's cloth lies off the waist beside it (mm), once it is folded to one side."""
    waist = piece.edge("waist")
    start, end = waist.closes[k]  # walked from the side to the centre
    along = end if towards_centre else start
    leg = waist.path.at(along)
    dart = next(m.path for m in piece.lines if m.role == "dart" and _near(m.path, leg))
    tip = max((c.end for c in dart.curves), key=lambda p: p.y)
    step = (end - start) / 2 * (-1 if towards_centre else 1)
    cloth = [waist.path.at(along + step * share) for share in (0.3, 0.6, 0.9)]
    return max(waist.path.nearest(_mirrored(p, tip, leg))[1] for p in cloth)


def _near(dart: Path, leg: Point) -> bool:
    return min(dart.start.distance(leg), dart.end.distance(leg)) < 0.5


def _mirrored(p: Point, a: Point, b: Point) -> Point:
    turn = 2 * math.atan2(b.y - a.y, b.x - a.x)
    x, y = p.x - a.x, p.y - a.y
    return Point(a.x + x * math.cos(turn) + y * math.sin(turn), a.y + x * math.sin(turn) - y * math.cos(turn))


@pytest.mark.parametrize("style", rack.RACK)
def test_an_order_that_can_be_sewn(style: str):
    """What lies flat comes first, what hangs last: marked and neatened, shaped, pocketed, opened, closed, banded,
    fastened, levelled, hemmed, and the lining after the skirt (common practice, no source).
    """
    first = ["prepare", "cut", "mark", "neaten", "darts", "pockets", "seams", "gather", "lining", "lining hung", "band"]
    last = ["fastening", "level", "hem", "lining hem", "press", "wear"]
    for opening in ("invisible", "lapped", "placket", "wrap"):
        one = brief(style, opening__kind=opening, pockets__kind="patch", lining__kind="straight")
        found = [m.key for m in sewing_order(one, rack.draft(one))]
        wanted = [k for k in (*first, *last) if k in found]
        assert wanted == [k for k in found if k in wanted]
