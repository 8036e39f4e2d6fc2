"""What cannot fit is named before any search, with what would make it fit: open cloth, a split, width, length."""

import itertools

import pytest
from briefs import brief
from shapely.affinity import translate
from shapely.geometry import Polygon, box

from studio.brief import Brief, Held
from studio.check import Finding
from studio.cloth.ways import grain_down
from studio.styles import rack
from studio.units import spell
from studio.workroom import Docket, make_up

WIDTHS = (600.0, 700.0, 900.0)
SHORT = (300.0, 900.0, None)
"""Lengths on hand, mm."""
MORE = (
    {}, {"skirt__length": 1000.0}, {"seams__hem_kind": "faced"}, {"body__waist": 1300.0, "body__hip": 1450.0},
    {"skirt__sweep": 5000.0}, {"skirt__fraction": 0.5}, {"skirt__panels": 1}, {"skirt__cut": "along"},
    {"waistband__width": 150.0, "waistband__kind": "folded", "pockets__kind": "in seam"},
    {"opening__kind": "wrap", "waistband__kind": "contour"},
)  # fmt: skip
"""What makes a skirt take more of the width."""


def narrow(style: str) -> list[Brief]:
    """A style on every narrow and short cloth, open and folded."""
    known = rack.declarations(rack.usual("cm", style))
    return [
        brief(style, cloth__width=width, cloth__lies=lies, cloth__on_hand=have, **more)
        for width, lies, (have, more) in itertools.product(
            WIDTHS, ("open", "folded"), zip(itertools.cycle(SHORT), MORE, strict=False)
        )
        if {path.replace("__", ".") for path in more} <= set(known)
    ]


def stops(made: Docket) -> set[tuple[str, str]]:
    """The stops of a docket, by rule and place."""
    return {(f.rule, f.where) for f in made.findings if f.weight == "stop"}


def check_parts(made: Docket, finding: Finding) -> None:
    """The piece really parts into so many that fit, each so wide with its allowances, and into no fewer."""
    n, wide = finding.says.values["n"], finding.says.values["x"]
    assert isinstance(n, int)
    assert isinstance(wide, float)
    piece, a, cloth = made.draft.piece(finding.piece), made.brief.seams.allowance, made.brief.cloth
    half = cloth.lies == "folded" and piece.on_fold
    whole = Polygon((piece.cut_line if half else piece.as_cut).flat(0.005))
    if not grain_down(piece):  # the grain upright, so that a join is
        whole = Polygon([(y, x) for x, y in whole.exterior.coords])
    left, _, right, _ = whole.bounds
    step = (right - left - 2 * a) / n
    for k in range(n):
        start = left + a + k * step
        part = whole.intersection(translate(box(-a, -1e5, step + a, 1e5), start))
        assert part.bounds[2] - part.bounds[0] == pytest.approx(wide, abs=0.02)
    assert wide <= cloth.usable + 1e-6
    assert n == 2 or (right - left - 2 * a) / (n - 1) + 2 * a > cloth.usable


@pytest.mark.parametrize("style", tuple(rack.RACK))
def test_what_does_not_fit_is_named_with_a_way_out(style: str):
    """On cloth 60, 70 and 90 cm wide, open or folded, long or short: where a piece does not fit or the cloth is too
    short, one press mends it and stops nothing else, or the words say in how many parts it fits, in true numbers.
    """
    asked = 0
    for one in narrow(style):
        made = make_up(one)
        named = [f for f in made.findings if f.rule in ("pieces-fit-cloth", "cloth-on-hand-suffices")]
        assert bool(made.lay.misfits) == any(f.rule == "pieces-fit-cloth" for f in named)
        for finding in named:
            asked += 1
            assert finding.remedy is not None or "x" in finding.says.values
            if "x" in finding.says.values:
                check_parts(made, finding)
            if finding.remedy is not None:
                after = make_up(rack.edit(one, finding.remedy))
                same = [f.piece for f in after.findings if f.rule == finding.rule]
                assert finding.piece not in same or (finding.piece != "waistband" and same == ["waistband"])
                assert stops(after) - {("pieces-fit-cloth", "cloth.width")} <= stops(made)
    assert asked >= 6


SPLIT = (
    ("gored", {"skirt__sweep": 5000.0, "cloth__width": 600.0}, {"skirt.gores": 10}, "Gores: 10"),
    ("godet", {"skirt__sweep": 5000.0, "cloth__width": 700.0}, {"skirt.gores": 8}, "Gores: 8"),
    ("circle", {"skirt__length": 1000.0, "cloth__width": 600.0}, {"skirt.panels": 8}, "Panels: 8"),
    ("circle", {"skirt__panels": 1, "cloth__width": 600.0}, {"skirt.panels": 0}, "As many panels as the cloth asks"),
    ("gored", {"skirt__sweep": 5000.0, "cloth__width": 600.0, "cloth__lies": "folded"},
     {"cloth.lies": "open", "skirt.gores": 10}, "Open cloth, Gores: 10"),
    ("straight", {"cloth__width": 600.0, "cloth__lies": "folded"}, {"cloth.lies": "open"}, "Lay the cloth open"),
)  # fmt: skip


@pytest.mark.parametrize(("style", "changes", "remedy", "does"), SPLIT)
def test_a_number_that_parts_the_skirt_is_offered(style: str, changes: dict, remedy: dict, does: str):
    """Gores, panels, open cloth: the least that fits, and one less does not."""
    made = make_up(brief(style, **changes))
    (finding,) = [f for f in made.findings if f.rule == "pieces-fit-cloth"]
    assert (remedy, does) == (finding.remedy, spell(finding.does, "cm"))
    assert "x" not in finding.says.values
    for path in {rack.its_style(made.brief).parts} & set(remedy):
        if remedy[path]:
            less = rack.edit(made.brief, {**remedy, path: remedy[path] - 1})
            assert make_up(less).lay.misfits


def test_where_no_number_parts_a_piece_the_words_say_where_a_join_would_do():
    """A front 74 cm wide on cloth of 60: two halves of 37 and 1.5 more for each of their seams; or wider cloth."""
    made = make_up(brief("straight", body__waist=1300.0, body__hip=1400.0, cloth__width=600.0))
    (finding,) = [f for f in made.findings if f.rule == "pieces-fit-cloth"]
    text = "Front lies 74.0 cm across, the cloth holds 57.0 cm: 2 parts of 38.5 cm fit, joined on the straight grain."
    assert text == spell(finding.says, "cm")
    assert {"cloth.width": 770.0} == finding.remedy


def test_a_way_out_that_would_stop_something_else_is_passed_over():
    """Nine gores would fit, but pockets in the side seam want one at the side: twelve have it. Cloth laid open would
    hold the back, but a band held on the fold would then lie on the selvedge: wider cloth does not move it.
    """
    wide = {"skirt__length": 1000.0, "skirt__sweep": 7000.0, "skirt__gores": 8, "cloth__width": 900.0}
    held = (Held("waistband", 0, 0.0, 0.0),)
    folded = {"cloth__width": 600.0, "cloth__lies": "folded"}
    for one, without, remedy in (
        (brief("gored", **wide, pockets__kind="in seam"), {"pockets.kind": "none"}, {"skirt.gores": 12}),
        (brief("straight", **folded, cloth__held=held), {"cloth.held": ()}, {"cloth.width": 610.0}),
    ):
        free = [f.remedy for f in make_up(rack.edit(one, without)).findings if f.rule == "pieces-fit-cloth"]
        bound = [f.remedy for f in make_up(one).findings if f.rule == "pieces-fit-cloth"]
        assert [remedy] == bound != free
        assert stops(make_up(rack.edit(one, remedy))) <= stops(make_up(one))
