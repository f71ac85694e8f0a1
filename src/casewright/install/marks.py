"""Marks of a wall from one datum: along it from its left end, and up from the level line."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from casewright.dims import Dim
from casewright.install.numbers import Numbers
from casewright.install.places import WallPlace
from casewright.survey.walls import SurveyedWall

__all__ = ["HeightMark", "Mark", "MarkKind", "height_marks", "marks_along"]

MarkKind = Literal["case", "stud", "thing", "wall"]


@dataclass(frozen=True, slots=True)
class Mark:
    """A running mark along a wall.

    Parameters
    ----------
    at
        From the wall's left end [mm].
    says
        What is there.
    band
        Which row it belongs to: 'hung', 'standing', or neither.
    """

    at: Dim
    says: str
    kind: MarkKind
    band: Literal["hung", "standing", ""] = ""


@dataclass(frozen=True, slots=True)
class HeightMark:
    """A mark up a wall.

    Parameters
    ----------
    above_floor
        From the highest floor of the room [mm].
    from_line
        From the level line; below 0 under it [mm]. None: no level line was read.
    """

    above_floor: Dim
    from_line: Dim | None
    says: str


def marks_along(
    numbers: Numbers, wall: SurveyedWall, places: Iterable[WallPlace]
) -> tuple[Mark, ...]:
    """Every mark along a wall, left to right: edges and seams of cases, studs, what is there."""
    found = [*_seams(tuple(places)), *_studs(wall), *_things(wall)]
    if wall.width is not None:
        found.append(Mark(wall.width, "the wall's right end, at its narrowest", "wall"))
    return tuple(sorted(found, key=lambda mark: (mark.at.value, mark.kind, mark.says)))


def _seams(places: tuple[WallPlace, ...]) -> Iterator[Mark]:
    for hung in (True, False):
        row = [place for place in places if place.is_hung is hung]
        band: Literal["hung", "standing"] = "hung" if hung else "standing"
        edges: dict[Fraction, tuple[Dim, list[str], list[str]]] = {}
        for place in row:
            edges.setdefault(place.left.value, (place.left, [], []))[2].append(
                place.case.spec.title
            )
            edges.setdefault(place.right.value, (place.right, [], []))[1].append(
                place.case.spec.title
            )
        for dim, ends, begins in edges.values():
            if ends and begins:
                says = f"seam: {ends[0]} | {begins[0]}"
            elif ends:
                says = f"right side of {ends[0]}"
            else:
                says = f"left side of {begins[0]}"
            yield Mark(dim, says, "case", band)


def _studs(wall: SurveyedWall) -> Iterator[Mark]:
    for stud, found in zip(wall.studs, wall.spec.studs, strict=True):
        yield Mark(stud, "stud, probed" if found.probed else "stud", "stud")


def _things(wall: SurveyedWall) -> Iterator[Mark]:
    for thing in wall.things:
        name = thing.spec.title
        if thing.left is not None and thing.right is not None:
            if thing.left.value == thing.right.value:
                yield Mark(thing.left, f"middle of {name}", "thing")
                continue
            yield Mark(thing.left, f"left edge of {name}", "thing")
            yield Mark(thing.right, f"right edge of {name}", "thing")


def height_marks(
    numbers: Numbers, wall: SurveyedWall, places: Iterable[WallPlace]
) -> tuple[HeightMark, ...]:
    """Marks up a wall, highest first: level line, tops, and the ledger's upper edge."""
    room = numbers.room
    own = numbers.wall(wall.spec.key).at("height")
    floor = room.survey.floor
    wanted: dict[Fraction, tuple[Dim, list[str]]] = {}
    if floor is not None:
        wanted[floor.value] = (floor, ["level line"])
    for place in places:
        name = place.case.spec.title
        wanted.setdefault(place.top.value, (place.top, []))[1].append(f"top of {name}")
        if place.is_hung:
            says = wanted.setdefault(place.bottom.value, (place.bottom, []))[1]
            words = "ledger's upper edge: underside of the cases that hang"
            if place.case.spec.hood:
                words = f"underside of {name}"
            if words not in says:
                says.append(words)
    found: list[HeightMark] = []
    for n, value in enumerate(sorted(wanted, reverse=True), start=1):
        dim, says = wanted[value]
        line = None if floor is None else own.let(f"from_line_{n}", dim - floor)
        found.append(HeightMark(dim, line, _joined(says)))
    return tuple(found)


def _joined(says: list[str]) -> str:
    """Several of one height in one line: 'top of pots, bench'."""
    tops = [each.removeprefix("top of ") for each in says if each.startswith("top of ")]
    rest = [each for each in says if not each.startswith("top of ")]
    return "; ".join([*rest, *([f"top of {', '.join(tops)}"] if tops else [])])
