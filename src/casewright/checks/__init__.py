"""What is looked at in every room: one rule a file, each with its reason and its source."""

from __future__ import annotations

from casewright.checks import (
    band_width,
    case_weight,
    ceiling_wave,
    cut_depth,
    door_beside_front,
    door_beside_wall,
    door_swing,
    drawer_bottom,
    fastener_bite,
    fit_band,
    fit_forecast,
    floor_fall,
    hardware_meets,
    hinge_beside_shelf,
    hinge_number,
    hinge_spread,
    in_the_way,
    inside_corner,
    leaf_size,
    long_shelf,
    metal_in_path,
    nailer_missing,
    narrow_rip,
    open_pockets,
    over_counter,
    pane_size,
    pocket_screw_length,
    sharp_corner,
    sheet_spread,
    sheet_thickness,
    sheet_weight,
    shelf_sag,
    small_part,
    studs_behind,
    tilt_up,
    tip_over,
    toe_space,
    tool_missing,
    under_ceiling,
    wall_screw_bite,
    way_in,
    wood_movement,
)
from casewright.checks.rule import Breach, Rule
from casewright.findings import Finding
from casewright.room.model import Room

__all__ = ["RULES", "Breach", "Rule", "check"]

RULES: tuple[Rule, ...] = (
    fit_band.RULE,
    fit_forecast.RULE,
    sheet_thickness.RULE,
    sheet_spread.RULE,
    tool_missing.RULE,
    under_ceiling.RULE,
    in_the_way.RULE,
    nailer_missing.RULE,
    tip_over.RULE,
    studs_behind.RULE,
    wall_screw_bite.RULE,
    fastener_bite.RULE,
    pocket_screw_length.RULE,
    open_pockets.RULE,
    metal_in_path.RULE,
    cut_depth.RULE,
    hinge_number.RULE,
    hinge_spread.RULE,
    hinge_beside_shelf.RULE,
    hardware_meets.RULE,
    leaf_size.RULE,
    door_beside_wall.RULE,
    door_beside_front.RULE,
    inside_corner.RULE,
    pane_size.RULE,
    wood_movement.RULE,
    drawer_bottom.RULE,
    shelf_sag.RULE,
    long_shelf.RULE,
    band_width.RULE,
    narrow_rip.RULE,
    small_part.RULE,
    case_weight.RULE,
    sheet_weight.RULE,
    tilt_up.RULE,
    way_in.RULE,
    sharp_corner.RULE,
    door_swing.RULE,
    floor_fall.RULE,
    ceiling_wave.RULE,
    toe_space.RULE,
    over_counter.RULE,
)
"""Every rule, the ones that stop the work first."""


def check(room: Room) -> tuple[Finding, ...]:
    """What the rules find in a room, in the order of `RULES`, then of the job."""
    return tuple(finding for rule in RULES for finding in rule.findings(room))
