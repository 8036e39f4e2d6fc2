"""Draws the pictures of the docs from the real window and the real pages.

Run `python docs/make/pictures.py` in an environment with the test extra.
"""

import os
import tempfile
from collections.abc import Callable
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import pypdfium2
from PySide6.QtCore import QSettings
from PySide6.QtTest import QTest

from studio.brief import PrintBand
from studio.export import export
from studio.plan_pages import put_plan
from studio.window.running import application, bare, furnished
from studio.window.settings import Settings
from studio.window.shop import Shop

PICTURES = Path(__file__).parents[1] / "pictures"
SIZE = (1280, 800)
PAGES = {
    "measure-first": "Measure this page first",
    "sheet": "sheet 1 of",
    "template": "Lay it",
    "chalk-list": "Chalk list",
    "edge-gauges": "Edge gauges",
}
"""The first page with these words on it is shown."""


def opened(folder: Path, *, wish: str = "light", started: bool = True) -> Shop:
    """A window of its own, that remembers nothing of the maker's."""
    kept = Settings(QSettings(str(folder / f"{wish}{started}.ini"), QSettings.Format.IniFormat))
    kept.unit, kept.started, kept.wish = "cm", started, wish  # type: ignore[assignment]
    shop = furnished(kept, bare(kept))
    shop.open(None)
    shop.window.resize(*SIZE)
    QTest.qWait(300)
    return shop


def grab(shop: Shop, name: str) -> None:
    """Keep what the window shows."""
    QTest.qWait(200)
    shop.window.grab().save(str(PICTURES / f"{name}.png"))
    shop.window.may_close = True
    shop.window.close()


def bordered(shop: Shop) -> None:
    """A border on the hem and a narrow band on the waistband's face."""
    bands = (PrintBand(60, 260, tops="second"), PrintBand(1290, 1330, "waistband", "face centre"))
    shop.desk.mend({"cloth.bands": bands, "cloth.repeat": 240.0, "skirt.cut": "along"})


def lay_plan(shop: Shop) -> None:
    """The plan of a border print, as it is seen."""
    bordered(shop)
    shop.window.toolbar.heading.choose("lay")


def main() -> None:
    """Every picture."""
    PICTURES.mkdir(exist_ok=True)
    app = application()
    with tempfile.TemporaryDirectory() as folder:
        here = Path(folder)
        steps: dict[str, Callable[[Shop], None]] = {
            "window": lambda shop: shop.window.table.reveal("skirt.length"),
            "finding": lambda shop: shop.desk.edit("body.hip", 1080.0),
            "lay-plan": lay_plan,
        }
        for name, step in steps.items():
            shop = opened(here)
            step(shop)
            grab(shop, name)
        grab(opened(here, wish="dark"), "window-dark")
        grab(opened(here, started=False), "first-start")
        shop = opened(here)
        list(export(shop.desk.docket, here, ("pdf",), "cm"))
        sheets = pypdfium2.PdfDocument(next(here.glob("*-sheets-*.pdf")))
        texts = [page.get_textpage().get_text_range() for page in sheets]
        for name, words in PAGES.items():
            page = next(k for k, text in enumerate(texts) if words in text)
            sheets[page].render(scale=1.2).to_pil().save(PICTURES / f"{name}.png")
        bordered(shop)
        put_plan(here / "plan.pdf", shop.desk.docket, "cm")
        plan = pypdfium2.PdfDocument(here / "plan.pdf")
        plan[0].render(scale=1.2).to_pil().save(PICTURES / "lay-plan-page.png")
        shop.window.may_close = True
        shop.window.close()
    app.processEvents()


if __name__ == "__main__":
    main()
