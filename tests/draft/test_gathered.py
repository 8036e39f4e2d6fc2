"""The gathered skirt against numbers from outside: handbooks, extension bulletins, and plain arithmetic."""

import pytest
from briefs import INCH, any_brief, brief
from hypothesis import given

from studio.cloth.lay import lay_out
from studio.draft.fastening import elastic_girth, ends, even_places, hole_length, hook_count
from studio.units import shop_length, spell
from studio.workroom import make_up


def sample(**changes: object):
    """Waist 70, ease 1, band 3, extension 3, allowance 1.5, fullness 2 across cloth of 140."""
    usual = {"waistband__extension": 30.0, "skirt__cut": "across"}
    return make_up(brief(**(usual | changes)))


def test_band_is_cut_77_by_9():
    """Waist 70, ease 1, extension 3, allowance 1.5, width 3: the band is cut 77.0 x 9.0 (derived: W+e+x+2a by 2w+2a)."""
    box = sample().draft.piece("waistband").cut_line.box
    assert (770.0, 90.0) == pytest.approx((box.width, box.height))


def test_band_closes_at_71():
    """The closed girth is waist and ease."""
    assert 710.0 == sample().fact("closed_girth")


@pytest.mark.parametrize(("width", "extension"), [(25.0, 25.0), (40.0, 30.0), (50.0, 40.0)])
def test_straight_band_rule(width: float, extension: float):
    """A straight band with ease 2.5 and allowance 1.5 is cut waist + 2.5 + extension + 3 by 2w + 3 (common practice, no source)."""
    box = (
        sample(waistband__ease=25.0, waistband__width=width, waistband__extension=extension)
        .draft.piece("waistband")
        .cut_line.box
    )
    assert (700 + 25 + extension + 30, 2 * width + 30) == pytest.approx((box.width, box.height))


def test_old_band_in_inches():
    """A 28 in waist with a lap of 1 in and turnings of 1 in at the ends is cut 31 in long; a 1 in band with turnings of
    1/4 in along is cut 2 1/2 in wide.

    Kinne and Cooley, Clothing and Health: the band is W + 3 long and twice the finished width and 1/2 in wide. One
    allowance goes round the whole piece here, so that each measure is drafted with its own.
    """

    def cut(turning: float):
        """The box of the band's cut line, in inches."""
        made = make_up(
            brief(
                body__waist=28 * INCH, waistband__ease=0.0, waistband__extension=1 * INCH, waistband__width=1 * INCH,
                seams__allowance=turning * INCH,
            )
        )  # fmt: skip
        box = made.draft.piece("waistband").cut_line.box
        return box.width / INCH, box.height / INCH

    assert 28 + 3 == pytest.approx(cut(1.0)[0])
    assert 2 * 1 + 0.5 == pytest.approx(cut(0.25)[1])


def test_two_panels_of_74():
    """B 71 with fullness 2 across 140 with selvedges of 1.5: 142 over 137 − 3 takes two panels, each cut 74 (example E30)."""
    made = sample()
    panel = made.draft.piece("skirt")
    assert (2, 740.0, 2) == (made.fact("panels"), panel.cut_line.box.width, panel.cut)


@pytest.mark.parametrize("length", [450.0, 600.0, 823.0])
def test_skirt_is_cut_four_longer(length: float):
    """A skirt of length L with hem 2.5 and allowance 1.5 is cut L + 4 (common practice, no source)."""
    assert length + 40 == pytest.approx(
        sample(skirt__length=length, seams__hem=25.0).draft.piece("skirt").cut_line.box.height
    )


def test_five_buttons_every_fifteen():
    """Five buttons from 1.5 to 61.5 lie every 15.0: (last − first)/(n − 1) (example E34)."""
    assert [15.0, 165.0, 315.0, 465.0, 615.0] == even_places(5, 15.0, 615.0)


def test_flat_button_hole():
    """An 18 x 3 mm flat button gets a hole of 21: diameter and thickness (Univ. of Minnesota Extension Bulletin 576)."""
    assert 21.0 == hole_length("flat", 18.0, 3.0)
    hole = next(n for n in sample().notions if n.what == "button")
    assert 21.0 == hole.sizes["hole"]


def test_ball_button_hole_takes_the_longest_rule():
    """A 12 mm ball: 1 1/4 diameters (Watson) is 15, half its girth 18.85, diameter and thickness (Minn 576) 24."""
    assert 24.0 == hole_length("ball", 12.0, 12.0)
    assert 18.85 == pytest.approx(hole_length("ball", 12.0, 2.0), abs=0.005)


def test_cloth_for_two_panels():
    """Two panels 66.5 tall take 133, the 77 x 9 band fits beside them; at 5 % that is 140.0, bought as 1.40 m (example E45)."""
    made = sample(skirt__length=600.0, seams__hem=50.0, cloth__shrinkage=0.05)
    assert 1330.0 == pytest.approx(made.lay.length)
    assert made.lay.proven
    assert 1400.0 == made.fact("cloth_estimate")
    assert 1400.0 == shop_length(1330.0 / 0.95, "cm")


def test_zip_stop_from_the_raw_edge():
    """A stop 20 below the seam is 21.5 from the raw edge, where the tape is put."""
    mark = next(m for m in sample().draft.piece("skirt").lines if m.role == "zip stop")
    assert mark.words is not None
    assert (200.0, 215.0) == (mark.words.values["s"], mark.words.values["r"])
    assert 200.0 == mark.path.start.y


@pytest.mark.parametrize(
    ("kind", "stop", "length"), [("invisible", 180.0, 230.0), ("invisible", 175.0, 200.0), ("lapped", 180.0, 180.0)]
)
def test_zip_to_buy(kind: str, stop: float, length: float):
    """The next length sold; an invisible zip is at least 2.5 longer than the opening (common practice, no source)."""
    zips = next(n for n in sample(opening__kind=kind, opening__zip_stop=stop).notions if n.what == "zip")
    assert length == zips.sizes["length"]


def test_gather_rows_straddle_the_seam():
    """Two rows lie 10 and 20 from the raw edge and keep 20 from the opening (Watson: two rows, seam between)."""
    panel = sample().draft.piece("skirt")
    rows = [m.path for m in panel.lines if m.role == "gather"]
    assert {10.0, 20.0} == {p.start.y + 15 for p in rows}
    assert 20.0 == min(p.start.x for p in rows)


def test_rows_break_into_quarters_above_three_metres():
    """Halves usually, quarters when the cloth is wider than 3 m (common practice, no source)."""
    along = make_up(brief(skirt__fullness=2.0)).draft.piece("skirt")
    wide = make_up(brief(skirt__fullness=4.5)).draft.piece("skirt")
    assert 2 == sum(1 for m in along.lines if m.role == "gather") / 2
    assert 4 == sum(1 for m in wide.lines if m.role == "gather") / 2


def test_true_gathering_is_a_little_more_than_fullness():
    """With 2 kept flat at each end the rest is gathered (T − 4)/(B − 4)."""
    assert (1420 - 40) / (710 - 40) == pytest.approx(sample().fact("gather_ratio"))


@pytest.mark.parametrize(("times", "flat"), [(2.0, 40.0), (3.0, 60.0)])
def test_sheer_and_crisp_ruches(times: float, flat: float):
    """Each 20 of the closed band takes 40 of taffeta's panels and 60 of chiffon's, measured from side seam to side seam.

    The New Dressmaker, 1921, ch. 28: twice the finished length, and three times.
    """
    made = make_up(brief(skirt__fullness=times))
    cloth = sum(p.edge("waist").path.length * p.cut for p in made.pieces if any(e.hem for e in p.edges))
    band = made.draft.piece("waistband").edge("waist").path.length
    assert flat / 20 == pytest.approx(cloth / band, abs=0.01)


def test_whole_widths_let_the_fullness_rise():
    """Two whole widths of 134 between seams give 268 round a band of 71: fullness 3.77."""
    made = sample(skirt__whole_widths=True)
    assert (2680.0, 2) == (made.fact("flat_width"), made.fact("panels"))


def test_band_piece_needs_no_cloth_of_its_own():
    """The band lies along the grain on the first layer of cloth, within the selvedges."""
    made = sample()
    for placed in lay_out(made.pieces, made.brief.cloth).placed:
        ys = [placed.on_cloth(p).y for p in placed.piece.cut_line.flat()]
        assert min(ys) >= 15 - 1e-9
        assert max(ys) <= 1400 - 15 + 1e-9


@pytest.mark.parametrize("have", [230.0, 225.0, 235.0, 300.0])
def test_words_and_numbers_of_a_zip_agree(have: float):
    """A zip on hand no longer than the next length sold is sewn in whole; a longer one is cut within its length."""
    zips = next(n for n in sample(opening__zip_on_hand=have).notions if n.what == "zip")
    if have <= 230:
        assert "bar_tack" not in zips.sizes
        return
    assert zips.sizes["bar_tack"] == zips.words.values["t"] == 225.0
    assert zips.sizes["cut_at"] == zips.words.values["c"] == min(have, 245.0)


@given(any_brief())
def test_closed_girth_is_what_is_drawn(one):
    """The closed band measures what lies between the hole's outer end, or the hook's, or the snap's middle, and the
    button, bar, eye or other half; where it has no ends, what it is cut to, or the elastic in it.
    """
    made = make_up(one)
    band = next((p for p in made.pieces if p.id == "waistband"), None)
    if band is None or not ends(one):
        assert made.fact("closed_girth") == (elastic_girth(one) if one.waistband.kind == "elastic" else one.closed)
        return
    if one.waistband.kind == "contour":
        return  # measured along its curve in test_bands
    outer = [m.path.end.x for m in band.lines if m.role == "buttonhole"]
    outer += [s.at.x + s.size / 2 for s in band.spots if s.role == "hook"]
    inner = [s.at.x for s in band.spots if s.role in ("button", "bar")]
    if not outer:
        snaps = [s.at.x for s in band.spots if s.role == "snap"]
        outer, inner = snaps[:1], snaps[hook_count(one.waistband.depth) :]
    assert outer[0] - inner[0] == pytest.approx(made.fact("closed_girth"))
    held = next((n for n in made.notions if n.what.startswith("hook")), None)
    assert held is None or held.sizes["count"] == len(inner)


def test_cloth_is_rounded_once():
    """145 cm are 1 5/8 yd for one who buys by the eighth of a yard, and 1.5 m by the tenth of a metre."""
    words = next(n for n in make_up(brief()).notions if n.what == "cloth").words
    assert spell(words, "in").startswith("cloth 1 5/8 yd")
    assert spell(words, "cm").startswith("cloth 1.5 m")
