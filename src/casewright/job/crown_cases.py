"""Wall cases that reach up to a crown: their height follows from the ceiling."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from casewright.casework.house import House
from casewright.casework.specs import CaseSpec
from casewright.dims import Given, Origin, size_text
from casewright.job.problems import Reporter
from casewright.room.specs import RunSpec
from casewright.room.trims.crown_heights import height_under_crown
from casewright.sources import INCH
from casewright.survey.specs import SurveySpec
from casewright.survey.survey import survey

__all__ = ["reach_up"]

_LEAST = 4 * INCH
"""Lowest case that is made at all [mm]."""


def reach_up(
    cases: Mapping[str, CaseSpec],
    runs: Mapping[str, RunSpec],
    house: House,
    read: SurveySpec,
    reporter: Reporter,
) -> dict[str, CaseSpec]:
    """The cases, those of a crown as high as it leaves them by what the file says of the room.

    Parameters
    ----------
    house
        On a chain of its own: what is worked out here is for the checks of the file alone.
    """
    found = dict(cases)
    measured = survey(house.chain, read, house.unit)
    for run in runs.values():
        crown = run.trims.crown
        own = [key for key in crown.fitted if key in cases] if crown is not None else []
        if crown is None or not own:
            continue
        height = height_under_crown(house, run, crown, measured).value
        if height < _LEAST:
            what = f"under this crown {size_text(height, house.unit)} are left for the cases"
            want = "give them a height, or read the ceiling again"
            reporter.tell(("run", run.key, "crown", "sets_height"), what, want)
            continue
        origin = Origin("solved", f"what the crown of {run.title} leaves under the ceiling")
        for key in own:
            found[key] = replace(cases[key], height=Given(height, origin))
    return found
