"""Doors so tall or so wide that they do not stay flat in one piece: refused, a split proposed."""

from __future__ import annotations

from casewright.casework.fronts.face_edges import planned_thickness
from casewright.casework.fronts.leaves import LeafPlan, part_remedy
from casewright.casework.maker import Maker
from casewright.dims import Dim, Place
from casewright.findings import Finding, Severity

__all__ = ["stays_flat"]

# A door this many times as high as it is thick winds before a year is over: 8 ft of 3/4 in. The
# number is this house's own judgement of a rule of the trade.
_SLENDER = 128


def stays_flat(maker: Maker, place: Place, leaf: LeafPlan) -> bool:
    """Whether a leaf can be made in one piece; if not, a finding proposes how to part it."""
    tallest = place.let("tallest_flat", planned_thickness(maker, leaf.front) * _SLENDER)
    widest = maker.style("widest_leaf")
    if place.over(leaf.height, tallest, "no door in one piece, it would warp: too tall"):
        _refuse(maker, leaf, (leaf.height, tallest), "high", _part_height(maker, leaf))
        return False
    if place.over(leaf.width, widest, "no door in one piece, it would warp: too wide"):
        _refuse(maker, leaf, (leaf.width, widest), "wide", _part_width(maker, leaf))
        return False
    return True


def _part_height(maker: Maker, leaf: LeafPlan) -> tuple[str, ...]:
    """A divider at half the height, with the two doors it leaves."""
    house = maker.house
    each = house.text((leaf.height - maker.style("gap")) / 2)
    doors = f"two doors of {each} over one another"
    if maker.spec.divider is not None or leaf.opening.name != "main":
        return (f"two cases over one another: {doors}",)
    middle = leaf.bottom + leaf.height / 2
    on_plinth = maker.spec.has_toe and maker.spec.toe == "plinth"
    height = middle - maker.style("toe_height") if on_plinth else middle
    return (f"divider = {house.text(height)}: {doors}", "thicker doors, or a straightener in each")


def _part_width(maker: Maker, leaf: LeafPlan) -> tuple[str, ...]:
    """Two leaves for one, or two cases for a pair."""
    over = leaf.width - maker.style("widest_leaf")
    if "doors" in leaf.called:
        return (part_remedy(leaf), f"a case {maker.house.text(2 * over)} narrower")
    each = maker.house.text((leaf.width - maker.style("gap")) / 2)
    return (
        f"leaves = 2: two doors of {each} beside each other",
        f"a case {maker.house.text(over)} narrower",
    )


def _refuse(
    maker: Maker, leaf: LeafPlan, sizes: tuple[Dim, Dim], way: str, remedies: tuple[str, ...]
) -> None:
    size, limit = (maker.house.text(each) for each in sizes)
    maker.findings.append(
        Finding(
            rule="door that warps",
            severity=Severity.STOP,
            path=maker.path(leaf.name),
            says=f"the {leaf.called} would be {size} {way}; over {limit} no door of this "
            "thickness stays flat in one piece",
            measured=size,
            limit=limit,
            source="common practice",
            remedies=remedies,
        )
    )
