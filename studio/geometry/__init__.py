"""Points, curves and paths, true and exact: no polygon stands for a curve until something asks to see one."""

from .box import Box
from .curve import Arc, Cubic, Curve, Line
from .offset import offset
from .path import TOUCH, Path, beside, circle, joined, line, polyline, rectangle
from .point import Point, crossing

__all__ = [
    "TOUCH", "Arc", "Box", "Cubic", "Curve", "Line", "Path", "Point",
    "beside", "circle", "crossing", "joined", "line", "offset", "polyline", "rectangle",
]  # fmt: skip
