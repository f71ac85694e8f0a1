"""Drawings by name, as SVG: the same hand as on paper."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.dims import measure_of
from casewright.drawing.cased_wall import cased_wall_scene, runs_on
from casewright.drawing.room_overview import room_overview
from casewright.drawing.room_plan import plan_scene
from casewright.drawing.run_elevation import run_scene
from casewright.drawing.scene import Scene, plot
from casewright.outputs.svg import svg_text
from casewright.room.model import Room

__all__ = ["SMALL", "drawing_names", "drawn"]

SMALL = "small."
"""Before the name of a wall or a run: half as large, its figures as high."""

_SCALE = Fraction(15)
"""Of elevations on a screen: figures then are large enough beside the cases [-]."""

_SMALL_SCALE = Fraction(30)
"""Of those that stand side by side, or on a phone [-]."""

_PLAN_SCALE = Fraction(30)
_OVERVIEW_SCALE = Fraction(36)
_WIDEST, _BETWEEN = Fraction(8500), Fraction(700)
"""Of a row of the overview, so that its names can be read; from run to run [mm of model]."""


def drawing_names(room: Room) -> Iterator[str]:
    """What can be drawn of a room."""
    if room.cases:
        yield "overview"
    if room.survey.walls:
        yield "plan"
    for key, wall in room.survey.walls.items():
        if runs_on(room, wall):
            yield f"wall.{key}"
    for run in room.runs:
        yield f"run.{run.spec.key}"


def drawn(room: Room, name: str) -> str | None:
    """A drawing as SVG, or None when there is none of that name."""
    unit = room.spec.unit
    scene: Scene | None = None
    scale = _SMALL_SCALE if name.startswith(SMALL) else _SCALE
    name = name.removeprefix(SMALL)
    if name == "overview" and room.cases:
        scene, scale = room_overview(room, _WIDEST, _BETWEEN), _OVERVIEW_SCALE
    elif name == "plan" and room.survey.walls:
        scene, scale = plan_scene(room, unit), _PLAN_SCALE
    elif name.startswith("wall."):
        wall = room.survey.walls.get(name.removeprefix("wall."))
        if wall is not None and runs_on(room, wall):
            scene = cased_wall_scene(room, wall, unit)
    elif name.startswith("run."):
        runs = {run.spec.key: run for run in room.runs}
        run = runs.get(name.removeprefix("run."))
        if run is not None:
            scene = run_scene(run, unit, measure_of(room.wall_bottom, unit), named=True)
    return None if scene is None else svg_text(plot(scene, scale), with_ids=False)
