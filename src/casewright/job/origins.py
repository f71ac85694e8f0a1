"""Who decided each number: the person in the file, or the house."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from casewright.dims import Cause, Given, Origin, Unit, reading_causes
from casewright.facts import Fact
from casewright.job.defaults import TOOL_ACCURACY, usual_source
from casewright.job.positions import KeyPath, Positions

__all__ = ["Origins"]

_USUAL = {
    "stock": "label of the usual goods", "hardware": "usual number, a placeholder",
    "shop": "usual in a home shop",
}  # fmt: skip


class Origins:
    """Gives the numbers of one job file their origins.

    Parameters
    ----------
    name
        What `why` calls the file.
    positions
        Where everything stands in it.
    unit
        Unit of the job.
    """

    def __init__(self, name: str, positions: Positions, unit: Unit) -> None:
        self.name = name
        self.positions = positions
        self.unit = unit

    def where(self, path: KeyPath) -> str:
        """'kitchen.toml line 12'."""
        line = self.positions.line(path)
        return f"{self.name} line {line}" if line else self.name

    def in_file(self, path: KeyPath) -> bool:
        """Whether the file gives this value, or the list it is an entry of."""
        if path and isinstance(path[-1], int):
            return self.positions.has(path) or self.positions.has(path[:-1])
        return self.positions.has(path)

    def given(self, value: Fraction, path: KeyPath, *, note: str = "") -> Given:
        """A number with its origin: a place in the file, or the house's usual one.

        Parameters
        ----------
        note
            In words what set it, beside the place.
        """
        if self.in_file(path):
            return Given(value, Origin("chosen", note, where=self.where(path)))
        source = usual_source(path, self.unit)
        note = _USUAL.get(str(path[0]), "usual")
        return Given(value, Origin("cited" if source else "chosen", note, source))

    def measured(self, value: Fraction, path: KeyPath, tool: str) -> Given:
        """A reading from the file."""
        return Given(value, Origin("measured", tool, where=self.where(path)))

    def governing(
        self, values: Sequence[Fraction], path: KeyPath, tool: str, *, greatest: bool = False
    ) -> Given:
        """The reading that governs, of one or several: the least, or the greatest."""
        value = max(values) if greatest else min(values)
        word = "greatest" if greatest else "least"
        note = tool if len(values) == 1 else f"{tool}, {word} of {len(values)} readings"
        return self.measured(value, path, note)

    def as_built(self, value: Fraction, path: KeyPath) -> Fact:
        """A size read with a tape on what stands in the room."""
        accuracy = TOOL_ACCURACY["tape"]
        name = ".".join(str(step) for step in path)
        return Fact(
            self.measured(value, path, "tape, as built").origin,
            built=value,
            causes=reading_causes(name, accuracy.sigma, accuracy.limit, "tape"),
        )

    def reading(self, values: Sequence[Fraction], path: KeyPath) -> Fact:
        """A thickness read once or several times, as a fact: the mean counts."""
        mean = sum(values, Fraction(0)) / len(values)
        accuracy = TOOL_ACCURACY["calliper"]
        limit = max(accuracy.limit, (max(values) - min(values)) / 2)
        note = "calliper" if len(values) == 1 else f"calliper, mean of {len(values)} readings"
        name = ".".join(str(step) for step in path)
        return Fact(
            Origin("measured", note, where=self.where(path)),
            built=mean,
            causes=(Cause(name, max(accuracy.sigma, limit / 2), limit, tool="calliper"),),
        )
