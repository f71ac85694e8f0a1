"""What the kinds of doors have in common that matters before they are cut."""

from __future__ import annotations

from casewright.casework.fronts.leaves import LeafPlan
from casewright.casework.fronts.panel_groove import groove_depth
from casewright.casework.maker import Maker
from casewright.dims import Dim

__all__ = ["inner_cut", "joints_take_corners"]


def inner_cut(maker: Maker, leaf: LeafPlan) -> tuple[str, Dim] | None:
    """What is cut into a stile from its inner edge: its name, and how far it reaches [mm]."""
    match leaf.front.construction:
        case "glass frame":
            return "glass rebate", maker.style("rebate_width")
        case "frame and panel" | "mitred frame":
            return "groove for the panel", groove_depth(maker)
        case _:
            return None


def joints_take_corners(leaf: LeafPlan) -> bool:
    """Whether the joints of the frame fill its corners, so that nothing may be bored there."""
    return leaf.front.construction in ("glass frame", "mitred frame")
