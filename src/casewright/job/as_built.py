"""What a job file says was read of its runs once they stood: facts by the path of each number."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.facts import Fact
from casewright.job.content import Content
from casewright.job.origins import Origins
from casewright.job.trims import trim_readings
from casewright.room.fillers import GAP_HEIGHTS
from casewright.room.run_ends import SIDES

__all__ = ["as_built"]


def as_built(content: Content, origins: Origins) -> dict[str, Fact]:
    """Gaps beside the cases of every run, and the lengths of its trims."""
    return dict(_gaps(content, origins)) | dict(trim_readings(content, origins))


def _gaps(content: Content, origins: Origins) -> Iterator[tuple[str, Fact]]:
    for key, run in content.runs.items():
        for side in SIDES:
            read = run.left_gap if side == "left" else run.right_gap
            for number, (name, gap) in enumerate(zip(GAP_HEIGHTS, read or (), strict=False)):
                path = ("run", key, f"{side}_gap", number)
                yield f"run.{key}.filler_{side}.gap_{name}", origins.as_built(gap, path)
