"""Rules about pleats."""

import math
from collections.abc import Iterator, Mapping
from typing import Any

from studio.draft.pleats import SHUT
from studio.styles import rack
from studio.words import phrase

from .finding import Finding, Worked, off_cloth, tried, within


def pleats_stay_shut_at_hip(w: Worked) -> Iterator[Finding]:
    """Pleats that are released from the waist stand open over hips that are larger: each fold opens by its share of
    the difference, and looks shut while that is no more than a quarter of its depth.

    The remedy is the depth that stays shut, if it is no deeper than full pleats; else the pleats are stitched down, so
    that they are laid to the hips.
    """
    style = rack.its_style(w.brief).pleats
    if style is None or w.brief.body.hip is None or not w.draft.has("fold_opens"):
        return
    opens, depth = w.draft.fact("fold_opens"), w.draft.fact("pleat_depth")
    if opens <= SHUT * depth + 1e-6:
        return
    need = math.ceil(opens / SHUT - 1e-6) * 1.0
    says = phrase(
        "Hips and ease of {h} open each fold by {o}; released from the waist, only folds of {n} stay shut.",
        h=w.draft.fact("hip_girth"), o=opens, n=need,
    )  # fmt: skip
    deeper, down = style.deep(w.brief, w.brief.skirt, need), style.down(w.brief, w.brief.skirt)
    path, where = next(iter(deeper)), next(iter(down))
    edit, does = (down, phrase("Stitch the pleats down")) if _lies(w, down) else (None, None)
    if need <= w.draft.fact("full_depth") and within(w, path, need) and _lies(w, deeper):
        where, edit, does = path, deeper, phrase("Fold depth {d}", d=need)
    yield Finding("pleats-stay-shut-at-hip", "doubt", says, where, "skirt", edit, does)


def pleats_overlap(w: Worked) -> Iterator[Finding]:
    """Folds deeper than the face that covers them, or than half of it where they come from both sides, lie over each
    other; the more of them, the thicker the waist. The remedy is the depth of full pleats.
    """
    style = rack.its_style(w.brief).pleats
    if style is None:
        return
    depth, full = w.draft.fact("pleat_depth"), w.draft.fact("full_depth")
    if depth <= full + 1e-6:
        return
    says = phrase(
        "Folds of {d} under faces of {s} lie over each other: {n:count} layers at the waist.",
        d=depth, s=w.draft.fact("face"), n=round(w.draft.fact("layers")),
    )  # fmt: skip
    remedy = style.deep(w.brief, w.brief.skirt, None)
    fits = _lies(w, remedy)
    yield Finding(
        "pleats-overlap", "note", says, next(iter(remedy)), "skirt", remedy if fits else None,
        phrase("Full pleats, fold depth {d}", d=full) if fits else None,
    )  # fmt: skip


def pleats_take_cloth(w: Worked) -> Iterator[Finding]:
    """Cloth that is given for pleats is more than what they are laid to, or there is none to fold. The remedy is the
    cloth of full pleats, three times the girth.
    """
    style = rack.its_style(w.brief).pleats
    path = style.given(w.brief.skirt) if style else ""
    if style is None or not path:
        return
    given, drafted = rack.value(w.brief, path), w.draft.fact("flat_width")
    if given >= drafted - 1e-6:
        return
    laid_to = drafted - w.draft.fact("take_up")
    says = phrase("Cloth of {c} leaves no folds round {g}; the pleats are drafted from {t}.",
                  c=given, g=laid_to, t=drafted)  # fmt: skip
    full = math.ceil(3 * laid_to / 10 - 1e-6) * 10.0
    remedy = style.taking(full)
    fits = within(w, path, full) and _lies(w, remedy)
    yield Finding(
        "pleats-take-cloth", "doubt", says, path, "skirt", remedy if fits else None,
        phrase("Cloth {c}", c=full) if fits else None,
    )  # fmt: skip


def _lies(w: Worked, edit: Mapping[str, Any]) -> bool:
    """Whether an edit leaves the skirt no worse off its cloth than it was."""
    return off_cloth(tried(w, edit)) <= off_cloth(w)
