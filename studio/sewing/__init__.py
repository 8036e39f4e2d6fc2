"""How a skirt is sewn: the steps every skirt takes, a style's own among them, each with this skirt's numbers."""

from .cautions import ALWAYS, CAUTIONS
from .order import sewing_order
from .picture import ROOM, picture
from .text import cautions, sewing_text

__all__ = ["ALWAYS", "CAUTIONS", "ROOM", "cautions", "picture", "sewing_order", "sewing_text"]
