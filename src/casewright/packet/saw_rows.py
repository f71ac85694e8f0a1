"""The order of work at the saw as rows: a heading for each setting, a row for each cut."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from casewright.breakdown import EDGE_WORDS, InHand, SawCard, SawStep
from casewright.cutting.methods import Method
from casewright.dims import joined, measure_of
from casewright.dims.units import Unit
from casewright.outputs.blocks import Column, Row
from casewright.outputs.inlines import Blank, Inline, Link, Rich, SignMark, Strong, Tick
from casewright.packet.cut_words import triangle_words
from casewright.packet.hold_marks import HoldMarks
from casewright.packet.mark_words import mark_list
from casewright.packet.words import sizes, unfold

__all__ = ["saw_columns", "saw_rows"]

_SHARES: dict[Unit, tuple[float, float, float]] = {"in": (3.2, 1.6, 4.2), "mm": (3.5, 1.6, 3.9)}

_SETTINGS: dict[Method, tuple[str, str]] = {
    "straightedge": ("cut line ", " from the datum, along the straightedge"),
    "fence": ("fence ", ""),
    "carrier": ("fence ", ", the push block carries the piece"),
    "sled": ("stop ", " on the crosscut sled"),
}
_RUNS: dict[Method, str] = {
    "straightedge": "the straightedge laid anew for each cut",
    "fence": "a fence setting for each cut",
    "carrier": "a fence setting for each cut, the push block carries the piece",
    "sled": "a stop on the crosscut sled for each cut",
}


def saw_columns(unit: Unit) -> tuple[Column, ...]:
    """Columns of the table; stacked fractions take less of a line than tenths of a millimetre."""
    what, datum, gives = _SHARES[unit]
    return (
        Column("Cut", "centre"), Column("What", share=what), Column("Datum", share=datum),
        Column("Gives", share=gives), Column("Done"),
    )  # fmt: skip


def saw_rows(
    cards: Sequence[SawCard], noun: str, unit: Unit, holds: HoldMarks | None = None
) -> tuple[Row, ...]:
    """Settings in order; those that make a single cut one after another share a heading.

    What can hurt is said in full at the first cut it belongs to and pointed at from the next.

    Parameters
    ----------
    noun
        What a whole piece of the stock is called: sheet, board, strip.
    holds
        What pieces wait for that go by a reading; None: none does.
    """
    teller = _Teller(noun, unit, holds)
    return tuple(row for run in _runs(cards) for row in teller.rows(run))


def _runs(cards: Sequence[SawCard]) -> Iterator[list[SawCard]]:
    def key(numbered: tuple[int, SawCard]) -> tuple[Method, int]:
        number, card = numbered
        return (card.method, -1 if len(card.steps) == 1 else number)

    for _, run in groupby(enumerate(cards), key=key):
        yield [card for _, card in run]


class _Teller:
    """Tells cuts one after another and remembers what it has warned of."""

    def __init__(self, noun: str, unit: Unit, holds: HoldMarks | None) -> None:
        self._noun, self._holds = noun, holds
        self._unit = unit
        self._warned: dict[str, int] = {}

    def rows(self, run: list[SawCard]) -> Iterator[Row]:
        """The rows of one setting, or of several that make one cut each."""
        yield Row((self._heading(run),))
        for card in run:
            for number, step in enumerate(card.steps):
                yield self._row(step, alone=len(run) > 1, first=number == 0)

    def _heading(self, run: list[SawCard]) -> Rich:
        first, last = run[0], run[-1]
        words: list[Inline]
        if len(run) > 1:
            words = [
                Strong(f"Settings {first.number} to {last.number}: "),
                f"{_RUNS[first.method]}; {len(run)} cuts",
            ]
        else:
            before, behind = _SETTINGS[first.method]
            count = len(first.steps)
            words = [
                Strong(f"Setting {first.number}: {before}"),
                Strong(measure_of(first.setting, self._unit)),
                f"{behind}; {count} cut{'s' if count != 1 else ''}",
            ]
        marks = [mark for card in run for mark in card.marks]
        if marks:
            words.append(f"; finishes {mark_list(marks)}")
        return tuple(words)

    def _row(self, step: SawStep, *, alone: bool, first: bool) -> Row:
        what: list[Inline] = [f"{step.direction.capitalize()} {self._name(step.takes)}, "]
        what += self._size(step.takes)
        if alone:
            what += [" at ", Strong(measure_of(step.setting, self._unit))]
        if step.matched:
            what += ["; ", Strong(triangle_words(step.matched))]
        begun = dict.fromkeys(piece.id for piece in (*step.matched, *step.fixes))
        holds = self._holds.sign(*begun) if self._holds else ()
        what += [" ", *holds] if holds else []
        factory = "factory" if step.is_factory else "sawn"
        return Row(
            (
                Strong(str(step.number)),
                tuple(what),
                f"{factory} {EDGE_WORDS[step.datum]}",
                (*unfold(*self._given(step)), *self._cautions(step)),
                (Tick(), "  ", Blank(11.0)) if first else Tick(),
            )
        )

    def _name(self, piece: InHand) -> str:
        return f"{self._noun} {piece.name}" if "." not in piece.name else f"piece {piece.name}"

    def _size(self, piece: InHand) -> tuple[Inline, ...]:
        return sizes(piece.length, piece.width, unit=self._unit)

    def _given(self, step: SawStep) -> Iterator[Rich]:
        for number, given in enumerate(step.gives):
            if number:
                yield "; "
            if given.piece is not None:
                mark, title = given.piece.mark, given.piece.title
                name = joined("", (f"{mark} ", title)) if mark else title
                target = given.piece.id if given.piece.kind == "part" else ""
                yield (Link(name, target) if target else name, " ", *self._size(given))
                if self._holds and (waits := self._holds.sign(given.piece.id)):
                    yield ("  ", *waits)
            elif given.use == "offcut":
                yield ("keep, mark ", Strong(given.name), ": ", *self._size(given))
            elif given.use == "waste":
                yield "waste"
            else:
                yield (f"{given.name}: ", *self._size(given))

    def _cautions(self, step: SawStep) -> tuple[Inline, ...]:
        found: list[Inline] = []
        for words in step.dangers:
            before = self._warned.setdefault(words, step.number)
            told = words if before == step.number else f"as\u00a0at\u00a0cut\u00a0{before}"
            found += ["  ", SignMark("caution"), f"\u00a0{told}"]
        return tuple(found)
