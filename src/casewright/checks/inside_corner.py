"""Cases of two walls that meet in an inside corner, where boxes, doors or pulls are in the way.

Two runs cannot both go into a corner. The one that does not begins as far out as the other's
fronts and their pulls reach into the room, and a little more; else doors and drawers beside the
corner strike the pulls round it. And a door of the run that goes into the corner does not open
where the other run's boxes stand before it; nor does a drawer there come out. That of a blind
corner is drawn past what stands round it, whose fronts and pulls it clears as its filler does.

Passes
------
Open shelves into the corner, and a base round it that begins in front of them.

Fails
-----
A base with doors in place of the shelves. A run that begins 25 in out of a corner, where fronts
and pulls reach 25 1/4 into the room. Both runs at the corner.

Sources
-------
`common practice`: depth, bumper and door, the pull, and 1/8 in, or 3 mm.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Door, Front
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, flatter_pull, length, style_value
from casewright.dims import Way, round_to
from casewright.findings import Severity
from casewright.room.corner_neighbours import (
    CornerNeighbour,
    corner_reach,
    neighbours,
    swing_squared,
)
from casewright.room.model import Room

__all__ = ["RULE", "out_of_corner"]


def _examine(room: Room) -> Iterator[Breach]:
    for one, other in neighbours(room):
        yield from _judge(room, one, other)


def _judge(room: Room, one: CornerNeighbour, other: CornerNeighbour) -> Iterator[Breach]:
    if one.out < other.depth and other.out < one.depth:
        out, side, run = min(
            (corner_reach(room, one), "left", other.place.run.spec.key),
            (corner_reach(room, other), "right", one.place.run.spec.key),
        )
        yield Breach(
            other.path,
            f"{one.path} and {other.path} stand in one another in the corner: they are "
            f"{length(room, one.out)} and {length(room, other.out)} out of it, "
            f"{length(room, one.depth)} and {length(room, other.depth)} deep",
            remedies=(
                (
                    f"end one of the runs {length(room, out)} before the corner: "
                    f'{side} = "corner" under [run.{run}]'
                ),
            ),
            severity=Severity.STOP,
        )
        return
    for own, round_it in ((one, other), (other, one)):
        yield from _shut_in(room, own, round_it)
        yield from _blocked(room, own, round_it)
        yield from _strikes(room, own, round_it)
        need = corner_reach(room, round_it)
        # A case that goes into the corner itself is not asked to keep out of it.
        near = round_it.out < own.depth + _travel(own)
        if round_it.depth <= own.out < need and own.place.case.fronts and near:
            yield Breach(
                own.path,
                f"{own.path} begins {length(room, own.out)} out of the corner; the fronts and "
                f"pulls of {round_it.path} reach {length(room, need)} into the room, with air",
                measured=length(room, own.out),
                limit=length(room, need),
                remedies=(
                    f"begin it {length(room, need)} out, with a wider filler",
                    *flatter_pull(room, need - own.out),
                ),
            )


def _shut_in(room: Room, own: CornerNeighbour, round_it: CornerNeighbour) -> Iterator[Breach]:
    """The door nearest to the corner that runs into the case before it as it swings."""
    doors = [front for front in own.place.case.wall_fronts if isinstance(front, Door)]
    for door in sorted(doors, key=own.from_corner):
        space = max(round_it.out - door.z.value - door.thickness.value, Fraction(0))
        covered = min(round_it.depth - own.from_corner(door), door.width.value)
        if covered > 0 and space**2 < swing_squared(door, covered, at_right=own.at_right):
            yield Breach(
                door.path,
                f"{door.path} does not open: {round_it.path} stands {length(room, space)} in "
                f"front of it, across {_share(room, covered, door.width.value)}",
                measured=length(room, space),
                remedies=out_of_corner(room, own, round_it),
                severity=Severity.STOP,
            )
            return


def _share(room: Room, covered: Fraction, width: Fraction) -> str:
    """How much of a width is covered: the whole of it, or so much of so much."""
    if covered == width:
        return f"its whole width of {length(room, width)}"
    return f"{length(room, covered)} of its width of {length(room, width)}"


def _blocked(room: Room, own: CornerNeighbour, round_it: CornerNeighbour) -> Iterator[Breach]:
    """The lowest drawer that comes out only as far as the case before it."""
    case = own.place.case
    fronts = {front.path: front for front in case.fronts}
    for drawer in case.drawers:
        front = fronts.get(drawer.front)
        if front is None or own.from_corner(front) >= round_it.depth:
            continue
        space = max(round_it.out - front.z.value - front.thickness.value, Fraction(0))
        if space < drawer.slide_length.value:
            yield Breach(
                drawer.path,
                f"{drawer.title} of {case.spec.title} comes out {length(room, space)} of its "
                f"{length(room, drawer.slide_length.value)}: {round_it.path} stands before it",
                measured=length(room, space),
                limit=length(room, drawer.slide_length.value),
                remedies=out_of_corner(room, own, round_it),
                severity=Severity.STOP,
            )
            return


def _strikes(room: Room, own: CornerNeighbour, round_it: CornerNeighbour) -> Iterator[Breach]:
    """A drawer beside a blind part that is drawn into the fronts or the pulls round the corner."""
    case = own.place.case
    if case.spec.blind is None:
        return
    fronts = {front.path: front for front in case.fronts}
    for drawer in case.drawers:
        front = fronts.get(drawer.front)
        if front is None:
            continue
        passes = [other for other in round_it.place.case.fronts if _level(front, other)]
        need = max((_out(room, other) for other in passes), default=Fraction(0))
        near = own.from_corner(front)
        left, air = near - need, by_unit(room, "1/8", "3")
        if passes and round_it.depth <= near and left < air:
            yield Breach(
                drawer.path,
                f"{drawer.title} of {case.spec.title} is drawn {length(room, near)} out of the "
                f"corner, past {round_it.path}, whose fronts and pulls reach {length(room, need)}",
                measured=length(room, near),
                limit=length(room, need + air),
                remedies=(
                    f"corner_depth = {length(room, _reckoned(room, own, air - left))} or more",
                    *flatter_pull(room, air - left),
                ),
                severity=Severity.STOP if left < 0 else None,
            )


def _reckoned(room: Room, own: CornerNeighbour, more: Fraction) -> Fraction:
    """How deep a blind corner takes the run round it to be, and so much more, in steps [mm]."""
    asked, case = own.place.case.spec.corner_depth, own.place.case
    deep = style_value(room, case, "base_depth") if asked is None else asked.value
    return round_to(deep + more, by_unit(room, "1/16", "1"), Way.UP)[0]


def _level(front: Front, other: Front) -> bool:
    """Whether any part of a front is as high as another, pulls included."""
    return (
        front.y.value < other.y.value + other.height.value
        and other.y.value < front.y.value + front.height.value
    )


def _out(room: Room, front: Front) -> Fraction:
    """How far a front with its pull reaches out from its wall [mm]."""
    pull = room.spec.hardware.pull.projection.value if front.pull else Fraction(0)
    return front.z.value + front.thickness.value + pull


def _travel(own: CornerNeighbour) -> Fraction:
    """How far what opens of a case comes out before it [mm]."""
    case = own.place.case
    slides = (drawer.slide_length.value for drawer in case.drawers)
    return max((*slides, *(door.width.value for door in case.doors)), default=Fraction(0))


def out_of_corner(room: Room, own: CornerNeighbour, round_it: CornerNeighbour) -> tuple[str, ...]:
    """What helps where a case in the corner is shut in by the one round it."""
    side, kind = "right" if own.at_right else "left", own.place.case.spec.kind
    made = {"base": f'a blind corner base: blind = "{side}"; or diagonal = "{side}"',
            "wall": f'a diagonal corner: diagonal = "{side}"'}  # fmt: skip
    return (
        *((made[kind],) if kind in made else ()),
        "open shelves in the corner",
        (
            f"the corner left empty: cases that end {length(room, round_it.depth)} before it, "
            f'each with its width, and {side} = "open" under [run.{own.place.run.spec.key}]'
        ),
    )


RULE = Rule("inside corner", Severity.CARE, __doc__ or "", "common practice", _examine)
