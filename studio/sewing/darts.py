"""Darts and slits: what gives a panel its shape."""

from collections.abc import Iterator

from studio.brief import Brief
from studio.draft import Draft, Piece
from studio.draft.making import Making, Shown
from studio.draft.slit import TURNED
from studio.geometry import Path
from studio.words import Phrase, phrase, tr

from .saying import panels


def darts(brief: Brief, draft: Draft) -> Iterator[Making]:
    """The darts of every panel, pressed towards the centre."""
    dark = [p for p in panels(draft.pieces) if any(m.role == "dart" for m in p.lines)]
    if not dark:
        return
    says = [s for p in dark for s in _sizes(p)]
    says += [
        phrase("Fold each dart right sides in, leg on leg, and pin."),
        phrase("Sew from the waist to the point, the last stitches along the fold."),
        phrase("Knot the ends; stitching back would pull the point."),
        phrase("Press towards the centre, over a rolled towel."),
    ]
    shown = Shown(dark[0].id, (), ("dart",), "top")
    yield Making("darts", "shape", tr("Sew the darts"), tuple(says), shown, ("needle", "iron"))


def _sizes(piece: Piece) -> Iterator[Phrase]:
    """How many darts a panel has once it is laid open, how wide and how long."""
    times = piece.cut * (2 if piece.on_fold else 1)
    found = [_measured(m.path) for m in piece.lines if m.role == "dart"]
    for size in dict.fromkeys(found):
        n = found.count(size) * times
        text = "{p:word}: {n:count} darts, {w} wide at the waist and {l} long."
        if n == 1:
            text = "{p:word}: one dart, {w} wide at the waist and {l} long."
        yield phrase(text, p=tr(piece.name), n=n, w=size[0], l=size[1])


def _measured(legs: Path) -> tuple[float, float]:
    """Width between the ends of the legs and length from their middle to the point, to the tenth of a mm."""
    tip = max((c.end for c in legs.curves), key=lambda p: p.y)
    start, end = legs.start, legs.end
    return round(start.distance(end), 1), round(start.towards(end, 0.5).distance(tip), 1)


def slits(brief: Brief, draft: Draft) -> Iterator[Making]:
    """A slit or a vent at the foot of a seam, when that seam is sewn."""
    for piece in panels(draft.pieces):
        free = next((e for e in piece.edges if e.name in ("right slit", "right vent")), None)
        if free is None:
            continue
        long = free.path.length if free.name == "right slit" else _fold(piece)
        shown = Shown(piece.id, (free.name, "vent top"), ("slit", "slit top"), "right")
        if free.name == "right slit":
            says = (
                phrase("The seam ends {l} above the hem line; fasten it there.", l=long),
                phrase("Press {t} under along both edges and catch it by hand.", t=TURNED),
                phrase("Sew a bar across the top on the inside."),
            )
            yield Making("slit", "seams", tr("Finish the slit"), says, shown, ("iron",))
        else:
            vent = (
                phrase("The seam ends {l} above the hem line; sew on across the tops of the extensions.", l=long),
                phrase("Fold the upper extension back along the seam line; leave the under one flat."),
                phrase("Clip the under allowance at the corner, so that the seam opens above it."),
                phrase("Press both to the same side and stitch through their tops."),
            )
            yield Making("slit", "seams", tr("Finish the vent"), vent, shown, ("iron", "shears"))
        return


def _fold(piece: Piece) -> float:
    return next(m.path.length for m in piece.lines if m.role == "slit")
