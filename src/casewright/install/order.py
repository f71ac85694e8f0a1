"""The order in which cases go to their walls, and what each lift weighs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.install.places import WallPlace
from casewright.room.lifting import lifted_weight
from casewright.room.model import Room, Run
from casewright.survey.walls import SurveyedWall

__all__ = ["Lift", "hanging_order"]

_TALL = ("tall", "surround")


@dataclass(frozen=True, slots=True)
class Lift:
    """One case to its place.

    Parameters
    ----------
    weight
        Without doors, drawers and loose shelves [kg]: shown, never a permission to lift.
    because
        Why it comes now: 'in the corner', 'on to the right'.
    """

    place: WallPlace
    weight: Fraction
    because: str

    @property
    def case(self) -> Case:
        """The case."""
        return self.place.case


def hanging_order(room: Room, wall: SurveyedWall, places: Sequence[WallPlace]) -> tuple[Lift, ...]:
    """Cases of a wall in the order in which they go up.

    Tall ones come first, since rows end at them; then those that hang, while nothing is in the
    way; then those that stand. A row begins in its corner, one that stands else at the highest
    floor, one that hangs else at its first end; from there it goes on to either side (common
    practice).
    """
    found = [
        Lift(place, lifted_weight(room, place.case), "tall: the rows end at it")
        for place in places
        if place.case.spec.kind in _TALL
    ]
    for hung in (True, False):
        rows: dict[str, list[WallPlace]] = {}
        for place in places:
            if place.is_hung is hung and place.case.spec.kind not in _TALL:
                rows.setdefault(place.run.spec.key, []).append(place)
        for row in rows.values():
            for place, because in _row(room, wall, row):
                found.append(Lift(place, lifted_weight(room, place.case), because))
    return tuple(found)


def _row(room: Room, wall: SurveyedWall, row: list[WallPlace]) -> Iterator[tuple[WallPlace, str]]:
    """A row from where it begins, out to either side."""
    first, because = _first(room, wall, row)
    yield row[first], because
    for place in row[first + 1 :]:
        yield place, "on to the right"
    for place in reversed(row[:first]):
        yield place, "on to the left"


def _first(room: Room, wall: SurveyedWall, row: list[WallPlace]) -> tuple[int, str]:
    run = row[0].run
    for corner in room.survey.spec.corners:
        if wall.spec.key not in (corner.left, corner.right) or corner.outside:
            continue
        at_left = corner.right == wall.spec.key
        other = corner.left if at_left else corner.right
        if _reaches(run, at_left=at_left) and _has_row(room, other, hung=row[0].is_hung):
            at = 0 if at_left else -1
            number = at % len(row)
            if row[at].case is run.cases[at]:
                return number, f"in the corner: {corner.title}"
            return number, f"beside {run.cases[at].spec.title}, which stands in the corner"
    high = _highest(wall, row[0].left.value, row[-1].right.value)
    if not row[0].is_hung and high is not None:
        over = [n for n, place in enumerate(row) if place.left.value <= high <= place.right.value]
        if over:
            return over[0], "over the highest floor of its row"
    return 0, "first of its row"


def _has_row(room: Room, wall: str, *, hung: bool) -> bool:
    """Whether cases of the same sort go to a wall."""
    return any(
        run.spec.on == wall and any(case.spec.is_hung is hung for case in run.cases)
        for run in room.runs
    )


def _highest(wall: SurveyedWall, left: Fraction, right: Fraction) -> Fraction | None:
    """Where the floor is highest between two places along the wall [mm]; None: not read there."""
    read = [
        (down.value, station.along)
        for n, station in enumerate(wall.spec.stations, start=1)
        if left <= station.along <= right
        and (down := wall.read.get(f"station_{n}.down")) is not None
    ]
    return min(read)[1] if read else None


def _reaches(run: Run, *, at_left: bool) -> bool:
    """Whether a run goes to that end of its wall."""
    stops = run.spec.after if at_left else run.spec.before
    return run.spec.end("left" if at_left else "right") != "open" and not stops
