"""Answers of the layout for the desk: for a run, an island, or the heights of the room."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from casewright.dims import Told
from casewright.errors import CasewrightError, Location, Problem
from casewright.job.height_choices import accepted_heights
from casewright.job.heights import room_heights
from casewright.job.hindrances import (
    Hindrance,
    height_hindrances,
    island_hindrances,
    run_hindrances,
)
from casewright.job.island_layouts import IslandLayout, accepted_island, island_layouts
from casewright.job.layout_numbers import LayoutNumbers
from casewright.job.layouts import RunLayout, accepted, layouts
from casewright.job.load import read_job
from casewright.room.model import Room
from casewright.web.drawings import SMALL
from casewright.web.redrawing import redrawn
from casewright.web.snapshot import Snapshot

__all__ = ["HEIGHTS", "Choices", "NoLayoutError", "OneAnswer", "choices", "picture"]

HEIGHTS = "heights"
"""Names the heights of the room, where a run or an island is named otherwise."""


class NoLayoutError(CasewrightError):
    """There is nothing open there."""

    @property
    def problems(self) -> tuple[Problem, ...]:
        """What would be right."""
        want = "leave the width of a case of it open, between two walls"
        return (Problem(Location("", word=str(self)), "this has no other answers", want),)


@dataclass(frozen=True, slots=True)
class OneAnswer:
    """One way to do it.

    Parameters
    ----------
    sizes
        What it decides, each with its name.
    trade
        What it gives and what it takes, in words.
    proved
        Whether nothing of its kind is better.
    """

    sizes: tuple[Told, ...]
    trade: tuple[Told, ...]
    proved: bool = True


@dataclass(frozen=True, slots=True)
class Choices:
    """Answers for one thing, the best first.

    Parameters
    ----------
    answers
        None where nothing fits.
    hindrances
        Why nothing fits.
    drawing
        Name of the drawing that they differ in.
    accepted
        The text of the job file with an answer written into it, by its number from 1.
    numbers
        What tells its lengths.
    """

    answers: tuple[OneAnswer, ...]
    hindrances: tuple[Hindrance, ...]
    drawing: str
    accepted: Callable[[str, int], str]
    numbers: LayoutNumbers


def choices(room: Room, of: str) -> Choices:
    """What could be there.

    Parameters
    ----------
    of
        `run.<key>`, `island.<key>` or `HEIGHTS`.

    Raises
    ------
    NoLayoutError
        When nothing is open there.
    """
    kind, _, key = of.partition(".")
    if of == HEIGHTS:
        found = _heights(room)
    elif kind == "island":
        found = next(map(_island, island_layouts(room, only=key)), None)
    else:
        found = next(map(_run, layouts(room, only=of.removeprefix("run."))), None)
    if found is None:
        raise NoLayoutError(of)
    return found


def _run(run: RunLayout) -> Choices:
    answers = tuple(
        OneAnswer(tuple(run.widths(each)), each.trade, each.layout.is_proved)
        for each in run.answers
    )
    return Choices(
        answers, tuple(run_hindrances(run)), f"{SMALL}run.{run.key}",
        lambda text, number: accepted(text, run, number), run.numbers,
    )  # fmt: skip


def _island(island: IslandLayout) -> Choices:
    answers = tuple(
        OneAnswer(tuple(island.sizes(number)), trade)
        for number, trade in enumerate(island.trades, start=1)
    )
    return Choices(
        answers, tuple(island_hindrances(island)), "plan",
        lambda text, number: accepted_island(text, island, number), island.numbers,
    )  # fmt: skip


def _heights(room: Room) -> Choices | None:
    heights = room_heights(room)
    if heights is None:
        return None
    answers = tuple(OneAnswer(tuple(heights.sizes(each)), each.trade) for each in heights.answers)
    return Choices(
        answers, tuple(height_hindrances(heights)), f"{SMALL}wall.{_hung_on(room)}",
        lambda text, number: accepted_heights(text, heights, number), heights.numbers,
    )  # fmt: skip


def _hung_on(room: Room) -> str:
    """The wall with most of what hangs: heights are seen there."""
    hung = dict.fromkeys(room.survey.walls, 0)
    for run in room.runs:
        if run.spec.on in hung:
            hung[run.spec.on] += sum(case.spec.is_hung for case in run.cases)
    return max(hung, key=lambda key: hung[key])


def picture(snapshot: Snapshot, found: Choices, number: int) -> str:
    """How an answer looks, as SVG."""
    text = found.accepted(snapshot.loaded.file.text, number)
    spec = read_job(text, snapshot.loaded.file.name)
    facts, then = snapshot.recorded.facts, replace(snapshot.loaded, spec=spec)
    return redrawn(then, facts, found.drawing) or ""
