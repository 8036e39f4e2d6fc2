"""What a mark covers: the box around it, for leaving marks out of a sheet; its true run, to know what it touches."""

from collections.abc import Iterable, Iterator
from itertools import pairwise

from msgspec import Struct

from studio.drawing import Drawing, Group, Mark, Stroke, Words, flat_marks
from studio.drawing.lettering import words_box, words_corners
from studio.geometry import Box, Path, Point

_FLAT = 0.05


class Boxed(Struct, frozen=True):
    """A mark and the box around all of its ink; for a group, also those of its marks."""

    box: Box
    mark: Mark
    inner: tuple["Boxed", ...] = ()


def boxed(drawing: Iterable[Mark]) -> tuple[Boxed, ...]:
    """Each mark with its box, measured once for all sheets; empty groups fall away."""
    return tuple(b for m in drawing if (b := _boxed(m)) is not None)


def _boxed(mark: Mark) -> Boxed | None:
    if isinstance(mark, Stroke):
        return Boxed(mark.path.box.grown(mark.line_width), mark) if mark.path.curves else None
    if isinstance(mark, Words):
        return Boxed(words_box(mark).grown(0.6), mark)
    inner = boxed(mark.marks)
    if not inner:
        return None
    box = inner[0].box
    for b in inner[1:]:
        box = box.joined(b.box)
    return Boxed(mark.clip or box, mark, inner)


def seen(marks: Iterable[Boxed], box: Box) -> Drawing:
    """The marks whose boxes meet `box`, groups kept together."""
    kept: list[Mark] = []
    for b in marks:
        if not b.box.meets(box):
            continue
        if isinstance(b.mark, Group):
            kept.append(Group(b.mark.name, seen(b.inner, box), b.mark.clip))
        else:
            kept.append(b.mark)
    return tuple(kept)


class Trace(Struct, frozen=True):
    """The true run of a mark as chords within 0.05 mm; `solid` when what it surrounds counts too."""

    points: tuple[Point, ...]
    box: Box
    solid: bool = False

    def touches(self, box: Box) -> bool:
        """Whether any of it lies in the box."""
        if not self.box.meets(box):
            return False
        if any(_enters(a, b, box) for a, b in pairwise(self.points)):
            return True
        return self.solid and surrounds(self.points, box.centre)


def trace(path: Path, *, solid: bool = False) -> Trace:
    """The run of a path."""
    points = tuple(path.flat(_FLAT))
    xs, ys = zip(*points, strict=True)
    return Trace(points, Box(min(xs), min(ys), max(xs), max(ys)), solid)


def words_trace(words: Words) -> Trace:
    """The room that words take."""
    corners = words_corners(words)
    return Trace((*corners, corners[0]), words_box(words), solid=True)


def traces(drawing: Iterable[Mark]) -> Iterator[Trace]:
    """The run of every stroke and word."""
    for mark in flat_marks(drawing):
        if isinstance(mark, Words):
            yield words_trace(mark)
        elif mark.path.curves:
            yield trace(mark.path, solid=mark.fill is not None)


def _enters(a: Point, b: Point, box: Box) -> bool:
    """Whether the chord from a to b has a part inside the box (Liang and Barsky's clipping of a line)."""
    first, last = 0.0, 1.0
    for start, way, low, high in (
        (a.x, b.x - a.x, box.left, box.right),
        (a.y, b.y - a.y, box.top, box.bottom),
    ):
        if abs(way) < 1e-12:
            if not low <= start <= high:
                return False
            continue
        enter, leave = sorted(((low - start) / way, (high - start) / way))
        first, last = max(first, enter), min(last, leave)
        if first > last:
            return False
    return True


def surrounds(points: Iterable[Point], place: Point) -> bool:
    """Whether a closed run of chords goes round a place (even-odd crossing of a ray)."""
    inside = False
    for a, b in pairwise(points):
        if (a.y > place.y) != (b.y > place.y):
            x = a.x + (place.y - a.y) / (b.y - a.y) * (b.x - a.x)
            inside ^= x > place.x
    return inside
