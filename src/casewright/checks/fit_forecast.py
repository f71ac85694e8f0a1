"""Gaps that hold by their numbers, but not surely by the tools that make them.

Every fit has a band. How far its gap may stray follows from what is still to be cut: the saw's
settings, the sheets' batch, each piece by itself. What was made before the owner of the fit is
taken as read, as well as the tools owned read it; what is left is a chance, and one in ten is
worth a word.

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
from casewright.checks.words import gap, reckoning
from casewright.dims import Fit, Told, tell
from casewright.findings import Severity
from casewright.room.fit_words import FitNumbers, fit_name, is_planned_to_meet, planned_text
from casewright.room.forecasts import Forecasts
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "fit forecast"

_TOLD, _GRAVE = Fraction(1, 10), 5


def _examine(room: Room) -> Iterator[Breach]:
    """One word for all fits of a kind with the same band and the same chance."""
    alike: dict[tuple[str, str, str, int], list[Fit]] = {}
    forecasts = Forecasts(room)
    for fit in room.chain.fits.values():
        if not fit.holds or forecasts.chance(fit, ()) < _TOLD:
            continue
        chance = forecasts.of(fit).read_chance
        if chance < _TOLD:
            continue
        kind = fit.path.rpartition(".")[2]
        low, high = gap(room, fit, fit.low), gap(room, fit, fit.high)
        alike.setdefault((kind, low, high, _in_ten(chance)), []).append(fit)
    for (_, low, high, tenths), fits in alike.items():
        first, more = fits[0], len(fits) - 1
        others = f", and {more} more like it," if more else ""
        own = reckoning(room, _NAME, first.path)
        numbers = FitNumbers(first, own)
        wide = numbers.said(numbers.high - numbers.low, "band")
        yield Breach(
            first.path,
            tell(
                "{}{} is planned {}; made with these tools, about {} in 10 come out {}, even if "
                "what it meets is read first",
                fit_name(first), others, planned_text(first, room.spec.unit, numbers), tenths,
                _outside(room, first, numbers),
            ),
            measured=f"{tenths} in 10",
            limit=f"{low} to {high}",
            remedies=(
                "cut a little full and fit it by hand",
                "check the setting on a test piece before the row is cut",
                tell("a tolerance or clearance in the style wider than {} in all", wide),
            ),
            severity=Severity.CARE if tenths >= _GRAVE else None,
            own=own,
        )  # fmt: skip


def _outside(room: Room, fit: Fit, numbers: FitNumbers) -> Told:
    """Outside the band: by its bounds, or from the plan where that is no gap at all."""
    low, high = numbers.low, numbers.said(numbers.high)
    if fit.low < 0 < fit.high and is_planned_to_meet(fit, room.spec.unit):
        return tell("more than {} under that or {} over it", numbers.said(-low, "under"), high)
    return tell("under {} or over {}", numbers.said(low), high)


def _in_ten(chance: float) -> int:
    return max(1, round(10 * chance))


RULE = Rule(_NAME, Severity.NOTE, __doc__ or "", "gum", _examine)
