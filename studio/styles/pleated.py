"""The pleated skirt: straight panels laid in folds.  T = V + 2nd, V the girth at the hips or, released, the waist."""

# fmt: off
import math
from collections.abc import Iterator
from typing import Annotated, Literal

from msgspec.structs import replace

from studio.brief import OVER_HIPS, Brief, Skirt
from studio.brief.declare import When, mm, one_of, whole, yes_no
from studio.draft import Draft, Drawn, Fact, drawn
from studio.draft.hang import Hung, hang
from studio.draft.marks import stations
from studio.draft.pleat_making import pleat_making
from studio.draft.pleat_panel import Laid, pleated_panels
from studio.draft.pleats import (
    MOST_PLEATS,
    Pleats,
    count_from,
    depth_from,
    fewest_panels,
    folds,
    from_repeat,
    full_depth,
    opens,
    whole_pleats,
)
from studio.draft.straight_panel import MOST, cloth_room

from .style import Edit, Pleating, Style

NUMBERED: When = (("skirt.pleats_by", ("number and depth", "number and cloth")),)
DEEP: When = (("skirt.pleats_by", ("number and depth", "depth and cloth")),)
CLOTH: When = (("skirt.pleats_by", ("number and cloth", "depth and cloth")),)
PRINT: When = (("skirt.pleats_by", ("repeat",)),)
STITCHED: When = (("skirt.stitched_down", ("True",)),)
ABOVE_HIP = 20.0
"""Pleats are stitched down to so far above the hip line (mm), where the seat begins to need them (common practice, no
source)."""


class Pleated(Skirt, frozen=True, tag="pleated"):
    """Straight panels laid in pleats: two of their number, their depth and the cloth are chosen, or the print does."""

    pleat_kind: Annotated[Literal["knife to the left", "knife to the right", "box", "inverted"], one_of(
        "Pleats", "As seen from outside. Knife: all one way. Box: folds turned apart. Inverted: folds turned towards "
        "each other until they meet.")] = "knife to the right"
    pleats_by: Annotated[Literal["number and depth", "number and cloth", "depth and cloth", "repeat"], one_of(
        "Chosen by", "Fix two of number, depth and cloth, and the third follows; or let the print’s repeat choose."
    )] = "number and depth"
    pleats: Annotated[int, whole(
        "Number of pleats", 1, MOST_PLEATS, "Round the whole skirt.", when=NUMBERED)] = 20
    pleat_depth: Annotated[float, mm(
        "Fold depth", 3, 300, "Of one fold, from its edge to the hidden fold; empty for full pleats, three times the "
        "cloth, or as deep as the cloth you give.", usual=50, blank="full", when=DEEP)] | None = None
    flat: Annotated[float, mm(
        "Cloth for the pleats", 500, 30000, "Whole flat width between seam lines.", step=10, when=CLOTH)] = 2500.0
    repeats: Annotated[int, whole("Repeats", 1, 12, "So many repeats of the cloth’s print …", when=PRINT)] = 1
    repeat_pleats: Annotated[int, whole("For pleats", 1, 12, "… make so many pleats.", when=PRINT)] = 1
    stitched_down: Annotated[bool, yes_no(
        "Stitched down", "From the waist towards the hips, so that the pleats lie flat there.")] = True
    stitch_depth: Annotated[float, mm(
        "Stitched to", 20, 400, "Down from the waist seam; empty for just above the hips.", step=5, usual=180,
        blank="the hips", when=STITCHED)] | None = None
    hip_ease: Annotated[float, mm("Hip ease", 0, 200, "Room at the hips, pleats closed.", step=5)] = 40.0
    cut: Annotated[Literal["along", "across"], one_of(
        "Cut", "Along: the waist edge lies along the selvedge, as a border print wants. Across: widths are joined."
    )] = "along"
    panels: Annotated[int, whole(
        "Panels", 0, MOST, "How many widths are joined, each of whole pleats; by cloth: as few as it allows.",
        blank="by cloth")] = 0
# fmt: on


REPEAT = 150.0
"""Taken for the print's repeat (mm) while the cloth does not say."""


def draft(brief: Brief, skirt: Pleated) -> Draft:
    """Panels laid in pleats, joined on their hidden folds."""
    laid = panels(brief, skirt)
    met = stations(brief)
    ring, pieces = pleated_panels(brief, laid, met)
    return hang(brief, Hung(ring, met, pieces, facts(brief, skirt, laid), drawn=tuple(kept(brief, skirt, laid))))


def pleats(brief: Brief, skirt: Pleated) -> Pleats:
    """Number and depth from what the maker has fixed."""
    kind, waist, hip = skirt.pleat_kind, brief.waist_seam, laid_to(brief, skirt)
    count = skirt.pleats
    match skirt.pleats_by:
        case "repeat":
            multiple = skirt.repeat_pleats // math.gcd(skirt.repeats, skirt.repeat_pleats)
            unit = (brief.cloth.repeat or REPEAT) * skirt.repeats / skirt.repeat_pleats
            count, depth = from_repeat(unit, hip, kind, multiple)
        case "number and depth":
            depth = full_depth(hip, count, kind) if skirt.pleat_depth is None else skirt.pleat_depth
        case _:
            if skirt.pleats_by == "depth and cloth" and skirt.pleat_depth is not None:
                count = count_from(skirt.flat, hip, skirt.pleat_depth, kind)
            depth = depth_from(skirt.flat, hip, count, kind)
    return Pleats(kind, count, depth, waist, hip, brief.hip_depth if hip > waist else 0.0)


def hip_girth(brief: Brief, skirt: Pleated) -> float:
    """What the closed pleats must measure at the hips, mm; never less than the waist seam, and a wrap's overlap over
    it.
    """
    return max(brief.hips + skirt.hip_ease + brief.over, brief.waist_seam)


def laid_to(brief: Brief, skirt: Pleated) -> float:
    """The girth that pleats are laid to from the hip line down, mm: the hips where they are stitched down, else the
    waist.
    """
    return hip_girth(brief, skirt) if skirt.stitched_down else brief.waist_seam


def stitched(brief: Brief, skirt: Pleated) -> float:
    """How far down the pleats are stitched, mm; 0 where they are released."""
    if not skirt.stitched_down:
        return 0.0
    end = max(20.0, brief.hip_depth - ABOVE_HIP) if skirt.stitch_depth is None else skirt.stitch_depth
    return min(end, brief.finished_length)


def panels(brief: Brief, skirt: Pleated) -> Laid:
    """How the pleats are cut: in as many panels as were set, or as few as the cloth allows, each of whole pleats."""
    found, end = pleats(brief, skirt), stitched(brief, skirt)
    room, a = cloth_room(brief, skirt.cut), brief.seams.allowance
    count = min(skirt.panels, found.count) or fewest_panels(found, room, a, MOST)
    by = skirt.pleats_by
    cloth = {"number and depth": "skirt.pleats", "repeat": "skirt.repeat"}.get(by, "skirt.flat")
    return Laid(
        found, end, skirt.cut, count,
        face_path="skirt.pleats" if by.startswith("number") else cloth,
        depth_path="skirt.pleat_depth" if by == "number and depth" else cloth,
        cloth_path=cloth, drags=by == "number and depth",
        stitch_drags=skirt.stitched_down and end < brief.finished_length - 5,
    )  # fmt: skip


def kept(brief: Brief, skirt: Pleated, laid: Laid) -> Iterator[Drawn]:
    """The numbers that the pleats could not take as they were asked."""
    text = "The waist seam gives the hips {made} of ease, more than the {asked} asked."
    yield from drawn("skirt.hip_ease", skirt.hip_ease, hip_girth(brief, skirt) - brief.hips - brief.over, text)
    if skirt.stitched_down:
        text = "The pleats asked are stitched down to {asked}; the skirt ends at {made}."
        yield from drawn("skirt.stitch_depth", skirt.stitch_depth, laid.stitched, text)
    text = "The panels asked are {asked:count}; each takes a whole pleat, and there are {made:count}."
    yield from drawn("skirt.panels", skirt.panels or None, laid.panels, text)
    if skirt.pleats_by == "repeat":
        once = (brief.cloth.repeat or REPEAT) / skirt.repeat_pleats
        text = "Repeats so small make more pleats than can be laid; each group takes {made:count}, not {asked:count}."
        yield from drawn("skirt.repeats", skirt.repeats, laid.pleats.unit / once, text)
    if skirt.pleats_by == "depth and cloth" and laid.pleats.count in (1, MOST_PLEATS):
        text = "So much cloth in {n:count} pleats makes folds of {made}, not the {asked} asked."
        yield from drawn("skirt.pleat_depth", skirt.pleat_depth, laid.pleats.depth, text, n=laid.pleats.count)


def facts(brief: Brief, skirt: Pleated, laid: Laid) -> tuple[Fact, ...]:
    """What matters about pleats; depth, face and take-up are those from the hip line down, unless the waist is said."""
    p = laid.pleats
    wanted = full_depth(p.hip, p.count, p.kind) if skirt.pleat_depth is None else skirt.pleat_depth
    changed = (
        (Fact("depth_change", "Fold deeper by, so that it comes out", p.depth - wanted),)
        if skirt.pleats_by == "repeat" or (skirt.pleats_by == "depth and cloth" and skirt.pleat_depth is not None)
        else ()
    )
    opened = () if skirt.stitched_down else (Fact("fold_opens", "Each fold opens", opens(p, hip_girth(brief, skirt))),)
    return (
        Fact("flat_width", "Flat width", p.flat_width),
        Fact("hem_sweep", "Hem sweep", p.flat_width),
        Fact("panels", "Panels", laid.panels, "count"),
        Fact("pleats", "Pleats", p.count, "count"),
        Fact("pleat_ratio", "Cloth to waist seam", p.flat_width / p.waist, "ratio"),
        Fact("pleat_unit", "Pleat with its face", p.unit),
        Fact("pleat_depth", "Fold depth", p.depth),
        Fact("full_depth", "Fold depth of full pleats", p.full),
        Fact("waist_depth", "Fold depth at the waist", p.fold(0)),
        Fact("face", "Pleat face", p.face(p.bend)),
        Fact("waist_face", "Pleat face at the waist", p.face(0)),
        Fact("take_up", "Taken up by pleats", p.flat_width - p.hip),
        Fact("waist_take_up", "Taken up at the waist", p.flat_width - p.waist),
        Fact("layers", "Layers at the waist", p.layers, "count"),
        Fact("hip_girth", "Hips with ease", hip_girth(brief, skirt)),
        Fact("stitched_to", "Stitched down to", laid.stitched),
        *changed,
        *opened,
    )


def girth(brief: Brief, skirt: Pleated, depth: float) -> float:
    """All the cloth, where pleats can open; where they are stitched, what they are laid to."""
    found = pleats(brief, skirt)
    return found.laid(depth) if depth < stitched(brief, skirt) - 1e-9 else found.flat_width


def widened(brief: Brief, skirt: Pleated, girth: float) -> Edit | None:
    """More cloth where the maker chooses it, else the depth of fold that gives a girth, to the millimetre up."""
    if given(skirt):
        return _sound(brief, skirt, taking(math.ceil(girth / 10 - 1e-9) * 10.0))
    found = pleats(brief, skirt)
    depth = math.ceil((girth - found.hip) / (2 * found.count * folds(found.kind)) - 1e-9) * 1.0
    return _sound(brief, skirt, deep(brief, skirt, max(depth, 3.0)))


def given(skirt: Pleated) -> str:
    """The path of the cloth that is given for the pleats; empty where it follows from the rest."""
    return "skirt.flat" if skirt.pleats_by.endswith("cloth") else ""


def taking(cloth: float) -> Edit:
    """So much cloth for the pleats, mm."""
    return {"skirt.flat": cloth, "skirt.panels": 0}


def deep(brief: Brief, skirt: Pleated, depth: float | None) -> Edit:
    """As many pleats as there are, each fold so deep; None for full pleats."""
    count = pleats(brief, skirt).count
    return {
        "skirt.pleat_depth": depth, "skirt.pleats_by": "number and depth", "skirt.pleats": count, "skirt.panels": 0,
    }  # fmt: skip


def down(_brief: Brief, skirt: Pleated) -> Edit:
    """Pleats stitched down, with ease for hips to pass the opening."""
    ease = {"skirt.hip_ease": OVER_HIPS} if skirt.hip_ease < OVER_HIPS else {}
    return {"skirt.stitched_down": True, "skirt.panels": 0, **ease}


def cleared(brief: Brief, skirt: Pleated, girth: float) -> Edit | None:
    """The ease that gives stitched pleats a girth at the hips; where they can open there, more cloth."""
    if brief.hip_depth >= stitched(brief, skirt) - 1e-9:
        return widened(brief, skirt, girth)
    ease = math.ceil((girth - brief.hips) / 5 - 1e-9) * 5.0
    return _sound(brief, skirt, {"skirt.hip_ease": ease, "skirt.panels": 0})


def _sound(brief: Brief, skirt: Pleated, edit: Edit) -> Edit | None:
    """The edit, unless it makes panels too wide for the cloth that were not so before."""
    after = replace(skirt, **{path.removeprefix("skirt."): value for path, value in edit.items()})
    return edit if _lies(brief, after) or not _lies(brief, skirt) else None


def _lies(brief: Brief, skirt: Pleated) -> bool:
    """Whether the widest panel fits the cloth."""
    laid = panels(brief, skirt)
    widest = max(whole_pleats(laid.pleats.count, laid.panels)) * laid.pleats.unit
    return widest + 2 * brief.seams.allowance <= cloth_room(brief, skirt.cut) + 1e-6


ICON = "M6.5 3h7v2h-7z M6.5 5l-3 12h13l-3-12 M8.2 5l-1.2 12 M10 5v12 M11.8 5l1.2 12"

STYLE = Style(
    Pleated,
    draft,
    girth,
    icon=ICON,
    widen=widened,
    clear=cleared,
    making=lambda brief, _, draft: pleat_making(brief, draft),
    parts="skirt.panels",
    lies="skirt.cut",
    takes=("skirt.pleats",),
    pleats=Pleating(lambda skirt: skirt.pleat_kind, deep, down, given, taking),
)
