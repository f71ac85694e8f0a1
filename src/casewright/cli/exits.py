"""What a command's exit code says."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from casewright.job.worked import WorkedJob

__all__ = ["BAD_INPUT", "CLEAN", "FAILED_PROOF", "OPEN", "STOPPED", "code_of"]

CLEAN, OPEN, BAD_INPUT, FAILED_PROOF, STOPPED = 0, 1, 2, 3, 130


def code_of(worked: WorkedJob) -> int:
    """Exit code for a job that was worked out."""
    if worked.failures:
        return FAILED_PROOF
    return CLEAN if worked.is_clean else OPEN
