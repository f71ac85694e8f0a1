"""Less counter in the whole kitchen than planning guidelines ask for.

Cooking, washing up, bread box and mixer all want counter. Planning guidelines ask for 158 in (4015
mm) of front edge in all, 24 in (610 mm) deep; it is guidance, no code, and a small kitchen rarely
has it. Counted is what is over base cases and over what is no higher, each with its doors and what
the counter stands out before them, and over fillers; not sinks by their cases, nor what is cooked
on, nor in an inside corner what lies behind the edge of the other run's counter. What stands
already on a wall is not counted, nor are sides and backs of islands. That 15 in (380 mm) are free
above it is looked at by `over counter`. Nothing is said unless the job has a sink, what is cooked
on (`cooks = true`) and a refrigerator (`cools = true`).

Passes
------
Base cases of 160 in beside a sink, a range and a refrigerator.

Fails
-----
Base cases of 72 in beside the same three.

Sources
-------
`kitchen-planning`: 24 in read in a secondary copy, 158 in and 15 in from memory (an older figure
was 132 in for a small kitchen). How it is counted is this house's own.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.checks.counters import places_of
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import Dim, Origin, joined, tell, total
from casewright.findings import Limit, Severity
from casewright.room.footprints import counter_reach
from casewright.room.model import Room, Run
from casewright.room.run_ends import SIDES, thing_at
from casewright.room.specs import RunSide
from casewright.room.work_centres import centre_keys

__all__ = ["RULE"]

_NAME = "counter in all"
_PLANNING = "kitchen-planning"
_LEAST = Limit("counter_in_all.least", "158", "4015", "front edge of counter in all", _PLANNING)
_DEEP = Limit("counter_in_all.deep", "24", "610", "how deep counter counts", _PLANNING)
_FOLLOWS = Origin(
    "solved", "front edge of its counter, without sinks, what is cooked on, and what lies behind "
    "the edge of the counter round a corner",
)  # fmt: skip
_NONE = Origin("solved", "no counter of that depth")


def _examine(room: Room) -> Iterator[Breach]:
    if not any(each.cools for each in room.spec.appliances):
        return
    keys = centre_keys(room)
    if not all(keys.values()):
        return
    least = _LEAST.of(room.spec.unit)
    found = [(run, _front(room, run)) for run in room.runs]
    if sum((front for _, front in found), Fraction(0)) < least:
        yield _breach(room, keys["sink"][0][0], [(run, front) for run, front in found if front])


def _breach(room: Room, path: str, found: list[tuple[Run, Fraction]]) -> Breach:
    own = reckoning(room, _NAME, "room")
    fronts = [own.worked(run.spec.key, front, _FOLLOWS, *_widths(run)) for run, front in found]
    whole = own.let("total", total(*fronts)) if fronts else own.worked("total", Fraction(0), _NONE)
    told, least = own.length(whole), own.length(own.limit(_LEAST))
    each = joined(", ", (tell("{} in {}", own.length(front), run.spec.title)
                         for (run, _), front in zip(found, fronts, strict=True)))  # fmt: skip
    return Breach(
        path,
        tell(
            "{} of counter are {} deep{}; planning guidelines ask for {} in all",
            told, own.length(own.limit(_DEEP)), tell(" ({})", each) if each else "", least,
        ),
        measured=told.text,
        limit=least.text,
        remedies=(
            tell(
                "{} more of base cases, or an island",
                own.length(own.limit(_LEAST) - whole, "more"),
            ),
            "leave it, where the room gives no more",
        ),
        own=own,
    )  # fmt: skip


def _widths(run: Run) -> tuple[Dim, ...]:
    """What the counter of a run follows: what stands in it, and its fillers [mm]."""
    fillers = (filler.width for filler in run.fillers)
    return (*(case.overall_width for case in run.cases),
            *(each.width for each in run.appliances), *fillers)  # fmt: skip


def _front(room: Room, run: Run) -> Fraction:
    """Front edge of the counter of a run [mm]."""
    islands = {key for each in room.spec.islands for key in (each.front, each.back)}
    deep = Fraction(0) if run.spec.key in islands else _DEEP.of(room.spec.unit)
    places = [
        place
        for place in places_of(room, run)
        if place.what == "counter" and (place.deep is None or place.deep >= deep)
    ]
    spans = [(place.start, place.start + place.width) for place in places]
    if not spans:
        return Fraction(0)
    first = min(place.start for place in places_of(room, run))
    end = run.cases_end.value
    spans += [
        (first - each.width.value, first) if each.side == "left" else (end, end + each.width.value)
        for each in run.fillers
    ]
    low, high = (_edge(room, run, side) for side in SIDES)
    return sum((max(min(b, high) - max(a, low), Fraction(0)) for a, b in spans), Fraction(0))


def _edge(room: Room, run: Run, side: RunSide) -> Fraction:
    """Where it begins or ends, from the run's left datum, where another is round the corner."""
    end = Fraction(0) if side == "left" else run.length.value
    reach, wall = _reach_round(room, run, side), room.survey.walls.get(run.spec.on)
    if not reach or wall is None or wall.width is None:
        return end
    begins = run.begins.value
    if side == "left":
        return max(end, reach - begins)
    return min(end, wall.width.value - reach - begins)


def _reach_round(room: Room, run: Run, side: RunSide) -> Fraction:
    """How far the counter of what ends in the corner there stands out from the other wall [mm]."""
    far: RunSide = "right" if side == "left" else "left"
    found = Fraction(0)
    for corner in (each.spec for each in room.survey.corners.values() if not each.spec.outside):
        here, there = (corner.right, corner.left)[:: 1 if side == "left" else -1]
        for other in room.runs if here == run.spec.on else ():
            ends = other.spec.end(far) != "open" and not thing_at(other.spec, far)
            for case in other.cases if other.spec.on == there and ends else ():
                if case.spec.kind == "base" and case.spec.lid is None:
                    found = max(found, counter_reach(room, case))
    return found


RULE = Rule(_NAME, Severity.NOTE, __doc__ or "", "kitchen-planning", _examine)
