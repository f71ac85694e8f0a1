"""Where cases stand or hang on a surveyed wall, in the wall's own measure."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.room.model import Room, Run
from casewright.survey.walls import SurveyedWall

__all__ = ["CasePlace", "cases_on_walls", "run_start"]


@dataclass(frozen=True, slots=True)
class CasePlace:
    """A case before its wall.

    Parameters
    ----------
    left, right
        From the wall's left end [mm].
    bottom, top
        Above the highest floor [mm].
    """

    case: Case
    run: Run
    wall: SurveyedWall
    left: Fraction
    right: Fraction
    bottom: Fraction
    top: Fraction


def run_start(run: Run, wall: SurveyedWall) -> Fraction:
    """Where a run begins, from the wall's left end [mm]."""
    edges = (thing.right for thing in wall.things if thing.spec.key == run.spec.after)
    return next((edge.value for edge in edges if edge is not None), Fraction(0))


def cases_on_walls(room: Room) -> Iterator[CasePlace]:
    """Every case of a run that stands on a surveyed wall, in the order of the job."""
    lift = room.wall_bottom.value
    for run in room.runs:
        wall = room.survey.walls.get(run.spec.on)
        if wall is None:
            continue
        begins = run_start(run, wall)
        for case, start in zip(run.cases, run.starts, strict=True):
            low = lift if case.spec.kind == "wall" else Fraction(0)
            left = begins + start.value
            right = left + case.overall_width.value
            yield CasePlace(case, run, wall, left, right, low, low + case.height.value)
