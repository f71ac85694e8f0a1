"""Answers of the layout for the desk: for a run, an island, or the heights of the room."""

from __future__ import annotations

import threading
from collections.abc import Callable
from dataclasses import dataclass, replace

from casewright.breakdown import Desk
from casewright.dims import Chain, Told
from casewright.errors import CasewrightError, Location, Problem
from casewright.findings import entered
from casewright.job.answer_numbers import asked_for
from casewright.job.collector import collector_at_rest
from casewright.job.height_choices import accepted_heights
from casewright.job.heights import room_heights
from casewright.job.hindrances import (
    Hindrance,
    height_hindrances,
    island_hindrances,
    run_hindrances,
)
from casewright.job.island_layouts import IslandLayout, accepted_island, island_layouts
from casewright.job.layout_numbers import LAYOUT, LayoutNumbers
from casewright.job.layouts import RunLayout, accepted, layouts
from casewright.job.load import read_job
from casewright.room.build import build
from casewright.room.model import Room
from casewright.web.drawings import SMALL
from casewright.web.redrawing import redrawn
from casewright.web.snapshot import Snapshot

__all__ = ["HEIGHTS", "Choices", "LayoutAnswers", "NoLayoutError", "OneAnswer", "picture"]

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


class LayoutAnswers:
    """Answers that were worked out, kept until the job is another one: it takes a second."""

    def __init__(self) -> None:
        self._own = threading.Lock()
        self._of: Snapshot | None = None
        self._choices: dict[str, Choices] = {}
        self._then: dict[tuple[str, int], Snapshot] = {}

    def choices(self, snapshot: Snapshot, of: str) -> Choices:
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
        with self._own:
            self._look(snapshot)
            if of not in self._choices:
                self._choices[of] = _found(snapshot.worked.room, of)
            return self._choices[of]

    def chain(self, snapshot: Snapshot, path: str) -> Chain | None:
        """The chain that a number of an answer stands on; None: it is no number of an answer."""
        room = snapshot.worked.room
        of = asked_for(room, path) if path.startswith(f"{LAYOUT}.") else ""
        if not of:
            return None
        chain = Desk(room).chain
        entered(self.choices(snapshot, of).numbers.numbers, chain.nodes)
        return chain

    def then(self, snapshot: Snapshot, of: str, number: int) -> Snapshot:
        """The job as it would be with an answer, by its number from 1; nothing is checked."""
        found = self.choices(snapshot, of)
        with self._own:
            if (of, number) not in self._then:
                self._then[of, number] = _with_answer(snapshot, found, number)
            return self._then[of, number]

    def _look(self, snapshot: Snapshot) -> None:
        known = self._of
        if known is None or known.worked.room is not snapshot.worked.room:
            self._of = snapshot
            self._choices.clear()
            self._then.clear()


def _with_answer(snapshot: Snapshot, found: Choices, number: int) -> Snapshot:
    loaded = snapshot.loaded
    text = found.accepted(loaded.file.text, number)
    spec = read_job(text, loaded.file.name)
    with collector_at_rest():
        room = build(spec, snapshot.recorded.facts)
    return replace(
        snapshot,
        loaded=replace(loaded, file=replace(loaded.file, text=text), spec=spec),
        worked=replace(snapshot.worked, room=room),
    )


def _found(room: Room, of: str) -> Choices:
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
