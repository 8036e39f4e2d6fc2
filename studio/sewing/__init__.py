"""How a skirt is sewn: the steps every skirt takes, a style's own among them, each with this skirt's numbers."""

from .cautions import ALWAYS, CAUTIONS
from .drawn.flat import laid_flat
from .drawn.room import on_screen
from .order import sewing_order
from .picture import ROOM, picture, pictured
from .text import cautions, sewing_text

__all__ = [
    "ALWAYS",
    "CAUTIONS",
    "ROOM",
    "cautions",
    "laid_flat",
    "on_screen",
    "picture",
    "pictured",
    "sewing_order",
    "sewing_text",
]
