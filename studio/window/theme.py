"""What the window wears now: palette, type and style sheet, light or dark, changed at run time.

Painted widgets ask `colour`, `font` and `px` each time they paint, so a change reaches them with the repaint Qt
sends anyway; a pixmap kept by a widget takes `current().name` into its key.
"""

from typing import Final, Literal, TypeAlias

from msgspec import Struct
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QFont, QFontInfo, QPalette
from PySide6.QtWidgets import QApplication, QWidget

from .sheet import style_sheet
from .tokens import DARK, LIGHT, TYPE, Theme, Voice

Wish: TypeAlias = Literal["light", "dark", "system"]
"""What the maker asks for; `system` follows the desktop."""

_PLAIN_PX: Final = 12  # height of the system font at which the sizes in `tokens` are true
_FIGURES: Final = QFont.Tag("tnum")  # figures under figures, where the system font has them


class _Now(Struct):
    worn: Theme = LIGHT
    wish: Wish = "system"
    system: QFont | None = None  # as it was before we set our own


_now: Final = _Now()


def current() -> Theme:
    """The colours worn now."""
    return _now.worn


def colour(name: str, alpha: int = 255) -> QColor:
    """A colour worn now, by the name of its token; alpha 0 to 255."""
    shade = QColor(getattr(_now.worn, name))
    shade.setAlpha(alpha)
    return shade


def px(size: float) -> int:
    """A size from `tokens`, grown with the system font."""
    return round(size * _scale())


def font(voice: Voice = "body", *, bold: bool = False) -> QFont:
    """The system's own face in one of the six heights; half-bold is the one other weight."""
    face = QFont(_system())
    face.setPixelSize(px(TYPE[voice]))
    face.setWeight(QFont.Weight.DemiBold if bold else QFont.Weight.Normal)
    face.setFeature(_FIGURES, 1)
    return face


def moves(widget: QWidget) -> bool:
    """Whether the desktop wants motion at all."""
    from PySide6.QtWidgets import QStyle  # 4 ms that the first paint need not wait for

    return bool(widget.style().styleHint(QStyle.StyleHint.SH_Widget_Animation_Duration, None, widget))


def wear(wish: Wish) -> None:
    """Dress the whole application; `system` keeps following the desktop from then on."""
    app = _app()
    hints = app.styleHints()
    if _now.system is None:
        _now.system = QFont(app.font())
        app.setStyle("Fusion")
        hints.colorSchemeChanged.connect(_follow)
    _now.wish = wish
    if wish == "system":
        hints.unsetColorScheme()
    else:  # so that title bars and the desktop's own dialogs go along
        hints.setColorScheme(Qt.ColorScheme.Dark if wish == "dark" else Qt.ColorScheme.Light)
    dark = wish == "dark" or (wish == "system" and hints.colorScheme() == Qt.ColorScheme.Dark)
    _now.worn = DARK if dark else LIGHT
    app.setFont(font())
    app.setPalette(_palette(_now.worn))
    app.setStyleSheet(style_sheet(_now.worn))


def _follow() -> None:
    """The desktop has gone light or dark."""
    if _now.wish == "system":
        wear("system")


def _app() -> QApplication:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    return app


def _system() -> QFont:
    return _now.system or QApplication.font()


def _scale() -> float:
    return QFontInfo(_system()).pixelSize() / _PLAIN_PX


def _palette(worn: Theme) -> QPalette:
    role, dress = QPalette.ColorRole, QPalette()
    shades = {
        role.Window: worn.panel,
        role.WindowText: worn.ink,
        role.Base: worn.field,
        role.AlternateBase: worn.panel,
        role.Text: worn.ink,
        role.Button: worn.panel,
        role.ButtonText: worn.ink,
        role.Highlight: worn.accent,
        role.HighlightedText: worn.on_accent,
        role.ToolTipBase: worn.ink,
        role.ToolTipText: worn.panel,
        role.PlaceholderText: worn.quiet,
        role.Link: worn.accent,
        role.Light: worn.panel,
        role.Midlight: worn.hair,
        role.Mid: worn.edge,
        role.Dark: worn.edge,
        role.Shadow: worn.hair,
        role.Accent: worn.accent,
    }
    for each, shade in shades.items():
        dress.setColor(each, QColor(shade))
    for each in (role.WindowText, role.Text, role.ButtonText):
        dress.setColor(QPalette.ColorGroup.Disabled, each, QColor(worn.off))
    return dress
