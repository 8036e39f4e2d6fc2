"""Rules about pleats."""

import math
from collections.abc import Iterator, Mapping
from typing import Any

from studio.draft.pleats import SHUT
from studio.styles import rack
from studio.words import phrase

from .finding import Finding, Worked, off_cloth, tried, within
from .opening import OVER_HIPS


def pleats_stay_shut_at_hip(w: Worked) -> Iterator[Finding]:
    """Pleats that are released from the waist stand open over hips that are larger: each fold opens by its share of
    the difference, and looks shut while that is no more than a quarter of its depth.

    The remedy is the depth that stays shut, if it is no deeper than full pleats; else the pleats are stitched down, so
    that they are laid to the hips.
    """
    if w.brief.body.hip is None or not w.draft.has("fold_opens"):
        return
    opens, depth = w.draft.fact("fold_opens"), w.draft.fact("pleat_depth")
    if opens <= SHUT * depth + 1e-6:
        return
    need = math.ceil(opens / SHUT - 1e-6) * 1.0
    says = phrase(
        "Hips and ease of {h} open each fold by {o}; released from the waist, only folds of {n} stay shut.",
        h=w.draft.fact("hip_girth"), o=opens, n=need,
    )  # fmt: skip
    deeper = _by_depth(w, need)
    if need <= w.draft.fact("full_depth") and within(w, "skirt.pleat_depth", need) and _lies(w, deeper):
        yield Finding(
            "pleats-stay-shut-at-hip",
            "doubt",
            says,
            "skirt.pleat_depth",
            "skirt",
            deeper,
            phrase("Fold depth {d}", d=need),
        )
        return
    down: dict[str, Any] = {"skirt.stitched_down": True, "skirt.panels": 0}
    if rack.value(w.brief, "skirt.hip_ease") < OVER_HIPS:
        down["skirt.hip_ease"] = OVER_HIPS
    if _lies(w, down):
        yield Finding(
            "pleats-stay-shut-at-hip",
            "doubt",
            says,
            "skirt.stitched_down",
            "skirt",
            down,
            phrase("Stitch the pleats down"),
        )
        return
    yield Finding("pleats-stay-shut-at-hip", "doubt", says, "skirt.stitched_down", "skirt")


def pleats_overlap(w: Worked) -> Iterator[Finding]:
    """Folds deeper than the face that covers them, or than half of it where they come from both sides, lie over each
    other; the more of them, the thicker the waist. The remedy is the depth of full pleats.
    """
    if not w.draft.has("full_depth"):
        return
    depth, full = w.draft.fact("pleat_depth"), w.draft.fact("full_depth")
    if depth <= full + 1e-6:
        return
    says = phrase(
        "Folds of {d} under faces of {s} lie over each other: {n:count} layers at the waist.",
        d=depth, s=w.draft.fact("face"), n=round(w.draft.fact("layers")),
    )  # fmt: skip
    remedy = _by_depth(w, None)
    fits = _lies(w, remedy)
    yield Finding(
        "pleats-overlap", "note", says, "skirt.pleat_depth", "skirt", remedy if fits else None,
        phrase("Full pleats, fold depth {d}", d=full) if fits else None,
    )  # fmt: skip


def pleats_take_cloth(w: Worked) -> Iterator[Finding]:
    """Cloth that is given for pleats is more than what they are laid to, or there is none to fold. The remedy is the
    cloth of full pleats, three times the girth.
    """
    if not w.draft.has("full_depth") or not str(rack.value(w.brief, "skirt.pleats_by")).endswith("cloth"):
        return
    given, drafted = rack.value(w.brief, "skirt.flat"), w.draft.fact("flat_width")
    if given >= drafted - 1e-6:
        return
    laid_to = drafted - w.draft.fact("take_up")
    says = phrase("Cloth of {c} leaves no folds round {g}; the pleats are drafted from {t}.",
                  c=given, g=laid_to, t=drafted)  # fmt: skip
    full = math.ceil(3 * laid_to / 10 - 1e-6) * 10.0
    remedy = {"skirt.flat": full, "skirt.panels": 0}
    fits = within(w, "skirt.flat", full) and _lies(w, remedy)
    yield Finding(
        "pleats-take-cloth", "doubt", says, "skirt.flat", "skirt", remedy if fits else None,
        phrase("Cloth {c}", c=full) if fits else None,
    )  # fmt: skip


def _by_depth(w: Worked, depth: float | None) -> dict[str, Any]:
    """As many pleats as there are, each fold so deep; None for full pleats."""
    pleats = round(w.draft.fact("pleats"))
    return {
        "skirt.pleat_depth": depth, "skirt.pleats_by": "number and depth", "skirt.pleats": pleats, "skirt.panels": 0,
    }  # fmt: skip


def _lies(w: Worked, edit: Mapping[str, Any]) -> bool:
    """Whether an edit leaves the skirt no worse off its cloth than it was."""
    return off_cloth(tried(w, edit)) <= off_cloth(w)
