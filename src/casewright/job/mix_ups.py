"""What else may have been measured, or cut, where a reading is far from its number."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import isqrt

from casewright.casework.parts import Part
from casewright.dims import TAPE_MARK, Dim, Way, round_to, shop_text
from casewright.room.model import Room
from casewright.shop import saw_kerf

__all__ = ["mix_up"]

_SIZES = ("length", "width", "height", "depth", "thickness", "clear_width", "clear_height")
_SQUARE = ("width", "height", "depth", "length")
"""Sizes of which two have a diagonal."""

_FINE = 100
"""Steps of a diagonal to the millimetre."""


def mix_up(room: Room, path: str, value: Fraction, within: Fraction) -> str:
    """The size that was probably taken for the one named, in words; empty where none is near.

    Parameters
    ----------
    value
        As read [mm].
    within
        How far it may lie off [mm].
    """
    near = [(abs(value - size), says) for size, says in _Suspects(room, path).all()]
    off, says = min(near, key=lambda each: each[0], default=(within, ""))
    return says if off <= within else ""


class _Suspects:
    """Sizes that are mixed up with one of a thing, of equal ones the likeliest first."""

    def __init__(self, room: Room, path: str) -> None:
        self.room, self.dim = room, room.chain.nodes[path]
        self.owner, _, name = path.rpartition(".")
        self.name = name.removeprefix("blank_")
        self.part = next((part for part in room.parts if part.path == self.owner), None)

    def all(self) -> Iterator[tuple[Fraction, str]]:
        """Each with what it is, as a question's words."""
        yield from self._other_sizes()
        yield from self._beside()
        if self.part is not None:
            yield from self._blade(self.part)
        yield from self._diagonals()

    def _sizes(self, names: tuple[str, ...]) -> Iterator[tuple[str, Dim]]:
        for name in names:
            dim = self.room.chain.nodes.get(f"{self.owner}.{name}")
            if dim is not None:
                yield name, dim

    def _other_sizes(self) -> Iterator[tuple[Fraction, str]]:
        for name, dim in self._sizes(_SIZES):
            if name != self.name:
                words = name.replace("_", " ")
                yield dim.value, f"measured the {words}, {self._text(dim.value)}"

    def _beside(self) -> Iterator[tuple[Fraction, str]]:
        """Of a sum, one of its ends left out or taken in once more: a side of a box."""
        formula = self.dim.args[0] if self.dim.op == "as" and self.dim.args else None
        if not isinstance(formula, Dim) or formula.op not in ("+", "total"):
            return
        for each in _terms(formula):
            if each.path and each.value * 2 < self.dim.value:
                own, thick = each.path.removeprefix(f"{self.owner}."), self._text(each.value)
                yield self.dim.value - each.value, f"measured without {own}, {thick}"
                yield self.dim.value + each.value, f"measured with one more {own}, {thick}"

    def _blade(self, part: Part) -> Iterator[tuple[Fraction, str]]:
        if self.name not in ("length", "width") or part.state == "assembled":
            return
        kerf = saw_kerf(self.room.spec.shop)
        says = f"cut on the other side of the line (the kerf is {self._text(kerf)})"
        yield self.dim.value - kerf, says
        yield self.dim.value + kerf, says

    def _diagonals(self) -> Iterator[tuple[Fraction, str]]:
        """From corner to corner of a face; to a hundredth of a millimetre."""
        sizes = list(self._sizes(_SQUARE))
        for number, (name, one) in enumerate(sizes):
            for other_name, other in sizes[number + 1 :]:
                if self.name in (name, other_name):
                    square = (one.value**2 + other.value**2) * _FINE**2
                    across = Fraction(isqrt(round(square)), _FINE)
                    shown = self._text(
                        round_to(across, TAPE_MARK[self.room.spec.unit], Way.NEAREST)[0]
                    )
                    yield across, f"measured from corner to corner, ~{shown}"

    def _text(self, size: Fraction) -> str:
        return shop_text(size, self.room.spec.unit)


def _terms(formula: Dim) -> Iterator[Dim]:
    """What a sum adds up."""
    for arg in formula.args:
        if isinstance(arg, Dim):
            if arg.op in ("+", "total") and not arg.path:
                yield from _terms(arg)
            else:
                yield arg
