"""Hold points on paper: what is measured before the next cut, go and no-go, and what waits."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.dims import Measure
from casewright.outputs.blocks import Block, Callout, Column, Heading, Row, Step, Table
from casewright.outputs.inlines import Blank, Inline, Link, PageNumber, Rich, SignMark, Strong
from casewright.packet.assembly_steps import Stop
from casewright.packet.hold_marks import HOLDS, HoldMarks, point_measure, point_name
from casewright.packet.mark_words import mark_list
from casewright.packet.places import place_words
from casewright.resolve import HoldPoint, band_path
from casewright.room.forecast_words import chance_text, with_text
from casewright.room.model import Room

__all__ = ["HoldPages"]

_COLUMNS = (
    Column(""), Column("Measure", share=2.4), Column("Planned", share=1.0),
    Column("Read", share=1.2), Column("Go", share=1.5), Column("No go: outside", share=1.5),
    Column("Then cut", share=1.4), Column("Misses without, with it", share=1.6),
)  # fmt: skip


class HoldPages:
    """The hold points of a room, numbered, on the pages where they stand.

    Parameters
    ----------
    room
        The room.
    points
        In the order of making.
    """

    def __init__(self, room: Room, points: Sequence[HoldPoint]) -> None:
        self._room, self._points = room, tuple(points)
        self.marks = HoldMarks(room, points)

    def blocks(self) -> Iterator[Block]:
        """The table of all of them, the passed ones among them, and what each answer means."""
        if not self._points:
            return
        yield Heading("Hold points: measured before the next cut", 2, HOLDS)
        yield Table(_COLUMNS, tuple(map(self._row, self._points)), small=True)
        yield Callout(
            "measure first",
            "Stop. A reading inside Go: cut what waits as it is printed. Any other: write it into "
            "the record and print the packet again; what waits is then cut to new sizes. One that "
            "is outside the last band: put right what was measured before anything is cut to it. "
            "Misses are chances, from how far the tools stray.",
            "At a hold point",
        )

    def stage(self) -> Step | None:
        """The stop in the order of work; None where no hold point is open."""
        open_ones = [point.number for point in self._points if point.read is None]
        if not open_ones:
            return None
        word = "hold point" if len(open_ones) == 1 else "hold points"
        listed = ", ".join(map(str, open_ones))
        return Step(
            (SignMark("measure first"), f" Stop at {word} {listed} before what waits is cut"),
            (("", Link("Hold points", HOLDS), " p. ", PageNumber(HOLDS)),),
        )

    def stops(self, case: Case) -> tuple[Stop, ...]:
        """The stops where a case stands clamped: what is read on it, and what waits."""
        return tuple(
            Stop(self._step(point), point.parts)
            for point in self._points
            if point.read is None and point.path.rpartition(".")[0] == case.key
        )

    def _row(self, point: HoldPoint) -> Row:
        place = place_words(self._room, point.path)
        what = f"{point_name(point)}, {place}, {with_text(point.reading.tool)}"
        read: Rich = Blank(15.0) if point.read is None else self._size(point, point.read)
        first = point.watched[0]
        odds = f"{chance_text(first.without)}, {chance_text(first.with_it)}"
        waits = self._marks(point) if point.read is None else "passed"
        return Row(
            (
                str(point.number),
                what,
                self._size(point, point.planned),
                read,
                self._band(point, "go", "none: cut to the reading"),
                self._band(point, "sound", ""),
                waits,
                odds,
            )
        )

    def _step(self, point: HoldPoint) -> Step:
        planned = self._size(point, point.planned)
        words: list[Inline] = [
            SignMark("measure first"), f" Stop, hold point {point.number}: {point_name(point)}, ",
            "planned ", Strong(planned), ", read ", Blank(),
        ]  # fmt: skip
        told: list[Inline] = [f"{with_text(point.reading.tool)}; "]
        if point.go is not None:
            go = self._band(point, "go", "")
            told += ["go ", *(go if isinstance(go, tuple) else (go,)), ": as printed; "]
        told += ["any other: write it down first. Waiting: ", self._marks(point)]
        return Step(tuple(words), (tuple(told),))

    def _band(self, point: HoldPoint, name: str, none: str) -> Rich:
        band = point.go if name == "go" else point.sound
        if band is None:
            return none
        low, high = (
            point_measure(self._room, point, value, band_path(point, name, end))
            for end, value in zip(("low", "high"), band, strict=True)
        )
        return low if band[0] == band[1] else (low, " to ", high)

    def _size(self, point: HoldPoint, value: Fraction) -> Measure:
        return point_measure(self._room, point, value, point.path)

    def _marks(self, point: HoldPoint) -> str:
        marks = {part.path: part.mark for part in self._room.parts}
        return mark_list(marks[path] for path in point.parts if path in marks)
