"""The law of a cup hinge: overlay = constant + bore distance - plate height."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.house import House
from casewright.dims import Dim, Place, Way, round_to
from casewright.findings import Finding, Severity

__all__ = ["Overlay", "overlay_finding", "solve_overlay"]


@dataclass(frozen=True, slots=True)
class Overlay:
    """Plate and bore distance of one door's hinges.

    Parameters
    ----------
    wanted
        How far the door is to lie over the side's edge [mm].
    plate, bore
        Plate height, and distance from the door's edge to the near edge of the cup [mm].
    rest
        What the side screw has to take up: wanted less reached [mm].
    """

    wanted: Dim
    plate: Dim
    bore: Dim
    rest: Dim


@dataclass(frozen=True, slots=True)
class _Choice:
    """A plate with the bore distance it asks for: exactly, and as the jig can be set."""

    plate: Dim
    exact: Dim
    bore: Fraction
    way: Way | None

    @property
    def miss(self) -> Fraction:
        """How much overlay is left over [mm]."""
        return self.exact.value - self.bore


def solve_overlay(
    house: House, place: Place, wanted: Dim, *, low: Dim, high: Dim, step: Dim
) -> Overlay:
    """Choose a plate, then the bore distance that comes nearest to the overlay wanted.

    Of several plates that do, the one whose cup lies nearest the middle of its range is taken:
    it leaves wood at the edge and room to correct both ways.

    Parameters
    ----------
    place
        Place of the door.
    wanted
        Overlay wanted [mm].
    low, high
        Range of the bore distance [mm].
    step
        Steps of the jig's fence [mm].
    """
    middle = (low + high) / 2
    constant = house.hinge("constant")
    choices = [
        _choice(plate, wanted - constant + plate, (low.value, high.value), step.value)
        for plate in house.plate_heights()
    ]
    half = step.value / 2

    def rank(choice: _Choice) -> tuple[Fraction, Fraction, Fraction]:
        miss = abs(choice.miss)
        off_middle = abs(choice.exact.value - middle.value)
        return (miss if miss > half else Fraction(0), off_middle, choice.plate.value)

    best = min(choices, key=rank)
    _record(place, (c for c in choices if c is not best), best, low, high)
    bore = _settle(place, best, low, high, step)
    return Overlay(wanted, best.plate, bore, wanted - (constant + bore - best.plate))


def _choice(plate: Dim, exact: Dim, limits: tuple[Fraction, Fraction], step: Fraction) -> _Choice:
    """The bore distance on the jig's steps that is nearest and inside its limits."""
    low, high = limits
    inside = min(max(exact.value, low), high)
    if inside != exact.value or not step:
        return _Choice(plate, exact, inside, None)
    for way in (Way.NEAREST, Way.DOWN, Way.UP):
        bore, _ = round_to(inside, step, way)
        if low <= bore <= high:
            return _Choice(plate, exact, bore, way)
    return _Choice(plate, exact, inside, None)


def _record(place: Place, others: Iterable[_Choice], best: _Choice, low: Dim, high: Dim) -> None:
    """Keep the plates passed over for `why`."""
    middle = (low + high) / 2
    for other in others:
        if place.over(low, other.exact, "a plate passed over, its cup would break the edge"):
            continue
        if place.over(other.exact, high, "a plate passed over, its cup would be too far in"):
            continue
        place.over(
            _apart(other.exact, middle),
            _apart(best.exact, middle),
            "a plate passed over, its cup would be farther from the middle of its range",
        )


def _apart(one: Dim, other: Dim) -> Dim:
    return one - other if one.value > other.value else other - one


def _settle(place: Place, best: _Choice, low: Dim, high: Dim, step: Dim) -> Dim:
    exact = place.let("bore_exact", best.exact)
    if best.way is not None:
        bore, _ = place.rounded("bore", exact, step.value, best.way)
        return bore
    if place.over(low, exact, "the cup as near the edge as its sheet allows"):
        return place.let("bore", low)
    if place.over(exact, high, "the cup as far from the edge as its sheet and the stile allow"):
        return place.let("bore", high)
    return place.let("bore", exact)


def overlay_finding(
    house: House, path: str, overlay: Overlay, low: Dim, high: Dim
) -> Finding | None:
    """A finding where the side screw cannot take up what is left over."""
    play = house.hinge("side_play")
    if abs(overlay.rest.value) <= play.value:
        return None
    constant = house.hinge("constant")
    least, most = constant + low - overlay.wanted, constant + high - overlay.wanted
    plates = f"get plates between {house.text(least)} and {house.text(most)} high"
    return Finding(
        rule="hinge overlay",
        severity=Severity.STOP,
        path=path,
        says=f"the door is to lie {house.text(overlay.wanted)} over the side, but no plate "
        f"comes nearer than {house.text(overlay.rest)}",
        measured=house.text(overlay.rest),
        limit=house.text(play),
        source="common practice",
        remedies=(
            *((plates,) if least.value >= 0 else ()),
            "get a hinge with another overlay constant",
            "change the reveal",
        ),
    )
