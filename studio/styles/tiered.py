"""The tiered skirt: straight panels one below the other, each gathered to the one above.  T(k) = B · r1 · r2 … rk"""

# fmt: off
import math
from itertools import accumulate
from typing import Annotated, Literal

from msgspec.structs import replace

from studio.brief import Brief, Skirt
from studio.brief.declare import When, mm, one_of, times, whole
from studio.draft import Draft, Drawn, Fact, drawn
from studio.draft.gathers import TWENTIETHS, gather_facts, loosest, lowered, open_gap, raised
from studio.draft.hang import Hung, hang
from studio.draft.match import matched, matches_along
from studio.draft.straight_panel import MOST, Panels, cloth_room, panel_count
from studio.draft.tiers import growing_depths, spin_ratios, tier_at, tier_facts, tier_widths, tiers, typed_depths
from studio.words import phrase

from .style import Edit, Style

COUNTS = ("2", "3", "4", "5", "6")


def typed(field: str, k: int) -> When:
    """When the k-th number of a field that has one for each tier applies: there are so many, and they are typed."""
    return ((f"skirt.{field}", ("typed",)), ("skirt.tiers", COUNTS[max(0, k - 2):]))


class Tiered(Skirt, frozen=True, tag="tiered"):
    """Rings of straight panels, each gathered to the one above; the first to the band."""

    tiers: Annotated[int, whole("Tiers", 2, 6, "One below the other, each gathered to the one above.")] = 3
    depths: Annotated[Literal["equal", "growing", "typed"], one_of(
        "Depths", "Equal, growing towards the hem, or typed. The last tier takes what the others leave.")] = "equal"
    growth: Annotated[float, times(
        "Growth", 1, 2, "Each tier so many times as deep as the one above.",
        when=(("skirt.depths", ("growing",)),))] = 1.2
    depth_1: Annotated[float, mm(
        "Tier 1 depth", 20, 1000, "From the waist seam to the first join; empty for an equal share of what is left.",
        step=5, usual=200, blank="shares the rest", when=typed("depths", 2))] | None = None
    depth_2: Annotated[float, mm(
        "Tier 2 depth", 20, 1000, "From the first join to the second; empty for an equal share of what is left.",
        step=5, usual=200, blank="shares the rest", when=typed("depths", 3))] | None = None
    depth_3: Annotated[float, mm(
        "Tier 3 depth", 20, 1000, "From the second join to the third; empty for an equal share of what is left.",
        step=5, usual=200, blank="shares the rest", when=typed("depths", 4))] | None = None
    depth_4: Annotated[float, mm(
        "Tier 4 depth", 20, 1000, "From the third join to the fourth; empty for an equal share of what is left.",
        step=5, usual=200, blank="shares the rest", when=typed("depths", 5))] | None = None
    depth_5: Annotated[float, mm(
        "Tier 5 depth", 20, 1000, "From the fourth join to the last; empty for an equal share of what is left.",
        step=5, usual=200, blank="shares the rest", when=typed("depths", 6))] | None = None
    ratios: Annotated[Literal["same", "typed", "full spin"], one_of(
        "Ratios", "The same at every join, typed for each, or as wide as lets the skirt fly out flat in a spin."
    )] = "same"
    ratio: Annotated[float, times(
        "Ratio", 1, 3, "Flat width of each tier, so many times the seam it is gathered to: 1.5 suits heavier cloth, "
        "2 light cloth.",
        when=(("skirt.ratios", ("same",)),))] = 1.5
    ratio_1: Annotated[float, times(
        "Tier 1 ratio", 1, 3, "Its flat width, so many times the waist seam.", when=typed("ratios", 1))] = 1.5
    ratio_2: Annotated[float, times(
        "Tier 2 ratio", 1, 3, "Its flat width, so many times the first tier’s.", when=typed("ratios", 2))] = 1.5
    ratio_3: Annotated[float, times(
        "Tier 3 ratio", 1, 3, "Its flat width, so many times the second tier’s.", when=typed("ratios", 3))] = 1.5
    ratio_4: Annotated[float, times(
        "Tier 4 ratio", 1, 3, "Its flat width, so many times the third tier’s.", when=typed("ratios", 4))] = 1.5
    ratio_5: Annotated[float, times(
        "Tier 5 ratio", 1, 3, "Its flat width, so many times the fourth tier’s.", when=typed("ratios", 5))] = 1.5
    ratio_6: Annotated[float, times(
        "Tier 6 ratio", 1, 3, "Its flat width, so many times the fifth tier’s.", when=typed("ratios", 6))] = 1.5
    cut: Annotated[Literal["along", "across"], one_of(
        "Cut", "Along: the tiers lie along the selvedge, as a border print wants. Across: widths are joined, as few "
        "as the cloth allows.")] = "across"
# fmt: on


def draft(brief: Brief, skirt: Tiered) -> Draft:
    """The tiers, from the band down."""
    laid = panels(brief, skirt)
    hung = tiers(brief, laid)
    first, last = laid[0], laid[-1]
    spin = brief.waist_seam + 2 * math.pi * brief.finished_length
    facts = (
        Fact("flat_width", "Flat width at the hem", last.flat_width),
        *gather_facts(brief, first.flat_width, first.sewn),
        *tier_facts(brief, laid),
        Fact("hem_sweep", "Hem sweep", last.flat_width),
        Fact("full_spin", "Hem for a full spin", spin),
        Fact("panels", "Panels", sum(one.count for one in laid), "count"),
    )
    return hang(brief, Hung(hung.ring, hung.stations, hung.pieces, facts, hung.seams, drawn=kept(brief, skirt)))


def depths(brief: Brief, skirt: Tiered) -> tuple[float, ...]:
    """How deep each tier is, from seam to seam, mm; together the finished length."""
    if skirt.depths == "typed":
        return typed_depths(brief.finished_length, _typed_depths(skirt))
    return growing_depths(brief.finished_length, skirt.tiers, skirt.growth if skirt.depths == "growing" else 1.0)


def kept(brief: Brief, skirt: Tiered) -> tuple[Drawn, ...]:
    """The tiers that could not be as deep as they were typed; they may share, with those below, what is left."""
    if skirt.depths != "typed":
        return ()
    text = "Tier {k:count} cannot be {asked} deep: a length of {l} leaves it {made}."
    paths = [f"skirt.depth_{k}" for k in range(1, skirt.tiers)]
    share, length = phrase("Share what is left"), brief.finished_length
    found = enumerate(zip(paths, _typed_depths(skirt), depths(brief, skirt), strict=False))
    return tuple(
        one
        for k, (path, typed, deep) in found
        for one in drawn(path, typed, deep, text, k=k + 1, l=length, instead=dict.fromkeys(paths[k:]), does=share)
    )


def widths(brief: Brief, skirt: Tiered) -> tuple[float, ...]:
    """Flat width of each tier between its seam lines, mm; of whole repeats where the print is matched."""
    return tuple(
        matched(brief, skirt.cut, wide, _count(brief, skirt, wide), cloth_room(brief, skirt.cut))
        for wide in tier_widths(brief.waist_seam, _ratios(brief, skirt))
    )


def _count(brief: Brief, skirt: Tiered, wide: float) -> int:
    """How many panels a tier so wide takes."""
    return min(MOST, panel_count(wide, cloth_room(brief, skirt.cut), brief.seams.allowance))


def panels(brief: Brief, skirt: Tiered) -> tuple[Panels, ...]:
    """The panels of each tier: as few as the cloth allows."""
    wide, deep = widths(brief, skirt), depths(brief, skirt)
    found = []
    for k, (flat, sewn) in enumerate(zip(wide, (brief.waist_seam, *wide), strict=False)):
        count = _count(brief, skirt, flat)
        dragged = skirt.ratios == "typed" or (skirt.ratios == "same" and k == 0)
        dragged = dragged and not matches_along(brief, skirt.cut)
        path, depth_gain = _depth_drag(skirt, k, deep)
        words = phrase("{d:bare}", d=deep[k])
        if path == "skirt.length":
            words = phrase("{d:bare} of {l:bare}", d=deep[k], l=brief.finished_length)
        found.append(Panels(
            count, flat, sewn, deep[k], skirt.cut, _ratio_path(skirt, k), 1 / sewn if dragged else 0.0,
            path, depth_gain, words,
        ))  # fmt: skip
    return tuple(found)


def _ratios(brief: Brief, skirt: Tiered) -> tuple[float, ...]:
    """Cloth to seam at each join, the band's first."""
    if skirt.ratios == "full spin":
        return spin_ratios(brief.waist_seam, depths(brief, skirt))
    if skirt.ratios == "same":
        return (skirt.ratio,) * skirt.tiers
    every = (skirt.ratio_1, skirt.ratio_2, skirt.ratio_3, skirt.ratio_4, skirt.ratio_5, skirt.ratio_6)
    return every[: skirt.tiers]


def _ratio_path(skirt: Tiered, k: int) -> str:
    return {"same": "skirt.ratio", "typed": f"skirt.ratio_{k + 1}"}.get(skirt.ratios, "skirt.ratios")


def _typed_depths(skirt: Tiered) -> tuple[float | None, ...]:
    """What was typed for each tier; the last takes the rest."""
    every = (skirt.depth_1, skirt.depth_2, skirt.depth_3, skirt.depth_4, skirt.depth_5)
    return (*every[: skirt.tiers - 1], None)


def _depth_drag(skirt: Tiered, k: int, deep: tuple[float, ...]) -> tuple[str, float]:
    """The path that governs how deep the k-th tier is, and what a millimetre more adds to it; 0 where its foot may not
    be dragged. A longer skirt grows by less than that at its last tier, where the others grow too.
    """
    last = k == skirt.tiers - 1
    if skirt.depths != "typed":
        path = "skirt.length" if last or skirt.depths == "equal" else "skirt.growth"
        return path, sum(deep) / deep[k] if last else 0.0
    every = _typed_depths(skirt)
    if last:
        kept = all(depth in (None, drawn) for depth, drawn in zip(every, deep, strict=True))
        return "skirt.length", float(every.count(None)) if kept else 0.0
    return f"skirt.depth_{k + 1}", 1.0 if every[k] == deep[k] else 0.0


def girth(brief: Brief, skirt: Tiered, depth: float) -> float:
    """The flat width of the tier that lies so deep."""
    return widths(brief, skirt)[tier_at(depths(brief, skirt), depth)]


def widened(brief: Brief, skirt: Tiered, girth: float) -> Edit | None:
    """The ratio that gives the last tier a girth: of every join, or where they are typed of the last."""
    return _wider(brief, skirt, girth, skirt.tiers - 1, skirt.tiers - 1)


def cleared(brief: Brief, skirt: Tiered, girth: float) -> Edit | None:
    """The ratio that gives a girth to the tier at the hips: of every join, or where they are typed of the first."""
    return _wider(brief, skirt, girth, tier_at(depths(brief, skirt), brief.hip_depth), 0)


def _wider(brief: Brief, skirt: Tiered, girth: float, tier: int, join: int) -> Edit | None:
    """The edit that gives a tier a girth (mm), the ratio rounded up to a twentieth; none that the cloth is too narrow
    for.
    """
    seam = brief.waist_seam
    if skirt.ratios == "typed":
        others = math.prod(_ratios(brief, skirt)[: tier + 1]) / _ratios(brief, skirt)[join]
        edit: Edit = {f"skirt.ratio_{join + 1}": raised(girth / seam / others)}
    else:
        more = {"skirt.ratios": "same"} if skirt.ratios != "same" else {}
        edit = {"skirt.ratio": raised((girth / seam) ** (1 / (tier + 1))), **more}
    after = replace(skirt, **{path.removeprefix("skirt."): value for path, value in edit.items()})
    room, a = cloth_room(brief, skirt.cut), brief.seams.allowance
    return edit if all(panel_count(wide, room, a) <= MOST for wide in widths(brief, after)) else None


def looser(brief: Brief, skirt: Tiered, most: float) -> Edit:
    """The ratio that is gathered just so at every join, or where they are typed each that is gathered more; rounded
    down to a twentieth.
    """
    tops = list(accumulate(depths(brief, skirt), initial=0.0))
    if skirt.ratios != "typed":
        ratio = lowered(most)
        while ratio > 1 and any(
            ratio > loosest(most, brief.waist_seam * ratio**k, open_gap(brief, tops[k])) + 1e-9
            for k in range(skirt.tiers)
        ):  # fmt: skip
            ratio = lowered(ratio - 1 / TWENTIETHS)
        return {"skirt.ratio": ratio} | ({} if skirt.ratios == "same" else {"skirt.ratios": "same"})
    edit, seam = {}, brief.waist_seam
    for k, ratio in enumerate(_ratios(brief, skirt)):
        held = max(1.0, lowered(loosest(most, seam, open_gap(brief, tops[k]))))
        if ratio > held:
            edit[f"skirt.ratio_{k + 1}"] = held
        seam *= min(ratio, held)
    return edit


ICON = "M6.5 3h7v2h-7z M6.5 5l-1 3.5h9l-1-3.5 M5.5 8.5l-1.3 4h11.6l-1.3-4 M4.2 12.5l-1.7 4.5h15l-1.7-4.5"

STYLE = Style(
    Tiered, draft, girth, icon=ICON, widen=widened, clear=cleared, loosen=looser, uses=lambda _: ("gathers",),
    lies="skirt.cut", takes=("skirt.ratio", "skirt.tiers"),
)  # fmt: skip
