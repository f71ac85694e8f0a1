"""Fronts that face each other over a narrow aisle.

Where two runs stand on opposite walls one works between them, opens a drawer and bends down before
it. Planning guidelines ask for 42 in (1070 mm) from front to front for one who works there alone,
and for 48 in (1220 mm) for more, where the job says `two_cooks = true`; the accessible-design
standard asks for 40 in (1015 mm) between opposite runs open at both ends, 60 in (1525 mm) where
they close in a U; where the job says `accessible = true` these 60 are asked for. Only runs on
surveyed walls that are joined by one wall with two inside corners are looked at. The code of the
place may ask for more.

Passes
------
Two runs 24 in deep in a room 92 in wide: about 42 1/2 between fronts.

Fails
-----
The same two in a room 84 in wide.

Sources
-------
`kitchen-planning`: 42 and 48 in. `ada`, 804.2: 40 and 60 in. All read in secondary copies.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from casewright.casework.cases import Case
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import Dim, tell
from casewright.findings import Limit, Severity
from casewright.room.model import Room
from casewright.room.on_walls import CasePlace, cases_on_walls

__all__ = ["RULE"]

_NAME = "work aisle"
_ALONE = Limit("work_aisle.one", "42", "1070", "between fronts, one who works", "kitchen-planning")
_TWO = Limit("work_aisle.two", "48", "1220", "between fronts, more who work", "kitchen-planning")
_TURN = Limit("work_aisle.turn", "60", "1525", "between fronts that close in a U", "ada")


_WHO = {True: "the accessible-design standard asks", False: "planning guidelines ask"}


class _Stands(NamedTuple):
    """A case that stands on one of two opposite walls [mm].

    Parameters
    ----------
    near, far
        From the wall that joins the two.
    out
        How far its fronts reach into the room.
    """

    case: Case
    near: Fraction
    far: Fraction
    out: Dim


def _examine(room: Room) -> Iterator[Breach]:
    corners = [each.spec for each in room.survey.corners.values() if not each.spec.outside]
    places = [place for place in cases_on_walls(room) if not place.bottom]
    for first in corners:
        for second in corners:
            if first.right == second.left and first.left != second.right:
                ones = list(_standing(places, first.left, at_right=True))
                others = list(_standing(places, second.right, at_right=False))
                yield from _judge(room, first.right, ones, others)


def _standing(places: list[CasePlace], wall: str, *, at_right: bool) -> Iterator[_Stands]:
    """Cases on a wall, from the end where the joining wall is."""
    for place in places:
        width = place.wall.width
        if place.wall.spec.key != wall or (at_right and width is None):
            continue
        near, far = place.left, place.right
        if at_right and width is not None:
            near, far = width.value - far, width.value - near
        fronts = [front.z + front.thickness for front in place.case.wall_fronts]
        out = max(fronts, default=place.case.depth, key=lambda dim: dim.value)
        yield _Stands(place.case, near, far, out)


def _judge(
    room: Room, between: str, ones: list[_Stands], others: list[_Stands]
) -> Iterator[Breach]:
    """One word for the narrowest place."""
    wall = room.survey.walls.get(between)
    if wall is None or wall.width is None:
        return
    facing = [(a, b) for a in ones for b in others if a.near < b.far and b.near < a.far]
    if not facing:
        return
    one, other = max(facing, key=lambda pair: pair[0].out.value + pair[1].out.value)
    free = wall.width - one.out - other.out
    usual = _TWO if room.spec.two_cooks else _ALONE
    least = _TURN if room.spec.accessible else usual
    if free.value < least.of(room.spec.unit):
        yield _breach(room, (one.case, other.case), free, least)


def _breach(room: Room, pair: tuple[Case, Case], free: Dim, least: Limit) -> Breach:
    one, other = pair
    own = reckoning(room, _NAME, f"{one.key}.{other.key}")
    clear = own.let("clear", free)
    left = own.length(clear if free.value > 0 else own.none)
    asked = own.length(own.limit(least))
    shallower = own.length(own.limit(least) - clear, "shallower")
    return Breach(
        one.key,
        tell(
            "{} lie between the fronts of {} and {}; {} for {}",
            left, one.spec.title, other.spec.title, _WHO[room.spec.accessible], asked,
        ),
        measured=left.text,
        limit=asked.text,
        remedies=(
            tell("cases {} shallower on one of the walls", shallower),
            "one run instead of two",
        ),
        severity=Severity.STOP if free.value <= 0 else None,
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.NOTE, __doc__ or "", "kitchen-planning", _examine)
