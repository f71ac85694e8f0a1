"""What is worked out where it is told: numbers with their formulas, from those of the job."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from casewright.dims import (
    Dim,
    Given,
    Measure,
    Origin,
    Unit,
    Way,
    as_said,
    format_length,
    round_to,
    size_text,
    weight_text,
)
from casewright.sources import INCH

__all__ = ["FOUND", "Limit", "Reckoning", "entered", "round_figure"]

FOUND = "found"
"""Under which the numbers of findings stand on the chain."""

_FINE: Mapping[Unit, tuple[int, Fraction]] = {"in": (64, INCH), "mm": (10, Fraction(1))}
"""Parts of a unit that a length worked out is told in [-], and the unit [mm]."""

_PRACTICE = "common practice"


@dataclass(frozen=True, slots=True)
class Limit:
    """A round figure of the trade, as either half of it says it.

    Parameters
    ----------
    name
        Under which it is told: `drawer_bottom.widest`.
    inches, millimetres
        The figure in either unit; where it is none in inches, millimetres hold for both.
    note
        What it is, in words.
    source
        Key in `casewright.sources`.
    """

    name: str
    inches: str
    millimetres: str
    note: str
    source: str = _PRACTICE

    def of(self, unit: Unit) -> Fraction:
        """The figure in the unit of the job [mm]."""
        return round_figure(self.inches, self.millimetres, unit)


@cache
def round_figure(inches: str, millimetres: str, unit: Unit) -> Fraction:
    """A figure as either half of the trade rounds it [mm]: 2 in, 50 mm.

    Read once: rules ask for theirs at every part.

    Parameters
    ----------
    inches
        Empty: there is none in inches, and millimetres hold for both.
    """
    return Fraction(inches) * INCH if unit == "in" and inches else Fraction(millimetres)


class Reckoning:
    """Numbers of one finding. They are made when it is told, and entered when one is asked for.

    Parameters
    ----------
    rule
        Name of the rule.
    of
        What the finding is about; no other finding of the rule is about it.
    unit
        Of the job.
    nodes
        The numbers of the job, by path.
    root
        Under which they stand on the chain; of a line of the buy list another.
    """

    __slots__ = ("_nodes", "_own", "_path", "_root", "unit")

    def __init__(
        self, rule: str, of: str, unit: Unit, nodes: Mapping[str, Dim], root: str = FOUND
    ) -> None:
        self.unit = unit
        self._root = root
        self._path = f"{root}.{rule.replace(' ', '_')}.{of}"
        self._nodes = nodes
        self._own: dict[str, Dim] = {}

    @property
    def numbers(self) -> tuple[Dim, ...]:
        """What was worked out and looked up so far."""
        return tuple(self._own.values())

    @property
    def none(self) -> Dim:
        """Nothing, as a length."""
        return self.given("none", Given(Fraction(0), Origin("cited", "nothing")))

    def let(self, name: str, dim: Dim) -> Dim:
        """Name a formula; what has a name keeps it."""
        if dim.path:
            return dim
        node = Dim("as" if dim.op else "", (dim,) if dim.op else (), dim.value, dim.power)
        node.origin = dim.origin
        return self._enter(f"{self._path}.{name}", node)

    def limit(self, limit: Limit) -> Dim:
        """A figure of the trade."""
        origin = Origin("cited", limit.note, limit.source)
        return self.given(limit.name, Given(limit.of(self.unit), origin))

    def given(self, path: str, given: Given, power: int = 1) -> Dim:
        """A number from outside: the one of the job, where it has one of that path.

        Parameters
        ----------
        power
            Power of a length in it: 0 for a ratio or a weight, -3 for a density [-].
        """
        known = self._nodes.get(path)
        if known is not None:
            return known
        path = path if path.startswith("style.") else f"{self._root}.{path}"
        known = self._own.get(path)
        if known is not None:
            return known
        dim = Dim("", (), given.value, power)
        dim.origin = given.origin
        return self._enter(path, dim)

    def worked(
        self, name: str, value: Fraction, origin: Origin, *rests_on: Dim, power: int = 1
    ) -> Dim:
        """A number worked out in another way than by a formula of the chain.

        Parameters
        ----------
        value
            [mm to the power].
        origin
            How, and by which source.
        rests_on
            The numbers that it follows.
        """
        dim = Dim("by" if rests_on else "", rests_on, value, power)
        dim.origin = origin
        return self._enter(f"{self._path}.{name}", dim)

    def rounded(self, name: str, dim: Dim, step: Fraction, way: Way) -> Dim:
        """A number on a grid of steps [mm]."""
        value, _ = round_to(dim.value, step, way)
        return self._enter(f"{self._path}.{name}", Dim("round", (dim, step), value, dim.power))

    def about(self, dim: Dim, name: str, way: Way = Way.NEAREST) -> Measure:
        """A length that is worked out, rounded to what can be told apart: 1/64 in or 0.1 mm.

        Parameters
        ----------
        way
            Down for what is allowed at the most, up for what is needed at the least.
        """
        fine, unit = _FINE[self.unit]
        near = self.rounded(name, dim, unit / fine, way)
        text = format_length(near.value, self.unit, precision=fine, with_unit=True)
        return as_said(near, self.unit, text)

    def text(self, dim: Dim, name: str = "length") -> Measure:
        """A length as the shop would say it, with its unit: what is exact is not rounded."""
        return as_said(self.let(name, dim), self.unit)

    def length(self, dim: Dim, name: str = "length") -> Measure:
        """A length as a tape shows it, with its unit: '47 23/32"', '~1 7/16"', '452.5 mm'."""
        return self.said(dim, size_text(dim.value, self.unit), name)

    def thickness(self, dim: Dim, name: str = "thickness") -> Measure:
        """A thickness or a fitted cut, as sold or as a calliper shows it: '18 mm', '0.719"'."""
        return self.said(dim, size_text(dim.value, self.unit, calliper=True), name)

    def weight(self, dim: Dim, name: str = "weight") -> Measure:
        """A weight to a tenth of a kilogram, with pounds before it in a job in inches.

        Parameters
        ----------
        name
            It ends in 'weight'.
        """
        return self.said(dim, weight_text(dim.value, self.unit, fine=True), name)

    def said(self, dim: Dim, text: str, name: str) -> Measure:
        """A number as a sentence says it."""
        return as_said(self.let(name, dim), self.unit, text)

    def _enter(self, path: str, dim: Dim) -> Dim:
        """Under a name of its own; what is worked out again is what it was."""
        count, asked = 1, path
        while path in self._own:
            known = self._own[path]
            if (known.value, known.power) == (dim.value, dim.power):
                return known
            count += 1
            path = f"{asked}_{count}"
        dim.path = path
        self._own[path] = dim
        return dim


def entered(numbers: Iterable[Dim], nodes: dict[str, Dim]) -> None:
    """Put numbers, and those that they rest on, among others that have none of their path.

    Parameters
    ----------
    nodes
        Numbers by path.
    """
    waiting = list(numbers)
    while waiting:
        dim = waiting.pop()
        if dim.path in nodes:
            continue
        if dim.path:
            nodes[dim.path] = dim
        waiting += [each for each in dim.args if isinstance(each, Dim)]
