"""Leans of the walls at both ends against the widths between them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import Dim, Told, Unit, tell, total
from casewright.survey.doubt_numbers import DoubtNumbers
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
    by_leans
        The same as the leans have it [mm].
    """

    low: str
    high: str
    plumbs: tuple[str, ...]
    narrows: Dim
    by_leans: Dim

    def says(self, numbers: DoubtNumbers) -> Told:
        """The contradiction in words."""
        read, lean = (
            _change(numbers, f"{self.high}.{name}", dim)
            for name, dim in (("narrows", self.narrows), ("by_leans", self.by_leans))
        )
        than = "than" if self.narrows.value else "as"
        return tell(
            "the upper width is {} {} the lower one, by the leans at both ends it is {}",
            read, than, lean,
        )  # fmt: skip


def _change(numbers: DoubtNumbers, name: str, narrows: Dim) -> Told:
    if not narrows.value:
        return Told("as wide")
    if narrows.value > 0:
        return tell("{} narrower", numbers.said(numbers.named(name, narrows)))
    return tell("{} wider", numbers.said(numbers.named(name, -narrows)))


def plumb_checks(wall: SurveyedWall, unit: Unit) -> Iterator[PlumbConflict]:
    """Widths at the lowest and the highest told height of each depth that the leans contradict.

    A lean into the room at an end takes its share off the width at the top.
    """
    slopes = _slopes(wall, unit)
    if slopes is None:
        return
    leans, spread = slopes
    slope = total(*(lean / over for lean, over in leans.values()))
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
        names, over = (f"width_{low_n}", f"width_{high_n}"), high_at - low_at
        foot, head = (wall.at[f"{name}.height"] for name in names)
        narrows, by_leans = low_dim - high_dim, slope * (head - foot)
        own = sum((variance(each.reading.accuracy, unit) for each in (low, high)), _WANDER**2)
        if (narrows - by_leans).value ** 2 > _SIGMAS**2 * (own + spread * over**2):
            yield PlumbConflict(*names, tuple(leans), narrows, by_leans)


def _slopes(wall: SurveyedWall, unit: Unit) -> tuple[dict[str, tuple[Dim, Dim]], Fraction] | None:
    """Leans at both ends and over what each was read; the variance of their sum for 1 mm."""
    found: dict[str, tuple[str, Dim, int]] = {}
    for n, plumb in enumerate(wall.spec.plumbs, start=1):
        if plumb.of != "face":
            found.setdefault(plumb.of, (f"plumb_{n}", wall.read[f"plumb_{n}"], n - 1))
    if len(found) < 2:
        return None
    spread = Fraction(0)
    for _, _, index in found.values():
        plumb = wall.spec.plumbs[index]
        spread += variance(plumb.lean.accuracy, unit) / plumb.over**2
    return {name: (dim, wall.at[f"{name}.over"]) for name, dim, _ in found.values()}, spread
