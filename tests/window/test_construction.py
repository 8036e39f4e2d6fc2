"""The right form: its sections, the way of the Tab key, and what another style on the rack brings."""

from opening import open_shop, settle, shut
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from studio.styles import rack
from studio.window.settings import Settings
from studio.window.shop import Shop


def tabbed(shop: Shop, times: int) -> list[str]:
    """Where Tab goes, by the path of the field or the words of the control."""
    seen = []
    for _ in range(times):
        now = QApplication.focusWidget()
        entries = [e for f in shop.window.table.forms for e in f.fields.values() if now in e.controls]
        seen.append(entries[0].path if entries else now.accessibleName())
        QTest.keyClick(now, Qt.Key.Key_Tab)
    return seen


def test_tab_goes_down_the_form(shop: Shop):
    """Tab goes through each open section before the next, past folded ones, and on to the findings and round."""
    construction = shop.window.table.construction
    construction.open_sections(["waistband", "paper"])
    shop.desk.edit("body.hip", 1200.0)
    settle(shop)
    construction.sections["skirt"].head.setFocus()
    seen = list(dict.fromkeys(tabbed(shop, 40)))
    assert seen[:11] == [
        "Style", "Waistband", "waistband.kind", "waistband.width", "waistband.ease", "waistband.extension",
        "waistband.interfacing", "waistband.interfacing_width", "Opening", "Fastening", "Gathers",
    ]  # fmt: skip
    paper = seen.index("Paper")
    assert seen[paper + 1 : paper + 5] == ["paper.size", "paper.margin", "paper.overlap", "paper.panels"]
    assert seen[paper + 5].startswith("Doubt")
    assert "title" in seen


def test_the_first_time_sections_open_as_far_as_they_fit(qtbot: QtBot, settings: Settings):
    """Style and waistband stand open; more do where the window is high; all is said of those that are folded."""
    shop = open_shop(qtbot, settings)
    construction = shop.window.table.construction
    assert ["skirt", "waistband"] == construction.opened()
    shop.window.resize(1280, 2600)
    settle(shop)
    construction.open_sections(None)
    assert ["skirt", "waistband", "opening"] == construction.opened()[:3]
    settle(shop)
    assert construction.verticalScrollBar().maximum() == 0
    assert "1 button, 1.8" == construction.sections["fastening"].head.summary or "fastening" in construction.opened()
    shut(qtbot, shop)


def test_every_folded_section_says_what_is_in_it(shop: Shop):
    """Each section has a few words of its own, in the maker's unit, and carries the heaviest mark inside."""
    shop.desk.edit("cloth.width", 600.0)
    shop.desk.edit("opening.zip_stop", 100.0)
    settle(shop)
    sections = shop.window.table.construction.sections
    assert {
        "skirt": "Gathered, 62.0, 2.00 ×",
        "waistband": "Folded, 3.0, extension 4.0",
        "opening": "Invisible, centre back, 10.0 deep",
        "fastening": "1 button, 1.8",
        "gathers": "2 rows, sections by width",
        "seams": "1.5, hem 4.0",
        "pockets": "None",
        "lining": "None",
        "cloth": "60.0 wide, to buy",
        "paper": "A4, margin 1.0",
    } == {name: section.head.summary for name, section in sections.items()}
    weights = {name: section.head.weight for name, section in sections.items() if section.head.weight}
    assert {f.where.split(".")[0] for f in shop.desk.docket.findings} - {"body"} == set(weights)
    assert "stop" in weights.values()


def test_another_style_brings_its_own_numbers(qtbot: QtBot, settings: Settings):
    """Choosing a style's tile asks its numbers, keeps the others, hides what it does not need, and is one step; back
    at the first one, all is as it was set there.
    """
    shop = open_shop(qtbot, settings)
    construction = shop.window.table.construction
    shop.desk.edit("skirt.length", 700.0)
    shop.desk.finish()
    shop.desk.edit("skirt.fullness", 2.65)
    shop.desk.finish()

    def choose(style: str) -> None:
        tile = next(t for t in construction.styles if t.style_name == style)
        QTest.mouseClick(tile, Qt.MouseButton.LeftButton)
        settle(shop)

    choose("pleated")
    assert "skirt.fullness" not in construction.fields
    assert 700.0 == shop.desk.brief.skirt.length
    assert construction.sections["gathers"].isHidden()
    construction.reveal("skirt.hip_ease")
    assert construction.fields["skirt.hip_ease"].controls[0].hasFocus()
    shop.window.do.undo.trigger()
    settle(shop)
    assert "gathered" == rack.style_of(shop.desk.brief)
    assert [True] == [t.isChecked() for t in construction.styles if t.style_name == "gathered"]
    choose("pleated")
    shop.desk.edit("skirt.hip_ease", 55.0)
    shop.desk.finish()
    choose("gathered")
    assert 2.65 == rack.value(shop.desk.brief, "skirt.fullness")
    assert not construction.sections["gathers"].isHidden()
    choose("pleated")
    assert 55.0 == rack.value(shop.desk.brief, "skirt.hip_ease")
    shut(qtbot, shop)
