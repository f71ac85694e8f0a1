"""Elevations: each wall on a page of its own, lying, with all its runs; the rest run by run."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from fractions import Fraction

from casewright.dims import measure_of
from casewright.drawing import ScaleError, Scene, largest
from casewright.drawing.cased_wall import cased_wall_scene, runs_on
from casewright.drawing.run_elevation import run_scene
from casewright.outputs.blocks import Beside, Block, Figure, Heading, Keep, Paragraph
from casewright.outputs.document import Paper, Section
from casewright.outputs.inlines import Inline, Link, PageNumber
from casewright.packet.words import unfold
from casewright.room.model import Room, Run
from casewright.survey.walls import SurveyedWall

__all__ = ["elevation_section"]

_TITLE_MM, _HEADING_MM = 15.0, 12.0  # of the section, over a drawing, with the room round them
_NAMES_MM = 6.0  # of a run's names under a drawing
_BETWEEN_MM = 6.0  # of two drawings beside each other
_AT_MOST = Fraction(10)  # a larger picture says no more [mm of model to one of paper]


def elevation_section(room: Room, paper: Paper) -> Section | None:
    """Every wall with its runs, then the runs on no measured wall, two to a page."""
    walls = [wall for wall in room.survey.walls.values() if runs_on(room, wall)]
    keys = {wall.spec.key for wall in walls}
    rest = [run for run in room.runs if run.spec.on not in keys]
    lying = paper.turned
    blocks: list[Block] = [
        _wall(room, wall, lying, first=not number) for number, wall in enumerate(walls)
    ]
    blocks.extend(_pairs(room, rest, lying) if walls else _stacked(room, rest, paper))
    on = lying if walls else None
    return Section("Elevations", tuple(blocks), "elevations", paper=on) if blocks else None


def _wall(room: Room, wall: SurveyedWall, paper: Paper, *, first: bool) -> Block:
    runs = runs_on(room, wall)
    tall = paper.text_height_mm - _HEADING_MM - _NAMES_MM * len(runs)
    tall -= _TITLE_MM if first else 0.0
    drawn = _figure(room, cased_wall_scene(room, wall, room.spec.unit), paper.text_width_mm, tall)
    names = (Paragraph(_names(run), anchor=f"run:{run.spec.key}") for run in runs)
    return Keep((Heading(wall.spec.title, 2), *drawn, *names))


def _pairs(room: Room, runs: list[Run], paper: Paper) -> Iterator[Block]:
    """Runs on no wall beside each other on a lying page."""
    wide = paper.text_width_mm
    if len(runs) > 1:
        wide = (wide - _BETWEEN_MM) / 2
    tall = paper.text_height_mm - _TITLE_MM - _HEADING_MM - _NAMES_MM
    for n in range(0, len(runs), 2):
        pair = tuple(_run(room, run, wide, tall) for run in runs[n : n + 2])
        yield Keep(pair[0] if len(pair) == 1 else (Beside(pair),))


def _stacked(room: Room, runs: list[Run], paper: Paper) -> Iterator[Block]:
    """Two to a standing page where there are several."""
    tall = (paper.text_height_mm - _TITLE_MM) / min(max(len(runs), 1), 2)
    for run in runs:
        yield Keep(_run(room, run, paper.text_width_mm, tall - _HEADING_MM - _NAMES_MM))


def _run(room: Room, run: Run, wide: float, tall: float) -> tuple[Block, ...]:
    scene = run_scene(run, room.spec.unit, measure_of(room.wall_bottom, room.spec.unit))
    names = [
        unfold(f"{n} ", Link(case.spec.title, case.key), ", page ", PageNumber(case.key), ".  ")
        for n, case in enumerate(run.cases, start=1)
    ]
    return (
        Heading(run.spec.title, 2, f"run:{run.spec.key}"),
        *_figure(room, scene, wide, tall),
        Paragraph(unfold(*names)),
    )


def _figure(room: Room, scene: Scene, wide: float, tall: float) -> tuple[Block, ...]:
    with suppress(ScaleError):
        drawn = largest(scene, wide, tall, room.spec.unit, at_most=_AT_MOST, fine=True)
        return (Figure(drawn, alternative=f"{scene.title}, elevation"),)
    return ()


def _names(run: Run) -> tuple[Inline, ...]:
    """A run's cases with their pages."""
    found: list[Inline] = [f"{run.spec.title}: "]
    for number, case in enumerate(run.cases):
        found += [", " if number else "", Link(case.spec.title, case.key), " page ",
                  PageNumber(case.key)]  # fmt: skip
    return (*found, ".")
