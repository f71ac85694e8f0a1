"""The error of a typeface that is missing."""

from casewright.errors import CasewrightError

__all__ = ["FontError"]


class FontError(CasewrightError):
    """The typeface that all pages are set in is not installed."""
