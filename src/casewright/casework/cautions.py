"""Cautions by key: shown at the very step they belong to. The maker's instructions come first."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

__all__ = ["CAUTIONS"]

CAUTIONS: Mapping[str, str] = MappingProxyType(
    {
        "saw_partial_cut": (
            "The blade does not come through: the guard may have to come off, so keep a push "
            "block on the work, hands out of the blade's line, and refit the guard at once. "
            "Eyes and ears protected; follow the saw maker's instructions."
        ),
        "saw_stopped_cut": (
            "Stop the saw and wait for the blade before lifting it out; finish the corner with a "
            "hand saw. Clamp the work; eyes and ears protected."
        ),
        "router_feed": (
            "Feed against the bit's turn, never with it. Clamp straightedge and work; unplug to "
            "change the bit; eyes, ears and lungs protected."
        ),
        "drill_clamp": (
            "Clamp the jig and the work; keep fingers off the far side; eyes protected."
        ),
        "clamp_screws": (
            "Clamp the joint before driving; hold the work where a screw that wanders out cannot "
            "reach your hand."
        ),
        "brad_points": (
            "A brad can turn in the grain and come out sideways: keep hands two brad lengths "
            "from the muzzle; eyes protected."
        ),
        "heavy_lift": (
            "Heavy and awkward: lift with a helper or a cart. Weights shown are for planning, "
            "not a permission."
        ),
        "glass_edges": (
            "Cut edges of glass slice skin: gloves, and carry panes upright. Doors within reach "
            "take tempered glass or plastic, as local codes ask."
        ),
        "lift_door": "Support the door's weight until the last hinge is on.",
        "dust": "Fine dust harms lungs: extraction and a mask, fibreboard above all.",
    }
)
