"""One run drawn anew before all the rest is worked out: what a changed number shows in first."""

from __future__ import annotations

from dataclasses import replace

from casewright.facts import Facts
from casewright.job.load import LoadedJob
from casewright.room.build import build
from casewright.room.specs import JobSpec, RunSpec
from casewright.web.drawings import drawn

__all__ = ["redrawn"]


def redrawn(loaded: LoadedJob, facts: Facts, name: str) -> str | None:
    """A drawing of a run, built with its own cases alone.

    Parameters
    ----------
    facts
        Sizes read and cut.
    name
        Of the drawing: `run.<key>`.

    Returns
    -------
    None when it is no run, or one that goes by another: round a corner, or by the seams below it.
    """
    spec = loaded.spec
    run = next((run for run in spec.runs if f"run.{run.key}" == name), None)
    if run is None or _goes_by_another(run):
        return None
    return drawn(build(_alone(spec, run), facts), name)


def _goes_by_another(run: RunSpec) -> bool:
    return "corner" in (run.left, run.right) or bool(run.over)


def _alone(spec: JobSpec, run: RunSpec) -> JobSpec:
    keys = set(run.cases)
    return replace(spec, cases=tuple(c for c in spec.cases if c.key in keys), runs=(run,))
