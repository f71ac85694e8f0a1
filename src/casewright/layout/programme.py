"""An optimisation model in whole numbers, solved by a library and checked here exactly."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

__all__ = ["LayoutProgramme", "ProgrammeSolution"]

_NEARLY = 1e-6


@dataclass(frozen=True, slots=True)
class ProgrammeSolution:
    """The best values.

    Parameters
    ----------
    values
        Of each variable, by its number.
    cost
        In points.
    bound
        No solution costs less [points]; equal to the cost when the solution is proved best.
    """

    values: tuple[int, ...]
    cost: int
    bound: int


class LayoutProgramme:
    """Variables in whole numbers, sums that must hold, and a cost in whole points.

    All costs and factors are whole, so that a bound within half a point of the cost proves it.
    """

    def __init__(self) -> None:
        self._low: list[int] = []
        self._high: list[int] = []
        self._cost: list[int] = []
        self._rows: list[tuple[dict[int, int], int | None, int | None]] = []

    def number(self, low: int, high: int, *, cost: int = 0) -> int:
        """A whole number between two others; its number among the variables comes back."""
        self._low.append(low)
        self._high.append(high)
        self._cost.append(cost)
        return len(self._low) - 1

    def choice(self, *, cost: int = 0) -> int:
        """A yes or no."""
        return self.number(0, 1, cost=cost)

    def require(
        self, terms: Mapping[int, int], *, low: int | None = None, high: int | None = None
    ) -> None:
        """A sum of variables with their factors that must lie between two numbers."""
        self._rows.append((dict(terms), low, high))

    def require_if(
        self,
        choice: int | None,
        terms: Mapping[int, int],
        *,
        low: int | None = None,
        high: int | None = None,
        reach: int,
    ) -> None:
        """A sum that must lie between two numbers where a choice is yes.

        Parameters
        ----------
        choice
            None: always.
        reach
            As far as the sum can be outside where the choice is no.
        """
        if choice is None:
            self.require(terms, low=low, high=high)
            return
        if high is not None:
            self.require({**terms, choice: reach}, high=high + reach)
        if low is not None:
            self.require({**terms, choice: -reach}, low=low - reach)

    def distance(self, terms: Mapping[int, int], to: int, reach: int, *, cost: int) -> int:
        """A variable that is at least as large as a sum is far from a number.

        Parameters
        ----------
        reach
            The farthest it can be.
        """
        off = self.number(0, reach, cost=cost)
        self.require({**terms, off: -1}, high=to)
        self.require({**terms, off: 1}, low=to)
        return off

    def solve(self) -> ProgrammeSolution | None:
        """The best solution, or None when there is none.

        Raises
        ------
        ValueError
            When the solver's answer does not hold in whole numbers: a defect.
        """
        from casewright.layout.solver import solved  # which takes long to load

        variables = zip(self._low, self._high, self._cost, strict=True)
        found = solved(tuple(variables), self._rows)
        if found is None:
            return None
        values = tuple(round(each) for each in found[0])
        self._check(values)
        cost = sum(each * value for each, value in zip(self._cost, values, strict=True))
        bound = math.ceil(found[1] - _NEARLY)
        return ProgrammeSolution(values, cost, min(bound, cost))

    def _check(self, values: tuple[int, ...]) -> None:
        inside = all(
            low <= value <= high
            for low, value, high in zip(self._low, values, self._high, strict=True)
        )
        for terms, least, most in self._rows:
            reached = sum(factor * values[number] for number, factor in terms.items())
            inside = inside and (least is None or least <= reached)
            inside = inside and (most is None or reached <= most)
        if not inside:
            msg = "the solver's answer does not hold in whole numbers"
            raise ValueError(msg)
