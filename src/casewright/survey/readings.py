"""A reading taken in the room: its value, its tool, and how far it may be off."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import TAPE_MARK, Dim, Given, Place, Unit, reading_causes

__all__ = ["TAPE", "Accuracy", "Reading", "enter_reading", "variance"]


@dataclass(frozen=True, slots=True)
class Accuracy:
    """How far readings of a tool stray either way [mm].

    Parameters
    ----------
    sigma
        One standard deviation.
    limit
        At most.
    """

    sigma: Fraction
    limit: Fraction


TAPE = Accuracy(Fraction(1, 2), Fraction(1))
"""A tape with its hook (common practice)."""


@dataclass(frozen=True, slots=True)
class Reading:
    """One reading.

    Parameters
    ----------
    given
        Its value [mm], with the tool and the place in the job file.
    accuracy
        Of the tool, or as the person judged it.
    sure
        Read once more and found right, however odd it looks.
    """

    given: Given
    accuracy: Accuracy
    sure: bool = False

    @property
    def value(self) -> Fraction:
        """As read [mm]."""
        return self.given.value


def variance(accuracy: Accuracy, unit: Unit) -> Fraction:
    """Variance of a reading: of its tool, and of being written to the nearest mark [mm2].

    Rounding to marks a apart has the variance a^2 / 12 of a uniform law (`gum`).

    Parameters
    ----------
    unit
        Of the job, which tells the marks: 1/16 in or 1 mm.
    """
    return accuracy.sigma**2 + TAPE_MARK[unit] ** 2 / 12


def enter_reading(place: Place, name: str, reading: Reading) -> Dim:
    """A reading on the chain, with how it strays by itself and by the tape it was read with."""
    accuracy, origin = reading.accuracy, reading.given.origin
    key = f"{place.path}.{name}"
    causes = reading_causes(key, accuracy.sigma, accuracy.limit, origin.note)
    return place.enter(name, reading.value, origin, causes=causes)
