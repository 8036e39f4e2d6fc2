"""The findings at the foot of the window, and the left form above them when something cannot be read."""

from opening import field, settle, type_in
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetrics
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from studio.window.shop import Shop


def trouble(shop: Shop) -> None:
    """A skirt with much to mend."""
    for path, value in {"cloth.width": 600.0, "waistband.extension": 20.0, "body.hip": 1100.0}.items():
        shop.desk.edit(path, value)
    settle(shop)


def test_the_heaviest_come_first_and_rows_stay(shop: Shop):
    """Stops stand above doubts above notes; while one edits, a finding keeps its row."""
    trouble(shop)
    findings = shop.window.table.strip.findings
    rows = findings.in_order()
    order = ["stop", "doubt", "note"]
    assert sorted((row.weight for row in rows), key=order.index) == [row.weight for row in rows]
    assert "stop" == rows[0].weight
    shop.desk.edit("cloth.width", 610.0)
    settle(shop)
    assert rows == findings.in_order()


def test_a_remedy_is_read_whole(shop: Shop):
    """Every remedy's button shows all its words, and all are equally wide."""
    trouble(shop)
    rows = [row for row in shop.window.table.strip.findings.in_order() if row.remedy.isVisible()]
    assert len(rows) > 1
    assert 1 == len({row.remedy.width() for row in rows})
    for row in rows:
        assert QFontMetrics(row.remedy.font()).horizontalAdvance(row.remedy.text()) <= row.remedy.width() - 24


def test_mending_by_keyboard_goes_on_to_the_next(shop: Shop):
    """After a remedy by the space bar the next finding is in hand, until there is none."""
    trouble(shop)
    findings = shop.window.table.strip.findings
    first = next(row for row in findings.in_order() if row.remedy.isVisible())
    first.remedy.setFocus()
    before = len(findings.rows)
    QTest.keyClick(first.remedy, Qt.Key.Key_Space)
    settle(shop)
    assert len(findings.rows) < before
    now = QApplication.focusWidget()
    assert any(now is row or row.isAncestorOf(now) for row in findings.in_order())


def test_with_nothing_to_mend_it_says_so(shop: Shop):
    """A sound skirt has one quiet line."""
    assert not shop.desk.docket.findings
    words = [
        label.text() for label in shop.window.table.strip.findings.findChildren(type(field(shop, "body.hip").label))
    ]
    assert "Nothing to mend." in words


def test_pointing_at_a_finding_lights_its_field(shop: Shop):
    """The keyboard's way: a finding in hand lights the field and the lines it speaks of."""
    shop.desk.edit("opening.zip_stop", 60.0)
    settle(shop)
    row = shop.window.table.strip.findings.in_order()[0]
    row.setFocus(Qt.FocusReason.TabFocusReason)
    assert "opening.zip_stop" == shop.window.table.lights.path
    row.remedy.setFocus()
    assert "" == shop.window.table.lights.path


def test_a_fault_shifts_nothing_in_the_least_window(shop: Shop):
    """In a window of 1100 x 700 a line about a fault has room: the figure gives way, and no scroll bar comes."""
    shop.window.resize(1100, 700)
    type_in(shop, "body.waist", "7000")
    form = shop.window.table.measurements
    assert field(shop, "body.waist").fault_line.isVisible()
    assert 0 == form.verticalScrollBar().maximum()
    last = form.fields["body.height"]
    assert form.viewport().rect().contains(last.mapTo(form.viewport(), last.rect().bottomRight()))
