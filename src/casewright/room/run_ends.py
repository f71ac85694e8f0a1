"""Ends of runs: what a run ends at, and in an inside corner how far it keeps out of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.casework.specs import CaseSpec
from casewright.dims import TAPE_MARK, Dim, Way, greatest
from casewright.room.on_centre import centred_on
from casewright.room.specs import JobSpec, RunEnd, RunSide, RunSpec

__all__ = [
    "SIDES", "CornerFiller", "corner_filler", "pull_off", "round_corner", "run_met", "thing_at",
    "waits_for",
]  # fmt: skip

SIDES: tuple[RunSide, RunSide] = ("left", "right")


@dataclass(frozen=True, slots=True)
class CornerFiller:
    """What stands round an inside corner before the end of a run [mm].

    Parameters
    ----------
    beyond
        Depth of the other run's box: from the wall to its front edges.
    need
        From there to the first case: bumper, door, pull and the air before it, up to a mark.
    """

    beyond: Dim
    need: Dim

    @property
    def first_edge(self) -> Dim:
        """From the wall to where the first case may begin [mm]."""
        return self.beyond + self.need


def thing_at(run: RunSpec, side: RunSide) -> str:
    """Key of what a run ends at: a thing on the wall, a case, an appliance; empty: nothing."""
    return run.after if side == "left" else run.before


def run_met(spec: JobSpec, run: RunSpec, side: RunSide) -> RunSpec | None:
    """The other run on its wall at whose case or appliance a run ends; None: at none.

    What is on the wall already comes first where the two have one name.
    """
    key, wall = thing_at(run, side), spec.survey.wall(run.on)
    if not key or wall is None or any(thing.key == key for thing in wall.things):
        return None
    others = (each for each in spec.runs if each.key != run.key and each.on == run.on)
    return next((each for each in others if key in each.places), None)


def round_corner(
    spec: JobSpec, run: RunSpec, side: RunSide, *, ends: RunEnd = "wall"
) -> RunSpec | None:
    """The run that goes into the inside corner at an end of another.

    It stands on the wall that meets this one there, reaches that end of it, and hangs or stands
    as this one does.

    Parameters
    ----------
    ends
        How it ends there; "corner": the one that keeps out of it as well.
    """
    hung = {case.key: case.is_hung for case in spec.cases}
    for corner in spec.survey.corners:
        here, there = (
            (corner.right, corner.left) if side == "left" else (corner.left, corner.right)
        )
        if corner.outside or here != run.on or not run.on:
            continue
        for other in spec.runs:
            far = other.right if side == "left" else other.left
            stops = thing_at(other, "right" if side == "left" else "left")
            same = {hung.get(key) for key in other.cases} & {hung.get(key) for key in run.cases}
            if other.on == there and far == ends and not stops and same:
                return other
    return None


def pull_off(house: House, run: RunSpec, end: CaseSpec, side: RunSide) -> Dim | None:
    """How far a blind corner base at an end stands off the corner wall [mm]; None: none is there.

    Nothing is seen of that gap, so that no filler closes it. A diagonal corner stands against
    both walls.

    Parameters
    ----------
    end
        The case at that end.
    """
    if end.diagonal == side and run.end(side) == "wall":
        return house.zero
    if end.blind != side or run.end(side) != "wall":
        return None
    given = end.overrides.get("blind_pull_off")
    if given is None:
        return house.style_dim("blind_pull_off")
    place = house.chain.place(f"run.{run.key}")
    known = house.chain.nodes.get(f"{place.path}.pull_off_{side}")
    return known or place.given(f"pull_off_{side}", given)


def waits_for(spec: JobSpec, run: RunSpec) -> tuple[str, ...]:
    """Keys of the runs that must be known before this one is placed.

    Those in whose corner it keeps out of their fronts, those at whose cases it ends, and that on
    the middle of whose case it stands.
    """
    round_it = (round_corner(spec, run, side) for side in SIDES if run.end(side) == "corner")
    others = (*round_it, *(run_met(spec, run, side) for side in SIDES), centred_on(spec, run))
    return tuple(dict.fromkeys(other.key for other in others if other is not None))


def corner_filler(
    house: House, spec: JobSpec, run: RunSpec, side: RunSide, cases: Mapping[str, Case]
) -> CornerFiller:
    """How far out of an inside corner a run begins: X0 = D + bp + td + P + cl.

    Source: common practice; with the depth D of the other run's case, bumper bp, door td, the
    pull's projection P, and the air cl (style 'corner_clear'). Its own door, open at a right
    angle, must clear the other box with its pull likewise. X0 lies on a mark of the tape, the next
    one up, so that every case after it can be marked out.

    Raises
    ------
    ValueError
        When no run stands round the corner: the job file's checks refuse that first.
    """
    place = house.chain.place(f"run.{run.key}.corner_{side}")
    nodes = house.chain.nodes
    if f"{place.path}.beyond" in nodes:
        return CornerFiller(nodes[f"{place.path}.beyond"], nodes[f"{place.path}.need"])
    other = round_corner(spec, run, side)
    if other is None:
        msg = f"no run stands round the corner at the {side} end of {run.key}"
        raise ValueError(msg)
    case = cases[other.cases[-1] if side == "left" else other.cases[0]]
    if case.mouth is not None:  # the leg along this wall: its return side is the neighbour
        return CornerFiller(place.let("beyond", case.depth), place.let("need", house.zero))
    face = case.face_plane
    out = case.overall_depth - face
    if any(front.pull for front in case.fronts):
        out = out + house.pull("projection")
    # Where the order is free, it keeps off the same whichever case comes to stand there.
    ends = run.cases if run.is_free else run.cases[:1] if side == "left" else run.cases[-1:]
    if any(_has_pull(spec, key) for key in ends):
        out = greatest(out, house.pull("projection") + house.hinge("stand_off"))
    beyond = place.let("beyond", face)
    exact = beyond + out + house.style_dim("corner_clear")
    edge, _ = place.rounded("first_edge", exact, TAPE_MARK[house.unit], Way.UP)
    return CornerFiller(beyond, place.let("need", edge - beyond))


def _has_pull(spec: JobSpec, key: str) -> bool:
    """Whether a case has a front with a pull, which an open door turns to the corner."""
    case = next(case for case in spec.cases if case.key == key)
    fronts = (case.front, case.upper_front, *(row.front for row in case.rows))
    return any(front is not None and front.pull for front in fronts)
