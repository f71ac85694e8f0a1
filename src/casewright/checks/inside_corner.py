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

from casewright.casework.cases import Door, Drawer, Front
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, flatter, pull_of, reckoning, style_of
from casewright.dims import Dim, Told, Way, greatest, least, tell
from casewright.findings import Limit, Reckoning, Severity
from casewright.room.corner_neighbours import (
    CornerNeighbour,
    corner_reach,
    neighbours,
    swing_squared,
)
from casewright.room.model import Room

__all__ = ["RULE", "out_of_corner"]

_NAME = "inside corner"
_AIR = Limit("inside_corner.air", "1/8", "3", "air between what opens and what is round a corner")


def _examine(room: Room) -> Iterator[Breach]:
    for one, other in neighbours(room):
        yield from _judge(room, one, other)


def _judge(room: Room, one: CornerNeighbour, other: CornerNeighbour) -> Iterator[Breach]:
    if one.out < other.depth and other.out < one.depth:
        yield _in_one_another(room, one, other)
        return
    for own, round_it in ((one, other), (other, one)):
        yield from _shut_in(room, own, round_it)
        yield from _blocked(room, own, round_it)
        yield from _strikes(room, own, round_it)
        need = corner_reach(room, round_it)
        # A case that goes into the corner itself is not asked to keep out of it.
        near = round_it.out < own.depth + _travel(own)
        if round_it.depth <= own.out < need and own.place.case.fronts and near:
            yield _too_near(room, own, round_it)


def _sums(room: Room, own: CornerNeighbour, round_it: CornerNeighbour, word: str) -> Reckoning:
    return reckoning(room, _NAME, f"{own.path}.{round_it.path}.{word}")


def _in_one_another(room: Room, one: CornerNeighbour, other: CornerNeighbour) -> Breach:
    sums = _sums(room, one, other, "both")
    beside, side, run = min(
        ((one, "left", other.place.run.spec.key), (other, "right", one.place.run.spec.key)),
        key=lambda each: (corner_reach(room, each[0]), *each[1:]),
    )
    out = sums.length(_reach(room, sums, beside), "reach")
    outs = [sums.length(each.out_of_corner, f"{each.path}.out") for each in (one, other)]
    deep = [sums.length(each.place.case.depth) for each in (one, other)]
    return Breach(
        other.path,
        tell(
            "{} and {} stand in one another in the corner: they are {} and {} out of it, {} and "
            "{} deep",
            one.path, other.path, *outs, *deep,
        ),
        remedies=(
            tell(
                'end one of the runs {} before the corner: {} = "corner" under [run.{}]',
                out, side, run,
            ),
        ),
        severity=Severity.STOP,
        own=sums,
    )  # fmt: skip


def _too_near(room: Room, own: CornerNeighbour, round_it: CornerNeighbour) -> Breach:
    sums = _sums(room, own, round_it, "near")
    need = sums.let("reach", _reach(room, sums, round_it))
    out = sums.let("out", own.out_of_corner)
    begins, reaches = sums.length(out), sums.length(need)
    return Breach(
        own.path,
        tell(
            "{} begins {} out of the corner; the fronts and pulls of {} reach {} into the room, "
            "with air",
            own.path, begins, round_it.path, reaches,
        ),
        measured=begins.text,
        limit=reaches.text,
        remedies=(
            tell("begin it {} out, with a wider filler", reaches),
            *flatter(room, sums, need - out),
        ),
        own=sums,
    )  # fmt: skip


def _reach(room: Room, sums: Reckoning, beside: CornerNeighbour) -> Dim:
    """`corner_reach` of a case, as it follows [mm]."""
    case = beside.place.case
    if case.mouth is not None:
        return case.depth
    planes = [front.z + front.thickness for front in case.fronts]
    plane = greatest(case.depth, *planes)
    if any(front.pull for front in case.fronts):
        plane += pull_of(room, sums, "projection")
    return plane + sums.limit(_AIR)


def _shut_in(room: Room, own: CornerNeighbour, round_it: CornerNeighbour) -> Iterator[Breach]:
    """The door nearest to the corner that runs into the case before it as it swings."""
    doors = [front for front in own.place.case.wall_fronts if isinstance(front, Door)]
    for door in sorted(doors, key=own.from_corner):
        space = max(round_it.out - door.z.value - door.thickness.value, Fraction(0))
        covered = min(round_it.depth - own.from_corner(door), door.width.value)
        if covered > 0 and space**2 < swing_squared(door, covered, at_right=own.at_right):
            sums = reckoning(room, _NAME, door.path)
            before = sums.length(_space(sums, round_it, door), "space")
            edge = own.out_of_corner + own.bare_edge(door)
            hidden = least(round_it.place.case.depth - edge, door.width)
            yield Breach(
                door.path,
                tell(
                    "{} does not open: {} stands {} in front of it, across {}",
                    door.path, round_it.path, before, _share(sums, hidden, door.width),
                ),
                measured=before.text,
                remedies=out_of_corner(room, own, round_it, sums),
                severity=Severity.STOP,
                own=sums,
            )  # fmt: skip
            return


def _space(sums: Reckoning, round_it: CornerNeighbour, front: Front) -> Dim:
    """Before a front, up to the case that stands before it [mm]."""
    return greatest(round_it.out_of_corner - front.z - front.thickness, sums.none)


def _share(sums: Reckoning, covered: Dim, width: Dim) -> Told:
    """How much of a width is covered: the whole of it, or so much of so much."""
    wide = sums.length(width)
    if covered.value == width.value:
        return tell("its whole width of {}", wide)
    return tell("{} of its width of {}", sums.length(covered, "covered"), wide)


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
            sums = reckoning(room, _NAME, drawer.path)
            out = sums.length(_space(sums, round_it, front), "space")
            whole = sums.length(drawer.slide_length)
            yield Breach(
                drawer.path,
                tell(
                    "{} of {} comes out {} of its {}: {} stands before it",
                    drawer.title, case.spec.title, out, whole, round_it.path,
                ),
                measured=out.text,
                limit=whole.text,
                remedies=out_of_corner(room, own, round_it, sums),
                severity=Severity.STOP,
                own=sums,
            )  # fmt: skip
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
        sums = reckoning(room, _NAME, f"{drawer.path}.drawn")
        need = greatest(sums.none, *(_out(room, sums, other) for other in passes))
        if not passes or round_it.depth > own.from_corner(front):
            continue
        if own.from_corner(front) - need.value < _AIR.of(room.spec.unit):
            near = own.out_of_corner + own.bare_edge(front)
            yield _drawn_into(room, sums, (own, round_it, drawer), (near, need))


def _drawn_into(
    room: Room,
    sums: Reckoning,
    between: tuple[CornerNeighbour, CornerNeighbour, Drawer],
    sizes: tuple[Dim, Dim],
) -> Breach:
    """A drawer that does not clear what stands round the corner.

    Parameters
    ----------
    sizes
        How far out of the corner it is drawn, and how far fronts and pulls reach there [mm].
    """
    (own, round_it, drawer), (near, need), air = between, sizes, sums.limit(_AIR)
    more = sums.let("more", need + air - near)
    drawn, limit = sums.length(near, "near"), sums.length(need + air, "clear_of")
    return Breach(
        drawer.path,
        tell(
            "{} of {} is drawn {} out of the corner, past {}, whose fronts and pulls reach {}",
            drawer.title, own.place.case.spec.title, drawn, round_it.path,
            sums.length(need, "reach"),
        ),
        measured=drawn.text,
        limit=limit.text,
        remedies=(
            tell("corner_depth = {} or more", sums.length(_reckoned(room, sums, own, more))),
            *flatter(room, sums, more),
        ),
        severity=Severity.STOP if near.value < need.value else None,
        own=sums,
    )  # fmt: skip


def _reckoned(room: Room, sums: Reckoning, own: CornerNeighbour, more: Dim) -> Dim:
    """How deep a blind corner takes the run round it to be, and so much more, in steps [mm]."""
    asked, case = own.place.case.spec.corner_depth, own.place.case
    deep = style_of(room, sums, "base_depth", case)
    if asked is not None:
        deep = sums.given(f"{case.key}.corner_depth", asked)
    return sums.rounded("corner_depth", deep + more, by_unit(room, "1/16", "1"), Way.UP)


def _level(front: Front, other: Front) -> bool:
    """Whether any part of a front is as high as another, pulls included."""
    return (
        front.y.value < other.y.value + other.height.value
        and other.y.value < front.y.value + front.height.value
    )


def _out(room: Room, sums: Reckoning, front: Front) -> Dim:
    """How far a front with its pull reaches out from its wall [mm]."""
    plane = front.z + front.thickness
    return plane + pull_of(room, sums, "projection") if front.pull else plane


def _travel(own: CornerNeighbour) -> Fraction:
    """How far what opens of a case comes out before it [mm]."""
    case = own.place.case
    slides = (drawer.slide_length.value for drawer in case.drawers)
    return max((*slides, *(door.width.value for door in case.doors)), default=Fraction(0))


def out_of_corner(
    room: Room, own: CornerNeighbour, round_it: CornerNeighbour, sums: Reckoning | None = None
) -> tuple[str, ...]:
    """What helps where a case in the corner is shut in by the one round it.

    Parameters
    ----------
    sums
        Where its numbers are worked out; None: nobody asks about them.
    """
    sums = sums or reckoning(room, _NAME, own.path)
    side, kind = "right" if own.at_right else "left", own.place.case.spec.kind
    made = {"base": f'a blind corner base: blind = "{side}"; or diagonal = "{side}"',
            "wall": f'a diagonal corner: diagonal = "{side}"'}  # fmt: skip
    return (
        *((made[kind],) if kind in made else ()),
        "open shelves in the corner",
        tell(
            "the corner left empty: cases that end {} before it, each with its width, and {} = "
            '"open" under [run.{}]',
            sums.length(round_it.place.case.depth),
            side,
            own.place.run.spec.key,
        ),
    )


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
