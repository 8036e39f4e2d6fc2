"""Each seam is sewn to its own end, and no seam is sewn over what another step leaves open."""

import re
from typing import Any

import pytest
from briefs import brief
from making import keys, said

from studio.draft.seam import Seam
from studio.styles import rack
from studio.units import write_length


def joins(style: str, **changes: Any) -> list[Seam]:
    """The seams between a skirt's panels, the one at the opening too."""
    draft = rack.draft(brief(style, **changes))
    return [s for s in draft.seams if s.name == "join" and draft.piece(s.one[0].piece).cloth == "main"]


@pytest.mark.parametrize("place", ["centre back", "side", "front"])
@pytest.mark.parametrize("slit", ["slit", "vent"])
def test_a_back_seam_ends_where_its_slit_begins(slit: str, place: str):
    """Wherever the zip is, the back seam and no other ends at the slit: as far down as the back is long at its middle,
    less the slit, and less the zip's stop where the zip is in that seam.
    """
    one = brief("straight", skirt__slit=slit, opening__place=place)
    uncut = rack.draft(brief("straight", opening__place="front")).piece("back").edge("right").path.length
    slit_at = uncut - 200 - (one.stop if place == "centre back" else 0)
    text = f"{write_length(slit_at, 'cm')} down to where the slit begins"
    key, other = ("opening seam", "seams") if place == "centre back" else ("seams", "opening seam")
    assert text in said(one, key)
    assert "slit begins" not in said(one, other)
    assert 1 == said(one, key).count("slit begins")


@pytest.mark.parametrize("place", ["centre back", "side", "front"])
def test_every_seam_is_told_once(place: str):
    """The seams that the words count are those of the draft, the one at the opening told by itself."""
    for slit in ("none", "slit"):
        words = said(brief("straight", skirt__slit=slit, opening__place=place), "seams")
        several = sum(int(n) for n in re.findall(r"(\d+) (?:such )?seams", words))
        alone = words.count("one seam") + len(re.findall(r"Sew [\d.]+ cm down", words))
        assert len(joins("straight", skirt__slit=slit, opening__place=place)) == several + alone + 1


def test_side_seams_run_to_the_raw_edge():
    """A side seam is as long as the side it is drawn with, and goes on through the hem."""
    one = brief("straight", skirt__slit="vent", opening__place="front")
    side = rack.draft(one).piece("front").edge("left").path.length
    words = said(one, "seams")
    assert f"2 seams: each {write_length(side, 'cm')} down to the hem line, and on to the raw edge" in words


@pytest.mark.parametrize(("stop", "first"), [(200.0, True), (250.0, True), (150.0, False)])
def test_no_zip_is_sewn_over_by_a_join(stop: float, first: bool):
    """Where zip, tail and all, goes down past the first join of a tiered skirt, the tiers are joined before it, as open
    strips, and the seam below it runs through them all; a short zip is set in its tier alone.
    """
    one = brief("tiered", opening__zip_stop=stop)
    found = keys(one)
    assert first == (found.index("tier/3") < found.index("zip"))
    assert ("one strip: leave the centre back seam open" in said(one, "seams")) == first
    below = write_length(one.finished_length - stop, "cm")
    assert (f"Sew {below} through all tiers" in said(one, "opening seam")) == first
    draft = rack.draft(one)
    zip_ = next(n for n in draft.notions if n.what == "zip")
    assert first == (float(zip_.sizes["length"]) > draft.fact("tier_1_depth"))


def test_a_wrap_has_no_rings():
    """The tiers of a wrap are strips, joined before their free edges are turned."""
    one = brief("tiered", opening__kind="wrap")
    assert "strip" in said(one, "seams")
    assert "ring" not in said(one, "seams")
    assert keys(one).index("tier/3") < keys(one).index("wrap edges")


def test_pockets_come_before_the_seams_they_lie_in():
    """Bags are set while the panels lie flat, also where tiers are joined before the zip."""
    deep = {"skirt__length": 900.0, "skirt__tiers": 2, "skirt__ratio": 2.0, "cloth__width": 450.0}
    for stop in (150.0, 440.0):
        found = keys(brief("tiered", opening__zip_stop=stop, pockets__kind="in seam", **deep))
        assert found.index("pockets") < found.index("seams")


def test_a_pocket_below_the_zip_is_sewn_round():
    """With zip and pocket in one seam, the seam below the zip goes round the bag; where they cross no bag is set."""
    style = {"opening__place": "side", "pockets__kind": "in seam"}
    clear = brief("straight", opening__zip_stop=80.0, pockets__top=110.0, **style)
    assert "round the pocket bag" in said(clear, "opening seam")
    crossed = brief("straight", **style)
    assert "Set no bag where the opening is" in said(crossed, "pockets")
    assert "pocket" not in said(crossed, "opening seam")


def test_gather_rows_of_every_panel_are_told():
    """Where a tier is of two kinds of panel, both are told where their rows start and stop, as drawn."""
    one = brief("tiered", opening__kind="wrap", skirt__tiers=4)
    draft = rack.draft(one)
    words = said(one, "tier/3")
    for piece in (draft.piece("tier-3"), draft.piece("tier-3-across")):
        left = piece.cut_line.box.left
        for row in (m.path.box for m in piece.lines if m.role == "gather"):
            at = [write_length(x - left, "cm") for x in (row.left, row.right)]
            assert f"{piece.name}, from the left cut edge, right side up: start at {at[0]}, stop at {at[1]}." in words
