"""What Help shows."""

import re
import tomllib
from importlib.metadata import distribution, metadata
from pathlib import Path

from opening import settle
from PySide6.QtWidgets import QLabel

from studio.shipped import asset
from studio.window.about import LIBRARIES
from studio.window.shop import Shop

PROJECT = tomllib.loads((Path(__file__).parents[2] / "pyproject.toml").read_text(encoding="utf-8"))["project"]


def said(shop: Shop) -> str:
    """All that stands on the leaf."""
    assert shop.leaf is not None
    return " | ".join(label.text() for label in shop.leaf.findChildren(QLabel))


def test_every_library_has_its_licence(shop: Shop):
    """About names everything that is shipped, each with the licence its makers give it."""
    shipped = [re.split(r"[<>=]", one)[0] for one in PROJECT["dependencies"]]
    assert shipped == [name for name, _, _ in LIBRARIES]
    for name, _, licence in LIBRARIES:
        theirs = metadata(name)
        stated = " ".join(
            [
                theirs.get("License-Expression") or "",
                theirs.get("License") or "",
                *theirs.get_all("Classifier", []),
                distribution(name).read_text("licenses/LICENSE.txt") or "",
            ]
        )
        assert licence.split()[0] in stated, name
    shop.window.do.about.trigger()
    assert all(licence in said(shop) for _, _, licence in LIBRARIES)
    shop.leaf.reject()


def test_how_to_measure_says_each_measurement(shop: Shop):
    """Help tells of every measurement in the words of its field."""
    shop.window.do.how_to_measure.trigger()
    for path, entry in shop.window.table.measurements.fields.items():
        if path.startswith("body."):
            assert entry.declared.hint in said(shop)
    shop.leaf.reject()


def test_the_lines_are_explained(shop: Shop):
    """Every line that the board can show is explained."""
    shop.window.do.how_to_read.trigger()
    settle(shop)
    for word in ("Cut", "Seam", "Fold, hem", "Grain", "Rows end", "Zip stop", "Buttonhole", "Hook, bar"):
        assert word in said(shop)
    shop.leaf.reject()


def test_the_packing_engine_brings_its_notices():
    """The licences of the engine and of what it is built on are shipped, the weak copyleft one in full."""
    notices = [asset(f"licences/{name}") for name in ("README.md", "spyrrow-MIT.txt", "jagua-rs-MPL-2.0.txt")]
    assert all(n.exists() for n in notices)
    assert "Mozilla Public License Version 2.0" in notices[2].read_text(encoding="utf-8")
    assert "jagua-rs" in notices[0].read_text(encoding="utf-8")
