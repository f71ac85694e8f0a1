"""Runs: cases side by side along a wall, with fillers that close the sum."""

from __future__ import annotations

from collections.abc import Container, Iterator, Mapping
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.fronts import end_stock
from casewright.casework.house import House
from casewright.dims import Dim, Place, Way, greatest, least, reading_causes, total
from casewright.findings import Finding, Severity
from casewright.room.appliances import appliance_widths
from casewright.room.fillers import FillerEnd, build_filler
from casewright.room.model import Appliance, Filler, Run
from casewright.room.run_ends import SIDES, corner_filler, pull_off
from casewright.room.specs import JobSpec, RunSide, RunSpec
from casewright.survey.survey import Survey
from casewright.survey.walls import SurveyedWall, width_between

__all__ = ["place_run", "run_width", "wall_width"]


def _place(house: House, run: RunSpec) -> Place:
    return house.chain.place(f"run.{run.key}")


def wall_width(house: House, spec: JobSpec, run: RunSpec, measured: Survey) -> Dim | None:
    """The least of the readings of the wall, or None for a free run.

    On a surveyed wall those count that were read where its cases stand or hang.
    """
    known = house.chain.nodes.get(f"run.{run.key}.wall")
    if known is not None:
        return known
    wall = measured.walls.get(run.on)
    if wall is not None:
        readings = list(width_between(wall, *_heights(house, spec, run)))
    else:
        readings = _own_readings(house, run)
    if not readings:
        return None
    place = _place(house, run)
    if wall is not None and (run.after or run.before):
        return place.let("wall", _between(wall, run, least(*readings)))
    if len(readings) == 1:
        return place.let("wall", readings[0])
    narrow = place.let("wall", least(*readings))
    place.let("wall_spread", greatest(*readings) - narrow)
    return narrow


def _between(wall: SurveyedWall, run: RunSpec, width: Dim) -> Dim:
    """From the right edge of one thing, or the wall's end, to the left edge of another.

    Raises
    ------
    ValueError
        When an edge is not known: the job file's checks refuse that first.
    """
    things = {thing.spec.key: thing for thing in wall.things}
    end = things[run.before].left if run.before else width
    start = things[run.after].right if run.after else None
    if end is None or (run.after and start is None):
        msg = f"run {run.key} stands between edges that are not known"
        raise ValueError(msg)
    return end if start is None else end - start


def _heights(house: House, spec: JobSpec, run: RunSpec) -> tuple[Fraction, Fraction]:
    """From where to where the cases of a run reach above the floor [mm]."""
    lift = house.style_dim("wall_bottom").value
    members = [case for case in spec.cases if case.key in run.cases]
    hung = [case.is_hung for case in members]
    tops = [case.height.value + lift * hangs for case, hangs in zip(members, hung, strict=True)]
    return (lift if all(hung) else Fraction(0)), max(tops)


def _own_readings(house: House, run: RunSpec) -> list[Dim]:
    place = _place(house, run)
    tape = house.shop.tools.get("tape")
    sigma, limit = (tape.sigma, tape.limit) if tape else (Fraction(1, 2), Fraction(1))
    return [
        place.enter(
            f"wall_{n}", given.value, given.origin,
            causes=reading_causes(f"run.{run.key}.wall_{n}", sigma, limit, "tape"),
        )
        for n, given in enumerate(run.widths, start=1)
    ]  # fmt: skip


def run_width(
    house: House, spec: JobSpec, run: RunSpec, measured: Survey, cases: Mapping[str, Case]
) -> Dim:
    """Width of each case of a run that asks for equal shares [mm].

    The space left by cases of given width, by frames on finished ends and by the fillers wished
    for is shared out, rounded down on the cutting grid; the rest goes into the fillers.

    Parameters
    ----------
    cases
        Those built already: of a run in a corner the ones round it.

    Raises
    ------
    ValueError
        When the run has no wall readings: the job file's checks refuse that first.
    """
    known = house.chain.nodes.get(f"run.{run.key}.share")
    if known is not None:
        return known
    wall = wall_width(house, spec, run, measured)
    if wall is None:
        msg = f"run {run.key} has no wall readings to share out"
        raise ValueError(msg)
    place = _place(house, run)
    free = wall
    for taken in _at_ends(house, spec, run, cases):
        free = free - taken
    for taken in appliance_widths(house, spec, run).values():
        free = free - taken
    by_key = {case.key: case for case in spec.cases}
    sharing = 0
    for key in run.cases:
        given = by_key[key].width
        # A face frame is as wide as its case, whatever is on its ends.
        for _ in () if by_key[key].framed else by_key[key].dressed:
            free = free - house.thickness(end_stock(by_key[key]))
        if given is None:
            sharing += 1
        else:
            free = free - place.given(f"width_of_{key}", given)
    step = house.style_dim("cut_step").value
    if not step:
        return place.let("share", free / sharing)
    share, _ = place.rounded("share", free / sharing, step, Way.DOWN)
    return share


def _at_ends(
    house: House, spec: JobSpec, run: RunSpec, cases: Mapping[str, Case]
) -> Iterator[Dim]:
    """What fillers at walls are wished to take, and what corners do [mm]."""
    by_key = {case.key: case for case in spec.cases}
    for side in SIDES:
        off = pull_off(house, run, by_key[run.cases[0 if side == "left" else -1]], side)
        if off is not None:
            yield off
        elif run.end(side) == "wall":
            yield house.style_dim("filler")
        elif run.end(side) == "corner":
            yield corner_filler(house, spec, run, side, cases).first_edge


def place_run(
    house: House, spec: JobSpec, run: RunSpec, cases: Mapping[str, Case], measured: Survey
) -> tuple[Run, tuple[Finding, ...]]:
    """Put the cases of a run side by side; what the wall leaves over becomes fillers."""
    place = _place(house, run)
    members = tuple(cases[key] for key in run.cases)
    widths = {case.key: case.overall_width for case in members}
    widths |= appliance_widths(house, spec, run)
    taken = place.let("cases_width", total(*(widths[key] for key in run.places)))
    wall = wall_width(house, spec, run, measured)
    gaps, findings = _gaps(house, spec, run, cases, wall, taken)
    starts: dict[str, Dim] = {}
    x = _whole(gaps["left"])
    for key in run.places:
        starts[key] = place.let(f"start_{key}", x + house.zero)
        x = x + widths[key]
    end = place.let("cases_end", x)
    length = place.let("length", end + _whole(gaps["right"]))
    edges = {"left": starts[run.places[0]], "right": end}
    fillers = tuple(
        _filler(house, spec, run, FillerEnd(
            side, members[0] if side == "left" else members[-1], space, beyond, edges[side],
        ), measured)
        for side, (beyond, space) in gaps.items()
        if space.value > 0
    )  # fmt: skip
    own = tuple(starts[key] for key in run.cases)
    hung = members[0].spec.is_hung
    lift = house.style_dim("wall_bottom") if hung else house.zero
    return (
        Run(run, members, own, length, end, lift, fillers,
            appliances=_appliances(spec, widths, starts),
            pulled_off=_bare_ends(house, run, cases, gaps) if wall is not None else {}),
        findings,
    )  # fmt: skip


def _appliances(
    spec: JobSpec, widths: Mapping[str, Dim], starts: Mapping[str, Dim]
) -> tuple[Appliance, ...]:
    """Those that stand in a run, in the openings they were given."""
    return tuple(
        Appliance(each, widths[each.key], starts[each.key])
        for each in spec.appliances
        if each.key in starts
    )


_Gaps = Mapping[RunSide, tuple[Dim, Dim]]


def _gaps(
    house: House,
    spec: JobSpec,
    run: RunSpec,
    cases: Mapping[str, Case],
    wall: Dim | None,
    taken: Dim,
) -> tuple[_Gaps, tuple[Finding, ...]]:
    """At each end, what stands round the corner, and from there to the first case [mm]."""
    if wall is None:
        return dict.fromkeys(SIDES, (house.zero, house.zero)), ()
    reaches = {
        side: corner_filler(house, spec, run, side, cases)
        for side in SIDES
        if run.end(side) == "corner"
    }
    for reach in reaches.values():
        wall = wall - reach.first_edge
    blind = _blind(house, run, cases)
    for off in blind.values():
        wall = wall - off
    spaces, findings = _shares(house, run, _place(house, run).let("rest", wall - taken), blind)
    gaps = {
        side: (
            reaches[side].beyond,
            reaches[side].need + space if space.value else reaches[side].need,
        )
        if side in reaches
        else (blind.get(side, house.zero), space)
        for side, space in spaces.items()
    }
    return gaps, findings


def _blind(house: House, run: RunSpec, cases: Mapping[str, Case]) -> dict[RunSide, Dim]:
    """Ends where a blind corner base stands off the corner wall, and how far [mm]."""
    ends = {"left": cases[run.cases[0]], "right": cases[run.cases[-1]]}
    found = {side: pull_off(house, run, ends[side].spec, side) for side in SIDES}
    return {side: off for side, off in found.items() if off is not None}


def _bare_ends(
    house: House, run: RunSpec, cases: Mapping[str, Case], gaps: _Gaps
) -> dict[RunSide, Dim]:
    """Ends without a filler: beside a blind corner base, or at the leg of a diagonal corner."""
    legs = {
        side: beyond for side, (beyond, space) in gaps.items()
        if run.end(side) == "corner" and not space.value
    }  # fmt: skip
    return _blind(house, run, cases) | legs


def _whole(gap: tuple[Dim, Dim]) -> Dim:
    """What stands round a corner and the gap before it, as one."""
    beyond, space = gap
    if not space.value:
        return beyond
    return beyond + space if beyond.value else space


def _shares(
    house: House, run: RunSpec, rest: Dim, blind: Container[RunSide]
) -> tuple[dict[RunSide, Dim], tuple[Finding, ...]]:
    """What each end takes of what the cases leave: the walls, else the corners, alike."""
    place = _place(house, run)
    walls = [side for side in SIDES if run.end(side) == "wall" and side not in blind]
    closed = "open" not in (run.left, run.right)
    ends = walls or [side for side in SIDES if run.end(side) == "corner" and closed]
    share = place.let("filler_space", rest / len(ends)) if ends else house.zero
    spaces = {side: share if side in ends else house.zero for side in SIDES}
    if run.left_filler is not None and len(walls) == 2:
        spaces["left"] = place.given("left_filler", run.left_filler)
        spaces["right"] = place.let("right_filler", rest - spaces["left"])
        share = min(spaces.values(), key=lambda space: space.value)
    return spaces, tuple(_space(house, run, rest, share, bool(walls)))


def _space(house: House, run: RunSpec, rest: Dim, share: Dim, closed: bool) -> list[Finding]:
    least_width = house.style_dim("filler_least")
    # Each case is cut to the grid, and comes out up to half a step wider than asked for.
    if rest.value < -house.style_dim("cut_step").value * len(run.cases) / 2:
        return [
            Finding(
                rule="run too long",
                severity=Severity.STOP,
                path=f"run.{run.key}.rest",
                says=f"the cases are {house.text(-rest)} wider than the wall",
                measured=house.text(-rest),
                limit=house.text(house.zero),
                source="common practice",
                remedies=(
                    *_anew(run),
                    f"make a case {house.text(-rest)} narrower",
                    "take a case out of the run",
                ),
            )
        ]
    if closed and share.value < least_width.value:
        return [
            Finding(
                rule="narrow filler",
                severity=Severity.CARE,
                path=share.path or f"run.{run.key}.filler_space",
                says=f"a filler {house.text(share)} wide can hardly be scribed and fastened",
                measured=house.text(share),
                limit=house.text(least_width),
                source="common practice",
                remedies=(
                    *_anew(run),
                    f"make a case {house.text(least_width - share)} narrower for each filler",
                    "leave out one case width so equal shares fit",
                ),
            )
        ]
    return []


def _anew(run: RunSpec) -> tuple[str, ...]:
    """Fillers take up what a wall was read anew by; beyond that the run is laid out anew."""
    if not run.solved:
        return ()
    return (f"lay the run out anew: casewright layout JOB --run {run.key}",)


def _filler(house: House, spec: JobSpec, run: RunSpec, end: FillerEnd, measured: Survey) -> Filler:
    """A thing on the wall that the run ends at is as upright as its edge was read."""
    wall = measured.walls.get(run.on)
    heights: list[tuple[Fraction | None, Dim]]
    if run.after if end.side == "left" else run.before:
        return build_filler(house, run, end, (), None)
    if wall is None:
        nodes = house.chain.nodes
        own = (nodes[f"run.{run.key}.wall_{n}"] for n, _ in enumerate(run.widths, start=1))
        heights = [(None, dim) for dim in own]
    else:
        counted = width_between(wall, *_heights(house, spec, run))
        heights = [(each.height, dim) for each, dim in wall.widths() if dim in counted]
    return build_filler(house, run, end, heights, wall)
