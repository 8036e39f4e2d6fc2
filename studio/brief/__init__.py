"""What the maker decides: frozen records, one declaration per number."""

from .brief import OVER_HIPS, Brief
from .declare import Declared, Kind, When, declared
from .hems import Flare
from .records import (
    Body,
    Cloth,
    Fastening,
    Gathers,
    Held,
    Lining,
    Opening,
    Paper,
    Pockets,
    PrintBand,
    Record,
    Seams,
    Skirt,
    Waistband,
)

__all__ = [
    "OVER_HIPS", "Body", "Brief", "Cloth", "Declared", "Fastening", "Flare", "Gathers", "Held", "Kind", "Lining",
    "Opening", "Paper", "Pockets", "PrintBand", "Record", "Seams", "Skirt", "Waistband", "When", "declared",
]  # fmt: skip
