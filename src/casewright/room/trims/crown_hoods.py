"""A crown that dies into the sides of a hood: these must reach as high and as far out."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.cases import Case
from casewright.dims import Dim
from casewright.findings import Finding, Severity
from casewright.room.trims.crown_face import crown_plane
from casewright.room.trims.crown_layout import CrownLayout

__all__ = ["meets_hood"]


def meets_hood(made: CrownLayout) -> Iterator[Finding]:
    """What a hood lacks for the crown beside it to end square at its sides."""
    run, house = made.run, made.house
    if all(case.spec.hood is not None for case in run.cases):
        return
    out = crown_plane(house, run) + made.projection
    for case in run.cases:
        if case.spec.hood is None:
            continue
        low = made.heights.top - (run.lift + case.height)
        if low.value > 0:
            yield _finding(made, case, low, ("below its top", "higher"))
        short = out - case.overall_depth
        if short.value > 0:
            yield _finding(made, case, short, ("behind its front", "deeper"))


def _finding(made: CrownLayout, case: Case, lacks: Dim, words: tuple[str, str]) -> Finding:
    text, run = made.house.text(lacks), made.run.spec
    where, more = words
    return Finding(
        rule="crown at a hood",
        severity=Severity.STOP,
        path=f"run.{run.key}.crown",
        says=f"the crown of {run.title} is to die into the sides of {case.spec.title}, which end "
        f"{text} {where}",
        measured=text,
        source="common practice",
        remedies=(
            f"{case.spec.title} {text} {more}",
            f"{case.spec.title} in a run of its own, flush between two runs, all with crowns",
            f"no crown on {run.title}",
        ),
    )
