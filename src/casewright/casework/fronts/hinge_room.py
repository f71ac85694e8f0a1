"""The least that would make room for hinges which have none."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from casewright.dims import Unit
from casewright.sources import INCH

__all__ = ["SideOfLeaf", "least_relief"]

_STEP: dict[Unit, Fraction] = {"in": INCH / 16, "mm": Fraction(1)}
_TRIED = 400
"""How many steps are looked at: two feet, or 400 mm."""

_BOARDS = 3
"""Among more boards than these moving one alone hardly helps."""


@dataclass(frozen=True, slots=True)
class SideOfLeaf:
    """What decides whether the hinges of a leaf have room [mm].

    Parameters
    ----------
    count
        Hinges that it wants [-].
    bottom, height
        Case height of its lower edge; its own height.
    floor, ceiling
        Lowest and highest place for a hinge.
    shelves
        Stretches that boards keep free of hinges.
    end
        Usual distance of the outer hinges from its ends; in a low door a quarter of its height.
    least_end
        Distance that a corner joint asks for; 0 where it asks for none.
    apart
        Least distance of two hinges.
    """

    count: int
    bottom: Fraction
    height: Fraction
    floor: Fraction
    ceiling: Fraction
    shelves: tuple[tuple[Fraction, Fraction], ...]
    end: Fraction
    least_end: Fraction
    apart: Fraction

    @property
    def has_room(self) -> bool:
        """Whether all of them go in, clear of boards, ends and each other."""
        end = self.end if 3 * self.end <= self.height else self.height / 4
        end = max(end, self.least_end)
        span = self.height - 2 * end
        spots = []
        for number in range(self.count):
            even = self.bottom + end + span * Fraction(number, self.count - 1)
            edges = [even, self.floor, self.ceiling, *(z for pair in self.shelves for z in pair)]
            free = [each for each in edges if self._is_free(each)]
            if not free:
                return False
            spots.append(min(free, key=lambda each: abs(each - even)))
        return all(b - a >= self.apart for a, b in pairwise(spots))

    def _is_free(self, height: Fraction) -> bool:
        return self.floor <= height <= self.ceiling and not any(
            low < height < high for low, high in self.shelves
        )

    def taller(self, by: Fraction) -> SideOfLeaf:
        """With so much more height at its top."""
        return replace(self, height=self.height + by, ceiling=self.ceiling + by)

    def moved(self, number: int, by: Fraction) -> SideOfLeaf:
        """With one board so much higher."""
        shelves = list(self.shelves)
        low, high = shelves[number]
        shelves[number] = (low + by, high + by)
        return replace(self, shelves=tuple(shelves))


def least_relief(side: SideOfLeaf, unit: Unit) -> tuple[Fraction | None, Fraction | None]:
    """How much taller the opening, and how far one board up, would do; None: neither nearby.

    Returns
    -------
    Both in whole steps of 1/16 in, or of a millimetre [mm]; a board that goes down is below 0.
    """
    steps = [_STEP[unit] * number for number in range(1, _TRIED)]
    taller = _first(steps, side.taller)
    boards = range(len(side.shelves)) if len(side.shelves) <= _BOARDS else ()
    moves = (
        (abs(by), by, number) for number in boards for by in _nearest_move(side, number, steps)
    )
    best = min(moves, default=None)
    return taller, None if best is None else best[1]


def _nearest_move(side: SideOfLeaf, number: int, steps: list[Fraction]) -> Iterator[Fraction]:
    for sign in (1, -1):
        by = _first([sign * step for step in steps], lambda step: side.moved(number, step))
        if by is not None:
            yield by


def _first(steps: list[Fraction], changed: Callable[[Fraction], SideOfLeaf]) -> Fraction | None:
    return next((step for step in steps if changed(step).has_room), None)
