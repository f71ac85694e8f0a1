"""Proof of a run: its cases stand side by side, close the wall, and rest on their plinths.

Like the proof of a case it works on sizes and placements alone, never on the formulas that made
them. What a case is by itself its own proof tells.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise
from typing import NamedTuple

from casewright.casework.cases import Case
from casewright.casework.levels import extent
from casewright.casework.proof import Failure, Proof
from casewright.room.filler_proof import filler_failures
from casewright.room.model import Run
from casewright.room.trims.proof import trim_failures

__all__ = ["prove_run"]


_Row = list[tuple[Case, Fraction]]


class _Reach(NamedTuple):
    """From where to where something reaches along the wall, from the run's left datum [mm]."""

    low: Fraction
    high: Fraction


def prove_run(run: Run, *, spacing: Fraction, grid: Fraction) -> Proof:
    """Check where the cases, fillers and plinths of a run stand.

    Parameters
    ----------
    spacing
        Greatest distance between sleepers, middle to middle [mm].
    grid
        How far rounding may take an end or a sleeper off its place [mm].
    """
    return Proof(tuple(_failures(run, spacing, grid)))


def _failures(run: Run, spacing: Fraction, grid: Fraction) -> Iterator[Failure]:
    found = {
        case.key: _reach(case, start.value)
        for case, start in zip(run.cases, run.starts, strict=True)
    }
    for each in run.appliances:
        found[each.spec.key] = _Reach(each.start.value, each.start.value + each.width.value)
    titles = {case.key: case.spec.title for case in run.cases}
    titles |= {each.spec.key: each.spec.title for each in run.appliances}
    for left, right in pairwise(run.spec.places):
        off = abs(found[left].high - found[right].low)
        if off:
            says = f"{titles[right]} does not begin where {titles[left]} ends"
            yield Failure("size", (right, left), says, off)
    yield from _closed(run, [found[key] for key in run.spec.places])
    yield from filler_failures(run)
    yield from trim_failures(run)
    boxes = {case.key: start.value + case.left_frame.value
             for case, start in zip(run.cases, run.starts, strict=True)}  # fmt: skip
    carried: set[str] = set()
    for plinth in run.plinths:
        row = [(case, boxes[case.key] - plinth.start.value)
               for case in run.cases if case.key in plinth.carries]  # fmt: skip
        carried.update(plinth.carries)
        yield from _rests(plinth.case, row)
        yield from _ladder(plinth.case, row, spacing, grid)
    for case in run.cases:
        if case.standing.value and not case.spec.reaches_down and case.key not in carried:
            yield Failure("size", (case.key,), f"{case.spec.title} stands on no plinth")


def _reach(case: Case, start: Fraction) -> _Reach:
    """Of a case with its frames, doors apart."""
    doors = {front.path for front in case.fronts}
    ends = [extent(p, 0) for p in case.parts if p.front not in doors and not p.turned]
    box = start + case.left_frame.value
    return _Reach(
        box + min(low.value for low, _ in ends), box + max(high.value for _, high in ends)
    )


def _closed(run: Run, reaches: list[_Reach]) -> Iterator[Failure]:
    """Fillers and cases fill the run from end to end."""
    widths = {f.side: f.width.value + f.beyond.value for f in run.fillers}
    widths |= {side: off.value for side, off in run.pulled_off.items()}
    for off, case, side in (
        (reaches[0].low - widths.get("left", Fraction(0)), run.cases[0], "left"),
        (run.length.value - reaches[-1].high - widths.get("right", Fraction(0)),
         run.cases[-1], "right"),
    ):  # fmt: skip
        # Cases wider than their wall reach out of it, and have no filler: that is told by itself.
        if off > 0 or (off and side in widths):
            says = f"the {side} end of the run is not closed"
            yield Failure("size", (f"run.{run.spec.key}", case.key), says, abs(off))


def _rests(plinth: Case, row: _Row) -> Iterator[Failure]:
    """Every side stands on both rails: their tops meet its lower end, and lie under it."""
    rails = [part for part in plinth.parts if part.role == "plinth rail"]
    for case, at in row:
        for side in (part for part in case.parts if part.role == "side"):
            foot, (x0, x1) = extent(side, 1)[0].value, extent(side, 0)
            middle = at + (x0.value + x1.value) / 2
            for rail in rails:
                off = abs(extent(rail, 1)[1].value - foot)
                if off:
                    says = f"{side.title} of {case.spec.title} does not rest on the {rail.title}"
                    yield Failure("joints", (side.path, rail.path), says, off)
                left, right = (end.value for end in extent(rail, 0))
                if not left <= middle <= right:
                    says = f"{rail.title} does not reach under the {side.title}"
                    yield Failure("size", (rail.path, side.path), says)


def _ladder(plinth: Case, row: _Row, spacing: Fraction, grid: Fraction) -> Iterator[Failure]:
    """Sleepers under each seam, none too far from the next; as long as the row."""
    sleepers = sorted(
        ((low.value, high.value), part.path)
        for part in plinth.parts if part.role == "sleeper"
        for low, high in (extent(part, 0),)
    )  # fmt: skip
    for (left, at), (_, after) in pairwise(row):
        end = at + left.width.value
        if not any(low < after and high > end for (low, high), _ in sleepers):
            yield Failure("joints", (plinth.key,), "no sleeper stands under a seam")
    for ((low, _), _), ((after, _), path) in pairwise(sleepers):
        if after - low > spacing + grid:
            says = "a sleeper is too far from the one before it"
            yield Failure("size", (path,), says, after - low - spacing)
    end = max((at + case.width.value for case, at in row), default=Fraction(0))
    off = abs(end - plinth.width.value)
    if off > grid:
        yield Failure("size", (plinth.key,), "the plinth is not as long as its row", off)
