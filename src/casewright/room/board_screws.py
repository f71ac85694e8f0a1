"""Screws between boards of different cases: an island's panels, a lid over several seats."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.dims import Dim

__all__ = ["BoardScrews"]


@dataclass(frozen=True, slots=True)
class BoardScrews:
    """Screws that hold a board of one case to one of another, or to a panel of several.

    Parameters
    ----------
    count
        [-].
    length
        [mm].
    through, into
        Paths of the parts they pass first and end in; thin backs may lie between.
    """

    path: str
    count: int
    length: Dim
    through: str
    into: str
