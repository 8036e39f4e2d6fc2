"""The right field for what is declared."""

from PySide6.QtWidgets import QWidget

from studio.brief.declare import Declared
from studio.units import Unit

from .bands import Bands
from .choice import Choice
from .entry import Entry
from .field import Field
from .name import Name
from .yes_no import YesNo


def entry_for(declared: Declared, unit: Unit, parent: QWidget) -> Entry:
    """A field for one thing the maker decides, at its default."""
    match declared.kind:
        case "choice":
            return Choice(declared, unit, parent)
        case "switch":
            return YesNo(declared, unit, parent)
        case "bands":
            return Bands(declared, unit, parent)
        case "name" | "held" | "picture":
            return Name(declared, unit, parent)
        case _:
            return Field(declared, unit, parent)
