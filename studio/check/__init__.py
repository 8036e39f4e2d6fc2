"""Rules: each looks at what was made up and says what is wrong, where, and the edit that mends it."""

from msgspec.structs import replace

from studio.styles import rack

from .as_typed import as_typed
from .band import band_needs_shape, binding_on_bias, closed_girth_holds, interfacing_fits
from .body import hip_smaller_than_waist, measurement_unusual
from .border import border_on_cloth, border_runs_along, motif_inside_face
from .buttons import button_fits_band, hole_inside_extension
from .circle import hem_too_deep_for_curve, level_after_hanging
from .cloth import cloth_on_hand_suffices, pieces_fit_cloth
from .finding import WEIGHTS, Finding, Rule, Weight, Worked, rule_name
from .gathers import gathers_too_bulky
from .held import held_on_cloth
from .lining import lining_can_hang, lining_fits_cloth, lining_leaves_length, lining_lets_step
from .match import print_matches_at_seam
from .opening import allowance_holds_zip, opening_passes_hips, stop_above_hem, zip_long_enough
from .pleats import pleats_overlap, pleats_stay_shut_at_hip, pleats_take_cloth
from .pockets import patch_fits, pocket_at_side_seam, pocket_clear_of_opening
from .sewable import can_be_sewn
from .skirt import (
    first_turn_inside_hem,
    length_leaves_a_skirt,
    notches_meet,
    seams_walk,
    stride,
)
from .zip_end import zip_above_hem

RULES: tuple[Rule, ...] = (
    can_be_sewn, opening_passes_hips, stop_above_hem, zip_above_hem, zip_long_enough, allowance_holds_zip,
    closed_girth_holds, hole_inside_extension, button_fits_band, band_needs_shape, binding_on_bias, interfacing_fits,
    seams_walk, notches_meet, length_leaves_a_skirt, gathers_too_bulky, first_turn_inside_hem, stride,
    hem_too_deep_for_curve, level_after_hanging,
    lining_can_hang, lining_leaves_length, lining_lets_step, lining_fits_cloth,
    pocket_at_side_seam, pocket_clear_of_opening, patch_fits,
    as_typed,
    pleats_stay_shut_at_hip, pleats_overlap, pleats_take_cloth,
    border_runs_along, border_on_cloth, motif_inside_face, print_matches_at_seam, held_on_cloth,
    pieces_fit_cloth, cloth_on_hand_suffices,
    hip_smaller_than_waist, measurement_unusual,
)  # fmt: skip
"""Every rule, in the order a maker would ask."""


def findings(worked: Worked) -> tuple[Finding, ...]:
    """What all rules find, heaviest first."""
    found = [_on_a_piece(worked, _in_sight(worked, f)) for rule in RULES for f in rule(worked)]
    return tuple(sorted(found, key=lambda f: WEIGHTS.index(f.weight)))


def _in_sight(worked: Worked, finding: Finding) -> Finding:
    """What is said of a number that does not apply stands at the choice that hides it."""
    known, path = rack.declarations(worked.brief), finding.where
    while path in known and not rack.applies(worked.brief, known[path]) and known[path].when:
        path = next(
            p for p, values in known[path].when
            if str(rack.value(worked.brief, p)) not in values or not rack.applies(worked.brief, known[p])
        )  # fmt: skip
    return finding if path == finding.where else replace(finding, where=path)


def _on_a_piece(worked: Worked, finding: Finding) -> Finding:
    """What is said of the skirt as a whole stands at its first panel, whatever that is called."""
    if finding.piece != "skirt" or any(p.id == "skirt" for p in worked.draft.pieces):
        return finding
    first = next((p.id for p in worked.draft.pieces if p.row == 1), "")
    return replace(finding, piece=first)


__all__ = ["RULES", "Finding", "Rule", "Weight", "Worked", "findings", "rule_name"]
