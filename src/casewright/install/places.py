"""Where each case of a wall goes, from the wall's datums, on the chain."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.casework.cases import Case
from casewright.dims import Dim
from casewright.install.numbers import Numbers
from casewright.room.model import Run
from casewright.room.on_walls import CasePlace, cases_on_walls
from casewright.survey.walls import SurveyedWall

__all__ = ["WallPlace", "places_on"]


@dataclass(frozen=True, slots=True)
class WallPlace:
    """A case before its wall, its edges on the chain.

    Parameters
    ----------
    before
        The same in bare numbers.
    left, right
        Of its outside, frames on finished ends included, from the wall's left end [mm].
    bottom, top
        Above the highest floor [mm].
    out
        From the wall to its fronts, doors and nosings included [mm].
    """

    before: CasePlace
    left: Dim
    right: Dim
    bottom: Dim
    top: Dim
    out: Dim

    @property
    def case(self) -> Case:
        """The case itself."""
        return self.before.case

    @property
    def run(self) -> Run:
        """The run it belongs to."""
        return self.before.run

    @property
    def is_hung(self) -> bool:
        """Whether it hangs on the wall alone."""
        return self.case.spec.is_hung


def places_on(numbers: Numbers, wall: SurveyedWall) -> tuple[WallPlace, ...]:
    """Every case before a wall, those that hang first, then from left to right."""
    found = tuple(_places(numbers, wall))
    return tuple(sorted(found, key=lambda place: (not place.is_hung, place.left.value)))


def _places(numbers: Numbers, wall: SurveyedWall) -> Iterator[WallPlace]:
    own = numbers.wall(wall.spec.key)
    for before in cases_on_walls(numbers.room):
        if before.wall is not wall:
            continue
        run, case = before.run, before.case
        place = own.at(run.spec.key).at(case.key)
        start = run.starts[run.cases.index(case)]
        left = place.let("left", run.begins + start if run.begins.value else start)
        base = numbers.room.wall_bottom if case.spec.is_hung else numbers.zero
        raised = bool(case.spec.hood and case.standing.value)
        yield WallPlace(
            before,
            left,
            place.let("right", left + case.overall_width),
            place.let("bottom", base + case.standing) if raised else base,
            place.let("top", base + case.height),
            place.let("out", case.overall_depth),
        )
