"""A drawing made anew before all the rest is worked out: what a changed number shows in first."""

from __future__ import annotations

from dataclasses import replace

from casewright.facts import Facts
from casewright.job.collector import collector_at_rest
from casewright.job.load import LoadedJob
from casewright.room.build import build
from casewright.room.model import Room
from casewright.room.run_ends import waits_for
from casewright.room.specs import JobSpec, RunSpec
from casewright.room.trims.specs import NO_TRIMS
from casewright.web.drawings import SMALL, drawn

__all__ = ["redrawn"]


def redrawn(
    loaded: LoadedJob, facts: Facts, name: str, *, before: Room | None = None
) -> str | None:
    """A drawing, built with what is in it and what that goes by alone; nothing is checked.

    Parameters
    ----------
    facts
        Sizes read and cut.
    name
        Of the drawing, with or without `SMALL` before it. Into the plan goes all there is.
    before
        The room as it was: cases that the change leaves alone are taken from it.

    Returns
    -------
    None when there is no such drawing.
    """
    spec = loaded.spec
    kind, _, key = name.removeprefix(SMALL).partition(".")
    if kind in ("run", "wall"):
        shown = [run for run in spec.runs if key and (run.key if kind == "run" else run.on) == key]
        if not shown:
            return None
        spec = _alone(spec, shown)
    with collector_at_rest():
        # What was planned before anything was read is in no drawing.
        designed = None if before is None else before.designed
        return drawn(build(spec, facts, designed=designed, before=before), name)


def _alone(spec: JobSpec, shown: list[RunSpec]) -> JobSpec:
    """The job with some runs, and those that they go by: round a corner, or by their seams.

    Trims go on from run to run, so that all that have some go together.
    """
    known = {run.key: run for run in spec.runs}
    trimmed = {run.key for run in spec.runs if run.trims != NO_TRIMS}
    keys = {run.key for run in shown}
    todo = list(shown)
    while todo:
        run = todo.pop()
        more = {key for key in (*waits_for(spec, run), run.over) if key} - keys
        more |= trimmed - keys if run.key in trimmed else set()
        keys |= more
        todo += [known[key] for key in more]
    runs = tuple(run for run in spec.runs if run.key in keys)
    inside = {key for run in runs for key in run.cases}
    cases = tuple(case for case in spec.cases if case.key in inside)
    # What goes round the runs of an island, and where it stands, is on no drawing of a run.
    return replace(spec, cases=cases, runs=runs, islands=(), floor_places=())
