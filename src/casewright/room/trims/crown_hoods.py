"""A crown at a hood: into its sides, which reach as high and as far out, or round it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from casewright.casework.cases import Case
from casewright.dims import Dim
from casewright.findings import Finding, Severity
from casewright.room.model import Run
from casewright.room.trims.crown_face import crown_plane, frieze_stock
from casewright.room.trims.crown_layout import CrownLayout

__all__ = ["meets_hoods"]


def meets_hoods(made: CrownLayout, run: Run, hoods: Iterable[Case]) -> Iterator[Finding]:
    """What hoods lack that the crown does not go over: to die into them, or to go round them.

    Parameters
    ----------
    run
        The whole run.
    """
    house = made.house
    plane, foot = crown_plane(house, run), made.heights.top - made.drop
    for case in hoods:
        face = case.spec.hood.face_stock if case.spec.hood is not None else frieze_stock(run)
        top, own = run.lift + case.height, case.face_plane + house.thickness(face)
        if top.value <= foot.value:
            says = (
                "goes on at its height over {hood}, which ends {lack} behind the cases beside it"
            )
            yield _finding(made, case, plane - own, says, ("{lack} deeper",))
            continue
        low, short = made.heights.top - top, plane + made.projection - case.overall_depth
        if low.value > 0:
            says = "is to die into the sides of {hood}, which end {lack} below its top"
            under = f"{house.text(top - foot)} lower: the crown goes round it"
            lower = () if own.value < plane.value else (under,)
            yield _finding(made, case, low, says, ("{lack} higher", *lower))
        if short.value > 0:
            says = "is to die into the sides of {hood}, which end {lack} behind its front"
            yield _finding(made, case, short, says, ("{lack} deeper",))


def _finding(
    made: CrownLayout, case: Case, lacks: Dim, says: str, ways: tuple[str, ...]
) -> Finding:
    text, run, hood = made.house.text(lacks), made.run.spec, case.spec.title
    return Finding(
        rule="crown at a hood",
        severity=Severity.STOP,
        path=f"run.{run.key}.crown",
        says=f"the crown of {run.title} {says.format(hood=hood, lack=text)}",
        measured=text,
        source="common practice",
        remedies=(
            *(f"{hood} {way.format(lack=text)}" for way in ways), f"no crown on {run.title}",
        ),
    )  # fmt: skip
