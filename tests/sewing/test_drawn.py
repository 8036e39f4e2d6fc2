"""What the pictures of the steps show is the draft's own: lengths on paper are lengths of cloth, times the scale."""

import math

import pytest
from briefs import brief
from shapely.geometry import Polygon

from studio.brief import Brief
from studio.draft.fastening import button_place, hole_length
from studio.draft.making import Making
from studio.drawing import Drawing, Stroke, Words, flat_marks
from studio.geometry import Box, Point, rectangle
from studio.sewing import laid_flat, on_screen, picture, sewing_order
from studio.sewing.drawn.flat import skirt_laid
from studio.sewing.drawn.folds import folded
from studio.sewing.drawn.laid import laid
from studio.sewing.drawn.meeting import run
from studio.sewing.drawn.torn import torn
from studio.sewing.drawn.view import opened
from studio.styles import rack
from studio.units import Unit, write_length

STYLES = tuple(rack.RACK)


def drawn(one: Brief, key: str, unit: Unit = "cm") -> Drawing:
    """The picture of a step."""
    draft = rack.draft(one)
    return picture(step(one, key), draft, one, unit)


def step(one: Brief, key: str) -> Making:
    """A step of a brief."""
    return next(m for m in sewing_order(one, rack.draft(one)) if m.key == key)


def strokes(drawing: Drawing, colour: str | None = None, ink: str = "") -> list[Stroke]:
    """The lines of a picture, of one colour and meaning where they are given."""
    found = [m for m in flat_marks(drawing) if isinstance(m, Stroke)]
    return [s for s in found if (colour is None or s.colour == colour) and ink in ("", s.ink)]


def texts(drawing: Drawing) -> list[str]:
    """What is written in a picture."""
    return [m.text for m in flat_marks(drawing) if isinstance(m, Words)]


def test_gather_rows_at_true_size():
    """A ruler laid on the picture measures the rows themselves, and their distances are written beside them."""
    found = drawn(brief(), "gather")
    assert "true size" in texts(found)[-1]
    cut = next(s for s in strokes(found) if s.ink == "cut").path.box
    rows = sorted({round(s.path.start.y - cut.top, 3) for s in strokes(found, "accent", "gather")})
    assert [10.0, 20.0] == rows
    assert {"1.0", "2.0", "3.5"} <= set(texts(found))  # 35: an allowance of 15, and 20 that stay flat


def test_words_of_a_picture_follow_the_unit():
    """In inches the same picture says inches."""
    assert "3/8" in texts(drawn(brief(), "gather", "in"))


@pytest.mark.parametrize("opening", ["invisible", "centred", "lapped"])
@pytest.mark.parametrize("style", STYLES)
def test_the_zip_stop_is_measured_from_the_raw_edge(style: str, opening: str):
    """Beside the zip stands how far its stop lies below the raw edge, as the draft has it."""
    one = brief(style, opening__kind=opening, opening__zip_stop=180.0)
    found = texts(drawn(one, "zip"))
    assert "stop" in found
    assert write_length(180 + one.seams.allowance, "cm", bare=True) in found


def test_a_hem_is_cut_through_at_true_size():
    """From fold to fold it is what is left of the hem once its edge is turned, and as long as it is on paper."""
    one = brief(seams__hem=40.0, seams__first_turn=10.0)
    found = drawn(one, "hem")
    assert {"3.0", "1.0"} <= set(texts(found))
    cloth = max((s for s in strokes(found) if s.line_width == 0.6), key=lambda s: s.path.length).path
    bottom = cloth.box.bottom
    turned = [c.start.y for c in cloth.curves if c.start.x > cloth.start.x + 0.1]
    assert 30.0 == pytest.approx(bottom - min(turned), abs=1.7)  # its upper fold is round


def test_a_folded_strip_is_as_long_as_it_is():
    """Straight parts and half circles add up, wherever the strip turns (half a circle's circumference: π d / 2)."""
    path = folded(Point(3, 4), 90, 20, (-1, 4), 12, (-1, 2), 5)
    assert 20 + 12 + 5 + math.pi * (4 + 2) / 2 == pytest.approx(path.length)
    ends = path.direction(path.length)
    assert (0, 1) == pytest.approx(tuple(ends), abs=1e-9)  # two half turns: down again


@pytest.mark.parametrize("style", STYLES)
def test_laid_flat_it_has_half_of_everything(style: str):
    """Half the waist, half the hem and the whole length: a part of a ring (a cone, unrolled), unless the hips shape it."""
    one = brief(style)
    draft = rack.draft(one)
    flat = laid(one, draft)
    assert flat.level(0).length == pytest.approx(min(draft.fact("waist_seam"), draft.fact("closed_girth")) / 2)
    assert flat.at(0, flat.long).y - flat.at(0, 0).y == pytest.approx(one.finished_length)
    if flat.angle < math.pi:
        assert flat.level(flat.long).length == pytest.approx(draft.fact("hem_sweep") / 2)
    outline = strokes(skirt_laid(one, draft))[0].path
    assert outline.closed
    if flat.deep:
        return
    assert flat.down(0.7, 0, flat.long).length == pytest.approx(one.finished_length)
    ring = (flat.level(0).length + flat.level(flat.long).length) / 2 * flat.long  # of any part of a ring
    assert Polygon(outline.flat(0.001)).area == pytest.approx(ring, rel=1e-3)


def test_a_full_circle_lies_as_half_a_disc():
    """Folded once, a circle skirt's sides lie in one straight line."""
    one = brief("circle", skirt__fraction=1.0)
    flat = laid(one, rack.draft(one))
    ends = flat.at(-1, flat.long), flat.at(1, flat.long)
    assert ends[0].y == pytest.approx(ends[1].y)
    assert flat.angle == pytest.approx(math.pi, rel=0.01)


def test_laid_flat_it_fits_its_room():
    """However wide, it stays in the room it is given."""
    room = Box(10, 20, 190, 200)
    for style in STYLES:
        one = brief(style)
        for s in strokes(laid_flat(one, rack.draft(one), room)):
            assert s.path.box.joined(room.grown(0.01)) == room.grown(0.01)


@pytest.mark.parametrize("style", STYLES)
def test_pieces_to_cut_lie_side_by_side(style: str):
    """All pieces are there, to one scale, and none lies on another (shapely)."""
    one = brief(style, pockets__kind="in seam", lining__kind="straight")
    draft = rack.draft(one)
    found = [s.path for s in strokes(drawn(one, "cut"), "accent", "cut")]
    assert len(draft.pieces) == len(found)
    scales = [a.box.width / p.as_cut.box.width for a, p in zip(found, draft.pieces, strict=True)]
    assert scales == pytest.approx([scales[0]] * len(scales))
    shapes = [Polygon(path.flat(0.02)) for path in found]
    for k, shape in enumerate(shapes):
        assert all(shape.intersection(other).area < 1e-6 for other in shapes[k + 1 :])


def test_what_is_pinned_to_what():
    """Quarters of the flat skirt stand below the quarters of the band they are pinned to."""
    one = brief(body__waist=690.0, skirt__fullness=2.2)
    found = texts(drawn(one, "band"))
    assert 4 == found.count(write_length(700 / 4, "cm", bare=True))
    assert 4 == found.count(write_length(700 * 2.2 / 4, "cm", bare=True))
    assert {"side", "centre front"} <= set(found)


@pytest.mark.parametrize("style", STYLES)
def test_both_sides_of_a_seam_come_out_alike(style: str):
    """Sewn, the two sides of the waist seam are equally long, and every notch of the band is pinned."""
    draft = rack.draft(brief(style))
    seam = next(s for s in draft.seams if s.name == "waist")
    pieces = {p.id: p for p in draft.pieces}
    one, other = run(seam.one, pieces), run(seam.other, pieces)
    assert one.met[-1].sewn == pytest.approx(other.met[-1].sewn, abs=0.1)
    for met in other.met:
        assert min(abs(met.sewn - m.sewn) for m in one.met) < 0.1


def test_which_end_carries_what():
    """The hole lies in the extension as far in as it is drafted, the button on the plain end; each says so."""
    one = brief(fastening__end_inset=17.0, waistband__extension=45.0)
    hole = hole_length("flat", one.fastening.button_diameter, one.fastening.button_height)
    holes, buttons = texts(drawn(one, "holes")), texts(drawn(one, "fastening"))
    assert {"plain end", "extension", "1.7", write_length(hole, "cm", bare=True)} <= set(holes)
    assert write_length(button_place(one), "cm", bare=True) in buttons
    bar = max(strokes(drawn(one, "holes"), "accent"), key=lambda s: s.path.box.width)
    assert hole / 2 == pytest.approx(bar.path.length)  # half size


def test_interfacing_lies_on_its_band():
    """The interfacing is shown where it is fused: on the wrong side, so far in from the cut edge."""
    one = brief()
    draft = rack.draft(one)
    found = drawn(one, "interface")
    outer = next(s for s in strokes(found) if s.ink == "cut").path.box
    inner = strokes(found, "accent", "plain")[0].path.box
    band, fused = draft.piece("waistband").cut_line.box, draft.piece("interfacing").cut_line.box
    scale = outer.height / band.height
    assert fused.height * scale == pytest.approx(inner.height)
    assert (fused.top - band.top) * scale == pytest.approx(inner.top - outer.top)


def test_a_piece_on_the_fold_is_shown_open():
    """What is cut on the fold is shown as it lies on the table, both halves with their marks."""
    draft = rack.draft(brief("straight"))
    front = draft.piece("front")
    whole = opened(front)
    assert front.on_fold
    assert 2 * front.cut_line.box.width == pytest.approx(whole.cut_line.box.width)
    darts = sum(m.role == "dart" for m in front.lines)
    assert 2 * darts == sum(m.role == "dart" for m in whole.lines)
    assert {"left", "right"} <= {e.name.split(" ")[0] for e in whole.edges}


def test_cloth_is_torn_only_where_it_goes_on():
    """A window over the corner of a rectangle tears its two inner sides; one around all of it tears none."""
    outline = rectangle(0, 0, 100, 80).flat()
    lines = [m for m in torn(outline, Box(-5, -5, 40, 30)) if isinstance(m, Stroke) and not m.bare]
    assert 2 == len(lines)
    ends = sorted(max(s.path.box.width, s.path.box.height) for s in lines)
    assert [30.0, 40.0] == pytest.approx(ends, abs=0.2)
    assert [] == list(torn(outline, Box(-5, -5, 105, 85)))


def test_a_crowded_piece_is_shown_in_part():
    """Twenty pleats are not told apart on a whole panel: the marks are shown near its top instead."""
    whole, part = drawn(brief(), "mark"), drawn(brief("pleated"), "mark")
    assert not any(s.line_width == 0.22 and s.ink == "plain" for s in strokes(whole))  # nothing is torn
    assert any(s.line_width == 0.22 and s.ink == "plain" for s in strokes(part))


def test_a_screen_claims_no_true_size():
    """On a screen no picture says that it can be measured; on paper it does."""
    found = drawn(brief(), "gather")
    assert "true size" in texts(found)[-1]
    assert "Skirt, wrong side" == texts(on_screen(found))[-1]
    assert texts(found)[:-1] == texts(on_screen(found))[:-1]


def test_a_fitted_skirt_lies_as_wide_as_its_hips():
    """Laid flat, a straight skirt is half as wide as its waist seam, its girth at the hips and its hem, each at its
    height; it is not drawn as an A-line."""
    one = brief(skirt__style="straight")
    draft, flat = rack.draft(one), laid(one, rack.draft(one))
    across = {down: flat.at(1, down).x - flat.at(-1, down).x for down in (0.0, one.hip_depth, one.finished_length)}
    girths = [draft.fact(name) for name in ("closed_girth", "hip_girth", "hem_sweep")]
    assert [g / 2 for g in girths] == pytest.approx(list(across.values()))
    outline = strokes(skirt_laid(one, draft))[0].path
    assert outline.box.width == pytest.approx(max(girths) / 2, abs=0.5)


def test_seams_and_insets_show():
    """Six gores show three at the front; a godet stands in each seam between them, as high as it is drafted."""
    gored, inset = brief(skirt__style="gored"), brief(skirt__style="godet")
    draft = rack.draft(inset)
    godet = next(p for p in draft.pieces if p.id == "godet")
    assert 2 == len(strokes(skirt_laid(gored, rack.draft(gored)), ink="seam"))
    seams = [s.path for s in strokes(skirt_laid(inset, draft), ink="seam")]
    sides = [p for p in seams if p.start.y > seams[0].start.y + 1]
    assert (2, 4) == (len(seams) - len(sides), len(sides))  # two seams, and two sides of a godet in each
    flat = laid(inset, draft)
    foot = flat.long - godet.seam_line.box.height
    tips = [flat.at(across, foot) for across in (-1 / 3, 1 / 3)]
    assert all(min(p.start.distance(tip) for tip in tips) < 1e-6 for p in sides)
