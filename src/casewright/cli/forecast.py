"""The command `forecast`: how likely each fit misses its band, and where to measure first."""

from __future__ import annotations

from pathlib import Path

from casewright.cli.commands import has_failed, load_and_work_out
from casewright.cli.exits import CLEAN, FAILED_PROOF, OPEN
from casewright.cli.forecast_texts import forecast_lines
from casewright.cli.printing import print_json, print_lines
from casewright.cli.progress import working
from casewright.job.forecast_document import forecast_document
from casewright.job.forecasting import forecast_job
from casewright.job.recorded import Use

__all__ = ["run_forecast"]


def run_forecast(
    job: Path, path: str, use: Use | None = None, *, everything: bool, as_json: bool
) -> int:
    """`forecast`: 1 as long as a hold point is open."""
    worked = load_and_work_out(job, use)
    if has_failed(worked, as_json=as_json):
        return FAILED_PROOF
    with working("forecasting the fits"):
        outlook = forecast_job(worked, path)
    if as_json:
        print_json(forecast_document(outlook))
    else:
        print_lines(forecast_lines(outlook, everything=everything or bool(path)))
    return OPEN if any(point.read is None for point in outlook.points) else CLEAN
