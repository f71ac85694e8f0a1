"""Where cases stand or hang on a surveyed wall, in the wall's own measure."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.dims import Dim, Origin
from casewright.room.model import Room, Run
from casewright.sources import INCH
from casewright.survey.fixed_things import PlacedThing
from casewright.survey.specs import FixedKind, is_small
from casewright.survey.walls import SurveyedWall

__all__ = ["CasePlace", "ThingEdges", "cases_on_walls", "edges_of", "thing_edges"]

_FROM_FLOOR: tuple[FixedKind, ...] = (
    "door", "base case", "tall case", "radiator", "appliance", "chimney", "tub", "shower",
    "stairs",
)  # fmt: skip
_TO_CEILING: tuple[FixedKind, ...] = ("soffit", "chimney", "shower", "stairs")
_BOX = {"in": 4 * INCH, "mm": Fraction(100)}
"""How high what is small counts where one height was read [mm]."""

ThingEdges = tuple[Dim, Dim, Dim, Dim]
"""Left, right, lower and upper edge [mm]."""


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

    @property
    def left_edge(self) -> Dim:
        """`left`, as it follows [mm]."""
        run = self.run
        return run.begins + next(
            start for case, start in zip(run.cases, run.starts, strict=True) if case is self.case
        )

    @property
    def right_edge(self) -> Dim:
        """`right`, as it follows [mm]."""
        return self.left_edge + self.case.overall_width


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
    """`edges_of` as plain numbers [mm]."""
    found = edges_of(room, thing)
    if found is None:
        return None
    left, right, low, high = found
    return left.value, right.value, low.value, high.value


def edges_of(room: Room, thing: PlacedThing) -> ThingEdges | None:
    """Left, right, lower and upper edge of what is in the way of cases [mm].

    Returns
    -------
    None while one of them is not known, and for a counter, under which cases go.
    """
    if thing.left is None or thing.right is None or thing.spec.kind == "counter":
        return None
    low, high = thing.bottom, thing.top
    if low is None and thing.spec.kind in _FROM_FLOOR:
        low = _from_outside("floor", Fraction(0), Origin("cited", "it stands on the floor"))
    if high is None and thing.spec.kind in _TO_CEILING:
        high = room.survey.clear or _ceiling(room)
    if is_small(thing.spec.kind) and (low is None) != (high is None):
        note = "how high what is small counts where one height was read"
        box = _from_outside("box", _BOX[room.spec.unit], Origin("cited", note, "common practice"))
        low, high = low or (high and high - box), high or (low and low + box)
    if low is None or high is None:
        return None
    return thing.left, thing.right, low, high


def _ceiling(room: Room) -> Dim:
    """The ceiling by the style, where none was read."""
    given = room.spec.style["ceiling"]
    known = room.chain.nodes.get("style.ceiling")
    return known or _from_outside("ceiling", given.value, given.origin)


def _from_outside(name: str, value: Fraction, origin: Origin) -> Dim:
    found = Dim("", (), value)
    found.origin, found.path = origin, f"found.fixed.{name}"
    return found
