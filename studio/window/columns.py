"""Three columns run through toolbar, work area and bottom strip."""

from typing import Final

from . import theme
from .tokens import SIZE

_FROM: Final = 1280
_TO: Final = 1920
_WIDE: Final = 1600


def columns(width: int) -> tuple[int, int]:
    """Widths of the left and the right column in a window so wide (px), on the grid of 4."""
    share = min(max((width - theme.px(_FROM)) / theme.px(_TO - _FROM), 0.0), 1.0)
    left, right = (round((least + (most - least) * share) / 4) * 4 for least, most in (SIZE.left, SIZE.right))
    return theme.px(left), theme.px(right)


def is_wide(width: int) -> bool:
    """Whether the notions have room beside the findings."""
    return width >= theme.px(_WIDE)
