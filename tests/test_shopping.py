"""The list to buy as text, table and plain values."""

import csv
import io
import json

import pytest
from briefs import any_brief, brief
from hypothesis import given, settings
from hypothesis import strategies as st

from studio.__main__ import main
from studio.brief import Brief
from studio.shopping import HEADS, buy_csv, buy_text, cost, listed_buy, to_buy
from studio.units import Unit, spell
from studio.workroom import make_up

UNITS = st.sampled_from(("cm", "in"))


@settings(max_examples=60)
@given(any_brief(), UNITS)
def test_the_table_is_read_back(one: Brief, unit: Unit):
    """Every row has every column, and its description is the words of the list (RFC 4180: lines end in CRLF)."""
    docket = make_up(one)
    text = buy_csv(docket, unit)
    rows = list(csv.reader(io.StringIO(text, newline=""), strict=True))
    assert list(HEADS) == rows[0]
    assert {len(HEADS)} == {len(row) for row in rows}
    assert [spell(n.words, unit) for n in docket.notions] == [row[1] for row in rows[1:]]
    assert text.count("\r\n") == text.count("\n") == len(rows)


def test_lengths_as_a_shop_cuts_them():
    """1.48 m of cloth at 12.00 a metre is 1.5 m and 18.00, or 1 5/8 yd at 0.9144 of it and 17.83."""
    docket = make_up(brief(cloth__price=12.0, cloth__shrinkage=0.02))
    assert 1479.59 == pytest.approx(docket.fact("cloth_needed"), abs=0.01)
    for unit, length, name, money in (("cm", "1.5", "m", "18.00"), ("in", "1.625", "yd", "17.83")):
        row = next(csv.DictReader(io.StringIO(buy_csv(docket, unit))))
        assert (length, name, money) == (row["length"], row["unit"], row["cost"])
        assert float(money) == round(cost(docket.notions[0], unit) or 0, 2)


def test_text_holds_all():
    """The text has the skirt's name, every line, what is left over and the weight."""
    docket = make_up(brief(cloth__weight=140.0))
    text = list(buy_text(docket, "cm"))
    assert docket.brief.title == text[0]
    assert set(to_buy(docket, "cm")) < set(text)
    assert [line for line in text if line.startswith("The cut cloth weighs ")]


def test_what_is_not_counted_is_said():
    """A piece too wide for the cloth is named, for no length to buy holds it."""
    lines = list(buy_text(make_up(brief(cloth__width=600.0)), "cm"))
    assert "Too wide for this cloth, and not counted: Skirt." in lines


def test_command(capsys: pytest.CaptureFixture[str]):
    """`buy` prints the list, as a table with --csv, and with --json everything in mm with what the cloth makes."""
    said = ["--set", "cloth.on_hand=1.3 m", "--set", "body.waist=70"]
    assert 0 == main(["buy", *said])
    assert "What this cloth makes" in capsys.readouterr().out
    assert 0 == main(["buy", "--csv", *said])
    assert capsys.readouterr().out.startswith(",".join(HEADS))
    assert 0 == main(["buy", "--json", *said])
    made = json.loads(capsys.readouterr().out)
    assert ["cloth", "interfacing", "zip", "button", "thread"] == [one["what"] for one in made["items"]]
    assert made["makes"] and all(one["needed"] <= 1300 for one in made["makes"])
    assert {"length", "whole", "area"} == made["left_over"].keys()


def test_command_names_what_does_not_fit(capsys: pytest.CaptureFixture[str]):
    """Nothing is reckoned from a plan that leaves a piece out: it is named, and the command ends with 1."""
    assert 1 == main(["buy", "--set", "cloth.width=40"])
    captured = capsys.readouterr()
    assert "" == captured.out
    assert "between its selvedges" in captured.err


def test_plain_values_are_json():
    """The list goes through JSON unchanged."""
    values = listed_buy(make_up(brief("straight", lining__kind="A-line", cloth__price=9.5)), "cm")
    assert values == json.loads(json.dumps(values))
