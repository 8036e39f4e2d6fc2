"""Sections that fold, views that switch, findings that stay in place."""

from hands import DECLARED, put
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from studio.window.widgets.fact import Fact
from studio.window.widgets.field import Field
from studio.window.widgets.finding import FindingRow
from studio.window.widgets.section import Section
from studio.window.widgets.views import ViewSwitch

LEFT = Qt.MouseButton.LeftButton


def test_the_whole_row_folds_and_unfolds(qtbot: QtBot, bench: QWidget) -> None:
    """A click anywhere on the header, or Space, opens a section and closes it again."""
    section = Section("Gathers", bench)
    rows = Field(DECLARED["gathers.rows"], "cm", section)
    section.add(rows)
    put(qtbot, section)
    assert not rows.isVisible()
    with qtbot.waitSignal(section.folded) as heard:
        qtbot.mouseClick(section.head, LEFT, pos=section.head.rect().center())
    assert heard.args == [False]
    assert rows.isVisible()
    qtbot.keyClick(section.head, Qt.Key.Key_Space)
    assert not rows.isVisible()


def test_a_folded_section_hides_its_fields_from_tab(qtbot: QtBot, bench: QWidget) -> None:
    """The keyboard does not get lost inside what is folded."""
    folded, after = Section("Gathers", bench), Section("Paper", bench)
    folded.add(Field(DECLARED["gathers.rows"], "cm", folded))
    put(qtbot, folded, after)
    folded.head.setFocus()
    qtbot.waitUntil(folded.head.hasFocus)
    qtbot.keyClick(folded.head, Qt.Key.Key_Tab)
    assert QApplication.focusWidget() is after.head


def test_a_section_says_what_is_in_it(qtbot: QtBot, bench: QWidget) -> None:
    """Summary and the heaviest weight inside reach a screen reader too."""
    section = Section("Opening", bench)
    section.tell("Centre back, zip 20.0 cm", "doubt")
    assert section.head.accessibleName() == "Opening"
    assert section.head.accessibleDescription() == "Centre back, zip 20.0 cm Doubt"


def test_a_view_is_chosen_by_click_or_arrow(qtbot: QtBot, bench: QWidget) -> None:
    """Clicks and arrow keys go from view to view, and each is announced once."""
    views = ViewSwitch([("pieces", "Pieces"), ("sheets", "Sheets"), ("order", "Sewing order")], bench)
    put(qtbot, views)
    heard: list[str] = []
    views.chosen.connect(heard.append)
    assert views.view == "pieces"
    qtbot.mouseClick(views.word("sheets"), LEFT)
    views.word("sheets").setFocus()
    qtbot.keyClick(views.word("sheets"), Qt.Key.Key_Right)
    views.choose("pieces")
    assert heard == ["sheets", "order", "pieces"]


def test_a_finding_points_and_mends(qtbot: QtBot, bench: QWidget) -> None:
    """The focus on a finding lights its field, and its button is the remedy."""
    row = FindingRow(bench)
    row.show_finding("doubt", "The opening is short.", "Zip stop to 13.0 cm", "opening.zip_stop")
    pointed: list[str] = []
    row.pointed.connect(pointed.append)
    put(qtbot, row)
    row.setFocus()
    qtbot.waitUntil(row.hasFocus)
    assert pointed[-1] == "opening.zip_stop"
    with qtbot.waitSignal(row.mended):
        qtbot.mouseClick(row.remedy, LEFT)


def test_a_finding_row_takes_its_next_finding_in_place(qtbot: QtBot, bench: QWidget) -> None:
    """A row without a remedy shows no button, and its weight is a word as well as a shape."""
    row = FindingRow(bench)
    row.show_finding("stop", "The skirt is wider than the cloth.", "Two panels", "skirt.panels")
    put(qtbot, row)
    row.show_finding("note", "The band may stand away.")
    assert not row.remedy.isVisible()
    assert row.accessibleName() == "Note: The band may stand away."
    assert row.words.text() == "The band may stand away."


def test_a_long_finding_ends_in_an_ellipsis_and_is_whole_in_the_tooltip(qtbot: QtBot, bench: QWidget) -> None:
    """Nothing is dropped in a narrow window."""
    row = FindingRow(bench)
    words = "The opening lets 92.0 cm through; hips of 94.0 cm need 96.0 cm."
    row.show_finding("doubt", words, "Zip stop to 13.0 cm")
    put(qtbot, row)
    row.parentWidget().resize(420, 60)
    QApplication.processEvents()
    assert row.words.shown().endswith("…")
    assert row.words.toolTip() == words


def test_a_fact_is_spoken_whole(qtbot: QtBot, bench: QWidget) -> None:
    """Caption, figure and unit are one phrase for who cannot see them."""
    fact = Fact(bench)
    fact.show_fact("Closed band", "71.0", "cm")
    assert fact.accessibleName() == "Closed band: 71.0 cm"
