"""Where cases stand or hang on a surveyed wall, in the wall's own measure."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.room.model import Room, Run
from casewright.sources import INCH
from casewright.survey.fixed_things import PlacedThing
from casewright.survey.specs import FixedKind, is_small
from casewright.survey.walls import SurveyedWall

__all__ = ["CasePlace", "cases_on_walls", "thing_edges"]

_FROM_FLOOR: tuple[FixedKind, ...] = (
    "door", "base case", "tall case", "radiator", "appliance", "chimney", "tub", "shower",
    "stairs",
)  # fmt: skip
_TO_CEILING: tuple[FixedKind, ...] = ("soffit", "chimney", "shower", "stairs")
_BOX = {"in": 4 * INCH, "mm": Fraction(100)}
"""How high what is small counts where one height was read [mm]."""


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
            base = lift if case.spec.is_hung else Fraction(0)
            low = base + case.standing.value if case.spec.hood else base
            left = run.begins.value + start.value
            right = left + case.overall_width.value
            yield CasePlace(case, run, wall, left, right, low, base + case.height.value)


def thing_edges(
    room: Room, thing: PlacedThing
) -> tuple[Fraction, Fraction, Fraction, Fraction] | None:
    """Left, right, lower and upper edge of what is in the way of cases [mm].

    Returns
    -------
    None while one of them is not known, and for a counter, under which cases go.
    """
    if thing.left is None or thing.right is None or thing.spec.kind == "counter":
        return None
    low = thing.bottom.value if thing.bottom is not None else None
    high = thing.top.value if thing.top is not None else None
    if low is None and thing.spec.kind in _FROM_FLOOR:
        low = Fraction(0)
    if high is None and thing.spec.kind in _TO_CEILING:
        clear = room.survey.clear
        high = room.spec.style["ceiling"].value if clear is None else clear.value
    if is_small(thing.spec.kind):
        box = _BOX[room.spec.unit]
        low = low if low is not None else (None if high is None else high - box)
        high = high if high is not None else (None if low is None else low + box)
    if low is None or high is None:
        return None
    return thing.left.value, thing.right.value, low, high
