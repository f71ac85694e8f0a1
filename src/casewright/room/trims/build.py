"""The trims of all runs, built once the cases stand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from casewright.casework.house import House
from casewright.findings import Finding
from casewright.room.model import Run
from casewright.room.seam_strips import build_seam_strips
from casewright.room.specs import JobSpec
from casewright.room.trims.crowns import build_crown
from casewright.room.trims.light_rails import build_light_rail
from casewright.room.trims.model import Trim
from casewright.room.trims.scribe_mouldings import build_scribe_moulding
from casewright.room.trims.toe_skins import build_toe_skin
from casewright.survey.survey import Survey

__all__ = ["build_trims"]


def build_trims(
    house: House, spec: JobSpec, runs: Sequence[Run], measured: Survey
) -> tuple[tuple[Run, ...], tuple[Finding, ...]]:
    """The runs with their trims, in the order they are put on at the wall."""
    by_key = {run.spec.key: run for run in runs}
    done: list[Run] = []
    findings: list[Finding] = []
    for run in runs:
        asked = run.spec.trims
        strips = build_seam_strips(house, spec, run)
        trims: list[Trim] = [] if strips is None else [strips]
        crowns, found = build_crown(house, spec, run, by_key, measured)
        trims.extend(crowns)
        findings.extend(found)
        if asked.light_rail is not None:
            trims.append(build_light_rail(house, run, asked.light_rail))
        if asked.scribe_moulding is not None:
            trims.append(build_scribe_moulding(house, run, asked.scribe_moulding))
        if asked.toe_skin is not None:
            wall = measured.walls.get(run.spec.on)
            trims.append(build_toe_skin(house, run, asked.toe_skin, wall))
        done.append(replace(run, trims=tuple(trims)) if trims else run)
    return tuple(done), tuple(findings)
