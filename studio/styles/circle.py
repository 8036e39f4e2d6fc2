"""The circle skirt: sectors of a ring, waist and hem true arcs about one centre.  r = S / (2πf)

S is the waist seam and f the fraction of a circle. Above a full circle, f circles' worth of cloth is gathered to the
seam, f to 1, so that the radius stays that of a full circle.
"""

# fmt: off
import math
from typing import Annotated

from studio.brief import Brief, Flare, Skirt
from studio.brief.declare import mm, times, whole
from studio.draft import Draft, Fact, drawn
from studio.draft.circle_cut import Cut, cut_circle
from studio.draft.circle_panels import circle_panels
from studio.draft.gathers import gather_facts, loosest, lowered, open_gap, raised, sections
from studio.draft.hang import Hung, hang
from studio.draft.making import Making, Shown
from studio.draft.marks import stations
from studio.words import phrase, tr

from .style import Edit, Style

MOST = 12
NARROW_FROM = 0.6
"""From this fraction of a circle on the hem is a circle's; below it, a flared skirt's (common practice, no source)."""


class Circle(Skirt, frozen=True, tag="circle"):
    """A part of a circle, a whole one, or two gathered to the band."""

    fraction: Annotated[float, times(
        "Circles", 0.25, 2,
        "1/4, 1/2, 3/4 or 1: how much of a circle the skirt is; above 1 it is gathered, 2 being two full circles.",
        step=0.25)] = 1.0
    bias_relief: Annotated[float, mm(
        "Bias relief", 0, 10, "The waist is cut this much higher, for its bias stretches as it is sewn; a gathered "
        "one need not be.")] = 3.0
    panels: Annotated[int, whole(
        "Panels", 0, MOST, "Sewn side by side; by cloth: one, halves, quarters, or quarters with a corner pieced on. "
        "Above a full circle none is wider than a half.", blank="by cloth")] = 0
# fmt: on

    @property
    def flare(self) -> Flare:
        """Half a circle is a flared skirt; the rest is turned up as a circle is."""
        return "circle" if self.fraction >= NARROW_FROM else "flared"


def draft(brief: Brief, skirt: Circle) -> Draft:
    """Sectors round the waist."""
    circle = cut(brief, skirt)
    gathered = circle.fraction > 1
    met = stations(brief, sections(brief, circle.flat_width) if gathered else 4)
    ring, pieces, seams = circle_panels(brief, circle, met)
    text = "None is wider than half a circle: there are {made:count} panels, not {asked:count}."
    held = drawn("skirt.panels", skirt.panels or None, circle.count, text)
    return hang(brief, Hung(ring, met, pieces, facts(brief, circle), seams, drawn=held))


def facts(brief: Brief, circle: Cut) -> tuple[Fact, ...]:
    """What matters about the cut: the radii, what the bias is given, how much too long a turned hem is."""
    sweep = circle.round(circle.hem)
    found = [
        Fact("radius", "Radius of the waist", circle.radius),
        Fact("cut_radius", "Radius of the waist as it is cut", circle.waist - brief.seams.allowance),
        Fact("bias_relief", "Cut smaller for the bias", circle.relief),
        Fact("hem_sweep", "Hem sweep", sweep),
        Fact("hem_excess", "Hem edge longer than the hem", circle.round(circle.hem + brief.hem) - sweep),
        Fact("panels", "Panels", circle.count, "count"),
    ]
    if circle.fraction <= 1:
        return tuple(found)
    flat = Fact("flat_width", "Flat width at the waist", circle.flat_width)
    return (flat, *gather_facts(brief, circle.flat_width, circle.seam), *found)


def cut(brief: Brief, skirt: Circle) -> Cut:
    """The radius, and the panels by hand or by cloth."""
    return cut_circle(brief, skirt.fraction, skirt.bias_relief, skirt.panels)


def girth(brief: Brief, skirt: Circle, depth: float) -> float:
    """2πf (r + depth), less what a slit takes."""
    circle = cut(brief, skirt)
    return circle.round(circle.radius + depth)


def widened(brief: Brief, skirt: Circle, girth: float) -> Edit | None:
    """The fraction that gives the hem a girth."""
    return _wider(brief, skirt, girth, brief.finished_length)


def cleared(brief: Brief, skirt: Circle, girth: float) -> Edit | None:
    """The fraction that gives the skirt a girth at the hips."""
    return _wider(brief, skirt, girth, brief.hip_depth)


def _wider(brief: Brief, skirt: Circle, girth: float, depth: float) -> Edit | None:
    """The fraction that gives a girth so deep below the waist, rounded up to a twentieth; none that would not fit the
    cloth.

    S + 2πf · depth up to a full circle, f (S + 2π · depth) beyond it.
    """
    seam, spread = brief.waist_seam, 2 * math.pi * depth
    exact = (girth - seam) / spread if girth <= seam + spread else girth / (seam + spread)
    fraction = max(raised(exact), 0.25)
    return _cut_from(brief, skirt, fraction)


def looser(brief: Brief, skirt: Circle, most: float) -> Edit | None:
    """The fraction that is gathered just so, rounded down to a twentieth: above a full circle it is the ratio."""
    return _cut_from(brief, skirt, max(1.0, lowered(loosest(most, brief.waist_seam, open_gap(brief)))))


def _cut_from(brief: Brief, skirt: Circle, fraction: float) -> Edit | None:
    """The edit to a fraction, in as many panels as the cloth wants; none that would not fit it."""
    for panels in dict.fromkeys((skirt.panels, 0)):
        if cut_circle(brief, fraction, skirt.bias_relief, panels).fits:
            return {"skirt.fraction": fraction} | ({"skirt.panels": 0} if panels != skirt.panels else {})
    return None


def making(brief: Brief, skirt: Circle, draft: Draft) -> tuple[Making, ...]:
    """A waist on the bias is stayed before it can stretch, and corners are pieced on before panels meet."""
    a, waist = brief.seams.allowance, Shown("skirt", ("waist",), near="top")
    says = [
        phrase("Before you lift the panels: stitch round the waist, {d} from the raw edge.", d=a - INSIDE),
        phrase("From the sides to the middle, so that it keeps its length."),
    ]
    if draft.fact("bias_relief"):
        text = "It is cut {r} higher than the circle; it stretches to its place as the band goes on."
        says.append(phrase(text, r=draft.fact("bias_relief")))
    steps = [Making("stay", "mark", tr("Stay the waist"), tuple(says), waist, ("needle",))]
    cornered = next((p for p in draft.pieces if p.id.endswith("-corner")), None)
    if cornered is not None:
        says = [
            phrase("Sew each corner to its panel, right sides together, {a} from the edge, notch to notch.", a=a),
            phrase("Press the seam open; from now on the two are one panel."),
        ]
        shown = Shown(cornered.id, ("piecing",))
        steps.append(Making("corners", "shape", tr("Piece the corners on"), tuple(says), shown, ("needle", "pins")))
    return tuple(steps)


INSIDE = 3.0
"""A stay stitch lies this far (mm) outside the seam line (common practice, no source)."""
ICON = "M7 3h6v2h-6z M7 5c-1 4-3 7.5-5.5 9.5c2.8 3.2 14.2 3.2 17 0c-2.5-2-4.5-5.5-5.5-9.5"

STYLE = Style(
    Circle, draft, girth, icon=ICON, widen=widened, clear=cleared, loosen=looser, making=making,
    uses=lambda skirt: ("gathers",) if skirt.fraction > 1 else (), parts="skirt.panels", takes=("skirt.fraction",),
)  # fmt: skip
