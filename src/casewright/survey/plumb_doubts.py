"""Leans of the walls at both ends against the widths between them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import Dim, Unit, size_text
from casewright.survey.readings import variance
from casewright.survey.specs import Depth
from casewright.survey.walls import SurveyedWall

__all__ = ["PlumbConflict", "plumb_checks"]

_SIGMAS = 3
_WANDER = Fraction(4)
"""How far a wall that is not flat departs from its lean between two heights [mm]."""


@dataclass(frozen=True, slots=True)
class PlumbConflict:
    """Two widths over each other and what the leans make of them.

    Parameters
    ----------
    low, high
        Names of the readings at the lower and the upper height.
    plumbs
        Names of the readings of the leans.
    narrows
        How much narrower the upper one is as read [mm]; below 0: wider.
    by_lean
        The same as the leans have it [mm].
    """

    low: str
    high: str
    plumbs: tuple[str, ...]
    narrows: Fraction
    by_lean: Fraction

    def says(self, unit: Unit) -> str:
        """The contradiction in words."""
        read, lean = (_change(each, unit) for each in (self.narrows, self.by_lean))
        return f"the upper width is {read} the lower one, by the leans at both ends it is {lean}"


def _change(narrows: Fraction, unit: Unit) -> str:
    if not narrows:
        return "as wide as"
    return f"{size_text(abs(narrows), unit)} {'narrower' if narrows > 0 else 'wider'} than"


def plumb_checks(wall: SurveyedWall, unit: Unit) -> Iterator[PlumbConflict]:
    """Widths at the lowest and the highest told height of each depth that the leans contradict.

    A lean into the room at an end takes its share off the width at the top.
    """
    slopes = _slopes(wall, unit)
    if slopes is None:
        return
    names, slope, spread = slopes
    depths: tuple[Depth, ...] = ("back", "front")
    for depth in depths:
        told = sorted(
            ((each.height, n, each, dim) for n, (each, dim) in enumerate(wall.widths(), start=1)
             if each.height is not None and each.depth == depth),
            key=lambda row: row[:2],
        )  # fmt: skip
        if len(told) < 2 or told[0][0] == told[-1][0]:
            continue
        (low_at, low_n, low, low_dim), (high_at, high_n, high, high_dim) = told[0], told[-1]
        over = high_at - low_at
        narrows, by_lean = low_dim.value - high_dim.value, slope * over
        own = sum((variance(each.reading.accuracy, unit) for each in (low, high)), _WANDER**2)
        if (narrows - by_lean) ** 2 > _SIGMAS**2 * (own + spread * over**2):
            yield PlumbConflict(f"width_{low_n}", f"width_{high_n}", names, narrows, by_lean)


def _slopes(wall: SurveyedWall, unit: Unit) -> tuple[tuple[str, ...], Fraction, Fraction] | None:
    """Names, sum of the leans at both ends and its variance, each for 1 mm of height."""
    found: dict[str, tuple[str, Dim, int]] = {}
    for n, plumb in enumerate(wall.spec.plumbs, start=1):
        if plumb.of != "face":
            found.setdefault(plumb.of, (f"plumb_{n}", wall.read[f"plumb_{n}"], n - 1))
    if len(found) < 2:
        return None
    slope = spread = Fraction(0)
    for _, dim, index in found.values():
        plumb = wall.spec.plumbs[index]
        slope += dim.value / plumb.over
        spread += variance(plumb.lean.accuracy, unit) / plumb.over**2
    return tuple(name for name, _, _ in found.values()), slope, spread
