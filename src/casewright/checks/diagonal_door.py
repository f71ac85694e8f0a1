"""The pull of a diagonal corner's door in the way of what opens beside it.

The door keeps its square edges behind the planes of the neighbours' sides; its pull stands out
square to it, at 45 degrees toward the one beside its free edge, past that plane as soon as it
stands out more than it sits from the edge. A drawer, a door or an appliance there strikes it as
it opens. And where the door is opened to a right angle its own pull must clear theirs.

Passes
------
A door whose pull sits 2 1/2 in from its edge and stands out 1 3/8.

Fails
-----
The same pull 3/4 in from the edge, a drawer beside it.

Sources
-------
`common practice`: the place of a pull past a plane at 45 degrees, by plane geometry; 1/8 in, or
3 mm, of air; a pull's projection by its sheet.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from casewright.casework.case_mouth import CaseMouth
from casewright.casework.cases import Case, Door, Front
from casewright.casework.features import Bores
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import flatter, pull_of, reckoning
from casewright.dims import Origin, tell
from casewright.findings import Limit, Severity
from casewright.room.model import Room
from casewright.room.run_ends import SIDES
from casewright.room.specs import RunSide
from casewright.room.trims.bends import bend_at

__all__ = ["RULE"]

_NAME = "diagonal door"
_AIR = Limit("diagonal_door.air", "1/8", "3", "air between what opens and what is beside it")
_PAST = Origin(
    "solved", "from the plane of the side beside it to the pull, that stands out square to its "
    "door at 45 degrees: plane geometry",
)  # fmt: skip

_ROOT = Fraction(99, 70)  # about the root of 2


class _Beside(NamedTuple):
    """What stands beside a corner, and the side of it that the corner is at.

    `fronts` are told with the air that each leaves to its own side [mm]; an appliance has none.
    """

    title: str
    key: str
    fronts: tuple[tuple[Front | None, Fraction], ...]


def _examine(room: Room) -> Iterator[Breach]:
    cases = {case.key: case for case in room.cases}
    for run in room.runs:
        for side in SIDES:
            key = bend_at(room.spec, run.spec, side)
            case = cases[key] if key is not None else None
            if case is None or case.mouth is None:
                continue
            owns = case.key in run.spec.cases
            places = run.spec.places if side == "left" else tuple(reversed(run.spec.places))
            beside = places[1:2] if owns else places[:1]
            own = _own_side(case.mouth) if owns else _far_side(case.mouth)
            for other in beside:
                yield from _judge(room, case, own, _beside(room, other, side))


def _own_side(mouth: CaseMouth) -> RunSide:
    """Where the neighbour in the run of the corner stands, seen square to its door."""
    return "right" if mouth.corner == "left" else "left"


def _far_side(mouth: CaseMouth) -> RunSide:
    return "left" if mouth.corner == "left" else "right"


def _beside(room: Room, key: str, side: RunSide) -> _Beside:
    """What a place of a run is closed with, the corner at an end of that run."""
    for case in room.cases:
        if case.key == key:
            wide = case.overall_width.value
            fronts = [(f, f.x.value if side == "left" else wide - f.x.value - f.width.value)
                      for f in case.fronts]  # fmt: skip
            return _Beside(case.spec.title, key, tuple(fronts))
    title = next((each.title for each in room.spec.appliances if each.key == key), key)
    return _Beside(title, key, ((None, Fraction(0)),))


def _judge(room: Room, case: Case, side: RunSide, other: _Beside) -> Iterator[Breach]:
    for door in case.fronts:
        if not isinstance(door, Door) or door.hinge_side == side or not door.pull:
            continue
        spots = _pull(case, door)
        if spots is None or case.mouth is None:
            continue
        (low, high), edge = spots
        past = _past(room, case.mouth, door, edge, side)
        air = _AIR.of(room.spec.unit)
        for front, own in other.fronts:
            if front is not None and not _level(front, low, high):
                continue
            left = own - past
            if left < air:
                yield _breach(room, case.mouth, door, (other, front), left)
                return


def _level(front: Front, low: Fraction, high: Fraction) -> bool:
    return front.y.value < high and low < front.y.value + front.height.value


def _pull(
    case: Case, door: Door
) -> tuple[tuple[Fraction, Fraction], tuple[Fraction, Fraction]] | None:
    """From where to where up, and across in the mouth's axes, a pull's holes are [mm]."""
    for part in case.parts:
        for bores in part.features:
            if not isinstance(bores, Bores) or bores.path != door.pull:
                continue
            size, way = part.finished, part.placed.orientation
            found: dict[int, list[Fraction]] = {0: [], 1: []}
            for along, across in bores.places:
                at = (
                    along.value if bores.datum_l == "l0" else size.length.value - along.value,
                    across.value if bores.datum_w == "w0" else size.width.value - across.value,
                )
                for direction, own in zip((way.length, way.width), at, strict=True):
                    origin = (part.placed.x, part.placed.y)[min(direction.axis, 1)].value
                    found[min(direction.axis, 1)].append(origin + direction.sign * own)
            return (min(found[1]), max(found[1])), (min(found[0]), max(found[0]))
    return None


def _past(
    room: Room, mouth: CaseMouth, door: Door, edge: tuple[Fraction, Fraction], side: RunSide
) -> Fraction:
    """How far the tip of a pull stands past the plane of the neighbour's side [mm]."""
    middle = mouth.width.value / 2
    aside = edge[1] - middle if side == "right" else middle - edge[0]
    tip = door.z.value + door.thickness.value - mouth.front.value
    tip += room.spec.hardware.pull.projection.value
    leg = mouth.reach.value - mouth.side.value
    return (mouth.reach.value + _ROOT * (tip + aside)) / 2 - leg


def _breach(
    room: Room, mouth: CaseMouth, door: Door, beside: tuple[_Beside, Front | None], left: Fraction
) -> Breach:
    (other, front), own = beside, reckoning(room, _NAME, f"{door.path}.{beside[0].key}")
    what = f"the {front.title} of {other.title}" if front is not None else other.title
    out, need = pull_of(room, own, "projection"), own.limit(_AIR)
    rests_on = (mouth.width, mouth.reach, mouth.side, mouth.front, door.z, door.thickness, out)
    air = own.worked("air", left, _PAST, *rests_on)
    told, least = own.length(air), own.length(need)
    says = tell("the pull of {} leaves {} beside {}", door.path, told, what)
    if left < 0:
        says = tell(
            "the pull of {} stands {} before {}",
            door.path,
            own.length(-air, "past"),
            what,
        )
    more = own.let("more", (need - air) * _ROOT)
    free = "left" if door.hinge_side == "right" else "right"
    return Breach(
        door.path,
        says + ", which strikes it as it opens",
        measured=told.text,
        limit=least.text,
        remedies=(
            tell(
                "move it {} farther in from the door's {} edge: pull_edge",
                own.length(more), free,
            ),
            *flatter(room, own, more),
            f'hinge = "{free}", if nothing opens at its other side',
        ),
        severity=Severity.STOP if left < 0 else None,
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
