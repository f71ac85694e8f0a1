"""At which heights hinges sit: near the ends, evenly between, clear of shelves."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from casewright.casework.fronts.hinge_room import SideOfLeaf
from casewright.casework.fronts.kinds import corner_joint
from casewright.casework.fronts.leaves import LeafPlan
from casewright.casework.maker import Maker
from casewright.dims import Dim, Place, Way, greatest, least

__all__ = ["HingeSpot", "hinge_spots", "side_of_leaf"]


@dataclass(frozen=True, slots=True)
class HingeSpot:
    """Where a hinge may sit.

    Parameters
    ----------
    height
        Case height of its centre [mm].
    way
        Direction it may be rounded in without coming too near what it keeps clear of.
    """

    height: Dim
    way: Way


@dataclass(frozen=True, slots=True)
class _Zones:
    """Stretches of the side where no hinge may sit: outside floor to ceiling, and at shelves."""

    floor: Dim
    ceiling: Dim
    shelves: tuple[tuple[Dim, Dim], ...]

    def is_free(self, height: Dim) -> bool:
        return self.floor.value <= height.value <= self.ceiling.value and not any(
            low.value < height.value < high.value for low, high in self.shelves
        )


def hinge_spots(maker: Maker, leaf: LeafPlan, count: int) -> tuple[HingeSpot, ...]:
    """Heights of a leaf's hinges, lowest first; empty where there is no room for them."""
    place = maker.place.at(leaf.name)
    zones = _zones(maker, leaf)
    end = _end(maker, place, leaf)
    first = leaf.bottom + end
    span = leaf.height - 2 * end
    spots: list[HingeSpot] = []
    for number in range(count):
        even = first + span * Fraction(number, count - 1) if number else first
        spot = _clear(place, even, zones, f"hinge {number + 1}")
        if spot is None:
            return ()
        spots.append(spot)
    return tuple(spots) if _apart(maker, spots) else ()


def _end(maker: Maker, place: Place, leaf: LeafPlan) -> Dim:
    """Outer hinges' distance from the door's ends; clear of a glass frame's corner joints."""
    end = maker.style("hinge_end")
    if place.over(end * 3, leaf.height, "a low door: hinges at a quarter of its height"):
        end = leaf.height / 4
    if corner_joint(maker, leaf) is not None:
        end = greatest(end, _least_end(maker, leaf))
    return place.let("hinge_end_used", end)


def _least_end(maker: Maker, leaf: LeafPlan) -> Dim:
    """How near a hinge may come to the door's end: its cup stays in wood, off a corner joint."""
    cup = maker.house.hinge("cup_diameter") / 2 + maker.style("cup_floor")
    corner = corner_joint(maker, leaf)
    return cup if corner is None else corner + cup


def _zones(maker: Maker, leaf: LeafPlan) -> _Zones:
    opening, clear, end = leaf.opening, maker.style("hinge_clear"), _least_end(maker, leaf)
    floor = greatest(opening.y0 + clear, leaf.bottom + end)
    ceiling = opening.y1
    crown = maker.parts.get(maker.path("crown_stretcher"))
    if crown is not None and opening.y0.value < crown.placed.y.value < ceiling.value:
        ceiling = crown.placed.y
    ceiling = ceiling - clear
    pad = maker.style("hinge_pad") / 2 + maker.style("cut_step")
    if opening.hung is not None:
        ceiling = least(ceiling, opening.hung - pad)
    thickness = maker.house.thickness(maker.spec.box_stock)
    off = clear
    if maker.spec.framed and opening.shelves:  # a pad carries the plate, and is longer than it
        off = greatest(clear, pad)
    shelves = tuple((low - off, low + thickness + off) for low in opening.shelves)
    return _Zones(floor, least(ceiling, leaf.bottom + leaf.height - end), shelves)


def _clear(place: Place, height: Dim, zones: _Zones, name: str) -> HingeSpot | None:
    """The height itself, or the nearest one that keeps clear."""
    if zones.is_free(height):
        return HingeSpot(height, Way.NEAREST)
    up = [zones.floor, *(high for _, high in zones.shelves)]
    down = [zones.ceiling, *(low for low, _ in zones.shelves)]
    free = [HingeSpot(h, Way.UP) for h in up] + [HingeSpot(h, Way.DOWN) for h in down]
    free = [spot for spot in free if zones.is_free(spot.height)]
    if not free:
        return None
    best = min(free, key=lambda spot: abs(spot.height.value - height.value))
    if best.way is Way.UP:
        place.over(best.height, height, f"{name} moved up, clear of the board beside it")
    else:
        place.over(height, best.height, f"{name} moved down, clear of the board beside it")
    return best


def _least_apart(maker: Maker) -> Fraction:
    return maker.house.hinge("cup_diameter").value + maker.style("hinge_clear").value


def side_of_leaf(maker: Maker, leaf: LeafPlan, count: int) -> SideOfLeaf:
    """The same question in plain numbers, to look for the least that would make room."""
    zones = _zones(maker, leaf)
    framed = corner_joint(maker, leaf) is not None
    return SideOfLeaf(
        count=count, bottom=leaf.bottom.value, height=leaf.height.value,
        floor=zones.floor.value, ceiling=zones.ceiling.value,
        shelves=tuple((low.value, high.value) for low, high in zones.shelves),
        end=maker.style("hinge_end").value,
        least_end=_least_end(maker, leaf).value if framed else Fraction(0),
        apart=_least_apart(maker),
    )  # fmt: skip


def _apart(maker: Maker, spots: Sequence[HingeSpot]) -> bool:
    """Whether the hinges leave room for one another."""
    room = _least_apart(maker)
    heights = [spot.height.value for spot in spots]
    return all(b - a >= room for a, b in pairwise(heights))
