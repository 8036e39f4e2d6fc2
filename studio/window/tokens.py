"""Every colour, size and distance of the window, once.

A worktable by day: pattern paper, tissue, pencil. By night: the same table, tailor's chalk on dark cloth.
Words stand at 4.5:1 on every ground they stand on, drawn lines and edges of controls at 3:1 (a test checks it).
"""

from typing import Final, Literal, TypeAlias

from msgspec import Struct


class Theme(Struct, frozen=True):
    """The colours of one light, as #RRGGBB."""

    name: str
    chrome: str  # menu, toolbar, rulers, strips
    panel: str  # the two forms, the first sheet
    field: str  # inputs, buttons, tiles
    board: str  # ground of the canvas
    dot: str  # 1 cm dots and 10 cm crosses on it
    tissue: str  # a piece; plates under words
    ink: str  # first voice: words, cut lines
    quiet: str  # second voice: units, hints, rulers
    off: str  # disabled, and nothing else
    hair: str  # between areas; decoration only
    edge: str  # edges of controls
    accent: str  # woad: in hand, chosen, the lead button
    accent_deep: str
    on_accent: str
    plate: str  # under whatever is in hand
    hover: str
    gather: str  # gather rows, and nothing else
    note: str
    note_bg: str
    doubt: str
    doubt_bg: str
    stop: str
    stop_bg: str


LIGHT: Final = Theme(
    name="light",
    chrome="#F3F0EA",
    panel="#FAF8F4",
    field="#FFFFFF",
    board="#EEE9DE",
    dot="#D3CBBB",
    tissue="#FFFFFF",
    ink="#22262B",
    quiet="#5D5A54",
    off="#8E8A82",
    hair="#DDD7CB",
    edge="#8B8478",
    accent="#0E5C7A",
    accent_deep="#0A465E",
    on_accent="#FFFFFF",
    plate="#D9EAF0",
    hover="#E9E5DB",
    gather="#8A3A78",
    note="#3F5A6E",
    note_bg="#E6EDF1",
    doubt="#7D5200",
    doubt_bg="#F8E9C8",
    stop="#A1261B",
    stop_bg="#F9E0DB",
)
DARK: Final = Theme(
    name="dark",
    chrome="#1F2326",
    panel="#24292C",
    field="#1A1E20",
    board="#171A1C",
    dot="#394044",
    tissue="#2B3134",
    ink="#EFEAE0",
    quiet="#B4AFA4",
    off="#7E7C77",
    hair="#353B3F",
    edge="#7F8688",
    accent="#7CC6E0",
    accent_deep="#A5DBEE",
    on_accent="#0B1C23",
    plate="#1D4252",
    hover="#30363A",
    gather="#E39BD2",
    note="#A9C5D6",
    note_bg="#263640",
    doubt="#EDBD62",
    doubt_bg="#40341B",
    stop="#F59A8B",
    stop_bg="#47231F",
)

Voice: TypeAlias = Literal["ruler", "small", "body", "title", "number", "display"]
TYPE: Final[dict[Voice, int]] = {"ruler": 10, "small": 11, "body": 12, "title": 13, "number": 19, "display": 26}
"""Heights of type in px where the system font is 12 px high (9 pt at 96 dots to the inch)."""


class Space(Struct, frozen=True):
    """Distances, px. Everything stands on a grid of 4."""

    xs: int = 4
    s: int = 8
    m: int = 12  # margin of a panel
    l: int = 16  # noqa: E741
    xl: int = 24
    xxl: int = 32


class Radius(Struct, frozen=True):
    """Corners, px."""

    control: int = 4
    tile: int = 6
    sheet: int = 8


class Size(Struct, frozen=True):
    """Sizes, px where the system font is 12 px high; what holds words grows with it (`theme.px`)."""

    box_w: int = 84
    box_h: int = 28
    pick_w: int = 148
    slider: int = 18
    target: int = 24  # the least that can be hit (WCAG 2.2, 2.5.8)
    toolbar: int = 48
    strip: int = 116
    header: int = 36
    finding: int = 32
    remedy_w: int = 184
    fact: int = 44
    tile_w: int = 80
    tile_h: int = 60
    ruler: int = 22
    foot: int = 36
    sheet_w: int = 744
    left: tuple[int, int] = (256, 288)  # the panels, in a window 1280 and 1920 wide
    right: tuple[int, int] = (312, 352)


class Motion(Struct, frozen=True):
    """How long things take to light, ms. Geometry never moves by itself: it is the truth at once."""

    plate: int = 80


SPACE: Final = Space()
RADIUS: Final = Radius()
SIZE: Final = Size()
MOTION: Final = Motion()
