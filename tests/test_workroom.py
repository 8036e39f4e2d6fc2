"""What is kept and what is made anew when a brief is made up."""

from briefs import brief

from studio.brief import PrintBand
from studio.cloth.better import plans
from studio.styles import rack
from studio.workroom import make_up, relaid


def test_a_better_lay_is_kept_while_the_outlines_are_the_same():
    """Another button leaves the plan as good as it was; another length asks for a new one."""
    first = make_up(brief("gored"))
    *_, best = plans(first.pieces, first.brief.cloth, 1.0)
    better = relaid(first, best)
    assert better.lay.length < first.lay.length
    assert better.fact("cloth_needed") < first.fact("cloth_needed")
    same = make_up(rack.edit(first.brief, {"fastening.button_diameter": 20.0}), before=better)
    assert better.lay.length == same.lay.length
    assert {id(p) for p in same.pieces} >= {id(p.piece) for p in same.lay.placed}
    longer = rack.edit(first.brief, {"skirt.length": 700.0})
    assert make_up(longer) == make_up(longer, before=better)


def test_a_line_that_moves_on_its_piece_asks_for_a_new_lay():
    """A deeper hem on a shorter skirt leaves the cut line as it was, but not where the hem lies on its band: made up
    from before or not, the docket is the same.
    """
    band = PrintBand(1000.0, 1120.0)
    one = brief(skirt__cut="along", cloth__bands=(band,), cloth__width=1500.0, seams__hem=40.0, skirt__length=620.0)
    other = rack.edit(one, {"seams.hem": 50.0, "skirt.length": 610.0})
    assert make_up(one).draft.piece("skirt").cut_line == make_up(other).draft.piece("skirt").cut_line
    assert make_up(other) == make_up(other, before=make_up(one))
