"""Where runs stand along their walls: cases side by side, and what is left at their ends."""

from __future__ import annotations

from collections.abc import Container, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.fronts import end_stock
from casewright.casework.house import House
from casewright.casework.specs import CaseSpec
from casewright.dims import Dim, Origin, Place, Unit, Way, total
from casewright.findings import Finding
from casewright.room.appliances import appliance_widths
from casewright.room.door_swings import swing_met
from casewright.room.filler_findings import space_findings, wide_findings
from casewright.room.on_centre import centred_on, middle_of_thing, stands_on, stood_off
from casewright.room.run_ends import SIDES, corner_filler, pull_off, run_met, thing_at
from casewright.room.run_walls import RunEdges, run_begins, wall_width
from casewright.room.specs import JobSpec, RunSide, RunSpec
from casewright.sources import INCH
from casewright.survey.survey import Survey

__all__ = ["LEAST_SHARE", "RunStand", "Standing"]

_Gaps = Mapping[RunSide, tuple[Dim, Dim]]

LEAST_SHARE = Fraction(280)
"""Own judgement: a case whose width is left open is not worth building narrower [mm]."""

_NO_FILLER: dict[Unit, Fraction] = {"in": 12 * INCH, "mm": Fraction(300)}
"""Own judgement: what is wider beside a row with an open end is room, no filler [mm]."""


@dataclass(frozen=True, slots=True)
class RunStand:
    """Where the places of a run stand.

    Parameters
    ----------
    begins
        From the wall's left end to the run's left datum [mm].
    wall
        The stretch that it has [mm]; None: it is free of walls.
    widths, starts
        Of each case and appliance; left ends from the left datum [mm].
    end
        Right end of the last one from there [mm].
    gaps
        At each end, what stands round the corner, and from there to the first case [mm].
    bare
        Ends without a filler that stand off what is there, and how far [mm].
    """

    begins: Dim
    wall: Dim | None
    widths: Mapping[str, Dim]
    starts: Mapping[str, Dim]
    end: Dim
    gaps: _Gaps
    bare: Mapping[RunSide, Dim]
    findings: tuple[Finding, ...]

    @property
    def length(self) -> Dim:
        """From the left datum to the right end of the last case or filler [mm]."""
        return self.end + _whole(self.gaps["right"])


@dataclass(frozen=True, slots=True)
class Standing:
    """Runs of a job as they are placed, each once, after those whose cases it ends at.

    Parameters
    ----------
    cases
        Those built already, by key; it grows as they are.
    """

    house: House
    spec: JobSpec
    measured: Survey
    cases: dict[str, Case]
    _known: dict[str, RunStand]

    def of(self, run: RunSpec) -> RunStand:
        """Where a run stands, once its cases are built, and those of runs that it waits for."""
        if run.key not in self._known:
            self._known[run.key] = self._placed(run)
        return self._known[run.key]

    def share(self, run: RunSpec) -> Dim:
        """Width of each case of a run that asks for equal shares [mm].

        The space left by cases of given width, by frames on finished ends and by the fillers
        wished for is shared out, rounded down on the cutting grid; the rest goes into the fillers.

        Raises
        ------
        ValueError
            When the run has no wall readings: the job file's checks refuse that first.
        """
        house = self.house
        known = house.chain.nodes.get(f"run.{run.key}.share")
        if known is not None:
            return known
        wall = self._wall(run)
        if wall is None:
            msg = f"run {run.key} has no wall readings to share out"
            raise ValueError(msg)
        place = _place(house, run)
        free = wall
        for taken in self._at_ends(run):
            free = free - taken
        for taken in appliance_widths(house, self.spec, run).values():
            free = free - taken
        by_key = {case.key: case for case in self.spec.cases}
        sharing = 0
        for key in run.cases:
            given = by_key[key].width
            for taken in _beside(house, place, by_key[key]):
                free = free - taken
            if given is None:
                sharing += 1
            else:
                free = free - place.given(f"width_of_{key}", given)
        own = free / sharing
        if own.value < LEAST_SHARE and self._edges(run):
            why = Origin("chosen", "as narrow as is worth building: less is left between the runs")
            own = place.enter("least_share", LEAST_SHARE, why)
        step = house.style_dim("cut_step").value
        if not step:
            return place.let("share", own)
        share, _ = place.rounded("share", own, step, Way.DOWN)
        return share

    def _wall(self, run: RunSpec) -> Dim | None:
        known = self.house.chain.nodes.get(f"run.{run.key}.wall")
        if known is not None:
            return known
        return wall_width(self.house, self.spec, run, self.measured, self._edges(run))

    def _edges(self, run: RunSpec) -> RunEdges:
        """Edges of what it ends at: cases and appliances of other runs, sweeps of doors."""
        found: dict[RunSide, Dim] = {}
        for side in SIDES:
            name = "begins_at" if side == "left" else "ends_at"
            known = self.house.chain.nodes.get(f"run.{run.key}.{name}")
            if known is None and (edge := self._edge(run, side)) is not None:
                known = _place(self.house, run).let(name, edge)
            if known is not None:
                found[side] = known
        return found

    def _edge(self, run: RunSpec, side: RunSide) -> Dim | None:
        """Of a case or an appliance of another run, or of a door's sweep; None: at none of these.

        From the wall's left end [mm].
        """
        key, other = thing_at(run, side), run_met(self.spec, run, side)
        if other is not None:
            stand = self.of(other)
            edge = stand.starts[key]
            edge = edge + stand.begins if stand.begins.value else edge
            return edge + stand.widths[key] if side == "left" else edge
        swing = swing_met(self.spec, run, side)
        if swing is None:
            return None
        things = self.measured.walls[swing[0]].things
        door = next(each for each in things if each.spec.key == key)
        width = self.measured.walls[run.on].width
        if door.left is None or door.right is None or width is None:
            msg = f"run {run.key} ends at a door whose edges are not known"
            raise ValueError(msg)  # the job file's checks refuse that first
        sweep = door.right - door.left
        return sweep if side == "left" else width - sweep

    def _at_ends(self, run: RunSpec) -> Iterator[Dim]:
        """What fillers at walls are wished to take, and what corners do [mm]."""
        by_key = {case.key: case for case in self.spec.cases}
        for side in SIDES:
            end = by_key[run.cases[0 if side == "left" else -1]]
            off = pull_off(self.house, run, end, side)
            if off is not None:
                yield off
            elif run.end(side) == "wall":
                yield self.house.style_dim("filler")
            elif run.end(side) == "corner":
                yield corner_filler(self.house, self.spec, run, side, self.cases).first_edge

    def _placed(self, run: RunSpec) -> RunStand:
        """Cases side by side; what the wall leaves over stays at the ends."""
        house, place = self.house, _place(self.house, run)
        widths = {key: self.cases[key].overall_width for key in run.cases}
        widths |= appliance_widths(house, self.spec, run)
        taken = place.let("cases_width", total(*(widths[key] for key in run.places)))
        wall = self._wall(run)
        gaps, findings = self._gaps(run, wall, taken, widths)
        starts: dict[str, Dim] = {}
        before = [gap] if (gap := _whole(gaps["left"])).value else []
        for key in run.places:
            starts[key] = place.let(f"start_{key}", total(*before) if before else house.zero)
            before.append(widths[key])
        return RunStand(
            run_begins(house, run, self.measured, self._edges(run)), wall, widths, starts,
            place.let("cases_end", total(*before)), gaps,
            self._bare_ends(run, gaps) if wall is not None else {}, findings,
        )  # fmt: skip

    def _gaps(
        self, run: RunSpec, wall: Dim | None, taken: Dim, widths: Mapping[str, Dim]
    ) -> tuple[_Gaps, tuple[Finding, ...]]:
        """At each end, what stands round the corner, and from there to the first case [mm]."""
        house = self.house
        if wall is None:
            return dict.fromkeys(SIDES, (house.zero, house.zero)), ()
        reaches = {
            side: corner_filler(house, self.spec, run, side, self.cases)
            for side in SIDES
            if run.end(side) == "corner"
        }
        for reach in reaches.values():
            wall = wall - reach.first_edge
        blind = self._blind(run)
        for off in blind.values():
            wall = wall - off
        rest = _place(house, run).let("rest", wall - taken)
        spaces, findings = _shares(house, run, rest, blind)
        gaps = {
            side: (
                reaches[side].beyond,
                reaches[side].need + space if space.value else reaches[side].need,
            )
            if side in reaches
            else (blind.get(side, house.zero), space)
            for side, space in spaces.items()
        }
        if run.left == "open" and run.right in ("flush", "wall"):
            off = rest if run.right == "flush" else rest - spaces["right"]
            gaps["left"] = (off if off.value > 0 else house.zero, house.zero)
        elif (middle := self._middle(run)) is not None:
            off = stood_off(house, _place(house, run), run, middle, rest, widths)
            gaps["left"] = (off, house.zero)
        return gaps, findings

    def _middle(self, run: RunSpec) -> Dim | None:
        """Of what a row that closes against nothing stands on, from the wall's left end [mm]."""
        wish, other = stands_on(run), centred_on(self.spec, run)
        if wish is None or other is None:
            return None if wish is None else middle_of_thing(self.measured, run, wish[1])
        stand = self.of(other)
        start = stand.starts[wish[1]]
        start = start + stand.begins if stand.begins.value else start
        return start + stand.widths[wish[1]] / 2

    def _blind(self, run: RunSpec) -> dict[RunSide, Dim]:
        """Ends where a blind corner base stands off the corner wall, and how far [mm]."""
        ends = {"left": self.cases[run.cases[0]], "right": self.cases[run.cases[-1]]}
        found = {side: pull_off(self.house, run, ends[side].spec, side) for side in SIDES}
        return {side: off for side, off in found.items() if off is not None}

    def _bare_ends(self, run: RunSpec, gaps: _Gaps) -> dict[RunSide, Dim]:
        """Ends without a filler: beside a blind corner base, at the leg of a diagonal corner.

        An open one stands off where the row stands against what is at its other end.
        """
        legs = {
            side: beyond for side, (beyond, space) in gaps.items()
            if not space.value and (run.end(side) == "corner"
                                    or (run.end(side) == "open" and beyond.value))
        }  # fmt: skip
        return self._blind(run) | legs


def _place(house: House, run: RunSpec) -> Place:
    return house.chain.place(f"run.{run.key}")


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
    filler = rest / len(ends) if ends else house.zero
    if len(walls) == 1 and not closed and filler.value > _NO_FILLER[house.unit]:
        filler = house.style_dim("filler")  # what is left stays free at the open end
    share = place.let("filler_space", filler) if ends else house.zero
    spaces = {side: share if side in ends else house.zero for side in SIDES}
    if run.left_filler is not None and len(walls) == 2:
        spaces["left"] = place.given("left_filler", run.left_filler)
        spaces["right"] = place.let("right_filler", rest - spaces["left"])
        share = min(spaces.values(), key=lambda space: space.value)
    widest = max((spaces[side] for side in walls), key=lambda space: space.value, default=None)
    found = space_findings(house, run, rest, share, bool(walls))
    if widest is not None and not found:
        found = wide_findings(house, run, widest)
    return spaces, tuple(found)


def _beside(house: House, place: Place, case: CaseSpec) -> Iterator[Dim]:
    """What a case takes beside the width asked for [mm].

    A face frame is as wide as its case, whatever is on its ends; in a surround its width is that
    between the stiles, which are as wide as others and the panels behind them, up to the grid.
    """
    if case.framed and not case.between_panels:
        return
    stile, over = (
        place.given(f"{key}_of_{case.key}", case.overrides[key])
        if case.framed and key in case.overrides
        else house.style_dim(key)
        for key in ("face_stile", "face_overhang")
    )
    for _ in case.dressed:
        yield house.thickness(end_stock(case))
        if case.framed:
            yield stile - over + house.style_dim("cut_step")
