"""The whole window, driven as a maker drives it."""

import json
from pathlib import Path

import pytest
from opening import drag, field, handle_at, open_shop, settle, shut, type_in
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from studio.brief.skirt_file import dump, open_file, save
from studio.styles import rack
from studio.window.running import bare, furnished
from studio.window.settings import Settings
from studio.window.shop import Shop


def picture(shop: Shop) -> bytes:
    """What the board shows."""
    image = shop.window.table.canvas.board.grab().toImage()
    return bytes(image.constBits())


def words(shop: Shop) -> str:
    """Every label and number in sight."""
    window = shop.window
    labels = [w.text() for w in window.findChildren(QLabel) if w.isVisible()]
    numbers = [str(n.accessibleName()) for n in window.table.strip.findChildren(type(window.table.strip.numbers))]
    names = [w.accessibleName() for w in window.table.strip.numbers.children() if hasattr(w, "accessibleName")]
    return " | ".join([*labels, *numbers, *names])


def test_typing_a_measurement_redraws_the_pieces(shop: Shop):
    """A waist typed is in the brief, and the pieces on the board change."""
    before = picture(shop)
    type_in(shop, "body.waist", "74,5")
    assert 745.0 == shop.desk.brief.body.waist
    assert 755.0 == shop.desk.docket.fact("closed_girth")
    assert before != picture(shop)


def test_each_keystroke_that_reads_redraws(shop: Shop):
    """The pieces follow while one types, and the box keeps what was typed."""
    type_in(shop, "skirt.length", "70", enter=False)
    assert 700.0 == shop.desk.brief.skirt.length
    assert "70" == field(shop, "skirt.length").box.text()


def test_dragging_the_waistband_moves_its_field(shop: Shop):
    """The ring on the band's fold moves the width, and the field follows while it is held."""
    board = shop.window.table.canvas.board
    millimetres = 20 / board.view.scale
    drag(shop, "waistband.width", 0, 20, let_go=False)
    assert round(30 + millimetres) == shop.desk.brief.waistband.width
    assert f"{shop.desk.brief.waistband.width / 10:.1f}" == field(shop, "waistband.width").box.text()
    QTest.mouseRelease(board, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, QPoint(5, 5))


def test_the_view_stays_while_a_slider_is_held(shop: Shop):
    """Slid far, the length leaves the view as it is until the hand is off; then all is in view."""
    board, slider = shop.window.table.canvas.board, field(shop, "skirt.length").slider
    shop.window.table.reveal("skirt.length")
    slider.setFocus()
    view, y = board.view, slider.height() // 2
    QTest.mousePress(slider, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, QPoint(slider.width() - 8, y))
    settle(shop)
    assert shop.desk.brief.skirt.length > 1000
    assert view == board.view
    QTest.mouseRelease(slider, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, QPoint(slider.width() - 8, y))
    settle(shop)
    assert view.scale > board.view.scale


def test_a_drag_is_one_step_to_undo(shop: Shop):
    """However far it went, undo takes a drag back at once, and redo makes it again."""
    drag(shop, "skirt.length", 0, 30)
    longer = shop.desk.brief.skirt.length
    assert longer > 620
    shop.window.do.undo.trigger()
    settle(shop)
    assert 620.0 == shop.desk.brief.skirt.length
    assert "62.0" == field(shop, "skirt.length").box.text()
    shop.window.do.redo.trigger()
    settle(shop)
    assert longer == shop.desk.brief.skirt.length


def test_undo_and_redo_of_typed_values(shop: Shop):
    """Each finished edit is a step of its own."""
    type_in(shop, "body.waist", "72")
    type_in(shop, "skirt.length", "65")
    shop.window.do.undo.trigger()
    assert (720.0, 620.0) == (shop.desk.brief.body.waist, shop.desk.brief.skirt.length)
    shop.window.do.undo.trigger()
    assert rack.usual() == shop.desk.brief
    settle(shop)
    assert not shop.window.do.undo.isEnabled()
    assert shop.window.do.redo.isEnabled()


def test_a_remedy_is_one_click_and_one_step(shop: Shop):
    """The button beside a finding mends it; undo brings it back."""
    type_in(shop, "body.hip", "120")
    row = next(iter(shop.window.table.strip.findings.rows.values()))
    QTest.mouseClick(row.remedy, Qt.MouseButton.LeftButton)
    settle(shop)
    assert 255.0 == shop.desk.brief.opening.zip_stop
    assert "opening-passes-hips" not in {f.rule for f in shop.desk.docket.findings}
    shop.window.do.undo.trigger()
    assert 200.0 == shop.desk.brief.opening.zip_stop


def test_focus_lights_the_lines_it_moves(shop: Shop):
    """With the cursor in a field, its lines light up on the board."""
    before = picture(shop)
    field(shop, "seams.hem")
    shop.window.table.reveal("waistband.width")
    settle(shop)
    assert "waistband.width" == shop.window.table.lights.path
    assert before != picture(shop)


def test_clicking_a_dimension_goes_to_its_field(shop: Shop):
    """A click on the words of a measured line puts the cursor into its field."""
    board = shop.window.table.canvas.board
    board.chosen.emit("opening.zip_stop")
    settle(shop)
    assert field(shop, "opening.zip_stop").box.hasFocus()
    assert shop.window.table.construction.sections["opening"].is_open


def test_save_and_open_again(shop: Shop, settings: Settings, tmp_path: Path):
    """What is saved is what was made; opened again it is clean, and among the recent ones."""
    there = tmp_path / "mine.skirt"
    type_in(shop, "body.waist", "74")
    assert shop.window.isWindowModified()
    shop.files.choose_save = lambda parent, start: there
    shop.window.do.save.trigger()
    settle(shop)
    assert not shop.window.isWindowModified()
    assert 740.0 == open_file(there, rack.RECORDS).body.waist
    type_in(shop, "body.waist", "80")
    shop.window.do.save.trigger()
    settle(shop)
    shop.files.choose_open = lambda parent, start: there
    shop.window.do.open.trigger()
    settle(shop)
    assert 800.0 == shop.desk.brief.body.waist
    assert [there] == settings.recent
    assert 740.0 == open_file(there.with_name("mine.skirt~"), rack.RECORDS).body.waist


def test_typing_counts_when_saving_from_the_keyboard(shop: Shop, tmp_path: Path):
    """A value still being typed is saved too."""
    there = tmp_path / "mine.skirt"
    shop.files.choose_save = lambda parent, start: there
    type_in(shop, "body.waist", "74", enter=False)
    shop.window.do.save.trigger()
    assert 740.0 == open_file(there, rack.RECORDS).body.waist


HOSTILE = ["9**9**9", "__import__('os')", "1e999", "-5", "70 furlongs", "9" * 2000, "NaN", "70 cm 3", "\\x00", "1/0"]


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_changes_nothing(shop: Shop, text: str):
    """Text that cannot be read shows its sentence beside the field and changes nothing."""
    type_in(shop, "body.waist", text)
    assert rack.usual() == shop.desk.brief
    assert field(shop, "body.waist").fault
    assert text[:10] == field(shop, "body.waist").box.text()[:10]
    type_in(shop, "body.waist", "71")
    assert 710.0 == shop.desk.brief.body.waist
    assert not field(shop, "body.waist").fault


@pytest.mark.parametrize(
    "raw", [b"", b"\x89PNG\r\n\x1a\n" + bytes(500), b'{"format": "skirtwright"', b"[" * 5000, b"\xff\xfe"]
)
def test_a_broken_file_is_one_sentence(shop: Shop, tmp_path: Path, raw: bytes):
    """A file that is no skirt is said in one sentence; the skirt on the table stays, and so does the file."""
    there = tmp_path / "broken.skirt"
    there.write_bytes(raw)
    type_in(shop, "body.waist", "74")
    shop.files.open_path(there)
    settle(shop)
    assert "“broken.skirt”" in shop.window.notice.text
    assert "Traceback" not in shop.window.notice.text
    assert 740.0 == shop.desk.brief.body.waist
    assert raw == there.read_bytes()
    type_in(shop, "body.waist", "75")
    assert 750.0 == shop.desk.brief.body.waist


def test_an_unreadable_file_is_not_written_over(shop: Shop, tmp_path: Path):
    """Saving over something that is no skirt is refused in a sentence, and it stays as it was."""
    there = tmp_path / "photo.skirt"
    there.write_bytes(b"\x89PNG")
    shop.files.choose_save = lambda parent, start: there
    shop.files.may_replace = lambda parent, path: True
    shop.window.do.save_as.trigger()
    assert "“photo.skirt”" in shop.window.notice.text
    assert b"\x89PNG" == there.read_bytes()


@pytest.mark.parametrize("number", [13, 28, 30])
def test_a_folder_that_takes_nothing(shop: Shop, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, number: int):
    """No permission, a full disk, a read-only folder: one sentence, and the skirt is still there."""

    def refuse(*_: object) -> None:
        raise OSError(number, "no")

    there = tmp_path / "mine.skirt"
    shop.files.choose_save = lambda parent, start: there
    type_in(shop, "body.waist", "74")
    monkeypatch.setattr("os.fsync", refuse)
    shop.window.do.save.trigger()
    monkeypatch.undo()
    assert shop.window.notice.text
    assert [] == [p for p in tmp_path.iterdir() if p.suffix != ".ini"]
    assert shop.window.isWindowModified()
    shop.window.do.save.trigger()
    assert there.exists()


def test_closing_asks_about_unsaved_changes(qtbot: QtBot, shop: Shop, tmp_path: Path):
    """Save, lose or go on: the window closes only once nothing is lost against one's will."""
    type_in(shop, "body.waist", "74")
    shop.window.close()
    assert shop.window.isVisible()
    question = shop.files.question
    assert question is not None
    QTest.mouseClick(question.stay, Qt.MouseButton.LeftButton)
    assert shop.window.isVisible()
    shop.files.choose_save = lambda parent, start: tmp_path / "kept.skirt"
    shop.window.close()
    question = shop.files.question
    assert question is not None
    QTest.mouseClick(question.save, Qt.MouseButton.LeftButton)
    settle(shop)
    assert not shop.window.isVisible()
    assert (tmp_path / "kept.skirt").exists()


def test_closing_a_clean_skirt_asks_nothing(shop: Shop):
    """With nothing unsaved the window just closes."""
    shop.window.close()
    assert not shop.window.isVisible()


def test_inches_change_words_and_no_number(shop: Shop):
    """In inches every number on screen is in inches, and the brief is what it was."""
    before = dump(shop.desk.brief)
    inches = next(a for a in shop.window.do.units.actions() if a.data() == "in")
    inches.trigger()
    settle(shop)
    assert "27 1/2" == field(shop, "body.waist").box.text()
    assert "24 3/8" == field(shop, "skirt.length").box.text()
    assert " cm" not in words(shop)
    assert before == dump(shop.desk.brief)
    type_in(shop, "body.waist", "28")
    assert 28 * 25.4 == pytest.approx(shop.desk.brief.body.waist)


def test_first_start_asks_for_four_numbers(qtbot: QtBot, settings: Settings):
    """The very first start shows one quiet sheet; Draft it lays out the pieces."""
    settings.started = False
    shop = open_shop(qtbot, settings)
    start = shop.window.start
    assert start.isVisible() and not shop.window.table.isVisible()
    assert ["body.waist", "body.hip", "skirt.length", "cloth.width"] == list(start.fields)
    QTest.keyClicks(shop.window.focusWidget(), "66")  # typed straight away, it replaces the usual value
    QTest.mouseClick(start.lead, Qt.MouseButton.LeftButton)
    settle(shop)
    assert shop.window.table.isVisible()
    assert 660.0 == shop.desk.brief.body.waist
    assert settings.started
    shut(qtbot, shop)


def test_later_starts_open_the_last_skirt(qtbot: QtBot, settings: Settings, tmp_path: Path):
    """The skirt that was on the table last is there again."""
    there = tmp_path / "last.skirt"
    save(there, rack.edit(rack.usual(), {"body.waist": 777.0}))
    settings.file = there
    shop = furnished(settings, bare(settings))
    qtbot.addWidget(shop.window)
    shop.open(None)
    assert 777.0 == shop.desk.brief.body.waist
    shut(qtbot, shop)


def test_a_broken_file_at_the_start_opens_the_sample(qtbot: QtBot, settings: Settings, tmp_path: Path):
    """Named on the command line, a file that is no skirt is said, and the sample is on the table."""
    there = tmp_path / "broken.skirt"
    there.write_bytes(b"{")
    shop = furnished(settings, bare(settings))
    qtbot.addWidget(shop.window)
    shop.open(there)
    assert shop.window.table.isVisible()
    assert "cut short" in shop.window.notice.text
    assert "Marigold skirt" == shop.desk.brief.title
    shut(qtbot, shop)


def test_new_can_be_given_up(shop: Shop):
    """New shows the first sheet; going back finds the skirt as it was."""
    type_in(shop, "body.waist", "74")
    shop.window.do.new.trigger()
    assert shop.window.start.isVisible()
    QTest.mouseClick(shop.window.start.back, Qt.MouseButton.LeftButton)
    settle(shop)
    assert shop.window.table.isVisible()
    assert 740.0 == shop.desk.brief.body.waist


def test_what_was_left_is_found_again(qtbot: QtBot, settings: Settings, tmp_path: Path):
    """Unit, open sections and legend are remembered."""
    shop = open_shop(qtbot, settings)
    next(a for a in shop.window.do.units.actions() if a.data() == "in").trigger()
    shop.window.table.construction.sections["paper"].open()
    shop.window.do.lines.trigger()
    legend = shop.window.do.lines.isChecked()
    opened = shop.window.table.construction.opened()
    shop.window.close()
    shut(qtbot, shop)
    again = open_shop(qtbot, settings)
    assert "in" == again.unit
    assert legend == again.window.table.canvas.board.legend
    assert opened == again.window.table.construction.opened()
    shut(qtbot, again)


def test_only_what_applies_is_asked(shop: Shop):
    """With hook and bar, nothing about buttons is asked; whole widths only where widths are joined."""
    shop.desk.edit("fastening.kind", "hook and bar")
    settle(shop)
    construction = shop.window.table.construction
    assert construction.fields["fastening.button_diameter"].isHidden()
    assert construction.fields["skirt.whole_widths"].isHidden()
    shop.desk.edit("fastening.kind", "buttons")
    shop.desk.edit("skirt.cut", "across")
    settle(shop)
    assert not construction.fields["fastening.button_diameter"].isHidden()
    assert not construction.fields["skirt.whole_widths"].isHidden()


def test_keyboard_reaches_everything(shop: Shop):
    """Tab goes through every field in sight and comes back; F6 goes from area to area."""
    seen = set()
    shop.window.activateWindow()
    widget = shop.window
    for _ in range(900):
        widget = widget.nextInFocusChain()
        if widget.isVisible() and widget.isEnabled() and widget.focusPolicy() & Qt.FocusPolicy.TabFocus:
            seen.add(widget)
        if widget is shop.window:
            break
    for form in shop.window.table.forms:
        for path, entry in form.fields.items():
            if entry.isVisible():
                assert any(entry.isAncestorOf(w) or w is entry for w in seen), path
    assert shop.window.table.canvas.board in seen
    assert all(w.accessibleName() or getattr(w, "text", str)() for w in seen)


def test_dark_and_light(shop: Shop):
    """The theme changes at once, and the board with it."""
    light = picture(shop)
    next(a for a in shop.window.do.wishes.actions() if a.data() == "dark").trigger()
    settle(shop)
    assert light != picture(shop)
    next(a for a in shop.window.do.wishes.actions() if a.data() == "light").trigger()
    settle(shop)
    assert light == picture(shop)


def test_handles_are_where_the_pieces_are(shop: Shop):
    """Every ring lies on the board, within the window."""
    board = shop.window.table.canvas.board
    for grip in board.scene.grips:
        assert board.rect().contains(handle_at(shop, grip.path))


def test_a_file_dropped_on_the_window_opens(shop: Shop, tmp_path: Path):
    """A skirt dropped on the window is opened."""
    there = tmp_path / "dropped.skirt"
    save(there, rack.edit(rack.usual(), {"body.waist": 666.0}))
    shop.window.file_dropped.emit(there)
    settle(shop)
    assert 666.0 == shop.desk.brief.body.waist
    assert "skirtwright" == json.loads(there.read_text())["format"]
