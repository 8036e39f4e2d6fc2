"""The theme, changed while the window is open, and the icons drawn in it."""

from collections.abc import Iterator

import pytest
from hands import DECLARED, put
from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontInfo, QIcon, QImage
from PySide6.QtWidgets import QApplication, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from studio.window import icons, theme
from studio.window.tokens import DARK, LIGHT
from studio.window.widgets.entry_for import entry_for
from studio.window.widgets.field import Field
from studio.window.widgets.label import Label
from studio.window.widgets.slider import EyeSlider


@pytest.fixture(autouse=True)
def as_before(qapp: QApplication) -> Iterator[None]:
    """Leave the application as the next test expects it."""
    yield
    theme.wear("light")


def shades(picture: QImage) -> set[str]:
    """Every colour in a picture."""
    places = ((x, y) for x in range(picture.width()) for y in range(picture.height()))
    return {picture.pixelColor(x, y).name().upper() for x, y in places}


def test_the_theme_changes_in_an_open_window(qtbot: QtBot, bench: QWidget) -> None:
    """Words, boxes and painted things all go dark together, without being made again."""
    theme.wear("light")
    label = Label("Length", bench, "display")
    box = QLineEdit(label.parentWidget())
    put(qtbot, label, box)
    assert LIGHT.ink in shades(label.grab().toImage())
    theme.wear("dark")
    assert theme.current() is DARK
    assert DARK.ink in shades(label.grab().toImage())
    assert LIGHT.ink not in shades(label.grab().toImage())
    assert DARK.field in shades(box.grab().toImage())
    assert theme.colour("accent") == QColor(DARK.accent)


def test_the_plate_lies_under_what_is_in_hand(qtbot: QtBot, bench: QWidget) -> None:
    """A field lit from a line on the board wears the plate, and puts it off again."""
    theme.wear("light")
    waist = Field(DECLARED["body.waist"], "cm", bench)
    bench.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    bench.setFocus()
    put(qtbot, waist)
    assert LIGHT.plate not in shades(waist.grab().toImage())
    waist.set_lit(True)
    qtbot.waitUntil(lambda: LIGHT.plate in shades(waist.grab().toImage()))
    waist.set_lit(False)
    qtbot.waitUntil(lambda: LIGHT.plate not in shades(waist.grab().toImage()))


def test_as_the_system_follows_the_desktop(qapp: QApplication) -> None:
    """`system` is dark on a dark desktop, and light where the desktop says nothing."""
    theme.wear("system")
    dark = qapp.styleHints().colorScheme() == Qt.ColorScheme.Dark
    assert theme.current() is (DARK if dark else LIGHT)


def test_type_follows_the_system_font(qapp: QApplication) -> None:
    """Body words are as high as the system font, and the rest keeps its proportion."""
    theme.wear("light")
    system = QFontInfo(QFont(qapp.font())).pixelSize()
    assert theme.font("body").pixelSize() == system
    assert theme.font("display").pixelSize() == theme.px(26)
    assert theme.font(bold=True).weight() == QFont.Weight.DemiBold


@pytest.mark.parametrize("name", icons.DRAWN)
@pytest.mark.parametrize("side", [20, 40])
def test_every_icon_draws_at_any_density(qapp: QApplication, name: str, side: int) -> None:
    """Each icon leaves ink, and none of it is cut off at the edge."""
    picture = icons.icon(name).pixmap(QSize(side, side)).toImage()
    inked = [(x, y) for x in range(side) for y in range(side) if picture.pixelColor(x, y).alpha() > 40]
    assert len(inked) >= side / 2
    assert all(0 < x < side - 1 and 0 < y < side - 1 for x, y in inked)


def test_icons_take_the_ink_of_the_theme(qapp: QApplication) -> None:
    """An icon made by day is drawn in chalk by night, and greyed when its button is off."""
    theme.wear("light")
    save = icons.icon("save")
    theme.wear("dark")
    assert DARK.ink in shades(save.pixmap(QSize(40, 40)).toImage())
    assert DARK.off in shades(save.pixmap(QSize(40, 40), QIcon.Mode.Disabled).toImage())


def test_nothing_is_smaller_than_can_be_hit(qtbot: QtBot, bench: QWidget) -> None:
    """Every control is at least 24 px each way (WCAG 2.2, 2.5.8); the slider's box does the same as the slider."""
    put(qtbot, *[entry_for(DECLARED[path], "cm", bench) for path in ("skirt.length", "opening.kind", "who")])
    for control in bench.findChildren(QWidget):
        if control.focusPolicy() & Qt.FocusPolicy.TabFocus and not isinstance(control, EyeSlider):
            assert min(control.width(), control.height()) >= 24
