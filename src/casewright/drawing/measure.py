"""A length as it is printed: exact inside, with its path, its fraction stacked."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple

from casewright.dims import Dim, format_length, reading_text
from casewright.dims.units import Unit

__all__ = ["Content", "Measure", "Piece", "Stack", "mark_of", "measure_of", "pieces", "plain_text"]


class Stack(NamedTuple):
    """A fraction to be stacked: figures over and under a bar."""

    numerator: str
    denominator: str


Piece = str | Stack
_FITTED = ("dado", "rabbet", "groove", "lap", "rebate", "tongue", "mortise")
_FRACTION = re.compile(r"(?:(?<=\d) )?(\d+)/(\d+)")


@dataclass(frozen=True, slots=True)
class Measure:
    """A length to print.

    Parameters
    ----------
    value
        Length [mm].
    unit
        Unit of the job.
    path
        Its path on the chain of dimensions.
    precision
        Parts of one unit to round to [-]; None: as the tool shows it that the size is read with.
        That is a calliper for a thickness and for what a cut is to fit, else a tape.
    with_unit
        Put the unit behind the number.
    before, after
        Words in front of and behind the number: 'Ø', 'typ.'.

    Examples
    --------
    >>> Measure(Fraction(2413, 8), "in").text
    '11 7/8'
    >>> thick = Fraction(703, 1000) * Fraction("25.4")
    >>> Measure(thick, "in", "stock.plywood.thickness").text, Measure(thick, "in").text
    ('0.703', '~11/16')
    """

    value: Fraction
    unit: Unit
    path: str = ""
    precision: int | None = None
    with_unit: bool = False
    before: str = ""
    after: str = ""

    def __hash__(self) -> int:
        """From what tells most lengths apart: hashing a fraction takes longer than all else."""
        return hash((self.path, self.unit, self.value.numerator))

    @property
    def text(self) -> str:
        """The number on one line; a rounded one begins with '~'."""
        return f"{self.before}{self._number()}{self.after}"

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """The number with its fraction apart."""
        number = _apart(self._number())
        return tuple(p for p in (self.before, *number, self.after) if p)

    def _number(self) -> str:
        if self.precision is None and not self.with_unit:
            return reading_text(self.value, self.unit, calliper=_is_fitted(self.path))
        return format_length(
            self.value, self.unit, precision=self.precision, with_unit=self.with_unit
        )


def _is_fitted(path: str) -> bool:
    """Whether a size is read with a calliper: a thickness, the width or depth of a cut."""
    *places, name = path.split(".")
    if name in ("thickness", "face_to_far_wall"):
        return True
    return name in ("width", "depth") and any(places) and places[-1].startswith(_FITTED)


Content = str | Measure | tuple[str | Measure, ...]
"""What a line of lettering says: words, a length, or several of both."""


def measure_of(dim: Dim, unit: Unit, *, precision: int | None = None) -> Measure:
    """A number of the chain, ready to print.

    Parameters
    ----------
    unit
        Unit of the job.
    precision
        Parts of one unit to round to [-].
    """
    return Measure(dim.value, unit, dim.path, precision)


def mark_of(dim: Dim, unit: Unit) -> Measure:
    """A place to be marked on a wall or on a lath: a metric tape shows whole millimetres there.

    Parameters
    ----------
    unit
        Unit of the job.
    """
    return measure_of(dim, unit, precision=1 if unit == "mm" else None)


def _apart(number: str) -> list[Piece]:
    found: list[Piece] = []
    end = 0
    for match in _FRACTION.finditer(number):
        found.extend((number[end : match.start()], Stack(match[1], match[2])))
        end = match.end()
    return [*found, number[end:]]


def pieces(content: Content) -> tuple[Piece, ...]:
    """The words and fractions of a line in order. Words that merely look like one stay words."""
    if isinstance(content, str):
        return (content,) if content else ()
    if isinstance(content, Measure):
        return content.pieces
    return tuple(piece for item in content for piece in pieces(item))


def plain_text(content: Content) -> str:
    """A line of lettering without stacking."""
    if isinstance(content, str):
        return content
    if isinstance(content, Measure):
        return content.text
    return "".join(plain_text(item) for item in content)
