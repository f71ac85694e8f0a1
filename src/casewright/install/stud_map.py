"""Screws of each case, one by one: the board, the stud, the heights, the length, the bite."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from casewright.casework.parts import Part
from casewright.dims import Dim, Given, Origin, shop_text
from casewright.hardware import WALL_SCREWS
from casewright.install.bearing import WallShim
from casewright.install.leaning import lean_shims
from casewright.install.numbers import Numbers
from casewright.install.places import WallPlace
from casewright.room.cable_runs import CableRun, cable_runs
from casewright.room.stud_columns import COLUMNS, OffLimits, free_studs, off_limits, studs_behind
from casewright.room.wall_fixing import WallFixing

__all__ = ["CaseScrews", "Depth", "Hold", "WallScrew", "case_screws"]

Hold = Literal["two columns", "one column", "no column", "studs not found", "stands"]
"""What is known of the studs behind a case: never that it is held."""

Depth = Literal["right", "too shallow", "too deep"]

_UP = 1
_OUT = 2
"""The axis y of a case."""


@dataclass(frozen=True, slots=True)
class WallScrew:
    """The two screws of one row at one stud.

    Parameters
    ----------
    row
        Title of the board they go through.
    low, high
        Above the highest floor [mm].
    up
        The same from the board's lower edge [mm].
    stud
        Middle of the stud, from the wall's left end [mm].
    inside
        The same from the inner face of the case's left side [mm].
    shim
        Behind the board there, as read, else as reckoned with; the lean of the wall included
        [mm].
    length, bite
        Of a screw, and how far it goes into the stud [mm].
    depth
        Whether it bites as style 'wall_bite' and 'wall_bite_most' ask: where it goes in too deep a
        cable or a pipe may be met.
    strip
        The strip off limits that the stud stands in: no screw here; None: none.
    cable
        Where a cable may run sideways past one of the two; None: nowhere that is known of.
    """

    row: str
    low: Dim
    high: Dim
    up: tuple[Dim, Dim]
    stud: Dim
    inside: Dim
    shim: Dim
    length: Dim
    bite: Dim
    depth: Depth
    strip: OffLimits | None
    cable: CableRun | None


@dataclass(frozen=True, slots=True)
class CaseScrews:
    """Screws of one case.

    Parameters
    ----------
    hold
        What is known of the studs behind it.
    rows
        Titles and lower and upper edges of the boards [mm above the highest floor].
    """

    place: WallPlace
    hold: Hold
    rows: tuple[tuple[str, Dim, Dim], ...]
    screws: tuple[WallScrew, ...]

    @property
    def asks_for_rail(self) -> bool:
        """Whether a rail or blocking is asked for before it hangs."""
        return self.hold in ("one column", "no column")


def case_screws(
    numbers: Numbers, place: WallPlace, fixing: WallFixing, shims: Sequence[WallShim]
) -> CaseScrews:
    """Every wall screw of a case whose studs were found.

    Two screws a row and stud, a quarter of the board's width from its edges (common practice).
    """
    rows = tuple(_rows(numbers, place, fixing))
    shims = [shim for shim in shims if shim.run == place.run.spec.key]
    screws = tuple(_screws(numbers, place, fixing, (rows, shims)))
    return CaseScrews(place, _hold(numbers, place), rows, screws)


def _hold(numbers: Numbers, place: WallPlace) -> Hold:
    if not place.before.wall.studs:
        return "studs not found"
    count = len(free_studs(numbers.room, place.before))
    if count >= COLUMNS:
        return "two columns"
    if not place.is_hung:
        return "stands"
    return "one column" if count else "no column"


def _rows(
    numbers: Numbers, place: WallPlace, fixing: WallFixing
) -> Iterator[tuple[str, Dim, Dim]]:
    parts = {part.path: part for part in place.case.parts}
    if len(set(fixing.rows)) == len(fixing.rows):
        for path in fixing.rows:
            # Those of a diagonal corner on the wall round it meet the studs of that wall.
            if parts[path].placed.orientation.thickness.axis == _OUT:
                yield parts[path].title, *_upright_span(place, parts[path])
        return
    low, high = _upright_span(place, parts[fixing.rows[0]])
    board = numbers.style("nailer")
    yield "back, under the top", high - board, high
    yield "back, over the bottom", low, low + board


def _upright_span(place: WallPlace, part: Part) -> tuple[Dim, Dim]:
    """Lower and upper edge of a board above the highest floor [mm]."""
    lies = part.placed.orientation
    up = lies.length if lies.length.axis == _UP else lies.width
    size = part.finished.length if lies.length.axis == _UP else part.finished.width
    corner = place.bottom + part.placed.y
    if place.case.spec.hood and place.case.standing.value:
        corner = corner - place.case.standing
    return (corner, corner + size) if up.sign > 0 else (corner - size, corner)


def _screws(
    numbers: Numbers,
    place: WallPlace,
    fixing: WallFixing,
    known: tuple[tuple[tuple[str, Dim, Dim], ...], Sequence[WallShim]],
) -> Iterator[WallScrew]:
    rows, shims = known
    wall = place.before.wall
    own = numbers.wall(wall.spec.key).at(place.run.spec.key).at(place.case.key)
    strips, cables = off_limits(numbers.room, wall), cable_runs(numbers.room, wall)
    side = max(
        (p.finished.thickness for p in place.case.parts if p.role == "side"),
        key=lambda dim: dim.value,
    )
    leans = lean_shims(numbers, place, rows)
    depth = own.let("screw_through_case", fixing.through_case)
    for column, number in enumerate(studs_behind(place.before), start=1):
        stud = wall.studs[number]
        inside = own.let(f"stud_{column}", stud - place.left - place.case.left_frame - side)
        for n, (title, low, high) in enumerate(rows, start=1):
            at = own.at(f"screw_{column}_{n}")
            shim = _shim(numbers, (low, high), stud.value, shims)
            if n - 1 in leans:
                shim = at.let("shim", shim + leans[n - 1])
            before = at.let("before_stud", depth + shim + numbers.style("wallboard"))
            length = _length(numbers, at.path, before.value, fixing)
            quarter = (high - low) / 4
            up = (at.let("up_low", quarter), at.let("up_high", high - low - quarter))
            yield WallScrew(
                title, at.let("low", low + quarter), at.let("high", high - quarter), up, stud,
                inside, shim, length, at.let("bite", length - before),
                _depth(numbers, length.value - before.value),
                next((strip for strip in strips if strip.holds(stud.value)), None),
                _cable(cables, stud.value, (low + quarter, high - quarter)),
            )  # fmt: skip


def _cable(cables: Sequence[CableRun], along: Fraction, ups: tuple[Dim, Dim]) -> CableRun | None:
    held = (run for run in cables if any(run.holds(along, up.value) for up in ups))
    return next(held, None)


def _depth(numbers: Numbers, bite: Fraction) -> Depth:
    style = numbers.room.spec.style
    if bite < style["wall_bite"].value:
        return "too shallow"
    return "too deep" if bite > style["wall_bite_most"].value else "right"


def _shim(
    numbers: Numbers, row: tuple[Dim, Dim], stud: Fraction, shims: Sequence[WallShim]
) -> Dim:
    """As read at that stud along the straight edge nearest the row, else as reckoned with."""
    middle = (row[0].value + row[1].value) / 2
    read = [shim for shim in shims if shim.at.value == stud]
    if not read:
        return numbers.style("wall_shim")
    return min(read, key=lambda shim: abs(shim.height - middle)).shim


def _length(numbers: Numbers, path: str, before: Fraction, fixing: WallFixing) -> Dim:
    """The job's screw; else the usual one where it bites right, or the longest sold that does."""
    spec = numbers.room.spec
    own = numbers.chain.nodes[f"{fixing.case}.wall_screw"]
    low, high = spec.style["wall_bite"].value, spec.style["wall_bite_most"].value
    if not spec.hardware.wall_screw.placeholder or low <= own.value - before <= high:
        return own
    fit = [size for size in WALL_SCREWS[spec.unit] if low <= size - before <= high]
    if not fit:
        return own
    most = shop_text(high, spec.unit, with_unit=True)
    note = f"the longest one sold that goes no more than {most} into the stud"
    given = Given(max(fit), Origin("cited", note, "common practice"))
    return numbers.chain.place(path).given("length", given)
