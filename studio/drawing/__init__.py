"""Strokes, words and groups: the one drawing that screen, paper and files all translate."""

from .ink import COLOURS, PENS, Colour, Ink, Pen
from .mark import Align, Drawing, Face, Group, Mark, Stroke, Words, flat_marks, moved

__all__ = [
    "COLOURS", "PENS", "Align", "Colour", "Drawing", "Face", "Group", "Ink", "Mark", "Pen", "Stroke", "Words",
    "flat_marks", "moved",
]  # fmt: skip
