"""The law of a cup hinge: overlay = constant - crank + bore distance - plate height."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.house import House
from casewright.dims import Dim, Place, Way, round_to, tell
from casewright.findings import Finding, Reckoning, Severity

__all__ = ["Overlay", "arm_constant", "overlay_finding", "solve_overlay"]


@dataclass(frozen=True, slots=True)
class Overlay:
    """Plate and bore distance of one door's hinges.

    Parameters
    ----------
    wanted
        How far the door is to lie over the side's edge [mm].
    plate, bore
        Plate height, and distance from the door's edge to the near edge of the cup [mm].
    crank
        Of the arm [mm]; None for a straight one.
    rest
        What the side screw has to take up: wanted less reached [mm].
    """

    wanted: Dim
    plate: Dim
    bore: Dim
    rest: Dim
    crank: Dim | None = None


@dataclass(frozen=True, slots=True)
class _Choice:
    """An arm and a plate with the bore distance they ask for: exactly, and as a jig can be set."""

    plate: Dim
    crank: Dim | None
    exact: Dim
    bore: Fraction
    way: Way | None

    @property
    def miss(self) -> Fraction:
        """How much overlay is left over [mm]."""
        return self.exact.value - self.bore


def solve_overlay(
    house: House,
    place: Place,
    wanted: Dim,
    *,
    low: Dim,
    high: Dim,
    step: Dim,
    cranks: tuple[Dim | None, ...] = (None,),
) -> Overlay:
    """Choose an arm and a plate, then the bore distance that comes nearest to the overlay wanted.

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
    cranks
        Arms that may be taken [mm], None for the straight one; the first where several do.
    """
    middle = (low + high) / 2
    choices = [
        _choice(plate, crank, _exact(house, wanted, plate, crank), (low.value, high.value), step)
        for crank in cranks
        for plate in house.plate_heights()
    ]
    half = step.value / 2

    def rank(choice: _Choice) -> tuple[Fraction, int, Fraction, Fraction]:
        miss = abs(choice.miss)
        off_middle = abs(choice.exact.value - middle.value)
        arm = cranks.index(choice.crank)
        return (miss if miss > half else Fraction(0), arm, off_middle, choice.plate.value)

    best = min(choices, key=rank)
    _record(place, (c for c in choices if c is not best), best, low, high)
    bore = _settle(place, best, low, high, step)
    reached = arm_constant(house, best.crank) + bore - best.plate
    return Overlay(wanted, best.plate, bore, wanted - reached, best.crank)


def arm_constant(house: House, crank: Dim | None) -> Dim:
    """Overlay of an arm at bore distance 0 on a plate of height 0 [mm]."""
    constant = house.hinge("constant")
    return constant if crank is None else constant - crank


def _exact(house: House, wanted: Dim, plate: Dim, crank: Dim | None) -> Dim:
    exact = wanted - house.hinge("constant") + plate
    return exact if crank is None else exact + crank


def _choice(
    plate: Dim, crank: Dim | None, exact: Dim, limits: tuple[Fraction, Fraction], steps: Dim
) -> _Choice:
    """The bore distance on the jig's steps that is nearest and inside its limits."""
    (low, high), step = limits, steps.value
    inside = min(max(exact.value, low), high)
    if inside != exact.value or not step:
        return _Choice(plate, crank, exact, inside, None)
    for way in (Way.NEAREST, Way.DOWN, Way.UP):
        bore, _ = round_to(inside, step, way)
        if low <= bore <= high:
            return _Choice(plate, crank, exact, bore, way)
    return _Choice(plate, crank, exact, inside, None)


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
    own = Reckoning("hinge overlay", path, house.unit, house.chain.nodes)
    rest = own.let("rest", overlay.rest)
    off = own.text(rest if rest.value > 0 else -rest, "off")
    constant = arm_constant(house, overlay.crank)
    least, most = constant + low - overlay.wanted, constant + high - overlay.wanted
    plates = tell(
        "get plates between {} and {} high", own.text(least, "least"), own.text(most, "most")
    )
    other = tell("get a hinge whose overlay constant is {}", own.text(constant + rest, "constant"))
    if overlay.crank is not None:
        other = tell("get an arm with a crank of {}", own.text(overlay.crank - rest, "crank"))
    return Finding(
        rule="hinge overlay",
        severity=Severity.STOP,
        path=path,
        says=tell(
            "the door is to lie {} over the side, but no plate comes nearer than {}",
            own.text(overlay.wanted, "wanted"), own.text(rest),
        ),
        measured=own.text(rest).text,
        limit=own.text(play).text,
        source="common practice",
        remedies=(
            *((plates,) if least.value >= 0 else ()),
            other,
            tell("make the reveal {} {}", off, "greater" if rest.value > 0 else "smaller"),
        ),
        numbers=own.numbers,
    )  # fmt: skip
