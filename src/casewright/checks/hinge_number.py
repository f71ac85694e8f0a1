"""Enough hinges for the height and the weight of each door.

Two hinges carry a door up to 40 in tall and 15 lb; a third is wanted up to 60 in or 30 lb, a
fourth up to 80 in or 45 lb. The greater of the two counts.

Passes
------
A leaf 38 15/16 tall of 5/8 fibreboard, 16 3/8 wide, on two hinges.

Fails
-----
A leaf 41 in tall on two hinges.

Sources
-------
`common practice`: charts of hinge makers; the chart of the hinge in hand governs.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from casewright.checks.front_weights import front_weights
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import kilograms, length
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.sources import INCH, POUND

__all__ = ["RULE", "heaviest", "hinges_wanted"]

_TALLEST = tuple(n * INCH for n in (40, 60, 80))


def hinges_wanted(height: Fraction, weight: Fraction) -> int:
    """How many hinges a door wants.

    Parameters
    ----------
    height
        [mm].
    weight
        [kg].

    Returns
    -------
    Number of hinges, 2 to 5 [-].

    Examples
    --------
    >>> hinges_wanted(40 * INCH, Fraction(5)), hinges_wanted(41 * INCH, Fraction(5))
    (2, 3)
    """

    def past(value: Fraction, limits: Sequence[Fraction]) -> int:
        return sum(value > limit for limit in limits)

    return 2 + max(past(height, _TALLEST), past(weight, [heaviest(n) for n in (2, 3, 4)]))


def heaviest(hinges: int) -> Fraction:
    """The heaviest door for a number of hinges [kg], 15 lb for two and as much for each more."""
    return 15 * (hinges - 1) * POUND


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        if not case.doors:
            continue
        weights = front_weights(room, case)
        for front in case.doors:
            weight = weights.get(front.path, Fraction(0))
            wanted = hinges_wanted(front.height.value, weight)
            if len(front.hinges) < wanted:
                yield Breach(
                    front.path,
                    f"the {front.title}, {length(room, front.height.value)} tall and about "
                    f"{kilograms(room, weight)}, hangs on {len(front.hinges)} hinges; it wants "
                    f"{wanted}",
                    measured=str(len(front.hinges)),
                    limit=str(wanted),
                    remedies=(f"{wanted} hinges", *_within(room, len(front.hinges))),
                )


def _within(room: Room, hinges: int) -> tuple[str, ...]:
    """What a door may be on so many hinges."""
    if not 2 <= hinges < 2 + len(_TALLEST):
        return ()
    tall, heavy = _TALLEST[hinges - 2], heaviest(hinges)
    return (
        (
            f"on {hinges} hinges a door no taller than {length(room, tall)} and no heavier than "
            f"{kilograms(room, heavy)}"
        ),
    )


RULE = Rule("hinge number", Severity.STOP, __doc__ or "", "common practice", _examine)
