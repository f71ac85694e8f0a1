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
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.room.on_walls import CasePlace, cases_on_walls

__all__ = ["RULE"]


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
    out: Fraction


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
        fronts = [f.z.value + f.thickness.value for f in place.case.wall_fronts]
        yield _Stands(place.case, near, far, max(fronts, default=place.case.depth.value))


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
    one, other = max(facing, key=lambda pair: pair[0].out + pair[1].out)
    free = wall.width.value - one.out - other.out
    accessible = room.spec.accessible
    usual = ("48", "1220") if room.spec.two_cooks else ("42", "1070")
    least = by_unit(room, *(("60", "1525") if accessible else usual))
    if free < least:
        yield Breach(
            one.case.key,
            f"{length(room, max(free, Fraction(0)))} lie between the fronts of "
            f"{one.case.spec.title} and {other.case.spec.title}; "
            f"{_WHO[accessible]} for {length(room, least)}",
            measured=length(room, max(free, Fraction(0))),
            limit=length(room, least),
            remedies=(
                f"cases {length(room, least - free)} shallower on one of the walls",
                "one run instead of two",
            ),
            severity=Severity.STOP if free <= 0 else None,
        )


RULE = Rule("work aisle", Severity.NOTE, __doc__ or "", "kitchen-planning", _examine)
