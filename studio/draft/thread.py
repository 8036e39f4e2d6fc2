"""Thread: by seam length and stitch."""

LOCKSTITCH = 2.5
"""Thread for each millimetre of lockstitch (ISO 4915 class 301), half needle, half bobbin (trade tables)."""
OVEREDGE = 14.0
"""Thread for each millimetre of three-thread overedge (class 504; trade tables, from memory)."""
WASTE = 1.15
"""10 to 15 per cent is lost at starts and ends (trade tables)."""


def lockstitch_thread(seams: float) -> float:
    """Thread for `seams` mm of lockstitch, waste included, mm."""
    return seams * LOCKSTITCH * WASTE


def overedge_thread(edges: float) -> float:
    """Thread for `edges` mm of neatening, mm; no waste: the chain is cut, not tied."""
    return edges * OVEREDGE
