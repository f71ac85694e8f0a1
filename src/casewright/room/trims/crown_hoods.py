"""A crown at a hood: into its sides, which reach as high and as far out, or round it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from casewright.casework.cases import Case
from casewright.dims import Dim, Told, tell
from casewright.findings import Finding, Reckoning, Severity
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
                "the crown of {} goes on at its height over {}, which ends {} behind the cases "
                "beside it"
            )
            yield _finding(made, case, ("behind", plane - own), says, ("deeper",))
            continue
        low, short = made.heights.top - top, plane + made.projection - case.overall_depth
        if low.value > 0:
            says = "the crown of {} is to die into the sides of {}, which end {} below its top"
            lower = None if own.value < plane.value else top - foot
            yield _finding(made, case, ("below", low), says, ("higher",), lower)
        if short.value > 0:
            says = "the crown of {} is to die into the sides of {}, which end {} behind its front"
            yield _finding(made, case, ("short", short), says, ("deeper",))


def _finding(
    made: CrownLayout,
    case: Case,
    lacks: tuple[str, Dim],
    says: str,
    ways: tuple[str, ...],
    lower: Dim | None = None,
) -> Finding:
    """A hood that lacks something.

    Parameters
    ----------
    says
        With places for the run, the hood and what it lacks.
    lacks
        What, by a name, and how much of it [mm].
    ways
        What it is to be, by as much.
    lower
        By how much it is too high for the crown to go round it [mm].
    """
    house, run, hood = made.house, made.run.spec, case.spec.title
    own = Reckoning("crown at a hood", f"{case.key}.{run.key}", house.unit, house.chain.nodes)
    name, size = lacks
    lack = own.text(size, name)
    helps: list[Told] = [tell("{} {} {}", hood, lack, way) for way in ways]
    if lower is not None:
        less = own.text(lower, "lower")
        helps.append(tell("{} {} lower: the crown goes round it", hood, less))
    return Finding(
        rule="crown at a hood",
        severity=Severity.STOP,
        path=f"run.{run.key}.crown",
        says=tell(says, run.title, hood, lack),
        measured=lack.text,
        source="common practice",
        remedies=(*helps, f"no crown on {run.title}"),
        numbers=own.numbers,
    )
