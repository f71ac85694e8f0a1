"""Corners of a room: each end of a wall meets one other wall."""

from __future__ import annotations

from casewright.job.content import Content
from casewright.job.problems import Reporter

__all__ = ["check_wall_ends"]


def check_wall_ends(content: Content, reporter: Reporter) -> None:
    """Tell every corner that claims an end of a wall which another corner has already."""
    seen: dict[tuple[str, int], str] = {}
    for key, corner in content.corners.items():
        for n, wall in enumerate(corner.walls):
            before = seen.setdefault((wall, n), key)
            if before == key:
                continue
            end = "left" if n else "right"
            what = f"the {end} end of wall {wall} is in corner {before} already"
            want = "name the walls as one faces the corner, the left one first, or the other wall"
            reporter.tell(("corner", key, "walls", n), what, want)
            break
