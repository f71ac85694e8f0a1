"""What the kinds of doors have in common that matters before they are cut."""

from __future__ import annotations

from casewright.casework.fronts.leaves import LeafPlan
from casewright.casework.fronts.panel_groove import groove_depth
from casewright.casework.maker import Maker
from casewright.dims import Dim

__all__ = ["corner_joint", "inner_cut"]


def inner_cut(maker: Maker, leaf: LeafPlan) -> tuple[str, Dim] | None:
    """What is cut into a stile from its inner edge: its name, and how far it reaches [mm]."""
    match leaf.front.construction:
        case "glass frame":
            return "glass rebate", maker.style("rebate_width")
        case "frame and panel" | "mitred frame":
            return "groove for the panel", groove_depth(maker)
        case _:
            return None


def corner_joint(maker: Maker, leaf: LeafPlan) -> Dim | None:
    """How far from a door's ends its corner joints reach [mm]: nothing may be bored there.

    None where they do not fill the corners.
    """
    match leaf.front.construction:
        case "glass frame":
            return maker.style("rail")
        case "mitred frame":
            return maker.style("stile")
        case _:
            return None
