"""Cases beside a corner case that are not as deep as it reckons with.

A blind corner base hides behind the run round it, and its door begins before that run's fronts:
both come from how deep that run is, `corner_depth`. A diagonal corner stands between its
neighbours, its return sides as deep as they are: beside a deeper case its door strikes a front,
beside a shallower one a bare side looks out.

Passes
------
Wall cases 12 in deep on both sides of a diagonal corner of that depth.

Fails
-----
A wall case 14 in deep beside it. A run 25 in deep round a blind corner that reckons with 23 1/4.

Sources
-------
`common practice`.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, reckoning, style_of
from casewright.dims import Dim, tell
from casewright.findings import Reckoning, Severity
from casewright.room.model import Room, Run
from casewright.room.run_ends import SIDES, round_corner

__all__ = ["RULE"]

_NAME = "corner depth"


def _examine(room: Room) -> Iterator[Breach]:
    for one, other in _beside(room):
        asked = _asked(room, one)
        if asked is None or other.mouth is not None:
            continue
        off = abs(other.face_plane.value - asked)
        if off > by_unit(room, "1/16", "2"):
            yield _breach(room, one, other)


def _beside(room: Room) -> Iterator[tuple[Case, Case]]:
    """A corner case and a neighbour: along its own wall where it is diagonal, and round it."""
    runs = {run.spec.key: run for run in room.runs}
    for run in room.runs:
        for one, other in run.neighbours:
            if one.mouth is not None:
                yield one, other
            if other.mouth is not None:
                yield other, one
        yield from _round(room, run, runs)


def _round(room: Room, run: Run, runs: dict[str, Run]) -> Iterator[tuple[Case, Case]]:
    for side in SIDES:
        into = round_corner(room.spec, run.spec, side) if run.spec.end(side) == "corner" else None
        if into is not None:
            there = runs[into.key].cases
            one, own = (there[-1], run.cases[0]) if side == "left" else (there[0], run.cases[-1])
            yield one, own


def _asked(room: Room, case: Case) -> Fraction | None:
    """How deep a corner case reckons its neighbour to be [mm]; None for any other case."""
    if case.mouth is not None:
        return case.mouth.beside.value
    if case.spec.blind is None:
        return None
    given = case.spec.corner_depth or case.spec.overrides.get("base_depth")
    return (given or room.spec.style["base_depth"]).value


def _reckoned(room: Room, own: Reckoning, case: Case) -> Dim:
    """`_asked` of a corner case, as it follows [mm]."""
    if case.mouth is not None:
        return case.mouth.beside
    asked = case.spec.corner_depth
    if asked is not None:
        return own.given(f"{case.key}.corner_depth", asked)
    return style_of(room, own, "base_depth", case)


def _breach(room: Room, one: Case, other: Case) -> Breach:
    own = reckoning(room, _NAME, f"{one.key}.{other.key}")
    deep, given = own.length(other.face_plane, "depth"), own.length(_reckoned(room, own, one))
    key = "depth" if one.mouth is not None else "corner_depth"
    what = "return sides" if one.mouth is not None else "corner_depth"
    return Breach(
        one.key,
        tell(
            "{} is {} deep, but {} beside it in the corner reckons with {}, its {}",
            other.spec.title, deep, one.spec.title, given, what,
        ),
        measured=deep.text,
        limit=given.text,
        remedies=(
            tell("{} = {} for {}", key, deep, one.key),
            tell("make {} {} deep", other.key, given),
        ),
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
