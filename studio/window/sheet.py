"""The one style sheet: what Qt's own controls wear. The rest is painted."""

from string import Template
from typing import Final

from msgspec.structs import asdict

from .tokens import Theme

_SHEET: Final = Template("""
* { outline: none; }
QMainWindow, #chrome { background: $chrome; }
#panel { background: $panel; }
#hairline { background: $hair; }
QLabel[voice="ink"] { color: $ink; }
QLabel[voice="quiet"] { color: $quiet; }
QLabel[voice="stop"] { color: $stop; }
QLabel[voice]:disabled { color: $off; }
QMenuBar { background: $chrome; padding: 1px 8px; }
QMenuBar::item { padding: 4px 8px; border-radius: 4px; }
QMenuBar::item:selected { background: $hover; }
QMenu { background: $panel; border: 1px solid $edge; padding: 4px; }
QMenu::item { padding: 5px 24px 5px 12px; border-radius: 4px; }
QMenu::item:selected { background: $plate; color: $ink; }
QMenu::item:disabled { color: $off; }
QMenu::separator { height: 1px; background: $hair; margin: 4px 8px; }
QToolTip { background: $ink; color: $panel; border: none; padding: 4px 6px; }
QLineEdit { background: $field; border: 1px solid $edge; border-radius: 4px; padding: 0 7px;
    selection-background-color: $accent; selection-color: $on_accent; }
QLineEdit:hover { border-color: $ink; }
QLineEdit:focus { border: 2px solid $accent; padding: 0 6px; }
QLineEdit[fault="true"] { border: 2px solid $stop; padding: 0 6px; }
QLineEdit:disabled { color: $off; background: $panel; border-color: $hair; }
QComboBox QAbstractItemView { background: $field; border: 1px solid $edge;
    selection-background-color: $plate; selection-color: $ink; }
QComboBox QAbstractItemView::item { min-height: 26px; padding: 0 4px; border: none; }
QComboBox QAbstractItemView::item:selected { background: $plate; color: $ink; }
QToolButton { background: transparent; border: 2px solid transparent; border-radius: 6px; padding: 4px; color: $ink; }
QToolButton:hover { background: $hover; }
QToolButton:pressed { background: $plate; }
QToolButton:checked { background: $plate; color: $accent; }
QToolButton:focus { border-color: $accent; }
QToolButton:disabled { color: $off; }
QPushButton { background: $field; border: 1px solid $edge; border-radius: 4px; padding: 4px 11px; color: $ink;
    min-height: 18px; }
QPushButton:hover { background: $plate; border-color: $accent; }
QPushButton:pressed { background: $plate; border-color: $accent_deep; }
QPushButton:focus { border: 2px solid $accent; padding: 3px 10px; }
QPushButton:disabled { color: $off; border-color: $hair; background: transparent; }
QPushButton#lead { background: $accent; border-color: $accent; color: $on_accent; padding: 7px 20px; }
QPushButton#lead:hover { background: $accent_deep; border-color: $accent_deep; }
QPushButton#lead:focus { border: 2px solid $ink; padding: 6px 19px; }
QPushButton#lead:disabled { background: transparent; border: 1px solid $hair; color: $off; padding: 7px 20px; }
QProgressBar { background: $field; border: 1px solid $edge; border-radius: 4px; min-height: 8px; max-height: 8px; }
QProgressBar::chunk { background: $accent; border-radius: 3px; }
QScrollArea { border: none; background: $panel; }
QScrollArea#findings { background: $chrome; }
QScrollBar:vertical { background: transparent; width: 10px; margin: 0; }
QScrollBar:horizontal { background: transparent; height: 10px; margin: 0; }
QScrollBar::handle { background: $edge; border-radius: 3px; margin: 2px; }
QScrollBar::handle:vertical { min-height: 32px; }
QScrollBar::handle:horizontal { min-width: 32px; }
QScrollBar::handle:hover { background: $quiet; }
QScrollBar::handle:disabled { background: transparent; }
QScrollBar::add-line, QScrollBar::sub-line { height: 0; width: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
""")


def style_sheet(worn: Theme) -> str:
    """The style sheet in the colours of a theme."""
    return _SHEET.substitute(asdict(worn))
