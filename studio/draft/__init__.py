"""Pieces, edges, seams and marks, and the parts that every skirt shares."""

from .draft import Draft, Fact, Notion
from .drawn import Drawn, drawn
from .piece import Dimension, Edge, Handle, LineMark, Piece, Spot
from .seam import Part, Seam, notches, walked

__all__ = [
    "Dimension", "Draft", "Drawn", "Edge", "Fact", "Handle", "LineMark", "Notion", "Part", "Piece", "Seam", "Spot",
    "drawn", "notches", "walked",
]  # fmt: skip
