"""Bands of a print: typed, shown, kept in files."""

import pytest
from briefs import a_band, brief
from hypothesis import given
from hypothesis import strategies as st

from studio.brief import PrintBand
from studio.brief.bands import read_bands, write_bands
from studio.brief.skirt_file import Damaged, dump, load
from studio.styles import rack
from studio.units import Unit, Unreadable

READ = [
    ("0 to 14", "cm", PrintBand(0, 140, "skirt", "hem")),
    ("0-14 skirt", "cm", PrintBand(0, 140, "skirt", "hem")),
    ("126–132 cm Waistband", "cm", PrintBand(1260, 1320, "waistband", "face centre")),
    ("0 to 5 1/2 tier 2 by top tops first", "in", PrintBand(0, 139.7, "tier 2", "top", "first")),
    ("1,5 to 80 mm nothing tops second", "cm", PrintBand(15, 80, "nothing", "hem", "second")),
    ("120 to 132 waistband by fold", "cm", PrintBand(1200, 1320, "waistband", "fold")),
]


@pytest.mark.parametrize(("typed", "unit", "band"), READ)
def test_a_band_is_typed_in_a_line(typed: str, unit: Unit, band: PrintBand):
    """From, to, what should show it, what is laid on it and which way it stands; the usual where nothing is said."""
    read = read_bands(typed, unit)[0]
    assert (band.holds, band.by, band.tops) == (read.holds, read.by, read.tops)
    assert (band.start, band.end) == pytest.approx((read.start, read.end))


def test_bands_come_in_order_across_the_cloth():
    """However they are typed, the first lies nearest to the first selvedge."""
    bands = read_bands("120 to 132 waistband; 0 to 14 skirt", "cm")
    assert [0, 1200] == [band.start for band in bands]
    assert "0.0 to 14.0 skirt; 120.0 to 132.0 waistband" == write_bands(bands, "cm")


@given(st.lists(a_band(), max_size=6), st.sampled_from(["cm", "in"]))
def test_what_is_shown_can_be_typed_again(bands: list[PrintBand], unit: Unit):
    """Bands as they stand in the field are read as themselves, to half of what is shown of a length."""
    wide = tuple(sorted((b for b in bands if b.end - b.start > 10), key=lambda b: b.start))
    read = read_bands(write_bands(wide, unit, bare=True), unit)
    assert sorted((b.holds, b.by, b.tops) for b in wide) == sorted((b.holds, b.by, b.tops) for b in read)
    assert [b.start for b in wide] == pytest.approx([b.start for b in read], abs=25.4 / 16 + 1e-6)


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("14 to 0 skirt", "less to more"),
        ("hem", "is not a band"),
        ("0 to 14 sleeve", "is not a band"),
        ("5 to 25 skirt by hem, 100 to 105 waistband", "is not a band.*and ; between two"),
        ("20 to 30, 40 to 50", "is not a band.*and ; between two"),
        ("a to b skirt", "is not a band"),
        ("0 to 9000", "No cloth is so wide"),
        ("0 to 1;" * 13, "at most 12"),
        ("9" * 2000, "too long"),
        ("1 to 2 by " * 80, "is not a band"),
    ],
)
def test_what_is_no_band_is_refused_in_a_sentence(typed: str, says: str):
    """What would do is said."""
    with pytest.raises(Unreadable, match=says):
        read_bands(typed, "cm")


def test_a_file_keeps_its_bands_and_refuses_crooked_ones():
    """Bands are saved with the skirt; a band that ends before it starts is told with its place."""
    one = rack.edit(brief(), {"cloth.bands": (PrintBand(0, 140), PrintBand(1200, 1320, "waistband", "face centre"))})
    raw = dump(one)
    assert one == load(raw, rack.RECORDS)
    with pytest.raises(Damaged, match="bands"):
        load(raw.replace(b'"end": 140', b'"end": 0'), rack.RECORDS)


def test_a_line_of_dashes_is_refused_at_once():
    """However odd the text, reading it takes no longer than it is long: twelve hundred dashes are no band."""
    with pytest.raises(Unreadable):
        read_bands("-" * 1100 + "x", "cm")
