"""Walls with their runs: every figure clear of every other, at both sizes, for every example."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from casewright.drawing import Dimensions, clashes, plot, struck
from casewright.drawing.cased_wall import cased_wall_scene, runs_on
from casewright.drawing.rows_under import RowsAndTape
from casewright.job.recorded import as_recorded
from casewright.room.model import Room

EXAMPLES = Path(__file__).parents[3] / "examples"
WITH_WALLS = ("kitchen", "garden_room", "gallery_appliances", "gallery_rooms", "gallery_trims")


@pytest.fixture(scope="module", params=WITH_WALLS)
def room(request: pytest.FixtureRequest) -> Room:
    """The room of an example."""
    return as_recorded(EXAMPLES / f"{request.param}.toml")[2].room


@pytest.mark.parametrize("scale", [15, 30])
def test_nothing_on_a_wall_lies_over_a_figure_or_a_name(room: Room, scale: int) -> None:
    """Numbers of rows and tapes, names of cases and of what is on the wall."""
    for wall in room.survey.walls.values():
        if runs_on(room, wall):
            drawn = plot(cased_wall_scene(room, wall, room.spec.unit), Fraction(scale)).groups
            assert clashes(drawn) == []
            assert struck(drawn) == []


def test_widths_stand_outside_the_wall(room: Room) -> None:
    """Of what hangs over it, of what stands under it: none between floor and ceiling."""
    for wall in room.survey.walls.values():
        runs = runs_on(room, wall)
        if not runs:
            continue
        scene = cased_wall_scene(room, wall, room.spec.unit)
        high = [each for each in scene.elements if isinstance(each, Dimensions)]
        low = [each for each in scene.elements if isinstance(each, RowsAndTape)]
        tops = [each.base for each in high if each.side == "above"]
        assert all(top >= wall.clear.value for top in tops if wall.clear is not None)
        assert all(each.rows.base <= 0 for each in low)
        hung = any(case.spec.is_hung for run in runs for case in run.cases)
        stands = any(not case.spec.is_hung for run in runs for case in run.cases)
        assert (bool(tops), bool(low)) == (hung, stands)
