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
from casewright.checks.words import length
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.room.on_walls import CasePlace, cases_on_walls, thing_edges
from casewright.survey.fixed_things import PlacedThing
from casewright.survey.specs import is_small

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    places = tuple(cases_on_walls(room))
    for index, each in enumerate(places):
        others = [before for before in places[:index] if _share(room, each, before)]
        if others:
            yield _one_place(room, each, others)
        for thing in each.wall.things:
            edges = thing_edges(room, thing)
            if edges is not None and _meet(room, each, edges):
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
    left = max(each.left, min(other.left for other in others))
    right = min(each.right, max(other.right for other in others))
    ends = (
        f"{each.run.spec.title} as far as that: "
        f'before = "{others[0].case.key}", or after = "{others[-1].case.key}"'
    )
    return Breach(
        each.case.key,
        f"{each.case.spec.title} and {titles} have one place: both are to stand from "
        f"{length(room, left)} to {length(room, right)} along {each.wall.spec.title}",
        measured=length(room, right - left),
        limit=length(room, Fraction(0)),
        remedies=(ends, *_in_one_run(each, others[0])),
    )


def _in_one_run(each: CasePlace, other: CasePlace) -> Iterator[str]:
    if not (each.case.spec.is_hung or other.case.spec.is_hung):
        yield f"both in one run: {each.case.spec.title} beside {other.case.spec.title}"


def _breach(room: Room, each: CasePlace, thing: PlacedThing, edges: _Edges) -> Breach:
    left, right, low, high = edges
    title, name = each.case.spec.title, thing.spec.title
    if is_small(thing.spec.kind):
        middle, own = (left + right) / 2, each.left + each.case.left_frame.value
        where = f"{length(room, middle - own)} from its left side"
        gas = ("a licensed trade looks at it first",) if thing.spec.kind == "gas" else ()
        return Breach(
            each.case.key,
            f"{title} stands before the {_named(thing)}, {where} and "
            f"{length(room, low)} above the floor",
            remedies=(
                *gas,
                "cut its back out there, larger than the thing, and keep it within reach",
                "have it moved by the trade whose it is",
            ),
            severity=Severity.CARE,
        )
    lap = min(each.right, right) - max(each.left, left)
    return Breach(
        each.case.key,
        f"{title} stands before {name}: {length(room, lap)} of its width lies before it, from "
        f"{length(room, max(each.bottom, low))} to {length(room, min(each.top, high))} above the "
        "floor",
        measured=length(room, lap),
        limit=length(room, Fraction(0)),
        remedies=(
            f"move or narrow the case by {length(room, lap)}",
            *_over_or_under(room, each, (low, high)),
        ),
    )


def _named(thing: PlacedThing) -> str:
    """What it is and what it is called, once where the name says both: 'left outlet'."""
    kind, name = thing.spec.kind, thing.spec.title
    return name if kind in name.split() else f"{kind} {name}"


def _over_or_under(room: Room, each: CasePlace, span: tuple[Fraction, Fraction]) -> Iterator[str]:
    """How much lower it would end under the thing, or how much higher it would begin over it."""
    low, high = span
    if low > each.bottom:
        yield f"a case {length(room, each.top - low)} lower at its top"
    if each.case.spec.is_hung:
        yield f"one that hangs {length(room, high - each.bottom)} higher"


RULE = Rule("in the way", Severity.STOP, __doc__ or "", "common practice", _examine)
