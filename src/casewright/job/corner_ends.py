"""Runs that keep out of an inside corner or end at another run's case, and wait for that one."""

from __future__ import annotations

from collections.abc import Mapping

from casewright.job.problems import Reporter
from casewright.room.on_centre import centred_on
from casewright.room.run_ends import SIDES, round_corner, run_met, thing_at, waits_for
from casewright.room.specs import JobSpec, RunSide, RunSpec

__all__ = ["check_corner_ends"]


def check_corner_ends(spec: JobSpec, reporter: Reporter) -> None:
    """Tell every end in a corner that nothing stands round, and runs that wait for each other."""
    for run in spec.runs:
        for side in SIDES:
            if run.end(side) == "corner" and round_corner(spec, run, side) is None:
                _nobody_goes_in(spec, run, side, reporter)
    waiting = {run.key: frozenset(waits_for(spec, run)) for run in spec.runs}
    for run in spec.runs:
        if run.key in _reached(waiting, run.key):
            _waits_for_itself(spec, run, waiting, reporter)


def _nobody_goes_in(spec: JobSpec, run: RunSpec, side: RunSide, reporter: Reporter) -> None:
    other = round_corner(spec, run, side, ends="corner")
    what = f"no run goes into the corner at the {side} end of this one"
    want = "write on = ... here and for the run round the corner, and [corner.NAME]"
    if other is not None:
        end = "right" if side == "left" else "left"
        what = f"{what}: run {other.key} keeps out of it as well"
        want = f"let one of the two go in: take {side} out here, or {end} in [run.{other.key}]"
    reporter.tell(("run", run.key, side), what, want)


def _reached(waiting: Mapping[str, frozenset[str]], key: str) -> set[str]:
    """Keys of the runs that one waits for, and of those that these wait for."""
    seen, left = set[str](), list(waiting[key])
    while left:
        here = left.pop()
        if here not in seen:
            seen.add(here)
            left.extend(waiting[here])
    return seen


def _waits_for_itself(
    spec: JobSpec, run: RunSpec, waiting: Mapping[str, frozenset[str]], reporter: Reporter
) -> None:
    """Tell the ends at which a run waits for one that waits for it in turn."""
    for side in SIDES:
        met = run_met(spec, run, side)
        if met is not None and run.key in _reached(waiting, met.key):
            what = (
                f"{thing_at(run, side)} stands in run {met.key}, which waits for this one in turn"
            )
            want = "let one of the two end at the wall, or at what is on it"
            reporter.tell(("run", run.key, "after" if side == "left" else "before"), what, want)
        other = round_corner(spec, run, side) if run.end(side) == "corner" else None
        if other is not None and run.key in _reached(waiting, other.key):
            what = "this run keeps out of the corner of one that waits for it in turn"
            reporter.tell(("run", run.key, side), what, 'let one of them go in: write "wall"')
    middle = centred_on(spec, run)
    if middle is not None and run.key in _reached(waiting, middle.key):
        what = f"it stands on the middle of what stands in {middle.key}, which waits for this run"
        want = "take it out, or let the other end at a wall, or at what is on it"
        reporter.tell(("run", run.key, "centre"), what, want)
