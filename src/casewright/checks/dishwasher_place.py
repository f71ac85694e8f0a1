"""Dishwashers far from the sink, or so near a corner that nobody stands beside the open door.

Dishes go from the sink into the machine, dripping, and its hoses end at the sink's drain. Planning
guidelines ask for no more than 36 in (915 mm) from the sink's edge to the dishwasher's, and for 21
in (535 mm) to stand between it and a run round the corner. The sink is counted by the edge of its
case. Sinks are looked for in its own run, and in others on the same wall; where the only sink
stands on another wall, that is told too; one across the corner stands beside its neighbours on
both. Appliances that the job calls `washes = true` are looked
at.

Passes
------
A dishwasher beside the sink base.

Fails
-----
One with a base of 42 in between.

Sources
-------
`kitchen-planning`: both read in a secondary copy.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.model import Appliance, Room, Run
from casewright.room.run_ends import SIDES
from casewright.room.trims.bends import bend_at

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    if not any(each.washes for each in room.spec.appliances):
        return
    for run in room.runs:
        for each in run.appliances:
            if each.spec.washes:
                yield from _from_sink(room, run, each)
                yield from _from_corner(room, run, each)


def _from_sink(room: Room, run: Run, each: Appliance) -> Iterator[Breach]:
    sinks = [case for case in room.boxes if case.spec.sink]
    if not sinks:
        return
    most = by_unit(room, "36", "915")
    near = run.begins.value + each.start.value
    gaps = []
    for other in room.runs:
        if other is not run and (not run.spec.on or other.spec.on != run.spec.on):
            continue
        begins = other.begins.value
        for case, start in zip(other.cases, other.starts, strict=True):
            if case.spec.sink:
                left = begins + start.value
                right = left + case.overall_width.value
                gaps.append(max(left - near - each.width.value, near - right, Fraction(0)))
    gaps += _round_corners(room, run, each)
    if gaps and min(gaps) <= most:
        return
    far = length(room, min(gaps)) if gaps else "another wall"
    nearer = (f"the two {length(room, min(gaps) - most)} nearer to each other",) if gaps else ()
    where = f"{far} from the sink" if gaps else "on another wall than the sink"
    yield _breach(
        each,
        f"{each.spec.title} stands {where}; planning guidelines ask for {length(room, most)} at "
        "most",
        (far, length(room, most)),
        ("a place in the run beside the sink's case", *nearer),
    )


def _round_corners(room: Room, run: Run, each: Appliance) -> Iterator[Fraction]:
    """How far it stands from a sink across the corner that its run begins or ends at [mm]."""
    sinks = {case.key: case for case in room.boxes if case.spec.sink and case not in run.cases}
    ends = {"left": each.start.value,
            "right": run.length.value - each.start.value - each.width.value}  # fmt: skip
    for side in SIDES:
        case = sinks.get(bend_at(room.spec, run.spec, side) or "")
        if case is not None:
            yield max(ends[side] - case.depth.value, Fraction(0))


def _from_corner(room: Room, run: Run, each: Appliance) -> Iterator[Breach]:
    """Room to stand between it and the fronts round the corner."""
    least = by_unit(room, "21", "535")
    ends = ((run.spec.left, each.start.value),
            (run.spec.right, run.length.value - each.start.value - each.width.value))  # fmt: skip
    for end, free in ends:
        if end == "corner" and free < least:
            yield _breach(
                each,
                f"beside {each.spec.title} {length(room, free)} are left up to the fronts round "
                f"the corner; {length(room, least)} to stand in are asked for",
                (length(room, free), length(room, least)),
                (f"{length(room, least - free)} more of a case between it and the corner",),
            )


def _breach(each: Appliance, says: str, sizes: tuple[str, str], ways: tuple[str, ...]) -> Breach:
    return Breach(
        f"appliance.{each.spec.key}", says, measured=sizes[0], limit=sizes[1], remedies=ways
    )


RULE = Rule("dishwasher place", Severity.NOTE, __doc__ or "", "kitchen-planning", _examine)
