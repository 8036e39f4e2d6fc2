"""The darted skirt block: a front and a back quarter, taken in from hip to waist by darts and a curved side seam.

Drawn with the centre at x = 0, the side seam to its left, the waist of the centre front at y = 0 (mm). The waist is
drawn with the darts closed, as one smooth curve square to centre and side, and then opened; so it is true across
every dart and every seam. Proportions are those of a teaching handout of WikiEducator: the back of a half hip is 15
and that of a half waist 12 wider than the front.
"""

import math
from functools import lru_cache

from msgspec import Struct

from studio.geometry import TOUCH, Curve, Line, Path, Point

from .dart import Dart, Hinge, dart, met, opened, shut, shut_curve
from .intake import BACK, FRONT, Kind, dart_lengths, dart_widths
from .smooth import smooth

HIP_SHIFT, WAIST_SHIFT = 7.5, 6.0
"""Half of what the back quarter is wider than the front, at hip and waist (mm): 0.75 cm, and half of 1.2 cm
(WikiEducator handout)."""
LOWERED = 10.0
"""The centre back's waist lies this much lower (mm): 0.5 to 1.5 cm (common practice, no source)."""
RAISED = 13.0
"""The side waist is raised by up to this (mm): 0.5 to 1.3 cm (common practice, no source)."""
STEEP = 1.5
"""The side comes in over at least this many times what it takes in, however high the hip is."""
NEAR = 1e-8


class Sizes(Struct, frozen=True):
    """What a block is drafted to, mm: girths of waist and hip with their ease, the hip depth, the length at the centre
    front. Darts in each quarter, 0 for as many as the intake wants, and whether they are laid as tucks. For an A-line
    the share of each dart that is closed, and what each piece's side gains at the hem.
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


class Side(Struct, frozen=True):
    """A side seam before any dart is closed: from the waist down a curve that ends at the hip, and the straight below;
    or only the straight, where it flares more than the hip asks for.
    """

    top: Point
    lean: float  # of the waist's end from the upright, radians
    below: Point  # the way the straight runs
    curve: Curve | None = None

    @property
    def hip(self) -> Point:
        """Where the straight begins."""
        return self.curve.end if self.curve else self.top

    def at(self, depth: float) -> tuple[Point, Point]:
        """The place level with `depth` on the centre, mm below the waist, and the way the side runs there."""
        if self.curve is None:
            return self.top.along(self.below, max(0.0, depth)), self.below
        if depth >= self.hip.y:
            return self.hip.along(self.below, depth - self.hip.y), self.below
        share = _share_at_depth(self.curve, depth)
        return self.curve.at(share), self.curve.direction(share)

    def down(self, length: float) -> Path:
        """The seam from the waist, so long (mm)."""
        upper = self.curve.length if self.curve else 0.0
        if self.curve is not None and length < upper - TOUCH:
            return Path((self.curve,)).split(length)[0]
        straight = Line(self.hip, self.hip.along(self.below, length - upper))
        return Path((*([self.curve] if self.curve else []), *([straight] if length > upper + TOUCH else [])))

    def length(self, depth: float) -> float:
        """Of the seam, from the waist to a depth (mm)."""
        if self.curve is None:
            return max(0.0, depth)
        if depth >= self.hip.y:
            return self.curve.length + depth - self.hip.y
        return self.curve.part(0, _share_at_depth(self.curve, depth)).length


class Quarter(Struct, frozen=True):
    """A quarter of a skirt between its seam lines.

    `top` is walked from the side to the centre, dart roofs included, which `closes` lists; `side` down from the waist,
    `hem` and `hip` from the centre to the side. `hip_along` is where the hip lies down the side, 0 where the
    skirt ends above it. Darts are counted from the centre.
    """

    top: Path
    closes: tuple[tuple[float, float], ...]
    side: Path
    hem: Path
    hip: Path | None
    hip_along: float
    darts: tuple[Dart, ...]
    waist: float
    lowered: float
    taken: tuple[Hinge, ...]  # what the darts took in before any was closed
    widths: tuple[float, ...]
    closing: tuple[Hinge, ...]
    block: Side

    @property
    def side_intake(self) -> float:
        """What the side seam takes in from hip to waist, mm."""
        return max(0.0, self.block.top.x - self.block.hip.x)

    def girth(self, depth: float) -> float:
        """Width at a depth below the waist (mm), the darts closed: at the hip and below, the level line's length."""
        hip = self.block.hip.y
        if depth >= hip:
            return self._level(depth)
        place, _ = self.block.at(depth)
        flat = -place.x - sum(
            w * min(1.0, max(0.0, (h.apex.y - depth) / h.apex.y)) for w, h in zip(self.widths, self.taken, strict=True)
        )
        gained = self._level(hip) + self.block.hip.x if self.closing else 0.0
        whole = sum(h.degrees * (hip - h.apex.y) for h in self.closing)
        opened = sum(h.degrees * max(0.0, depth - h.apex.y) for h in self.closing)
        return max(self.waist, flat + (gained * opened / whole if whole else 0.0))

    def _level(self, depth: float) -> float:
        return level(self.block, self.closing, depth).length


class Block(Struct, frozen=True):
    """Both quarters, whose side seams are equally long."""

    front: Quarter
    back: Quarter

    def girth(self, depth: float) -> float:
        """Girth at a depth below the waist, mm."""
        return 2 * (self.front.girth(depth) + self.back.girth(depth))


def level(side: Side, closing: tuple[Hinge, ...], depth: float) -> Path:
    """The level line at a depth (mm): from the centre to the side, square to both, after these darts are closed."""
    place, way = side.at(depth)
    way = way.turned(90 + sum(h.degrees for h in closing))
    return Path((smooth(Point(0, depth), Point(-1, 0), shut(place, closing), way),))


@lru_cache(maxsize=64)
def block(sizes: Sizes) -> Block:
    """The block of these sizes."""
    back_part = min(1.5, sizes.intake / 2)
    hip = max(sizes.hip, sizes.waist) / 4
    fronts = sizes.waist / 4 - HIP_SHIFT + back_part, hip - HIP_SHIFT
    backs = sizes.waist / 4 + HIP_SHIFT - back_part, hip + HIP_SHIFT
    front = _drawn(sizes, FRONT, *fronts, sizes.front_darts, 0.0, None)
    lowered = min(LOWERED, sizes.length / 20, sizes.intake / 4)
    back = _drawn(sizes, BACK, *backs, sizes.back_darts, lowered, front)
    return Block(front, back)
