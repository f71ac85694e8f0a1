"""A length as it is told: exact inside, with its path on the chain."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.dims.dim import Dim
from casewright.dims.length_text import format_length, reading_text, shop_text
from casewright.dims.units import Unit

__all__ = ["Measure", "as_said", "mark_of", "measure_of"]

_FITTED = ("dado", "rabbet", "groove", "lap", "rebate", "tongue", "mortise")


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
    said
        The number as a sentence says it, '1/16 in (1.5 mm)'; empty: as the others tell.

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
    said: str = ""

    def __hash__(self) -> int:
        """From what tells most lengths apart: hashing a fraction takes longer than all else."""
        return hash((self.path, self.unit, self.value.numerator))

    @property
    def text(self) -> str:
        """The number on one line; a rounded one begins with '~'."""
        return f"{self.before}{self.number}{self.after}"

    @property
    def number(self) -> str:
        """The number without the words in front of it and behind."""
        if self.said:
            return self.said
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


def as_said(dim: Dim, unit: Unit, said: str = "") -> Measure:
    """A number of the chain as a sentence says it.

    Parameters
    ----------
    unit
        Unit of the job.
    said
        How; empty: as the shop would say it, with its unit.
    """
    text = said or shop_text(dim.value, unit, with_unit=True)
    return Measure(dim.value, unit, dim.path, said=text)


def mark_of(dim: Dim, unit: Unit) -> Measure:
    """A place to be marked on a wall or on a lath: a metric tape shows whole millimetres there.

    Parameters
    ----------
    unit
        Unit of the job.
    """
    return measure_of(dim, unit, precision=1 if unit == "mm" else None)
