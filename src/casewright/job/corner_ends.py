"""Runs that keep out of an inside corner: there must be one that goes into it."""

from __future__ import annotations

from casewright.job.problems import Reporter
from casewright.room.run_ends import SIDES, round_corner, waits_for
from casewright.room.specs import JobSpec

__all__ = ["check_corner_ends"]


def check_corner_ends(spec: JobSpec, reporter: Reporter) -> None:
    """Tell every end in a corner that nothing stands round, and runs that wait for each other."""
    for run in spec.runs:
        for side in SIDES:
            if run.end(side) == "corner" and round_corner(spec, run, side) is None:
                what = f"no run goes into the corner at the {side} end of this one"
                want = "write on = ... here and for the run round the corner, and [corner.NAME]"
                reporter.tell(("run", run.key, side), what, want)
    waiting = {run.key: set(waits_for(spec, run)) for run in spec.runs}
    while done := [key for key, others in waiting.items() if not others]:
        waiting = {key: others - set(done) for key, others in waiting.items() if key not in done}
    for run in spec.runs:
        if run.key in waiting:
            side = next(side for side in SIDES if run.end(side) == "corner")
            what = "this run keeps out of the corner of one that waits for it in turn"
            reporter.tell(("run", run.key, side), what, 'let one of them go in: write "wall"')
