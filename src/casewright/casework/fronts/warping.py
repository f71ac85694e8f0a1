"""Doors so tall or so wide that they do not stay flat in one piece: refused, a split proposed."""

from __future__ import annotations

from casewright.casework.fronts.face_edges import planned_thickness
from casewright.casework.fronts.leaves import LeafPlan, part_remedy
from casewright.casework.maker import Maker
from casewright.dims import Dim, Place, tell
from casewright.findings import Finding, Reckoning, Severity

__all__ = ["stays_flat"]

_RULE = "door that warps"

# A door this many times as high as it is thick winds before a year is over: 8 ft of 3/4 in. The
# number is this house's own judgement of a rule of the trade.
_SLENDER = 128


def stays_flat(maker: Maker, place: Place, leaf: LeafPlan) -> bool:
    """Whether a leaf can be made in one piece; if not, a finding proposes how to part it."""
    tallest = place.let("tallest_flat", planned_thickness(maker, leaf.front) * _SLENDER)
    widest = maker.style("widest_leaf")
    if place.over(leaf.height, tallest, "no door in one piece, it would warp: too tall"):
        own = maker.reckoning(_RULE, maker.path(leaf.name))
        ways = _part_height(maker, own, leaf)
        _refuse(maker, own, leaf, (leaf.height, tallest), ("high", ways))
        return False
    if place.over(leaf.width, widest, "no door in one piece, it would warp: too wide"):
        own = maker.reckoning(_RULE, maker.path(leaf.name))
        _refuse(maker, own, leaf, (leaf.width, widest), ("wide", _part_width(maker, own, leaf)))
        return False
    return True


def _part_height(maker: Maker, own: Reckoning, leaf: LeafPlan) -> tuple[str, ...]:
    """A divider at half the height, with the two doors it leaves."""
    each = own.text((leaf.height - maker.style("gap")) / 2, "each")
    doors = tell("two doors of {} over one another", each)
    if maker.spec.divider is not None or leaf.opening.name != "main":
        return (tell("two cases over one another: {}", doors),)
    middle = leaf.bottom + leaf.height / 2
    on_plinth = maker.spec.has_toe and maker.spec.toe == "plinth"
    height = middle - maker.style("toe_height") if on_plinth else middle
    divider = tell("divider = {}: {}", own.text(height, "divider"), doors)
    return (divider, "thicker doors, or a straightener in each")


def _part_width(maker: Maker, own: Reckoning, leaf: LeafPlan) -> tuple[str, ...]:
    """Two leaves for one, or two cases for a pair."""
    over = leaf.width - maker.style("widest_leaf")
    if "doors" in leaf.called:
        return (part_remedy(leaf), tell("a case {} narrower", own.text(2 * over, "narrower")))
    each = own.text((leaf.width - maker.style("gap")) / 2, "each")
    return (
        tell("leaves = 2: two doors of {} beside each other", each),
        tell("a case {} narrower", own.text(over, "narrower")),
    )


def _refuse(
    maker: Maker,
    own: Reckoning,
    leaf: LeafPlan,
    sizes: tuple[Dim, Dim],
    words: tuple[str, tuple[str, ...]],
) -> None:
    """A door that is not made.

    Parameters
    ----------
    sizes, words
        What it would be, and the most it may be [mm]; which way, and what helps.
    """
    size, limit = (own.text(each, name)
                   for each, name in zip(sizes, ("size", "limit"), strict=True))  # fmt: skip
    way, remedies = words
    maker.findings.append(
        Finding(
            rule=_RULE,
            severity=Severity.STOP,
            path=maker.path(leaf.name),
            says=tell(
                "the {} would be {} {}; over {} no door of this thickness stays flat in one piece",
                leaf.called, size, way, limit,
            ),
            measured=size.text,
            limit=limit.text,
            source="common practice",
            remedies=remedies,
            numbers=own.numbers,
        )
    )  # fmt: skip
