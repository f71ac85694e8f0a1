"""What can be done to a made piece that would have to be of another size."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from casewright.casework.parts import Part
from casewright.dims import Dim, size_text
from casewright.resolve.spoiled import smallest_holding
from casewright.room.model import Room
from casewright.stock import Offcut

__all__ = ["MINUTES", "Move", "Remedy", "Rung", "Side", "mended", "sides_of"]

Side = Literal["length", "width"]
Rung = Literal[
    "adjust", "shim", "trim", "move a filler", "re-band", "glue a strip",
    "recut smaller elsewhere", "recut from an offcut", "recut", "design anew",
]  # fmt: skip

MINUTES: dict[Rung, int] = {
    "adjust": 6, "shim": 5, "trim": 5, "move a filler": 0, "re-band": 12, "glue a strip": 40,
    "recut smaller elsewhere": 8, "recut from an offcut": 8, "recut": 8, "design anew": 0,
}  # fmt: skip
"""Touch time of one skilled person: common practice, from memory; gluing with its clamps."""

_THICKEST_BAND = Fraction(3)
"""Common practice: edge band is sold up to 3 mm [mm]."""

_THINNEST_GLUED = Fraction(9)
"""Common practice: a strip glued to the edge of anything thinner does not hold [mm]."""


@dataclass(frozen=True, slots=True)
class Remedy:
    """One thing that can be done.

    Parameters
    ----------
    rung
        What it is.
    says
        What to do, with its sizes, in words.
    minutes
        About how long it takes; 0 where nothing is made for it [-].
    stock
        What it uses up, in words; empty for nothing.
    """

    rung: Rung
    says: str
    minutes: int
    stock: str = ""


@dataclass(frozen=True, slots=True)
class Move:
    """A made piece that would have to be longer or wider by `by` (shorter when negative) [mm]."""

    part: Part
    side: Side
    dim: Dim
    by: Fraction

    @property
    def size(self) -> tuple[Fraction, Fraction]:
        """Length and width it would have to be [mm]."""
        length, width = self.part.blank.length.value, self.part.blank.width.value
        if self.side == "length":
            return length + self.by, width
        return length, width + self.by


def sides_of(part: Part) -> tuple[tuple[Side, Dim], ...]:
    """The sizes a piece is cut to, by their names."""
    return (("length", part.blank.length), ("width", part.blank.width))


def mended(room: Room, moves: Sequence[Move], offcuts: Sequence[Offcut]) -> Iterator[Remedy]:
    """What brings one of these pieces to its size, the least work first.

    Parameters
    ----------
    moves
        Any one of them is enough.
    offcuts
        Those on hand.
    """
    bench = _Bench(room, offcuts)
    for move in moves:
        if move.by < 0:
            says = f"take {bench.text(-move.by)} off the {move.side} of {_name(move.part)}"
            yield Remedy("trim", says, MINUTES["trim"])
    for move in moves:
        if move.by > 0:
            yield from bench.lengthen(move)
    for move in moves:
        if move.by > 0:
            yield from bench.cut_again(move)


@dataclass(frozen=True, slots=True)
class _Bench:
    """Where a piece is made longer, wider or anew."""

    room: Room
    offcuts: Sequence[Offcut]

    def lengthen(self, move: Move) -> Iterator[Remedy]:
        planes = ("w0", "w1") if move.side == "width" else ("l0", "l1")
        banded = [edge for edge in move.part.edges if edge.kind == "band" and edge.edge in planes]
        thick = banded[0].thickness.value + move.by if banded else None
        if thick is not None and thick <= _THICKEST_BAND:
            says = f"band {_name(move.part)} anew, {self.text(thick)} thick"
            yield Remedy("re-band", says, MINUTES["re-band"], "edge band")
        if move.side == "width" and move.part.blank.thickness.value >= _THINNEST_GLUED:
            says = (
                f"glue a strip to an edge of {_name(move.part)} and rip it to "
                f"{self.text(move.size[1])}"
            )
            yield Remedy("glue a strip", says, MINUTES["glue a strip"], "a strip of that stock")

    def cut_again(self, move: Move) -> Iterator[Remedy]:
        part, (length, width) = move.part, move.size
        size = f"{self.text(length)} x {self.text(width)}"
        goods = self.room.spec.stock[part.stock].title
        other = self._smaller(part)
        if other is not None:
            says = f"cut {_name(other)} out of {_name(part)}, and that one again, {size}"
            stock = f"{size} of {goods}, less what {_name(other)} would take"
            yield Remedy("recut smaller elsewhere", says, MINUTES["recut"], stock)
        offcut = smallest_holding(self.offcuts, part.stock, length, width, turns=not part.grain)
        if offcut is not None:
            says = f"cut {_name(part)} again, {size}, out of {offcut.path}"
            yield Remedy("recut from an offcut", says, MINUTES["recut"], offcut.path)
        else:
            says = f"cut {_name(part)} again, {size}"
            yield Remedy("recut", says, MINUTES["recut"], f"{size} of {goods}")

    def _smaller(self, part: Part) -> Part | None:
        """The largest piece still to be cut that comes out of a made one."""
        own = Offcut(part.path, part.stock, part.blank.length.value, part.blank.width.value)
        if part.state != "cut":
            return None
        fit = [
            each
            for each in self.room.parts
            if each.state == "planned" and each.stock == part.stock
            and own.holds(each.blank.length.value, each.blank.width.value, turns=not each.grain)
        ]  # fmt: skip
        return max(fit, key=lambda p: p.blank.length.value * p.blank.width.value, default=None)

    def text(self, size: Fraction) -> str:
        return size_text(size, self.room.spec.unit)


def _name(part: Part) -> str:
    return f"{part.mark} ({part.path})"
