"""How a round skirt is cut: its radius, and as few panels as the cloth demands.

r = S / (2πf): S the waist seam, f the fraction of a circle. Above a full circle the waist of each circle stays as
long as the seam, so that f circles are gathered to it f to 1.
"""

import math

from msgspec import Struct
from msgspec.structs import replace

from studio.brief import Brief
from studio.geometry import Point

from .panel import WRAP_HEM
from .sector import Held, Sector, first_side

TIP = 25.0
"""A piecing seam meets the hem line at no smaller an angle than this (degrees), lest the corner be a sliver (common
practice, no source)."""
CLEAR = 50.0
"""A piecing seam stays this far (mm) below the waist, and below the end of an opening."""
CORNERED = (4, 8)
"""Counts of panels whose corners can be pieced so that both panels at a side seam are alike."""


class Cut(Struct, frozen=True, kw_only=True):
    """A round skirt about to be cut: all lengths in mm.

    `radius` is where the waist seam lies when it is worn and `length` from there to the hem line. The waist is cut
    `relief` smaller, for the bias of its edge stretches; `taken` is what a slit in one piece takes from each side for
    its allowance. `pieced` is how far from the straight side the piecing seam runs, 0 where there is none.
    """

    seam: float
    fraction: float
    radius: float
    length: float
    count: int
    relief: float = 0.0
    taken: float = 0.0
    pieced: float = 0.0
    fits: bool = True

    @property
    def angle(self) -> float:
        """What each panel is of a circle, degrees."""
        return 360 * self.fraction / self.count

    @property
    def waist(self) -> float:
        """Radius of the waist seam as it is cut."""
        return self.radius - self.relief

    @property
    def hem(self) -> float:
        """Radius of the hem line."""
        return self.radius + self.length

    @property
    def straight(self) -> bool:
        """Whether both sides of every panel lie on the straight of the cloth."""
        quarters = self.angle / 90
        return abs(quarters - round(quarters)) < 1e-9

    @property
    def flat_width(self) -> float:
        """The waist as it is cut, all round."""
        return self.round(self.waist)

    @property
    def ratio(self) -> float:
        """Cloth at the waist for each millimetre of the seam: more than 1 where gathered, less where it stretches."""
        return self.flat_width / self.seam

    def round(self, radius: float) -> float:
        """All the way round at a distance from the centre, between the seam lines of a slit."""
        return radius * (2 * math.pi * self.fraction - (2 * math.asin(self.taken / radius) if self.taken else 0.0))

    def held(self, k: int, place: str) -> Held:
        """How the k-th panel from the opening hangs, so that neighbours meet at one slant: by a side where that puts
        both on the straight of the cloth, by the side away from a corner, else by its middle. Of halves the opening
        is on the straight.
        """
        if self.pieced:
            return "left" if corner(k, self.count, place) == "right" else "right"
        if self.straight or (self.count == 2 and place != "side"):
            return "left"
        return "middle"

    def sector(self, by: Held) -> Sector:
        """One panel; where the worn waist meets the line it hangs by lies the origin."""
        centre = Point(0, -self.radius)
        if self.taken:
            half = self.angle / 2  # on the fold, which points up the page, for the slit to hang down
            return Sector(centre, self.waist, self.hem, half - 90, half, self.taken)
        return Sector(centre, self.waist, self.hem, first_side(self.angle, by), self.angle)

    def cut_size(self, brief: Brief, k: int) -> tuple[float, float]:
        """Width and height of the k-th panel as it is cut, mm."""
        if self.taken:
            return 2 * (self.hem + brief.hem), 2 * (self.hem + brief.hem)
        a = brief.seams.allowance
        left = open_allowance(brief) if k == 0 else a
        right = left if self.count == 1 else a
        box = self.sector(self.held(k, brief.opening.place)).cut_box(a, right, brief.hem, left)
        return box.width, box.height


def corner(k: int, count: int, place: str) -> Held:
    """The side of the k-th panel that a corner is pieced on: never at the centre front, nor at the opening if it can
    be helped.
    """
    front = {"centre back": 0.5, "front": 0.0, "side": 0.75}[place]

    def harm(side: int) -> int:
        """How little a seam so many panels from the opening is wanted; its mirror image counts too."""
        places = (side / count, 1 - side / count)
        at_front = any(abs((p - front + 0.5) % 1 - 0.5) < 1e-9 for p in places)
        return 2 * at_front + (side == 0)

    left, right = harm(k), harm(k + 1)
    if left == right:
        return "left" if k % 2 else "right"
    return "left" if left < right else "right"


def open_allowance(brief: Brief) -> float:
    """What is left beyond a seam line at the opening, mm."""
    return WRAP_HEM if brief.opening.kind == "wrap" else brief.seams.allowance


def least(fraction: float) -> int:
    """The fewest panels: one up to a full circle, beyond it none wider than half a circle."""
    return 1 if fraction <= 1 else math.ceil(2 * fraction - 1e-9)


def cut_circle(brief: Brief, fraction: float, relief: float, panels: int) -> Cut:
    """The skirt in a number of panels set by hand (never fewer than it can be made of), or as few as the cloth demands:
    one, halves, quarters, then quarters with a corner pieced on; where nothing fits, quarters that do not.
    """
    few = least(fraction)
    counts = (max(few, panels),) if panels else ((1, 2, 4) if few == 1 else (few, 8))
    for count in counts:
        circle = _circle(brief, fraction, relief, count)
        if _fits(brief, circle):
            return circle
    piecing = _piecing(brief, circle)
    return replace(circle, pieced=piecing, fits=piecing > 0)


def _circle(brief: Brief, fraction: float, relief: float, count: int) -> Cut:
    seam = brief.waist_seam
    radius = seam / (2 * math.pi * min(1.0, fraction))
    relief = relief if fraction <= 1 else 0.0  # what is gathered need not stretch
    taken = _taken(brief, fraction, radius - relief) if count == 1 else 0.0
    return Cut(
        seam=seam, fraction=fraction, radius=slit_radius(seam, fraction, taken) if taken else radius,
        length=brief.finished_length, count=count, relief=relief, taken=taken,
    )  # fmt: skip


def _taken(brief: Brief, fraction: float, waist: float) -> float:
    """What a skirt in one piece lacks for the allowances of its two sides (mm): all of it at a full circle, nothing
    once the gap between them holds both.
    """
    a, gap = open_allowance(brief), math.pi * (1 - fraction)
    if gap >= math.pi / 4:
        return 0.0
    room = max(0.0, waist - brief.seams.allowance) * math.tan(gap)
    return max(0.0, a - ROOMY * room)


ROOMY = 0.9
"""Share of the gap that allowances may fill, so that their cut lines stay apart."""


def slit_radius(seam: float, fraction: float, taken: float) -> float:
    """The radius (mm) whose waist is as long as the seam once a slit has taken its allowances:
    r · (2πf − 2 asin(taken / r)) = S, by Newton's rule.
    """
    whole = 2 * math.pi * fraction
    r = (seam + 2 * taken) / whole
    for _ in range(20):
        share = taken / r
        over = r * (whole - 2 * math.asin(share)) - seam
        if abs(over) < 1e-10:
            break
        r -= over / (whole - 2 * math.asin(share) + 2 * share / math.sqrt(1 - share * share))
    return r


def _fits(brief: Brief, circle: Cut) -> bool:
    """Whether every panel fits between the selvedges, with its grain down or across."""
    room = brief.cloth.usable + 1e-6
    return all(min(circle.cut_size(brief, k)) <= room for k in range((circle.count + 1) // 2))


def _piecing(brief: Brief, circle: Cut) -> float:
    """How far from the straight side a piecing seam runs, mm: as far as the cloth allows, 0 where it is of no use."""
    a, room, angle = brief.seams.allowance, brief.cloth.usable, circle.angle
    low = 90 - angle
    if circle.count not in CORNERED or not -1e-9 < low < 80 - TIP:
        return 0.0
    at = min(room - 2 * a, circle.hem * math.cos(math.radians(low + TIP)))
    side = math.sin(math.radians(angle))
    deep = at / side - circle.waist
    opens = brief.opening.place == "side"
    edge = (circle.hem + brief.hem) * side + a * math.cos(math.radians(angle))
    if deep < CLEAR + (brief.stop if opens else 0.0) or edge - at + a > room:
        return 0.0
    return at
