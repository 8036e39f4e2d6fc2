"""What the maker decides: frozen records, one declaration per number."""

from .declare import Declared, Kind, When, declared
from .records import Body, Brief, Cloth, Fastening, Gathers, Opening, Paper, Record, Seams, Skirt, Waistband

__all__ = [
    "Body", "Brief", "Cloth", "Declared", "Fastening", "Gathers", "Kind", "Opening", "Paper", "Record", "Seams",
    "Skirt", "Waistband", "When", "declared",
]  # fmt: skip
