"""What a plan asks of the person at the saw, as JSON."""

from __future__ import annotations

from typing import Any

from casewright.cutting.work import Work
from casewright.packet.cut_words import work_minutes

__all__ = ["work_json"]


def work_json(work: Work) -> dict[str, Any]:
    """Counts of what is done at the saws, and about how long it takes."""
    return {
        "minutes": work_minutes(work),
        "cuts": work.cuts,
        "settings": {"fence": work.fences, "stop": work.stops, "straightedge": work.guides},
        "least_settings": work.least_settings,
        "lost_datums": work.lost_datums,
        "lifts": {"full": work.full_lifts, "half": work.half_lifts},
        "turns": work.turns,
    }
