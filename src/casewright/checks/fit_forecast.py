"""Gaps that hold by their numbers, but not surely by the tools that make them.

Every fit has a band. How far its gap may stray follows from what is still to be cut: the saw's
settings, the sheets' batch, each piece by itself. What was made before the owner of the fit is
taken as read, as the order of work asks; what is left is a chance, and one in ten is worth a
word.

Passes
------
A pair of doors with 1/8 between them that may stray by 1/16.

Fails
-----
The same pair where the style lets the gap stray by 1/64 only.

Sources
-------
`gum`: independent deviations add as squares, systematic ones plainly. From which chance on it is
told is this house's own judgement.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import gap
from casewright.dims import Dim, Fit, chance_outside
from casewright.findings import Severity
from casewright.room.model import Room

__all__ = ["RULE"]

_TOLD, _GRAVE = Fraction(1, 10), Fraction(1, 2)


def _examine(room: Room) -> Iterator[Breach]:
    forecast = _Forecast(room)
    for fit in room.chain.fits.values():
        if not fit.holds:
            continue
        chance = forecast.chance(fit)
        if chance < _TOLD:
            continue
        low, high = gap(room, fit, fit.low), gap(room, fit, fit.high)
        yield Breach(
            fit.path,
            f"{_name(fit)} is planned as {gap(room, fit, fit.gap.value)}; made with these tools, "
            f"about {_in_ten(chance)} in 10 come out under {low} or over {high}, even if what it "
            "meets is read first",
            measured=f"{_in_ten(chance)} in 10",
            limit=f"{low} to {high}",
            remedies=(
                "cut a little full and fit it by hand",
                "check the setting on a test piece before the row is cut",
                "a wider tolerance or clearance in the style",
            ),
            severity=Severity.CARE if chance >= _GRAVE else None,
        )


def _name(fit: Fit) -> str:
    """A fit in words: 'gap 1 of upper.door_right', 'error of the width of upper'."""
    name = fit.path.rpartition(".")[2].removesuffix("_fit")
    size, is_error, _ = name.partition("_error")
    said = f"error of the {size}" if is_error else name
    return f"{said.replace('_', ' ')} of {fit.owner}"


def _in_ten(chance: float) -> int:
    return max(1, round(10 * chance))


class _Forecast:
    """Chances of the fits of a room, each seen from the day its owner is made."""

    def __init__(self, room: Room) -> None:
        nodes = room.chain.nodes
        self._made = {id(dim): number for number, dim in enumerate(nodes.values())}
        self._begun: dict[str, int] = {}
        for number, path in enumerate(nodes):
            while path:
                self._begun.setdefault(path, number)
                path = path.rpartition(".")[0]

    def chance(self, fit: Fit) -> float:
        """Chance that the gap leaves its band, all that was made before the owner as read [-]."""
        begun = self._begun.get(fit.owner, 0)

        def settled(dim: Dim) -> bool:
            return self._made.get(id(dim), begun) < begun

        return chance_outside(fit.gap, fit.low, fit.high, settled=settled)


RULE = Rule("fit forecast", Severity.NOTE, __doc__ or "", "gum", _examine)
