"""Laying out the runs of a job: tasks from its walls and cases, answers in the job's unit."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.fronts import frame_stock
from casewright.casework.specs import CaseSpec
from casewright.dims import Unit, Way, round_to, shop_text
from casewright.job.edits import set_value
from casewright.layout.answers import LayoutAnswer, answers
from casewright.layout.conflicts import LayoutConflict, conflicts
from casewright.layout.tasks import EndFiller, Preferences, RunPlace, WallTask
from casewright.room.model import Room, Run
from casewright.room.on_walls import run_start
from casewright.sources import INCH

__all__ = ["RunLayout", "accepted", "layouts"]

_STEP: dict[Unit, Fraction] = {"in": INCH / 16, "mm": Fraction(1)}
"""The grid of the shop."""

_PER_INCH: dict[Unit, int] = {"in": 16, "mm": 25}
_WIDTHS: dict[Unit, tuple[Fraction, Fraction]] = {
    "in": (9 * INCH, 36 * INCH), "mm": (Fraction(230), Fraction(900)),
}  # fmt: skip
"""Least and greatest of a case whose width is free (common practice)."""

_WIDEST_FILLER: dict[Unit, Fraction] = {"in": 2 * INCH, "mm": Fraction(50)}


@dataclass(frozen=True, slots=True)
class RunLayout:
    """What a run could be.

    Parameters
    ----------
    cases
        Keys of its cases, left to right.
    free
        Those whose width is left open.
    answers
        Up to five, the best first; none when nothing fits.
    conflicts
        Why nothing fits.
    step
        Of the grid [mm].
    """

    key: str
    title: str
    cases: tuple[str, ...]
    free: tuple[str, ...]
    answers: tuple[LayoutAnswer, ...]
    conflicts: tuple[LayoutConflict, ...]
    step: Fraction
    unit: Unit

    def text(self, steps: int) -> str:
        """Steps as the job writes a length."""
        return shop_text(steps * self.step, self.unit)


def layouts(room: Room) -> Iterator[RunLayout]:
    """Every run that closes against a wall and has a case whose width is free."""
    unit = room.spec.unit
    for run in room.runs:
        free = tuple(case.key for case in run.cases if case.spec.width is None)
        wall = room.chain.nodes.get(f"run.{run.spec.key}.wall")
        if wall is None or not free or "wall" not in (run.spec.left, run.spec.right):
            continue
        task = _task(room, run, wall.value)
        step = _STEP[unit]

        def text(steps: int, step: Fraction = step) -> str:
            return shop_text(steps * step, unit)

        yield RunLayout(
            run.spec.key,
            run.spec.title,
            run.spec.cases,
            free,
            answers(task, text),
            conflicts(task),
            step,
            unit,
        )


def _task(room: Room, run: Run, wall: Fraction) -> WallTask:
    """In whole steps: sizes that are given count up to the next one, the wall down."""
    unit = room.spec.unit
    step = _STEP[unit]
    low, high = (int(each // step) for each in _WIDTHS[unit])
    places = tuple(_place(room, run, case.spec, (low, high)) for case in run.cases)
    framed = sum(
        (room.chain.nodes[f"stock.{frame_stock(case.spec)}.thickness"].value
         for case in run.cases for _ in case.spec.finished),
        Fraction(0),
    )  # fmt: skip
    least = room.spec.style["filler_least"].value
    wished = int(room.spec.style["filler"].value // step)
    band = EndFiller(_up(least, step), int(_WIDEST_FILLER[unit] // step), wished)
    return WallTask(
        int(wall // step) - _up(framed, step),
        places,
        band if run.spec.left == "wall" else None,
        band if run.spec.right == "wall" else None,
        Preferences.usual(_PER_INCH[unit]),
    )


def _place(room: Room, run: Run, case: CaseSpec, free: tuple[int, int]) -> RunPlace:
    step = _STEP[room.spec.unit]
    low, high = free if case.width is None else (_up(case.width.value, step),) * 2
    return RunPlace(case.key, low, high, centre=_centre(room, run, case.key))


def _centre(room: Room, run: Run, key: str) -> int | None:
    """The middle of what a case is to stand on [half steps]."""
    thing = dict(run.spec.centre).get(key)
    wall = room.survey.walls.get(run.spec.on)
    if thing is None or wall is None:
        return None
    for placed in wall.things:
        if placed.spec.key == thing and placed.left is not None and placed.right is not None:
            twice = placed.left.value + placed.right.value - 2 * run_start(run, wall)
            return int(round_to(twice, _STEP[room.spec.unit], Way.NEAREST)[0]
                       // _STEP[room.spec.unit])  # fmt: skip
    return None


def _up(size: Fraction, step: Fraction) -> int:
    return int(round_to(size, step, Way.UP)[0] // step)


def accepted(text: str, run: RunLayout, number: int) -> str:
    """The text of a job file with an answer written into it.

    Parameters
    ----------
    number
        Of the answer, from 1.

    Raises
    ------
    EditError
        When a section cannot be edited.
    """
    layout = run.answers[number - 1].layout
    for key, width in zip(run.cases, layout.widths, strict=True):
        if key in run.free:
            text = set_value(text, ("case", key, "width"), run.text(width))
    if layout.task.left is not None and layout.task.right is not None:
        text = set_value(text, ("run", run.key, "left_filler"), run.text(layout.left))
    return text
