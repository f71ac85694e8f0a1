"""The stretch of its wall that a run has: from what it begins after to what it ends before."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from casewright.casework.house import House
from casewright.dims import Dim, greatest, least, reading_causes
from casewright.room.run_ends import thing_at
from casewright.room.specs import JobSpec, RunSide, RunSpec
from casewright.survey.survey import Survey
from casewright.survey.walls import SurveyedWall, width_between

__all__ = ["RunEdges", "run_begins", "run_heights", "wall_width"]

RunEdges = Mapping[RunSide, Dim]
"""Edges that are not on the wall itself, from its left end [mm]: of a case or an appliance of
another run, of the sweep of a door round the corner."""


def wall_width(
    house: House, spec: JobSpec, run: RunSpec, measured: Survey, edges: RunEdges
) -> Dim | None:
    """The least of the readings of the wall, or None for a free run.

    On a surveyed wall those count that were read where its cases stand or hang.

    Raises
    ------
    ValueError
        When an edge is not known: the job file's checks refuse that first.
    """
    known = house.chain.nodes.get(f"run.{run.key}.wall")
    if known is not None:
        return known
    wall = measured.walls.get(run.on)
    if wall is not None:
        readings = list(width_between(wall, *run_heights(house, spec, run)))
    else:
        readings = _own_readings(house, run)
    if not readings:
        return None
    place = house.chain.place(f"run.{run.key}")
    if wall is not None and (run.after or run.before):
        end = _edge(run, wall, edges, "right") or least(*readings)
        start = _edge(run, wall, edges, "left")
        return place.let("wall", end if start is None else end - start)
    if len(readings) == 1:
        return place.let("wall", readings[0])
    narrow = place.let("wall", least(*readings))
    place.let("wall_spread", greatest(*readings) - narrow)
    return narrow


def run_begins(house: House, run: RunSpec, measured: Survey, edges: RunEdges) -> Dim:
    """From the wall's left end to the left datum of a run [mm]."""
    wall = measured.walls.get(run.on)
    start = None if wall is None else _edge(run, wall, edges, "left")
    return house.zero if start is None else start


def _edge(run: RunSpec, wall: SurveyedWall, edges: RunEdges, side: RunSide) -> Dim | None:
    """Edge of what it ends at there, from the wall's left end; None: at the wall's own end."""
    key = thing_at(run, side)
    if not key:
        return None
    if side in edges:
        return edges[side]
    thing = next((each for each in wall.things if each.spec.key == key), None)
    edge = None if thing is None else thing.right if side == "left" else thing.left
    if edge is None:
        msg = f"run {run.key} ends at an edge that is not known"
        raise ValueError(msg)
    return edge


def run_heights(house: House, spec: JobSpec, run: RunSpec) -> tuple[Fraction, Fraction]:
    """From where to where the cases of a run reach above the floor [mm]."""
    lift = house.style_dim("wall_bottom").value
    members = [case for case in spec.cases if case.key in run.cases]
    hung = [case.is_hung for case in members]
    tops = [case.height.value + lift * hangs for case, hangs in zip(members, hung, strict=True)]
    return (lift if all(hung) else Fraction(0)), max(tops)


def _own_readings(house: House, run: RunSpec) -> list[Dim]:
    place = house.chain.place(f"run.{run.key}")
    tape = house.shop.tools.get("tape")
    sigma, limit = (tape.sigma, tape.limit) if tape else (Fraction(1, 2), Fraction(1))
    return [
        place.enter(
            f"wall_{n}", given.value, given.origin,
            causes=reading_causes(f"run.{run.key}.wall_{n}", sigma, limit, "tape"),
        )
        for n, given in enumerate(run.widths, start=1)
    ]  # fmt: skip
