"""Numbers of answers of the layout, by their paths: what is asked about is laid out again."""

from __future__ import annotations

from casewright.dims import Dim
from casewright.job.height_numbers import COUNTER
from casewright.job.heights import room_heights
from casewright.job.hindrances import (
    Hindrance,
    height_hindrances,
    island_hindrances,
    run_hindrances,
)
from casewright.job.island_layouts import island_layouts
from casewright.job.layout_ends import GRID
from casewright.job.layout_numbers import LAYOUT, NARROWEST, WIDEST, LayoutNumbers
from casewright.job.layouts import layouts
from casewright.room.model import Room

__all__ = ["answer_numbers", "asked_for"]


def asked_for(room: Room, path: str) -> str:
    """What a number of an answer belongs to: `run.KEY`, `island.KEY`, `heights`, or empty."""
    of = path.removeprefix(f"{LAYOUT}.")
    if of.startswith("room.heights."):
        return "heights"
    keys = [f"run.{run.spec.key}" for run in room.runs]
    keys += [island.key for island in room.islands]
    return next((key for key in keys if of.startswith(f"{key}.")), "")


def answer_numbers(room: Room, path: str) -> tuple[Dim, ...]:
    """All that the answers of what a path belongs to tell, and what stands against any."""
    of = asked_for(room, path)
    kind, _, key = of.partition(".")
    told: list[Hindrance] = []
    numbers = LayoutNumbers(room, "room", "limits", GRID[room.spec.unit])
    for limit in (NARROWEST, WIDEST, COUNTER):
        numbers.own.limit(limit)
    found: list[LayoutNumbers] = [numbers]
    if kind == "run":
        for run in layouts(room, only=key):
            told += run_hindrances(run)
            found.append(run.numbers)
    elif kind == "island":
        for island in island_layouts(room, only=key):
            told += island_hindrances(island)
            found.append(island.numbers)
    else:
        heights = room_heights(room)
        if heights is not None:
            told += height_hindrances(heights)
            found.append(heights.numbers)
    return tuple(dim for each in found for dim in each.numbers)
