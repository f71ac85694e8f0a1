"""The tree of errors: what stops because the input has no meaning."""

from casewright.errors.base import CasewrightError
from casewright.errors.job_file import JobFileError
from casewright.errors.length import LengthError
from casewright.errors.problem import Location, Problem

__all__ = ["CasewrightError", "JobFileError", "LengthError", "Location", "Problem"]
