"""Sheets of one stock that are not of one thickness: which go together, and to which cases.

Parts that must match come out of sheets of one thickness: every joint of a case that takes the
sheet's thickness is then cut with one setting. Sheets whose readings lie close together make a
group; each case is cut out of one group, as far as the sheets of the group go.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from casewright.layout.programme import LayoutProgramme

__all__ = ["SheetGroup", "assigned", "grouped"]

_FIRST, _SPLIT = 1000, 10
"""Points for a group that is opened, and for neighbours out of two groups: own judgement."""


@dataclass(frozen=True, slots=True)
class SheetGroup:
    """Sheets that count as one thickness.

    Parameters
    ----------
    names
        As they are chalked, in order.
    readings
        Thickness of each [mm].
    """

    names: tuple[str, ...]
    readings: tuple[Fraction, ...]

    @property
    def thickness(self) -> Fraction:
        """Mean of the readings [mm]."""
        return sum(self.readings, Fraction(0)) / len(self.readings)


def grouped(readings: Mapping[str, Fraction], spread: Fraction) -> tuple[SheetGroup, ...]:
    """The fewest groups in which no two sheets differ by more than a spread, thinnest first.

    Going up from the thinnest, each group takes in all it can: no choice has fewer, as each group
    must begin at or below the thinnest sheet that no group has yet.

    Parameters
    ----------
    readings
        Thickness of each sheet, by what is chalked on it [mm].
    spread
        Greatest difference within a group [mm].
    """
    found: list[list[str]] = []
    order = list(readings)
    for name in sorted(order, key=lambda each: (readings[each], order.index(each))):
        if found and readings[name] - readings[found[-1][0]] <= spread:
            found[-1].append(name)
        else:
            found.append([name])
    groups = (sorted(names, key=order.index) for names in found)
    return tuple(
        SheetGroup(tuple(names), tuple(readings[name] for name in names)) for names in groups
    )


def assigned(
    areas: Mapping[str, Fraction],
    room: Sequence[Fraction],
    neighbours: Sequence[tuple[str, str]] = (),
) -> dict[str, int] | None:
    """Which group each case is cut out of: few groups, neighbours out of one; None: too little.

    Parameters
    ----------
    areas
        Of sheet that each case takes [mm squared].
    room
        Area of sheet that each group has to give [mm squared].
    neighbours
        Keys of cases that stand side by side.
    """
    programme = LayoutProgramme()
    at = {key: [programme.choice() for _ in room] for key in areas}
    opened = [programme.choice(cost=_FIRST) for _ in room]
    for choices in at.values():
        programme.require(dict.fromkeys(choices, 1), low=1, high=1)
    for number, (area, first) in enumerate(zip(room, opened, strict=True)):
        taken = {at[key][number]: _units(each) for key, each in areas.items()}
        programme.require({**taken, first: -int(area / _UNIT)}, high=0)
    for one, other in neighbours:
        if one in at and other in at:
            split = programme.choice(cost=_SPLIT)
            for here, there in zip(at[one], at[other], strict=True):
                programme.require({here: 1, there: -1, split: -1}, high=0)
    solved = programme.solve()
    if solved is None:
        return None
    return {
        key: next(n for n, choice in enumerate(choices) if solved.values[choice])
        for key, choices in at.items()
    }


_UNIT = Fraction(10_000)
"""A square decimetre, rounded up for what is taken [mm squared]."""


def _units(area: Fraction) -> int:
    return -int(-area // _UNIT)
