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

from casewright.casework.cases import Case, Door
from casewright.checks.front_weights import front_weights
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning, weight_of
from casewright.dims import Given, Origin, tell
from casewright.findings import Reckoning, Severity
from casewright.room.model import Room
from casewright.sources import INCH, POUND

__all__ = ["RULE", "heaviest", "hinges_wanted"]

_NAME = "hinge number"
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
                yield _breach(room, case, front, wanted)


def _breach(room: Room, case: Case, front: Door, wanted: int) -> Breach:
    own, hinges = reckoning(room, _NAME, front.path), len(front.hinges)
    pieces = [part for part in case.parts if part.front == front.path]
    weight = own.weight(weight_of(room, own, pieces))
    return Breach(
        front.path,
        tell(
            "the {}, {} tall and about {}, hangs on {} hinges; it wants {}",
            front.title, own.length(front.height), weight, hinges, wanted,
        ),
        measured=str(hinges),
        limit=str(wanted),
        remedies=(f"{wanted} hinges", *_within(own, hinges)),
        own=own,
    )  # fmt: skip


def _within(own: Reckoning, hinges: int) -> tuple[str, ...]:
    """What a door may be on so many hinges."""
    if not 2 <= hinges < 2 + len(_TALLEST):
        return ()
    rule = f"rule.hinges_{hinges}"
    highest = Origin("cited", f"tallest door on {hinges} hinges", "common practice")
    tall = own.given(f"{rule}.tallest", Given(_TALLEST[hinges - 2], highest))
    most = Origin("cited", f"heaviest door on {hinges} hinges", "common practice")
    heavy = own.given(f"{rule}.heaviest", Given(heaviest(hinges), most), 0)
    return (
        tell(
            "on {} hinges a door no taller than {} and no heavier than {}",
            hinges, own.length(tall), own.weight(heavy),
        ),
    )  # fmt: skip


RULE = Rule(_NAME, Severity.STOP, __doc__ or "", "common practice", _examine)
