"""The root of all errors of Casewright."""

from __future__ import annotations

__all__ = ["CasewrightError"]


class CasewrightError(Exception):
    """Something that stops, told to the person who can put it right."""
