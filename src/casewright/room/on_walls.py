"""Where cases stand or hang on a surveyed wall, in the wall's own measure."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.room.model import Room, Run
from casewright.survey.walls import SurveyedWall

__all__ = ["CasePlace", "cases_on_walls"]


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


def cases_on_walls(room: Room) -> Iterator[CasePlace]:
    """Every case of a run that stands on a surveyed wall, in the order of the job."""
    lift = room.wall_bottom.value
    for run in room.runs:
        wall = room.survey.walls.get(run.spec.on)
        if wall is None:
            continue
        for case, start in zip(run.cases, run.starts, strict=True):
            low = lift if case.spec.kind == "wall" else Fraction(0)
            left = start.value
            right = left + case.overall_width.value
            yield CasePlace(case, run, wall, left, right, low, low + case.height.value)
