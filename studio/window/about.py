"""What Skirtwright is, and what it stands on."""

from typing import Final

from PySide6.QtWidgets import QGridLayout, QWidget

from studio.units import spell
from studio.words import phrase, tr

from .leaf import Leaf
from .tokens import SPACE
from .widgets.label import Label

LIBRARIES: Final = (
    ("PySide6-Essentials", "the window, with Qt", "LGPL 3"),
    ("msgspec", "records and files", "BSD 3-clause"),
    ("pint", "units", "BSD 3-clause"),
    ("svgwrite", "SVG", "MIT"),
    ("ezdxf", "DXF", "MIT"),
    ("pikepdf", "page boxes in PDF", "MPL 2.0"),
    ("fonttools", "widths of letters", "MIT"),
    ("numpy", "photographs and lay plans", "BSD 3-clause"),
    ("pillow", "photographs", "MIT-CMU"),
    ("highspy", "lay plans", "MIT"),
    ("spyrrow", "lay plans, on jagua-rs (MPL 2.0)", "MIT"),
    ("font-source-sans-pro", "letters on paper", "OFL 1.1"),
    ("font-source-serif-pro", "letters on paper", "OFL 1.1"),
)
"""Everything shipped with it: name, what for, licence."""


class About(Leaf):
    """Name, version, libraries and their licences."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(tr("About Skirtwright"), parent, 520)
        says = phrase("Skirtwright {v:word}: a drafting studio for skirts made to measure.", v=_version())
        self.add_words(spell(says, "cm"))
        self.add_words(tr("It stands on these libraries, each under its own licence:"), "quiet")
        grid = QGridLayout()
        grid.setHorizontalSpacing(SPACE.l)
        grid.setVerticalSpacing(SPACE.xs)
        grid.setColumnStretch(1, 1)
        for row, (name, what, licence) in enumerate(LIBRARIES):
            grid.addWidget(Label(name, self), row, 0)
            grid.addWidget(Label(tr(what), self, "body", "quiet"), row, 1)
            grid.addWidget(Label(licence, self, "body", "quiet"), row, 2)
        self.column.addLayout(grid)
        self.close_button = self.add_button(tr("Close"))
        self.close_button.clicked.connect(self.accept)
        self.finish()


def _version() -> str:
    from importlib.metadata import PackageNotFoundError, version

    try:
        return version("skirtwright")
    except PackageNotFoundError:  # straight from a checkout
        return ""
