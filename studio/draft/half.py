"""Half a back or a front of the darted block, with its marks: the shape of a panel, upright at its centre."""

from studio.brief import Brief
from studio.geometry import Point, line
from studio.words import phrase

from .darted import Quarter
from .panel import side_notch
from .piece import Dimension, Handle, LineMark
from .shape import Shape

HIP = ("body.waist_to_hip",)


def half(brief: Brief, q: Quarter, whole: bool, first: bool, opened: bool, path: str) -> Shape:
    """The shape of a quarter: `whole` where its centre lies on the fold, the `first` with its length measured, `opened`
    where its side is at the opening; `path` is the brief path that widens its hem.
    """
    length, left = brief.finished_length, q.side.reversed()
    darts = [d.marks(governs=("skirt.hip_ease",)) for d in q.darts]
    lines = [m for m, _ in darts]
    spots = [s for _, s in darts]
    if q.hip is not None:
        lines.append(LineMark("hip", q.hip, phrase("hip line, {d} below the seam", d=brief.hip_depth), HIP))
        spots.append(side_notch(brief, "left", left, q.hip_along, opened, HIP))
    foot = left.start
    top = -brief.waistband.depth if brief.skirt.length_includes_band else 0.0
    sweep = phrase("{h:bare} from centre to side", h=q.hem.length)
    return Shape(
        top=q.top, right=line(*q.top.end, *q.hem.start), hem=q.hem, left=left, closes=q.closes,
        fold="right" if whole else "", widens=("skirt.hip_ease",),
        grain=(Point(foot.x * 0.3, length * 0.45), Point(foot.x * 0.3, length * 0.8)),
        lines=tuple(lines), spots=tuple(spots), handles=(Handle("skirt.length", q.hem.start, "y", 1.0),),
        dimensions=(
            Dimension(path, foot.moved(0, brief.hem), Point(0, foot.y + brief.hem), "below", sweep),
            *([Dimension("skirt.length", Point(foot.x, top), Point(foot.x, length), "left",
                         phrase("{l:bare}", l=length - top))] if first else []),
        ),
    )  # fmt: skip
