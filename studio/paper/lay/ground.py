"""The cloth of a lay plan on paper: its edges, selvedges and end, its print sketched in, its bands in brackets."""

from collections.abc import Iterator
from functools import reduce
from itertools import pairwise

from studio.brief import PrintBand
from studio.cloth.ways import band_of
from studio.drawing import Group, Mark, Stroke, Words
from studio.drawing.furniture import frame, placed_path, stroke
from studio.drawing.lettering import width
from studio.drawing.motif import motif, places, step_of
from studio.geometry import Box, Path, Point
from studio.units import spell
from studio.words import phrase, tr

from ..spread import spread
from .fit import Fit
from .plan import LayPlan

SMALL = 3.2
_FINEST = 2.0
"""Flowers nearer to each other than this on paper (mm) are left away."""
_TOOTH = 1.6
_BRACKET, _LEAD = 1.6, 5.0


def ground(plan: LayPlan, fit: Fit) -> Iterator[Mark]:
    """The cloth with nothing on it."""
    cloth, box = plan.said.brief.cloth, fit.cloth
    yield from _print(plan, fit)
    deep = cloth.selvedge / fit.ratio
    for top in (box.bottom - deep,) if plan.lay.folded else (box.top, box.bottom - deep):
        yield frame("plain", Box(box.left, top, box.right, top + deep), fill="tone", bare=True)
    corners = (Point(box.right, box.top), *_end(fit), Point(box.right, box.bottom), Point(box.left, box.bottom))
    edge = [*corners, Point(box.left, box.top)]
    yield from (stroke("plain", a, b) for a, b in pairwise(edge) if a.distance(b) > 1e-6)
    yield stroke("fold" if plan.lay.folded else "plain", (box.left, box.top), (box.right, box.top))
    used = fit.on(Point(plan.lay.length, 0)).x
    if used < box.right - 0.2:
        yield stroke("rule", (used, box.top), (used, box.bottom))


def edges_named(plan: LayPlan, fit: Fit) -> Iterator[Words]:
    """What lies at the top and at the foot of the cloth, and how much of its length the plan takes."""
    box = fit.cloth
    first, second, takes = _edges(plan)
    yield Words(first, Point(box.left, box.top - 1.6), SMALL)
    yield Words(second, Point(box.left, box.bottom + 9.8), SMALL)
    used = fit.on(Point(plan.lay.length, 0)).x
    left = max(box.left + width(first, SMALL) + 4, used - width(takes, SMALL, "semibold"))
    yield Words(takes, Point(left, box.top - 1.6), SMALL, "plain", face="semibold")


def room_over(plan: LayPlan) -> float:
    """How much room the words over the cloth take, mm."""
    first, _, takes = _edges(plan)
    return width(first, SMALL) + 4 + width(takes, SMALL, "semibold")


def _edges(plan: LayPlan) -> tuple[str, str, str]:
    folded = plan.lay.folded
    first, second = (tr("fold"), tr("selvedges")) if folded else (tr("first selvedge"), tr("second selvedge"))
    return first, second, spell(phrase("takes {l}", l=plan.lay.length), plan.said.unit)


def bands(plan: LayPlan, fit: Fit) -> Iterator[Mark]:
    """The bands of the print in brackets at the bolt's end, each with what should show it."""
    shown = _shown(plan)
    x = fit.cloth.right + 1.5
    middles = [(fit.on(Point(0, b.start)).y + fit.on(Point(0, b.end)).y) / 2 for b in shown]
    stand = spread(middles, [8.0] * len(shown), fit.cloth.top - 4, fit.cloth.bottom + 8)
    for band, middle, at in zip(shown, middles, stand, strict=True):
        a, b = fit.on(Point(0, band.start)).y, fit.on(Point(0, band.end)).y
        tip = x + _BRACKET
        yield stroke("dimension", (x, a), (tip, a), (tip, b), (x, b), width=0.25)
        yield stroke("dimension", (tip, middle), (tip + _LEAD - 1.2, at))
        for line, down in zip(_band_words(plan, band), (-0.6, 3.2), strict=True):
            yield Words(line, Point(tip + _LEAD, at + down), 3.0 if down > 0 else SMALL)


def room_for_bands(plan: LayPlan) -> float:
    """How much room the brackets take at the right of the cloth, mm."""
    words = [w for band in _shown(plan) for w in _band_words(plan, band)]
    return 2.0 + (_BRACKET + _LEAD + max(width(w, SMALL) for w in words) if words else 0.0)


def _shown(plan: LayPlan) -> tuple[PrintBand, ...]:
    """The bands of cloth that lies open; folded, they lie on each other."""
    washed = plan.said.brief.cloth.washed
    return () if plan.lay.folded else tuple(b for b in plan.said.brief.cloth.bands if b.end <= washed)


def _band_words(plan: LayPlan, band: PrintBand) -> tuple[str, str]:
    """What should show a band, whether anything lies on it, and from where to where it goes."""
    unit, cloth = plan.said.unit, plan.said.brief.cloth
    held = tr("not used")
    if band.holds != "nothing":
        bare = all(band_of(p, cloth) != band for p in plan.lay.placed)
        held = spell(phrase("for the {h:word}; bare" if bare else "for the {h:word}", h=tr(band.holds)), unit)
    return held, spell(phrase("{a:bare} to {b:bare}", a=band.start, b=band.end), unit)


def _print(plan: LayPlan, fit: Fit) -> Iterator[Mark]:
    """A flower a repeat, thin and grey, and the edges of the bands; of folded cloth, its lower layer, right side up."""
    up = plan.lay.width if plan.lay.folded else 0.0
    marks: list[Mark] = []
    for band in plan.said.brief.cloth.bands:
        for y in (band.start, band.end):
            a, b = fit.on(Point(0, y - up)), fit.on(Point(fit.length, y - up))
            marks.append(stroke("band", a, b))
    marks += (Stroke(path, "print") for flower in _flowers(plan, fit) for path in flower)
    if marks:
        yield Group("print", tuple(marks), fit.cloth)


def motifs(plan: LayPlan, fit: Fit) -> list[Box]:
    """Where the flowers of the print are, for words to keep clear of."""
    return [reduce(Box.joined, (path.box for path in flower)) for flower in _flowers(plan, fit)]


def _flowers(plan: LayPlan, fit: Fit) -> Iterator[list[Path]]:
    """Each flower as its paths on the page; none where they would be too fine."""
    cloth, up = plan.said.brief.cloth, plan.lay.width if plan.lay.folded else 0.0
    for band in cloth.bands:
        if step_of(cloth, band) / fit.ratio < _FINEST:
            continue
        flower = [placed_path(path, Point(0, 0), 1 / fit.ratio) for path in motif(cloth, band)]
        for at in places(cloth, band, 0, fit.length):
            here = fit.on(at.moved(0, -up))
            yield [path.moved(*here) for path in flower]


def _end(fit: Fit) -> Iterator[Point]:
    """Teeth down the far end of the cloth, where it goes on."""
    box = fit.cloth
    count = max(2, round(box.height / (2 * _TOOTH)))
    for k in range(count if fit.torn else 0):
        yield Point(box.right - _TOOTH * 0.8, box.top + box.height * (k + 0.5) / count)
        yield Point(box.right, box.top + box.height * (k + 1) / count)
