"""The desk: what happens to the skirt when drafting itself breaks down."""

import sys
from typing import Any

import pytest
from opening import field, settle, type_in

from studio.brief import Brief
from studio.styles import rack
from studio.trouble import Trouble
from studio.window import desk
from studio.window.running import Faults
from studio.window.shop import Shop
from studio.workroom import Docket, make_up


def break_at(waist: float, fault: Exception) -> Any:
    """Drafting that breaks down at one waist."""

    def broken(brief: Brief, before: Docket | None = None) -> Any:
        if brief.body.waist == waist:
            raise fault
        return make_up(brief, before)

    return broken


def test_the_skirt_is_as_it_was(shop: Shop, monkeypatch: pytest.MonkeyPatch):
    """Should drafting break down, the last sound skirt is on the table, and one goes on from there."""
    monkeypatch.setattr(sys, "excepthook", Faults(shop))
    monkeypatch.setattr(desk, "make_up", break_at(800.0, Trouble("This waist is the end.")))
    type_in(shop, "body.waist", "75")
    type_in(shop, "body.waist", "80")
    assert "This waist is the end." == shop.window.notice.text
    assert (750.0, 750.0) == (shop.desk.brief.body.waist, shop.desk.docket.brief.body.waist)
    assert "75.0" == field(shop, "body.waist").box.text()
    type_in(shop, "body.waist", "76")
    assert 760.0 == shop.desk.docket.brief.body.waist
    shop.window.do.undo.trigger()
    settle(shop)
    assert 750.0 == shop.desk.brief.body.waist


def test_another_style_begins_in_the_unit_that_is_shown(shop: Shop):
    """Shown in inches, a style put on begins in round numbers of inches; a length set before goes with it and back."""
    shop.window.do.unit_chosen.emit("in")
    settle(shop)
    shop.desk.edit("skirt.length", 555.0)
    shop.desk.finish("skirt.length")
    shop.desk.edit("skirt.style", "gored")
    sweep, length = (rack.value(shop.desk.brief, path) for path in ("skirt.sweep", "skirt.length"))
    assert (rack.value(rack.usual("in", "gored"), "skirt.sweep"), 555.0) == (sweep, length)
    shop.desk.finish("skirt.style")
    shop.desk.edit("skirt.length", 620.0)
    shop.desk.finish("skirt.length")
    shop.desk.edit("skirt.style", "gathered")
    assert 620.0 == rack.value(shop.desk.brief, "skirt.length")
