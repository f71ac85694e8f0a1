"""What stands beside a piece that waits at a hold point, wherever the piece is shown."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from casewright.casework.parts import Part
from casewright.dims import Measure
from casewright.outputs.inlines import Blank, Inline, PageNumber, Rich, SignMark, Strong
from casewright.packet.places import place_words
from casewright.resolve import HoldPoint
from casewright.room.model import Room

__all__ = ["HOLDS", "HoldMarks", "point_measure", "point_name"]

HOLDS = "holds"
"""Anchor of the table of hold points."""

_SHORT_MM = 12.0  # a blank among other things [mm]
_FINE = {"in": 1000, "mm": 100}
_PLAIN = {"in": 64, "mm": 10}


def point_name(point: HoldPoint) -> str:
    """What is measured, without where: 'clear width'."""
    return point.path.rpartition(".")[2].replace("_", " ")


def point_measure(room: Room, point: HoldPoint, value: Fraction, path: str) -> Measure:
    """A size as what it is read with shows it.

    Parameters
    ----------
    path
        Of its number on the chain.
    """
    unit = room.spec.unit
    fine = point.reading.tool == "calliper"
    return Measure(value, unit, path, precision=(_FINE if fine else _PLAIN)[unit])


class HoldMarks:
    """Says of pieces at which hold points they wait.

    Parameters
    ----------
    room
        The room.
    points
        Its hold points; those that are passed hold nothing up.
    """

    def __init__(self, room: Room, points: Iterable[HoldPoint] = ()) -> None:
        self._room = room
        self._of: dict[str, list[HoldPoint]] = {}
        for point in points:
            for path in point.parts if point.read is None else ():
                self._of.setdefault(path, []).append(point)

    def points(self, *paths: str) -> tuple[HoldPoint, ...]:
        """The hold points that any of these pieces waits at, each once, by number."""
        found = {point.path: point for path in paths for point in self._of.get(path, ())}
        return tuple(sorted(found.values(), key=lambda point: point.number))

    def words(self, *paths: str) -> str:
        """In the fewest words: 'hold 1, 3'; empty for pieces that wait at none."""
        numbers = ", ".join(str(point.number) for point in self.points(*paths))
        return f"hold {numbers}" if numbers else ""

    def sign(self, *paths: str) -> tuple[Inline, ...]:
        """The sign and the fewest words."""
        words = self.words(*paths).replace(" ", "\u00a0")
        return (SignMark("measure first"), f"\u00a0{words}") if words else ()

    def short(self, *paths: str) -> tuple[Inline, ...]:
        """With a blank for each reading: 'hold 1: clear width ____'."""
        found: list[Inline] = []
        for point in self.points(*paths):
            found += ["  "] if found else []
            found += [SignMark("measure first"), "\u00a0", *self._blank(point)]
        return tuple(found)

    def on_label(self, path: str) -> Rich:
        """The same without signs, which a label has in a place of their own; empty for most."""
        found: list[Inline] = []
        for point in self.points(path):
            found += [", "] if found else []
            found += self._blank(point)
        return tuple(found)

    def _blank(self, point: HoldPoint) -> Iterator[Inline]:
        yield f"hold {point.number}: {point_name(point)} ".replace(" ", "\u00a0")
        yield Blank(_SHORT_MM)

    def in_full(self, parts: Iterable[Part]) -> Iterator[Inline]:
        """Sentences for a card: what is measured, as planned, a blank, where it is told."""
        for point in self.points(*(part.path for part in parts)):
            planned = point_measure(self._room, point, point.planned, point.path)
            place = place_words(self._room, point.path)
            yield SignMark("measure first")
            yield " "
            yield Strong(f"Not before hold point {point.number}: ")
            yield f"{point_name(point)}, {place}, planned "
            yield planned
            yield ", read\u00a0"
            yield Blank(_SHORT_MM)
            yield ", p.\u00a0"
            yield PageNumber(HOLDS)
            yield ". "
