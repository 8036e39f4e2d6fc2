"""What is shipped beside the code: the sample skirt."""

from pathlib import Path

_HERE = Path(__file__).parent
_PLACES = (_HERE / "assets", _HERE.parent / "assets")
"""An installed house keeps them inside itself; a checkout has them beside it."""


def asset(name: str) -> Path:
    """Where a shipped file lies; whoever opens it finds out when it is gone."""
    return next((place / name for place in _PLACES if (place / name).exists()), _PLACES[0] / name)
