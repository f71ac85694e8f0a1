"""Cases before what is on the wall, or where a case of another run stands.

A case cannot stand before a window, a door, a soffit or what already stands there. Before an
outlet, a switch, a pipe or a vent it can, when its back gets an opening for it and it stays within
reach: local codes and the licensed trades come first, above all for gas and wiring. Nor can
two runs of a wall have the same place: wall cases end beside a tall one.

Passes
------
A base case under a window whose casing begins 42 in above the floor.

Fails
-----
A wall case before the same window; a wall case over whose place a pantry rises.

Sources
-------
`common practice`: casings count to their outer edges, read in the direction that leaves less.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import length, reckoning
from casewright.dims import Dim, greatest, least, tell
from casewright.findings import Reckoning, Severity
from casewright.room.model import Room
from casewright.room.on_walls import (
    CasePlace,
    ThingEdges,
    cases_on_walls,
    edges_of,
    thing_edges,
)
from casewright.survey.fixed_things import PlacedThing
from casewright.survey.specs import is_small

__all__ = ["RULE"]

_NAME = "in the way"


def _examine(room: Room) -> Iterator[Breach]:
    places = tuple(cases_on_walls(room))
    for index, each in enumerate(places):
        others = [before for before in places[:index] if _share(room, each, before)]
        if others:
            yield _one_place(room, each, others)
        for thing in each.wall.things:
            plain = thing_edges(room, thing)
            edges = edges_of(room, thing) if plain and _meet(room, each, plain) else None
            if edges is not None:
                yield _breach(room, each, thing, edges)


_Edges = tuple[Fraction, Fraction, Fraction, Fraction]


def _meet(room: Room, each: CasePlace, edges: _Edges) -> bool:
    """Whether they share more than what parts are rounded by."""
    left, right, low, high = edges
    grid = room.spec.style["cut_step"].value
    if left < right:
        left, right = left + grid, right - grid
    along = each.left < right and left < each.right if left < right else (
        each.left < left < each.right
    )  # fmt: skip
    return along and each.bottom < high and low < each.top


def _share(room: Room, each: CasePlace, other: CasePlace) -> bool:
    """Whether cases of two runs on a wall stand in one another."""
    edges = (other.left, other.right, other.bottom, other.top)
    apart = each.run is other.run or each.wall is not other.wall
    return not apart and _meet(room, each, edges)


def _one_place(room: Room, each: CasePlace, others: Sequence[CasePlace]) -> Breach:
    """A case where those of a run listed before its own stand."""
    titles = " and ".join(other.case.spec.title for other in others)
    own = reckoning(room, _NAME, each.case.key)
    left = greatest(each.left_edge, least(*(other.left_edge for other in others)))
    right = least(each.right_edge, greatest(*(other.right_edge for other in others)))
    left, right = own.let("left", left), own.let("right", right)
    ends = (
        f"{each.run.spec.title} as far as that: "
        f'before = "{others[0].case.key}", or after = "{others[-1].case.key}"'
    )
    return Breach(
        each.case.key,
        tell(
            "{} and {} have one place: both are to stand from {} to {} along {}",
            each.case.spec.title, titles, own.length(left), own.length(right),
            each.wall.spec.title,
        ),
        measured=own.length(right - left, "shared").text,
        limit=length(room, Fraction(0)),
        remedies=(ends, *_in_one_run(each, others[0])),
        own=own,
    )  # fmt: skip


def _in_one_run(each: CasePlace, other: CasePlace) -> Iterator[str]:
    if not (each.case.spec.is_hung or other.case.spec.is_hung):
        yield f"both in one run: {each.case.spec.title} beside {other.case.spec.title}"


def _breach(room: Room, each: CasePlace, thing: PlacedThing, edges: ThingEdges) -> Breach:
    left, right, low, high = edges
    own = reckoning(room, _NAME, f"{each.case.key}.{thing.spec.key}")
    title, name = each.case.spec.title, thing.spec.title
    if is_small(thing.spec.kind):
        along = (left + right) / 2 - (each.left_edge + each.case.left_frame)
        gas = ("a licensed trade looks at it first",) if thing.spec.kind == "gas" else ()
        return Breach(
            each.case.key,
            tell(
                "{} stands before the {}, {} from its left side and {} above the floor",
                title, _named(thing), own.length(along, "along"), own.length(low, "low"),
            ),
            remedies=(
                *gas,
                "cut its back out there, larger than the thing, and keep it within reach",
                "have it moved by the trade whose it is",
            ),
            severity=Severity.CARE,
            own=own,
        )  # fmt: skip
    shared = least(each.right_edge, right) - greatest(each.left_edge, left)
    lap, (bottom, top) = own.length(shared, "lap"), _ends(room, own, each)
    return Breach(
        each.case.key,
        tell(
            "{} stands before {}: {} of its width lies before it, from {} to {} above the floor",
            title, name, lap, own.length(greatest(bottom, low), "from"),
            own.length(least(top, high), "to"),
        ),
        measured=lap.text,
        limit=length(room, Fraction(0)),
        remedies=(
            tell("move or narrow the case by {}", lap),
            *_over_or_under(own, each, (top - low, high - bottom)),
        ),
        own=own,
    )  # fmt: skip


def _ends(room: Room, own: Reckoning, each: CasePlace) -> tuple[Dim, Dim]:
    """Its lower and its upper end above the floor [mm]."""
    case = each.case
    foot = room.wall_bottom if case.spec.is_hung else own.none
    return foot + case.standing if case.spec.hood else foot, foot + case.height


def _named(thing: PlacedThing) -> str:
    """What it is and what it is called, once where the name says both: 'left outlet'."""
    kind, name = thing.spec.kind, thing.spec.title
    return name if kind in name.split() else f"{kind} {name}"


def _over_or_under(own: Reckoning, each: CasePlace, moves: tuple[Dim, Dim]) -> Iterator[str]:
    """How much lower it would end under the thing, or how much higher it would begin over it."""
    lower, higher = moves
    if lower.value < each.top - each.bottom:
        yield tell("a case {} lower at its top", own.length(lower, "lower"))
    if each.case.spec.is_hung:
        yield tell("one that hangs {} higher", own.length(higher, "higher"))


RULE = Rule(_NAME, Severity.STOP, __doc__ or "", "common practice", _examine)
