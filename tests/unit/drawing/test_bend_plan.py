"""Diagonal corners from above: trims at their bends, the swing of a door."""

from __future__ import annotations

import math

import pytest
from tests.jobs import read
from tests.unit.room.test_bends import pieces, text

from casewright.casework.cases import Case
from casewright.dims import Measure
from casewright.drawing.bend_plan import bend_scene, bent_ends
from casewright.drawing.mouth_swing import mouth_swing
from casewright.drawing.notes import Text
from casewright.drawing.shapes import Arc, Polyline
from casewright.job.worked import WorkedJob, work_out


def corner(found: WorkedJob) -> Case:
    """The diagonal corner of a job."""
    return next(case for case in found.room.cases if case.mouth is not None)


@pytest.mark.parametrize("hand", ["left", "right"])
def test_a_bend_tells_long_points_corners_and_settings(hand: str) -> None:
    """Of the piece across; both corners of 135 degrees, mitred at 22.5."""
    found = work_out(read(text("in", hand)))
    run = next(run for run in found.room.runs if run.spec.key == "own")
    rail = next(trim for trim in run.trims if trim.kind == "light rail")
    assert bent_ends(rail) == (hand,)
    scene = bend_scene(run, rail, bent_ends(rail)[0], "in")
    told = [each for each in scene.elements if isinstance(each, Text)]
    words = [each.content for each in told if isinstance(each.content, str)]
    assert words.count("135.0° corner") == words.count("mitre 22.5°") == 2
    [across] = [each.content for each in told if isinstance(each.content, tuple)]
    measure = across[0]
    assert isinstance(measure, Measure)
    assert measure.value == pieces(found, "light rail")["across"].part.finished.length.value


@pytest.mark.parametrize("hand", ["left", "right"])
def test_pieces_of_a_bend_meet_edge_to_edge(hand: str) -> None:
    """The piece across shares both mitres with those along the walls, rear and front."""
    found = work_out(read(text("mm", hand)))
    run = next(run for run in found.room.runs if run.spec.key == "own")
    rail = next(trim for trim in run.trims if trim.kind == "light rail")
    scene = bend_scene(run, rail, bent_ends(rail)[0], "mm")
    closed = [e for e in scene.elements if isinstance(e, Polyline) and e.closed]
    along, across, far = ({(round(float(x), 3), round(float(y), 3)) for x, y in each.points}
                          for each in closed)  # fmt: skip
    assert len(along & across) == len(far & across) == 2
    assert not along & far


@pytest.mark.parametrize("hand", ["left", "right"])
def test_a_door_swings_square_to_the_face_and_stays_out_of_the_case(hand: str) -> None:
    """Shut it lies along the face, open at a right angle to it, a door's width from its hinge."""
    case = corner(work_out(read(text("mm", hand, "base", leg="900", deep="580"))))
    shut, opened, arc = mouth_swing(case, lambda x, z: (x, z))
    assert isinstance(shut, Polyline)
    assert isinstance(opened, Polyline)
    assert isinstance(arc, Arc)
    wide = float(case.doors[0].width.value)
    ways = [tuple(float(b) - float(a) for a, b in zip(*each.points, strict=True))
            for each in (shut, opened)]  # fmt: skip
    assert math.hypot(*ways[0]) == pytest.approx(wide) == math.hypot(*ways[1])
    assert sum(a * b for a, b in zip(*ways, strict=True)) == pytest.approx(0, abs=1e-6)
    assert abs(ways[0][0]) == pytest.approx(abs(ways[0][1]))  # at 45 degrees to both walls
    away = 1 if hand == "left" else -1
    assert ways[1][0] * away > 0
    assert ways[1][1] > 0
    assert arc.sweep_deg == pytest.approx(90)
