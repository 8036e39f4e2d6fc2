"""The fields that are no numbers: a word, yes or no, a name."""

from hands import DECLARED, Heard, put
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from studio.window.widgets.choice import Choice
from studio.window.widgets.name import Name
from studio.window.widgets.yes_no import YesNo


def test_a_word_is_chosen_from_the_words_declared(qtbot: QtBot, bench: QWidget) -> None:
    """The list shows the brief's own words, with a capital, and a choice is one edit."""
    zip_kind = Choice(DECLARED["opening.kind"], "cm", bench)
    heard = Heard(zip_kind)
    put(qtbot, zip_kind)
    shown = [zip_kind.pick.itemText(i) for i in range(zip_kind.pick.count())]
    assert shown == ["Invisible", "Lapped", "Centred", "Placket", "Wrap", "None"]
    zip_kind.pick.setFocus()
    qtbot.waitUntil(zip_kind.pick.hasFocus)
    qtbot.keyClick(zip_kind.pick, Qt.Key.Key_Down)
    assert heard.changed == [("opening.kind", "lapped")]
    assert heard.finished == ["opening.kind"]
    assert heard.lit == ["opening.kind"]


def test_a_word_shown_says_nothing(qtbot: QtBot, bench: QWidget) -> None:
    """Undo moves the list without making an edit of its own."""
    size = Choice(DECLARED["paper.size"], "cm", bench)
    heard = Heard(size)
    size.show_value("US Letter", "cm")
    assert size.pick.currentText() == "US Letter"
    assert heard.changed == []


def test_yes_and_no_are_one_click(qtbot: QtBot, bench: QWidget) -> None:
    """Square and words are both the target, and Space does the same."""
    includes = YesNo(DECLARED["skirt.length_includes_band"], "cm", bench)
    put(qtbot, includes)
    heard = Heard(includes)
    tick = includes.tick
    qtbot.mouseClick(tick, Qt.MouseButton.LeftButton, pos=QPoint(tick.width() - 8, tick.height() // 2))
    qtbot.keyClick(tick, Qt.Key.Key_Space)
    assert heard.values == [True, False]
    assert len(heard.finished) == 2


def test_a_name_is_kept_as_it_is_typed(qtbot: QtBot, bench: QWidget) -> None:
    """A name follows the keys and is one edit; Escape takes it back."""
    title = Name(DECLARED["title"], "cm", bench)
    put(qtbot, title)
    heard = Heard(title)
    title.box.setFocus()
    qtbot.waitUntil(title.box.hasFocus)
    title.box.selectAll()
    qtbot.keyClicks(title.box, "Blue check")
    qtbot.keyClick(title.box, Qt.Key.Key_Return)
    assert heard.values[-1] == "Blue check"
    assert heard.finished == ["title"]
    qtbot.keyClicks(title.box, "!")
    qtbot.keyClick(title.box, Qt.Key.Key_Escape)
    assert title.value == "Blue check"


def test_a_name_too_long_for_the_title_block_is_said_so(qtbot: QtBot, bench: QWidget) -> None:
    """A title block has room for 80 characters; the text stays to be shortened."""
    who = Name(DECLARED["who"], "cm", bench)
    put(qtbot, who)
    who.box.setFocus()
    qtbot.waitUntil(who.box.hasFocus)
    qtbot.keyClicks(who.box, "x" * 81)
    qtbot.keyClick(who.box, Qt.Key.Key_Return)
    assert who.fault == "For has room for 80 characters."
    assert who.value == ""
