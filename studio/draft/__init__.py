"""Pieces, edges, seams and marks, and the parts that every skirt shares."""

from .draft import Draft, Fact, Notion
from .piece import Dimension, Edge, Handle, LineMark, Piece, Spot
from .seam import Part, Seam, notches, walked

__all__ = [
    "Dimension", "Draft", "Edge", "Fact", "Handle", "LineMark", "Notion", "Part", "Piece", "Seam", "Spot",
    "notches", "walked",
]  # fmt: skip
