"""What planning guidelines ask of an aisle, by who uses it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.room.aisles import Aisle
from casewright.room.floor_spec import FloorSide
from casewright.room.free_stand import FreeStand
from casewright.room.model import Room
from casewright.sources import INCH

__all__ = ["AisleLimit", "aisle_limit", "asked_of", "works_at"]


@dataclass(frozen=True, slots=True)
class AisleLimit:
    """What is asked of an aisle.

    Parameters
    ----------
    least
        From counter to counter [mm].
    grave
        Below this it is more than inconvenient [mm].
    asks
        Who asks for it, in words.
    works
        Whether one works in it, or sits there.
    """

    least: Fraction
    grave: Fraction
    asks: str
    works: bool


def works_at(room: Room, stand: FreeStand, own: FloorSide) -> bool:
    """Whether fronts open at a side of what stands free."""
    island = next((each for each in room.islands if each.key == stand.key), None)
    if island is not None:
        return own == "front" or (own == "back" and bool(island.spec.back))
    case = next(case for case in room.cases if case.key == stand.key)
    return own == "front" and bool(case.wall_fronts)


def _has_seats(room: Room, stand: FreeStand, own: FloorSide) -> bool:
    island = next((each for each in room.islands if each.key == stand.key), None)
    return island is not None and own == "back" and not island.spec.back


def aisle_limit(room: Room, aisle: Aisle) -> AisleLimit | None:
    """What is asked of an aisle; None where the thing stands against what is across."""
    works, seats = works_at(room, aisle.stand, aisle.own), _has_seats(room, aisle.stand, aisle.own)
    if not works and not seats and 0 <= aisle.clear <= INCH:
        return None
    return asked_of(room, works=works, seats=seats, across=aisle.across.kind == "works")


def asked_of(room: Room, *, works: bool, seats: bool, across: bool) -> AisleLimit:
    """What is asked of an aisle before one side of what stands free.

    Parameters
    ----------
    works, seats
        Whether fronts open at that side, or people sit there.
    across
        Whether one works at what is across.

    Sources
    -------
    `kitchen-planning`: walkway 36 in, work aisle 42 in for one cook, 48 for more, behind a seat
    44 in to walk past and 36 in without, read in a secondary copy; 60 in for a wheelchair, from
    memory.
    """
    inch = room.spec.unit == "in"

    def by_unit(inches: int, millimetres: int) -> Fraction:
        return inches * INCH if inch else Fraction(millimetres)

    walk = by_unit(36, 915)
    if seats:
        chair = room.spec.accessible
        least = by_unit(60, 1525) if chair else by_unit(44, 1120)
        who = "behind a seat a wheelchair asks for" if chair else (
            "to walk past who sits there planning guidelines ask for"
        )  # fmt: skip
        return AisleLimit(least, walk, who, works=True)
    if works and across:
        more = room.spec.two_cooks
        says = f"where {'two work' if more else 'one works'} planning guidelines ask for"
        least = by_unit(48, 1220) if more else by_unit(42, 1070)
        return AisleLimit(least, walk, says, works=True)
    return AisleLimit(walk, walk, "a walkway asks for", works=False)
