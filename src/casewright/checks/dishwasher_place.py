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

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import Dim, greatest, tell
from casewright.findings import Limit, Reckoning, Severity
from casewright.room.model import Appliance, Room, Run
from casewright.room.run_ends import SIDES
from casewright.room.trims.bends import bend_at

__all__ = ["RULE"]

_NAME = "dishwasher place"
_PLANNING = "kitchen-planning"
_MOST = Limit(
    "dishwasher.most", "36", "915", "from the sink's edge to the dishwasher's", _PLANNING
)
_ASK = "planning guidelines ask for {} at most"
_BESIDE = "a place in the run beside the sink's case"
_LEAST = Limit("dishwasher.least", "21", "535", "to stand beside it, up to a corner", _PLANNING)


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
    own = reckoning(room, _NAME, f"{each.spec.key}.sink")
    near, most = run.begins + each.start, own.limit(_MOST)
    gaps: list[Dim] = []
    for other in room.runs:
        if other is not run and (not run.spec.on or other.spec.on != run.spec.on):
            continue
        for case, start in zip(other.cases, other.starts, strict=True):
            if case.spec.sink:
                left = other.begins + start
                gaps.append(greatest(left - near - each.width, near - left - case.overall_width))
    gaps += _round_corners(room, run, each)
    if gaps and min(gap.value for gap in gaps) <= most.value:
        return
    told = own.length(most)
    if not gaps:
        yield _breach(
            each,
            tell("{} stands on another wall than the sink; {}", each.spec.title, tell(_ASK, told)),
            ("another wall", told.text), (_BESIDE,), own,
        )  # fmt: skip
        return
    gap = own.let("from_sink", min(gaps, key=lambda dim: dim.value))
    far, nearer = own.length(gap), own.length(gap - most, "nearer")
    yield _breach(
        each,
        tell("{} stands {} from the sink; {}", each.spec.title, far, tell(_ASK, told)),
        (far.text, told.text),
        (_BESIDE, tell("the two {} nearer to each other", nearer)),
        own,
    )


def _round_corners(room: Room, run: Run, each: Appliance) -> Iterator[Dim]:
    """How far it stands from a sink across the corner that its run begins or ends at [mm]."""
    sinks = {case.key: case for case in room.boxes if case.spec.sink and case not in run.cases}
    ends = {"left": each.start, "right": run.length - each.start - each.width}
    for side in SIDES:
        case = sinks.get(bend_at(room.spec, run.spec, side) or "")
        if case is not None:
            yield ends[side] - case.depth


def _from_corner(room: Room, run: Run, each: Appliance) -> Iterator[Breach]:
    """Room to stand between it and the fronts round the corner."""
    ends = {"left": (run.spec.left, each.start),
            "right": (run.spec.right, run.length - each.start - each.width)}  # fmt: skip
    for side, (end, free) in ends.items():
        own = reckoning(room, _NAME, f"{each.spec.key}.{side}")
        least = own.limit(_LEAST)
        if end == "corner" and free.value < least.value:
            told, asked = own.length(free, "free"), own.length(least)
            more = own.length(least - free, "more")
            yield _breach(
                each,
                tell(
                    "beside {} {} are left up to the fronts round the corner; {} to stand in are "
                    "asked for",
                    each.spec.title, told, asked,
                ),
                (told.text, asked.text),
                (tell("{} more of a case between it and the corner", more),),
                own,
            )  # fmt: skip


def _breach(
    each: Appliance, says: str, sizes: tuple[str, str], ways: tuple[str, ...], own: Reckoning
) -> Breach:
    path, (measured, limit) = f"appliance.{each.spec.key}", sizes
    return Breach(path, says, measured=measured, limit=limit, remedies=ways, own=own)


RULE = Rule(_NAME, Severity.NOTE, __doc__ or "", "kitchen-planning", _examine)
