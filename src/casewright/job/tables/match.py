"""Fronts through which the grain runs."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from casewright.job.tables.table import Key, Table

__all__ = ["MatchTable"]


class MatchTable(Table):
    """Fronts that match: slabs with grain, cut out of one piece in the order they hang in."""

    cases: Annotated[list[Key], Field(min_length=1, max_length=60)]
    """Cases, or appliances with a panel, whose fronts match, left to right. Of one case its doors
    side by side, and above them its drawers; of several all of these beside each other. Where no
    sheet is wide enough the grain breaks between two cases, which is told."""
