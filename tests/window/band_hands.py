"""What hands do to the rows of bands in the Cloth section."""

from opening import settle
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox

from studio.brief import PrintBand
from studio.window.shop import Shop
from studio.window.widgets.band_row import BandRow
from studio.window.widgets.bands import Bands

HEM = PrintBand(60, 260)
FACE = PrintBand(1290, 1330, "waistband", "face centre")


def bands(shop: Shop) -> Bands:
    """The field."""
    return shop.window.table.construction.bands


def row(shop: Shop, k: int) -> BandRow:
    """The k-th row."""
    return bands(shop).rows[k]


def type_in(shop: Shop, k: int, end: str, text: str, key: Qt.Key | None = Qt.Key.Key_Return) -> None:
    """Type over one end of a band, and press a key."""
    box = row(shop, k).ends[end]
    box.setFocus()
    box.selectAll()
    QTest.keyClicks(box, text)
    if key is not None:
        QTest.keyClick(QApplication.focusWidget(), key)
    settle(shop)


def choose(shop: Shop, k: int, name: str, words: str) -> None:
    """Choose a word, as a maker would with the keys."""
    pick = row(shop, k).picks[name]
    pick.setFocus()
    QTest.keyClicks(pick, words)
    settle(shop)


def now(shop: Shop) -> tuple[PrintBand, ...]:
    """The bands of the brief."""
    return shop.desk.brief.cloth.bands


def words(pick: QComboBox) -> list[str]:
    """What a list offers."""
    return [pick.itemText(k) for k in range(pick.count())]


def undo(shop: Shop) -> None:
    """One step back."""
    shop.window.do.undo.trigger()
    settle(shop)
