"""Runs: cases side by side along a wall, with fillers that close the sum."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from casewright.dims import Dim
from casewright.room.fillers import FillerEnd, build_filler
from casewright.room.model import Appliance, Filler, Run
from casewright.room.run_ends import thing_at
from casewright.room.run_walls import run_heights
from casewright.room.specs import JobSpec, RunSpec
from casewright.room.standing import Standing
from casewright.survey.walls import width_between

__all__ = ["place_run"]


def place_run(standing: Standing, run: RunSpec) -> Run:
    """Put the cases of a run side by side; what the wall leaves over becomes fillers."""
    house, stand = standing.house, standing.of(run)
    members = tuple(standing.cases[key] for key in run.cases)
    edges = {"left": stand.starts[run.places[0]], "right": stand.end}
    length = house.chain.place(f"run.{run.key}").let("length", stand.length)
    fillers = tuple(
        _filler(standing, run, FillerEnd(
            side, members[0] if side == "left" else members[-1], space, beyond, edges[side],
        ))
        for side, (beyond, space) in stand.gaps.items()
        if space.value > 0
    )  # fmt: skip
    return Run(
        run, members, tuple(stand.starts[key] for key in run.cases), length, stand.end,
        house.style_dim("wall_bottom") if members[0].spec.is_hung else house.zero, fillers,
        appliances=_appliances(standing.spec, stand.widths, stand.starts),
        pulled_off=stand.bare, begins=stand.begins,
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


def _filler(standing: Standing, run: RunSpec, end: FillerEnd) -> Filler:
    """A thing on the wall, or a case, that the run ends at is as upright as its edge was read."""
    house, wall = standing.house, standing.measured.walls.get(run.on)
    heights: list[tuple[Fraction | None, Dim]]
    if thing_at(run, end.side):
        return build_filler(house, run, end, (), None)
    if wall is None:
        nodes = house.chain.nodes
        own = (nodes[f"run.{run.key}.wall_{n}"] for n, _ in enumerate(run.widths, start=1))
        heights = [(None, dim) for dim in own]
    else:
        counted = width_between(wall, *run_heights(house, standing.spec, run))
        heights = [(each.height, dim) for each, dim in wall.widths() if dim in counted]
    return build_filler(house, run, end, heights, wall)
