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
    """A drawing of a run or of a wall, built with what is in it alone.

    Parameters
    ----------
    facts
        Sizes read and cut.
    name
        Of the drawing: `run.<key>` or `wall.<key>`.

    Returns
    -------
    None when it is another drawing, or when one of its runs goes by one that is not in it: round
    a corner, or by the seams below it.
    """
    spec = loaded.spec
    kind, _, key = name.partition(".")
    shown = [run for run in spec.runs if (run.key if kind == "run" else run.on) == key]
    if kind not in ("run", "wall") or not shown or not key:
        return None
    keys = {run.key for run in shown}
    if any(_goes_by_another(run, keys) for run in shown):
        return None
    return drawn(build(_alone(spec, shown), facts), name)


def _goes_by_another(run: RunSpec, keys: set[str]) -> bool:
    return "corner" in (run.left, run.right) or bool(run.over and run.over not in keys)


def _alone(spec: JobSpec, runs: list[RunSpec]) -> JobSpec:
    keys = {key for run in runs for key in run.cases}
    cases = tuple(case for case in spec.cases if case.key in keys)
    return replace(spec, cases=cases, runs=tuple(runs))
