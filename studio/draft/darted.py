"""The darted skirt block: a front and a back quarter, taken in from hip to waist by darts and a curved side seam.

Drawn with the centre at x = 0, the side seam to its left, the waist of the centre front at y = 0 (mm). The waist is
drawn with the darts closed, as one smooth curve square to centre and side, and then opened; so it is true across
every dart and every seam. Proportions are those of a teaching handout (WikiEducator): the back of a half hip is 1.5 cm
and the back of a half waist 1.2 cm wider than the front.
"""

from functools import lru_cache

from msgspec import Struct

from studio.geometry import Curve, Path, Point

from .dart import Dart, Hinge, dart, opened, shut, shut_curve
from .intake import BACK, FRONT, Kind, dart_lengths, dart_widths
from .side_seam import SideLine
from .smooth import smooth
from .waist_line import WaistLine, Wanted, waist_line

HIP_SHIFT, WAIST_SHIFT = 7.5, 6.0
"""Half of what the back quarter is wider than the front, at hip and waist, mm (WikiEducator handout)."""
LOWERED = 10.0
"""The centre back's waist lies this much lower (mm): 0.5 to 1.5 cm (common practice, no source)."""
STEEP = 1.5
"""A side comes in over at least so many times what it takes in, however high the hip is."""
BELOW_HIP = 10.0
"""The hip line is marked where at least this much skirt (mm) is left below it."""


class Sizes(Struct, frozen=True):
    """What a block is drafted to, mm: girths of waist and hip with their ease, the hip depth, the length at the centre
    front. Darts in each quarter, 0 for as many as the intake wants, and whether they are laid as tucks. For an A-line
    the share of each dart that is closed, and what the side of each quarter gains at the hem.
    """

    waist: float
    hip: float
    hip_depth: float
    length: float
    front_darts: int = 0
    back_darts: int = 0
    tucks: bool = False
    closing: float = 0.0
    side_flare: float = 0.0

    @property
    def intake(self) -> float:
        """I, what half the skirt is taken in: ((H + eH) − B) / 2, mm; nothing where the waist is the larger."""
        return max(0.0, self.hip - self.waist) / 2


class Quarter(Struct, frozen=True):
    """A quarter of a skirt between its seam lines.

    `top` is walked from the side to the centre, dart roofs included, which `closes` lists; `side` down from the waist,
    `hem` and `hip` from the centre to the side. `hip_along` is where the hip lies down the side, 0 where the skirt
    ends above it. Darts are counted from the centre.
    """

    waist: float
    top: Path
    closes: tuple[tuple[float, float], ...]
    side: Path
    hem: Path
    hip: Path | None
    hip_along: float
    darts: tuple[Dart, ...]
    lowered: float
    drawn: WaistLine
    closing: tuple[Hinge, ...]

    @property
    def flare(self) -> float:
        """How much of the flare that was asked its side is given, mm."""
        line = self.drawn.wanted.side
        return line.flared(self.drawn.side.top.x + line.hip)

    @property
    def side_intake(self) -> float:
        """What the side seam takes in from hip to waist, mm."""
        return max(0.0, self.drawn.side.top.x - self.drawn.side.hip.x)

    def girth(self, depth: float) -> float:
        """Width at a depth below the waist (mm), the darts closed: from the hip down, the level line's length.

        Above the hip it lies as far below the waist at the side and at the darts as it does at the centre.
        """
        side, hip = self.drawn.side, self.drawn.side.hip.y
        left = 1 - max(0.0, depth) / hip if hip > 0 else 0.0
        wanted = self.drawn.wanted
        taken = sum(
            w * max(0.0, 1 - depth / (h.apex.y - (h.apex.y - long) * left))
            for w, long, h in zip(wanted.widths, wanted.lengths, self.drawn.hinges, strict=True)
        )
        if depth >= hip:
            return max(self.waist, _level(*side.at(depth), self.closing, depth).length - taken)
        gained = _level(*side.at(hip), self.closing, hip).length + side.hip.x if self.closing else 0.0
        whole = sum(h.degrees * (hip - h.apex.y) for h in self.closing)
        passed = sum(h.degrees * max(0.0, depth - h.apex.y) for h in self.closing)
        flat = -side.at(depth + side.top.y * left)[0].x - taken
        return max(self.waist, flat + (gained * passed / whole if whole else 0.0))


class Block(Struct, frozen=True):
    """Both quarters, whose side seams are equally long."""

    front: Quarter
    back: Quarter

    def girth(self, depth: float) -> float:
        """Girth at a depth below the waist, mm, the darts closed."""
        return 2 * (self.front.girth(depth) + self.back.girth(depth))

    @property
    def hem_sweep(self) -> float:
        """Girth of the hem line, mm."""
        return 2 * (self.front.hem.length + self.back.hem.length)


ANY = 1000.0
"""The length of a side (mm) that does not flare, whatever it is."""


@lru_cache(maxsize=64)
def block(sizes: Sizes) -> Block:
    """The block of these sizes."""
    hip, waist = max(sizes.hip, sizes.waist) / 4, sizes.waist / 4
    shift = max(WAIST_SHIFT, HIP_SHIFT - sizes.intake / 2)
    lowered = min(LOWERED, sizes.length / 20, sizes.intake / 4)
    front = _quarter(sizes, FRONT, waist - shift, hip - HIP_SHIFT, sizes.front_darts, 0.0, None)
    return Block(front, _quarter(sizes, BACK, waist + shift, hip + HIP_SHIFT, sizes.back_darts, lowered, front))


def _quarter(
    sizes: Sizes, kind: Kind, waist: float, hip: float, asked: int, lowered: float, front: Quarter | None
) -> Quarter:  # fmt: skip
    """One quarter; the back's side is as long as that of the front."""
    widths = dart_widths(kind, hip - waist, waist, sizes.hip_depth, sizes.length, asked)
    lengths = dart_lengths(kind, len(widths), sizes.hip_depth, sizes.length)
    intake = hip - waist - sum(widths)
    long = sizes.length if sizes.side_flare else ANY  # without a flare skirt and lining share their waist
    deep = front.drawn.wanted.side.depth if front else max(sizes.hip_depth, STEEP * intake)  # both sides end alike
    line = SideLine(hip, deep, long, sizes.side_flare)
    like = front.drawn.side.curve if front else None
    drawn = waist_line(Wanted(waist, lowered, tuple(widths), lengths, line, intake, like.length if like else 0.0))
    length = front.side.length if front else drawn.side.length(sizes.length)
    hinges, depth = drawn.hinges, max(line.depth, sizes.hip_depth)
    marked = sizes.length > depth + BELOW_HIP
    along = 0.0 if not marked else front.hip_along if front else drawn.side.length(depth)
    closing = tuple(Hinge(h.apex, h.degrees * sizes.closing) for h in hinges) if sizes.closing and hinges else ()
    side = drawn.side.down(length)
    hem = _level(side.end, side.direction(length), closing, sizes.length)
    top, closes, darts = _opened(drawn, closing, sizes.tucks)
    return Quarter(
        waist, top, closes, Path(tuple(shut_curve(c, closing) for c in side.curves)), hem,
        _level(*drawn.side.at(depth), closing, depth) if marked else None, along, darts, lowered, drawn, closing,
    )  # fmt: skip


def _level(place: Point, way: Point, closing: tuple[Hinge, ...], depth: float) -> Path:
    """The level line at a depth (mm): from the centre to a place on the side, square to both, once these are closed."""
    square = way.turned(90 + sum(h.degrees for h in closing))
    return Path((smooth(Point(0, depth), Point(-1, 0), shut(place, closing), square),))


def _opened(
    drawn: WaistLine, closing: tuple[Hinge, ...], tucks: bool
) -> tuple[Path, tuple[tuple[float, float], ...], tuple[Dart, ...]]:  # fmt: skip
    """The waist with what is left of its darts opened, from side to centre; where their roofs lie on it; the darts."""
    left = drawn.hinges
    if closing:
        left = tuple(
            Hinge(shut(h.apex, closing[:k]), h.degrees - c.degrees)
            for k, (h, c) in enumerate(zip(drawn.hinges, closing, strict=True))
        )
    curves: list[Curve] = []
    closes: list[tuple[float, float]] = []
    darts: list[Dart] = []
    ends = [1.0, *drawn.cuts, 0.0]
    along = 0.0
    for k in range(len(left), -1, -1):
        part = opened(drawn.line.part(ends[k + 1], ends[k]), left[:k])
        curves.append(part)
        along += part.length
        if k and left[k - 1].degrees > 1e-9:
            found = dart(drawn.line, left[:k], drawn.rays[k - 1], drawn.cuts[k - 1], tucks)
            roof = sum(c.length for c in found.roof)
            closes.append((along, along + roof))
            along += roof
            curves += found.roof
            darts.insert(0, found)
    return Path(tuple(curves)), tuple(closes), tuple(darts)
