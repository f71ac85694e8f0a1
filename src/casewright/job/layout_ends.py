"""Ends of a run as its layout has them: fillers, doors that open, runs round a corner."""

from __future__ import annotations

from collections.abc import Container
from dataclasses import replace
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.specs import CaseSpec
from casewright.dims import TAPE_MARK, Unit, Way, round_to
from casewright.job.layout_corners import CornerAsked, CornerStand, corner_stand
from casewright.job.layout_numbers import NARROWEST, WIDEST, RunNumbers
from casewright.layout.tasks import EndFiller, WidthBand
from casewright.room.door_fillers import doors_toward, filler_for_door
from casewright.room.filler_findings import WIDEST_FILLER
from casewright.room.model import Room, Run
from casewright.room.run_ends import SIDES
from casewright.room.specs import RunSide

__all__ = ["FREE_WIDTHS", "GRID", "RunEnds", "blind_off", "end_bands", "end_filler",
           "end_needs", "filler_beside_corner", "is_free", "run_ends",
           "steps_up"]  # fmt: skip

GRID = TAPE_MARK
"""The grid of the shop: widths are laid out on the marks of a tape [mm]."""

_UNITS: tuple[Unit, ...] = ("in", "mm")
FREE_WIDTHS = {unit: (NARROWEST.of(unit), WIDEST.of(unit)) for unit in _UNITS}
"""Least and greatest of a case whose width is free (common practice) [mm]."""

RunEnds = tuple[CornerStand, CornerStand]
"""What stands round the corners at the left and at the right end of a run."""


def run_ends(numbers: RunNumbers, free: Container[str]) -> RunEnds:
    """What stands round the corners at the ends of a run.

    Parameters
    ----------
    numbers
        Tells its lengths.
    free
        Keys of the cases whose width is open.
    """
    room, run = numbers.room, numbers.run
    step = GRID[room.spec.unit]

    def at(side: RunSide) -> CornerStand:
        end = end_filler(room, run, side)
        filler = (Fraction(0), Fraction(0)) if end is None else (end.low * step, end.high * step)
        return corner_stand(CornerAsked(numbers, side, filler, free, FREE_WIDTHS[room.spec.unit]))

    return at("left"), at("right")


def filler_beside_corner(
    end: EndFiller | None, stand: CornerStand, step: Fraction
) -> EndFiller | None:
    """A filler that may be as wide as the corner beside it asks for."""
    if end is None or end.in_corner:
        return end
    bands = ((need, stand.bands.get(key)) for key, need in stand.needs.items())
    needs = (steps_up(need, step) for need, band in bands if band is None or band[0] <= band[1])
    return replace(end, high=max(end.high, *needs, 0))


def end_needs(room: Room, run: Run, case: Case, ends: RunEnds) -> tuple[int, int]:
    """Least fillers beside a case at the ends of the run [steps]."""
    step, own = GRID[room.spec.unit], _door_needs(room, run, case)
    left, right = (steps_up(each.needs.get(case.key, Fraction(0)), step) for each in ends)
    return max(own[0], left), max(own[1], right)


def end_bands(room: Room, case: Case, ends: RunEnds) -> tuple[WidthBand | None, WidthBand | None]:
    """Widths that it may have at the ends of the run [steps]; None: any."""
    step = GRID[room.spec.unit]

    def at(stand: CornerStand) -> WidthBand | None:
        band = stand.bands.get(case.key)
        return None if band is None else (steps_up(band[0], step), int(band[1] // step))

    return at(ends[0]), at(ends[1])


def is_free(run: Run, case: CaseSpec) -> bool:
    """Whether the layout may choose its width."""
    return case.width is None or case.key in run.spec.solved


def end_filler(room: Room, run: Run, side: RunSide) -> EndFiller | None:
    """The filler before a wall; in a corner what clears the other run, and more if it must."""
    unit = room.spec.unit
    step, style = GRID[unit], room.spec.style
    widest = int(WIDEST_FILLER[unit] // step)
    blind = blind_off(room, run, side)
    if blind is not None:
        off = steps_up(blind, step)
        return EndFiller(off, off, in_corner=True)
    if run.spec.end(side) == "wall":
        wished = int(style["filler"].value // step)
        # Each case is cut to the grid, and comes out up to half a step wider than asked for.
        spare = style["cut_step"].value * len(run.cases) / 2
        low = steps_up(style["filler_least"].value + spare, step)
        needs = (_door_needs(room, run, case)[SIDES.index(side)] for case in run.cases)
        return EndFiller(low, max(widest, *needs), wished)
    if run.spec.end(side) in ("open", "flush"):
        return None
    nodes, path = room.chain.nodes, f"run.{run.spec.key}.corner_{side}"
    least = steps_up(nodes[f"{path}.beyond"].value + nodes[f"{path}.need"].value, step)
    other = run.spec.right if side == "left" else run.spec.left
    more = 0 if other == "wall" else widest
    return EndFiller(least, least + more, least, in_corner=True)


def _door_needs(room: Room, run: Run, case: Case) -> tuple[int, int]:
    """Least fillers beside it at the ends of the run [steps]: a door there opens to a right angle.

    While its width is open it may get a pair, with a door at either side.
    """
    step, found = GRID[room.spec.unit], dict.fromkeys(SIDES, 0)
    is_open = is_free(run, case.spec)
    for side in SIDES:
        own = doors_toward(case, side)
        back: RunSide = "right" if side == "left" else "left"
        doors, at = (own, side) if own or not is_open else (doors_toward(case, back), back)
        if doors and run.spec.end(side) == "wall":
            need = filler_for_door(room.spec.hardware, room.spec.unit, case, doors[0], at)
            found[side] = steps_up(need + room.spec.style["cut_step"].value, step)
    return found["left"], found["right"]


def blind_off(room: Room, run: Run, side: RunSide) -> Fraction | None:
    """How far a blind corner base stands off the corner wall at an end; None: none does.

    A diagonal corner stands against it, and fills what the run round it keeps out of.
    Where the order is free it belongs there, wherever it is listed.
    """
    if side in run.pulled_off and run.spec.end(side) != "open":
        return run.pulled_off[side].value
    if not run.spec.is_free or run.spec.end(side) != "wall":
        return None
    for case in run.cases:
        if case.spec.diagonal == side:
            return Fraction(0)
        if case.spec.blind == side:
            own = case.spec.overrides.get("blind_pull_off")
            return own.value if own else room.spec.style["blind_pull_off"].value
    return None


def steps_up(size: Fraction, step: Fraction) -> int:
    """A size in whole steps of the grid, the last one filled up [-]."""
    return int(round_to(size, step, Way.UP)[0] // step)
