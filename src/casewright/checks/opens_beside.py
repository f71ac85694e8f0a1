"""Doors and drawers beside a corner that strike what stands out from the wall round it.

Casings of windows and doors, radiators, pipes and appliances stand out from their wall. A drawer
beside the corner is pulled past them, and a door hinged there swings its pull against them, when
they stand out farther than the filler keeps the front away. Things whose edges or heights nobody
has read are passed over. A casing is reckoned 3/4 in (19 mm) where it was not measured; of
other things nothing is known until `out` is told.

Passes
------
Drawers with a filler of 3 in beside a corner, round which a door casing stands out 3/4.

Fails
-----
The same drawers with a filler of 1/2 in.

Sources
-------
`common practice`: the thickness of a casing; 1/8 in, or 3 mm, of air; a pull's projection and how
far an open door stands out by their sheets.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from casewright.casework.cases import Door, Front
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import flatter, hinge_of, pull_of, reckoning
from casewright.dims import Dim, tell
from casewright.findings import Limit, Reckoning, Severity
from casewright.room.model import Room
from casewright.room.on_walls import CasePlace, cases_on_walls
from casewright.survey.fixed_things import PlacedThing

__all__ = ["RULE", "filler_beside"]

_NAME = "opens beside"
_CASING = Limit("opens_beside.casing", "3/4", "19", "a casing where it was not measured")
_AIR = Limit("opens_beside.air", "1/8", "3", "air beside what opens")


class _Stands(NamedTuple):
    """Something on the wall round a corner: from where to where out of it, and how thick [mm]."""

    thing: PlacedThing
    near: Fraction
    far: Fraction
    out: Fraction


class _Opens(NamedTuple):
    """A front beside a corner: how far it comes out, and what air it leaves at the wall [mm]."""

    front: Front
    plane: Fraction
    reach: Fraction
    air: Fraction


def _examine(room: Room) -> Iterator[Breach]:
    places = list(cases_on_walls(room))
    for corner in room.survey.corners.values():
        if corner.spec.outside:
            continue
        for on, beside, at_right in ((corner.spec.left, corner.spec.right, True),
                                     (corner.spec.right, corner.spec.left, False)):  # fmt: skip
            things = list(_things(room, beside, at_right=not at_right))
            own = [place for place in places if place.wall.spec.key == on] if things else []
            for place in own:
                yield from _judge(room, place, things, at_right=at_right)


def _things(room: Room, key: str, *, at_right: bool) -> Iterator[_Stands]:
    """What stands out from a wall, from its end at the corner on."""
    wall = room.survey.walls.get(key)
    if wall is None or wall.width is None:
        return
    for thing in wall.things:
        if thing.left is None or thing.right is None:
            continue
        cased = thing.spec.kind in ("window", "door")
        given = thing.spec.out
        out = given.value if given is not None else _CASING.of(room.spec.unit) if cased else None
        if out is None:
            continue
        ends = (thing.left.value, thing.right.value)
        if at_right:
            ends = (wall.width.value - ends[1], wall.width.value - ends[0])
        yield _Stands(thing, *ends, out)


def _judge(
    room: Room, place: CasePlace, things: list[_Stands], *, at_right: bool
) -> Iterator[Breach]:
    width = place.wall.width
    if at_right and width is None:
        return
    for front in place.case.wall_fronts:
        opens = _opens(room, place, front, at_right=at_right)
        struck = [] if opens is None else [t for t in things if _strikes(room, place, opens, t)]
        if opens is not None and struck:
            yield _breach(room, place, opens, max(struck, key=lambda each: each.out), at_right)
            return


def filler_beside(
    room: Room, place: CasePlace, widest: Fraction | None, *, at_right: bool
) -> tuple[Fraction, PlacedThing] | None:
    """How much farther a case must stand off a corner to open past what stands out round it [mm].

    Parameters
    ----------
    widest
        Of its leaves, while its width is open: then one door may become a pair [mm].
    at_right
        Whether the corner is at the right end of its wall.

    Returns
    -------
    The most that is lacking, and what stands out there; None: nothing lacks.
    """
    found: tuple[Fraction, PlacedThing] | None = None
    for corner in room.survey.corners.values():
        ends = (corner.spec.left, corner.spec.right)
        on, round_it = ends if at_right else ends[::-1]
        if corner.spec.outside or on != place.wall.spec.key:
            continue
        for stands in _things(room, round_it, at_right=not at_right):
            for front in place.case.wall_fronts:
                opens = _opens(room, place, front, widest, at_right=at_right)
                if opens is None or not _strikes(room, place, opens, stands):
                    continue
                short = stands.out + _AIR.of(room.spec.unit) - opens.air
                if found is None or found[0] < short:
                    found = short, stands.thing
    return found


def _opens(
    room: Room, place: CasePlace, front: Front, widest: Fraction | None = None, *, at_right: bool
) -> _Opens | None:
    case, wall = place.case, place.wall.width
    if at_right:
        edge = place.left + front.x.value + front.width.value
        air = (Fraction(0) if wall is None else wall.value) - edge
    else:
        air = place.left + front.x.value
    plane = front.z.value + front.thickness.value
    drawer = next((each for each in case.drawers if each.front == front.path), None)
    if drawer is not None:
        return _Opens(front, plane, drawer.slide_length.value, air)
    hinged_there = isinstance(front, Door) and (front.hinge_side == "right") == at_right
    alone = case.spec.front is not None and case.spec.front.leaves == 1
    if hinged_there or (isinstance(front, Door) and widest is not None and not alone):
        sheet = room.spec.hardware
        pull = sheet.pull.projection.value if front.pull else Fraction(0)
        reach = max(front.width.value, widest or Fraction(0))
        return _Opens(front, plane, reach, air - pull - sheet.hinge.stand_off.value)
    return None


def _strikes(room: Room, place: CasePlace, opens: _Opens, stands: _Stands) -> bool:
    low = place.bottom + opens.front.y.value
    high = low + opens.front.height.value
    bottom, top = stands.thing.bottom, stands.thing.top
    beside = stands.near < opens.plane + opens.reach and opens.plane < stands.far
    level = (top is None or low < top.value) and (bottom is None or bottom.value < high)
    return beside and level and opens.air < stands.out + _AIR.of(room.spec.unit)


def _breach(
    room: Room, place: CasePlace, opens: _Opens, stands: _Stands, at_right: bool
) -> Breach:
    own, thing = reckoning(room, _NAME, opens.front.path), stands.thing.spec
    is_door = isinstance(opens.front, Door)
    air = own.let("air", _air(room, own, place, opens, at_right=at_right))
    out = _out(room, own, stands.thing)
    need = own.let("need", out + own.limit(_AIR))
    more = own.let("more", need - air)
    off = own.length(air if opens.air > 0 else own.none)
    kept = tell("{} off that wall", off) if opens.air > 0 else "against that wall"
    return Breach(
        opens.front.path,
        tell(
            "the {} of {} opens past {}, which stands out {} from the wall round the corner; {} "
            "comes {}",
            opens.front.title, place.case.spec.title, thing.title, own.length(out),
            "its pull" if is_door else "it", kept,
        ),
        measured=off.text,
        limit=own.length(need).text,
        remedies=(
            tell("a filler wider by {}", own.length(more)),
            "a front that does not open there, or a door hinged on its other side",
            *(flatter(room, own, more) if is_door else ()),
        ),
        own=own,
    )  # fmt: skip


def _out(room: Room, own: Reckoning, thing: PlacedThing) -> Dim:
    """How far it stands out from its wall [mm]."""
    walls = room.survey.walls.values()
    read = (wall.at.get(f"fixed.{thing.spec.key}.out") for wall in walls if thing in wall.things)
    return next(read, None) or own.limit(_CASING)


def _air(room: Room, own: Reckoning, place: CasePlace, opens: _Opens, *, at_right: bool) -> Dim:
    """Air between the wall round the corner and what comes past it, open [mm]."""
    front, air = opens.front, place.left_edge + opens.front.x
    if at_right and place.wall.width is not None:
        air = place.wall.width - (air + front.width)
    if not isinstance(front, Door):
        return air
    stand_off = hinge_of(room, own, "stand_off")
    return air - pull_of(room, own, "projection") - stand_off if front.pull else air - stand_off


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
