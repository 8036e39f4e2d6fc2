"""The hips that are expected of a waist, where they were not measured."""

import csv
from statistics import linear_regression

import pytest
from briefs import BODIES, brief


def test_the_regression_of_the_paper():
    """A waist of 70 cm leads one to expect hips of 95.8 (Heinz et al., Journal of Statistics Education 11(2), 2003:
    43.80 + 0.7428 waist; example E56).
    """
    assert 957.96 == pytest.approx(brief(body__waist=700.0, body__hip=None).hips)


@pytest.mark.parametrize("waist", [580.0, 700.0, 850.0, 1000.0])
def test_it_is_the_line_through_the_women(waist: float):
    """On the women among every second row of the paper's own data, least squares (Python's statistics) expect the same to 5 mm."""
    rows = csv.DictReader(line for line in BODIES.read_text().splitlines() if not line.startswith("#"))
    women = [(float(r["waist_cm"]) * 10, float(r["hip_cm"]) * 10) for r in rows if r["sex"] == "f"]
    line = linear_regression(*zip(*women, strict=True))
    assert 130 == len(women)
    assert line.intercept + line.slope * waist == pytest.approx(brief(body__waist=waist, body__hip=None).hips, abs=5)
