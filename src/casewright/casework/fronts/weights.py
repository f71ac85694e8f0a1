"""What a leaf weighs, as a number of the chain, before it is cut."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.fronts.leaves import LeafPlan
from casewright.casework.house import House
from casewright.casework.lifted import told_weight
from casewright.casework.maker import Maker
from casewright.casework.plain_numbers import plain_number
from casewright.dims import Dim, Origin, Told, tell
from casewright.sources import POUND

__all__ = ["leaf_weight", "pounds", "weight_words"]

_PER_CUBIC_MILLIMETRE = Fraction(1, 1_000_000_000)


def pounds(house: House, path: str, count: int, note: str) -> Dim:
    """A weight given in pounds [kg], a plain number of the chain."""
    origin = Origin("cited", f"{note}: {count} lb", "common practice")
    return plain_number(house, path, count * POUND, 0, origin)


def _density(house: House, key: str) -> Dim:
    value = house.density(key) * _PER_CUBIC_MILLIMETRE
    origin = Origin("cited", f"{house.density(key)} kg/m3")
    return plain_number(house, f"stock.{key}.density", value, -3, origin)


def _mass(maker: Maker, key: str, area: Dim) -> Dim:
    return area * maker.house.thickness(key) * _density(maker.house, key)


def _frame_area(maker: Maker, leaf: LeafPlan) -> Dim:
    stile, rail = maker.style("stile"), maker.style("rail")
    return 2 * (leaf.height * stile) + 2 * (rail * (leaf.width - 2 * stile))


def leaf_weight(maker: Maker, leaf: LeafPlan) -> Dim:
    """Weight of a leaf [kg] from its planned size and its stock's densities.

    Holes, rebates and hardware are not counted: they nearly cancel.
    """
    front = leaf.front
    whole = leaf.width * leaf.height
    if front.construction == "slab":
        weight = _mass(maker, front.slab, whole)
    elif front.construction == "applied frame":
        frame = _mass(maker, front.strip, _frame_area(maker, leaf))
        weight = _mass(maker, front.slab, whole) + frame
    elif front.construction in ("frame and panel", "mitred frame"):
        frame = _mass(maker, front.frame, _frame_area(maker, leaf))
        panel = _inside_area(maker, leaf, 2 * maker.style("tongue"))
        weight = frame + _mass(maker, front.panel, panel)
    else:
        frame = _mass(maker, front.frame, _frame_area(maker, leaf))
        weight = frame + _mass(
            maker, front.glazing, _inside_area(maker, leaf, 2 * maker.style("rebate_width"))
        )
    return maker.place.at(leaf.name).let("weight", weight)


def _inside_area(maker: Maker, leaf: LeafPlan, lap: Dim) -> Dim:
    """What fills a frame, with what of it lies behind or in the frame."""
    wide = leaf.width - 2 * maker.style("stile") + lap
    return wide * (leaf.height - 2 * maker.style("rail") + lap)


def weight_words(maker: Maker, leaf: str) -> Told:
    """What a leaf weighs, to be told where it is lifted: ', about 12 lb (5 kg),'.

    Parameters
    ----------
    leaf
        Its path.
    """
    weight = maker.house.chain.nodes.get(f"{leaf}.weight")
    if weight is None:
        return Told(",")
    return tell(", about {},", told_weight(weight.value, maker.house.unit, weight.path))
