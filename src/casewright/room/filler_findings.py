"""What is found of the space that a run leaves: too little of it, or more than a filler hides."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.house import House
from casewright.dims import Dim, Given, Origin, Unit, greatest, tell
from casewright.findings import Finding, Reckoning, Severity
from casewright.room.anew import run_anew
from casewright.room.specs import RunSpec
from casewright.sources import INCH

__all__ = ["WIDEST_FILLER", "space_findings", "wide_findings"]

WIDEST_FILLER: dict[Unit, Fraction] = {"in": 2 * INCH, "mm": Fraction(50)}
"""Own judgement: as wide as a layout makes one [mm]; a wider one reads as a missing case."""

_WIDEST = Origin("cited", "as wide as layouts make a filler", "common practice")
_ROUNDED = INCH / 8
"""What rounding of walls and cases may add to that [mm]."""


def _reckoning(house: House, rule: str, run: RunSpec) -> Reckoning:
    return Reckoning(rule, f"run.{run.key}", house.unit, house.chain.nodes)


def wide_findings(house: House, run: RunSpec, space: Dim) -> list[Finding]:
    """Fillers take what a wall was read anew by, until they are wider than a layout makes them.

    Parameters
    ----------
    space
        The widest of the run [mm].
    """
    widest, usual = WIDEST_FILLER[house.unit], house.style_dim("filler")
    if not run.solved or space.value <= max(widest, usual.value) + _ROUNDED:
        return []
    own = _reckoning(house, "wide filler", run)
    most = own.let("most", greatest(own.given("filler.widest", Given(widest, _WIDEST)), usual))
    wide, limit = own.text(space, "filler"), own.text(most)
    wider = tell("a case {} wider", own.text(space - most, "wider"))
    return [
        Finding(
            rule="wide filler",
            severity=Severity.CARE,
            path=space.path or f"run.{run.key}.filler_space",
            says=tell("a filler {} wide shows, where layouts keep to {}", wide, limit),
            measured=wide.text,
            limit=limit.text,
            source="common practice",
            remedies=(*_anew(run), wider),
            numbers=own.numbers,
        )
    ]


def space_findings(
    house: House, run: RunSpec, rest: Dim, share: Dim, closed: bool
) -> list[Finding]:
    """Cases wider than their wall, or fillers that can hardly be made.

    Parameters
    ----------
    rest, share
        What the cases leave of the wall; of that, what each filler gets [mm].
    closed
        Whether there is a filler.
    """
    # Each case is cut to the grid, and comes out up to half a step wider than asked for.
    if rest.value < -house.style_dim("cut_step").value * len(run.cases) / 2:
        return [_too_long(house, run, rest)]
    if closed and share.value < house.style_dim("filler_least").value:
        return [_narrow(house, run, share)]
    return []


def _too_long(house: House, run: RunSpec, rest: Dim) -> Finding:
    own = _reckoning(house, "run too long", run)
    over = own.text(-rest, "over")
    return Finding(
        rule="run too long",
        severity=Severity.STOP,
        path=f"run.{run.key}.rest",
        says=tell("the cases are {} wider than the wall", over),
        measured=over.text,
        limit=house.text(house.zero),
        source="common practice",
        remedies=(
            *_anew(run),
            tell("make a case {} narrower", over),
            "take a case out of the run",
        ),
        numbers=own.numbers,
    )


def _narrow(house: House, run: RunSpec, share: Dim) -> Finding:
    own, least = _reckoning(house, "narrow filler", run), house.style_dim("filler_least")
    wide = own.text(share, "filler")
    return Finding(
        rule="narrow filler",
        severity=Severity.CARE,
        path=share.path or f"run.{run.key}.filler_space",
        says=tell("a filler {} wide can hardly be scribed and fastened", wide),
        measured=wide.text,
        limit=house.text(least),
        source="common practice",
        remedies=(
            *_anew(run),
            tell("make a case {} narrower for each filler", own.text(least - share, "narrower")),
            "leave out one case width so equal shares fit",
        ),
        numbers=own.numbers,
    )


def _anew(run: RunSpec) -> tuple[str, ...]:
    """Fillers take up what a wall was read anew by; beyond that the run is laid out anew."""
    return (run_anew(run.key),) if run.solved else ()
