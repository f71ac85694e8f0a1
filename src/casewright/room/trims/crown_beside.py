"""Crowns that end at a case of another run on their wall: they die into it, or meet its crown."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.dims import Dim, least, tell
from casewright.findings import Finding, Reckoning, Severity
from casewright.room.model import Run
from casewright.room.run_ends import run_met, thing_at
from casewright.room.specs import JobSpec, RunSide
from casewright.room.trims.bends import joined_by_bends
from casewright.room.trims.crown_face import crown_case, crown_plane
from casewright.room.trims.crown_heights import ceiling_over
from casewright.survey.survey import Survey

__all__ = ["CrownNeighbour", "Kind", "beside_findings", "besides_of", "neighbour_at"]

_RULE = "crown beside a case"
Kind = Literal["side", "inside", "turn", "straight", "over", "clash"]
_BACK: Mapping[RunSide, RunSide] = {"left": "right", "right": "left"}


@dataclass(frozen=True, slots=True)
class CrownNeighbour:
    """A case of another run that stands at an end of a run with a crown.

    Parameters
    ----------
    other, case
        That run, and its case there.
    kind
        side: the crown dies square into the side of the case; inside: it meets the crown that
        turns back along that side; turn: it turns back itself, to the face that the other's is
        nailed to; straight: the two go on in one line; over: it ends above the case, and turns
        back to the wall; clash: none of these.
    lacks
        What the case is too low and too shallow by, for a crown to die into it [mm]; None: it is
        not.
    same
        Whether both crowns, where there are two, are of one moulding.
    tells
        Whether what is wrong is told of this crown: of the one less deep, of two.
    own
        Where what it lacks is worked out.
    """

    other: Run
    case: Case
    kind: Kind
    lacks: tuple[Dim | None, Dim | None] = (None, None)
    same: bool = True
    tells: bool = True
    own: Reckoning | None = field(default=None, compare=False, repr=False)


def besides_of(
    house: House, spec: JobSpec, run: Run, runs: Mapping[str, Run], measured: Survey
) -> dict[RunSide, CrownNeighbour]:
    """What stands at the ends of a run with a crown, of other runs on its wall."""
    found: dict[RunSide, CrownNeighbour] = {}
    sides: tuple[RunSide, RunSide] = ("left", "right")
    for side in sides:
        met = neighbour_at(spec, run, runs, side)
        if met is not None:
            found[side] = _judged(house, spec, run, met, measured)
    return found


def neighbour_at(
    spec: JobSpec, run: Run, runs: Mapping[str, Run], side: RunSide
) -> tuple[Run, Case] | None:
    """The run and the case that a run ends at, or the run that ends at this one's last case."""
    other = run_met(spec, run.spec, side)
    if other is not None:
        key = thing_at(run.spec, side)
        closed = run.spec.end(side) != "open"
        case = next((c for c in runs[other.key].cases if c.key == key), None)
        return (runs[other.key], case) if closed and case is not None else None
    back, last = _BACK[side], run.spec.places[0 if side == "left" else -1]
    for each in spec.runs:
        ends = each.key != run.spec.key and thing_at(each, back) == last
        if ends and each.end(back) != "open" and run_met(spec, each, back) is run.spec:
            return runs[each.key], runs[each.key].cases[-1 if side == "left" else 0]
    return None


@dataclass(frozen=True, slots=True)
class _Reach:
    """A crown in section, above the floor and off the wall [mm]."""

    foot: Dim
    top: Dim
    face: Dim
    out: Dim


def _reach(
    house: House, own: Reckoning, spec: JobSpec, run: Run, measured: Survey
) -> _Reach | None:
    crown = run.spec.trims.crown
    if crown is None:
        return None
    key = f"run.{run.spec.key}.crown"
    foot = run.lift + crown_case(run).height
    if crown.to_ceiling:
        walls = joined_by_bends(spec, run.spec)
        top = least(*(ceiling_over(house, each, measured) for each in walls))
    else:
        frieze = crown.frieze
        wished = (
            house.style_dim("frieze") if frieze is None else own.given(f"{key}.wished", frieze)
        )
        top = foot + wished + own.given(f"{key}.drop", crown.drop)
    face = crown_plane(house, run)
    return _Reach(foot, top, face, face + own.given(f"{key}.projection", crown.projection))


def _judged(
    house: House, spec: JobSpec, run: Run, met: tuple[Run, Case], measured: Survey
) -> CrownNeighbour:
    other, case = met
    of = f"run.{run.spec.key}.{case.key}"
    numbers = Reckoning(_RULE, of, house.unit, house.chain.nodes)
    own = _reach(house, numbers, spec, run, measured)
    its = _reach(house, numbers, spec, other, measured)
    if own is None:
        msg = f"run {run.spec.key} has no crown"
        raise ValueError(msg)
    top = other.lift + case.height
    low, short = own.top - top, own.out - case.overall_depth
    lacks = low if low.value > 0 else None, short if short.value > 0 else None
    face, key = own.face.value, run.spec.key
    tells = its is None or (face, key) < (its.face.value, other.spec.key)
    if its is not None and own.top.value == its.top.value:
        kind: Kind = "inside" if face < its.face.value else "turn"
        kind = "straight" if face == its.face.value else kind
        same = _moulding(run) == _moulding(other)
        return CrownNeighbour(other, case, kind if same else "clash", same=same, tells=tells)
    if not any(lacks):
        return CrownNeighbour(other, case, "side")
    if own.foot.value >= (top if its is None else its.top).value:
        return CrownNeighbour(other, case, "over")
    return CrownNeighbour(other, case, "clash", lacks, tells=tells, own=numbers)


def _moulding(run: Run) -> tuple[str, Fraction, Fraction] | None:
    crown = run.spec.trims.crown
    return None if crown is None else (crown.stock, crown.drop.value, crown.projection.value)


def beside_findings(
    house: House, run: Run, besides: Mapping[RunSide, CrownNeighbour]
) -> Iterator[Finding]:
    """What keeps a crown from ending at the case beside it."""
    for beside in besides.values():
        if beside.kind != "clash" or not beside.tells:
            continue
        title, case = run.spec.title, beside.case.spec.title
        if not beside.same:
            says = f"the crown of {title} meets one of another moulding at {case}"
            yield _finding(run, says, "", ("give both one moulding, drop and projection",))
            continue
        for lack, where, more in zip(
            beside.lacks, ("below its top", "behind its front"), ("higher", "deeper"), strict=True
        ):
            if lack is not None and beside.own is not None:
                by = beside.own.text(lack, where.replace(" ", "_"))
                says = "the crown of {} is to die into the side of {}, which ends {} {}"
                same = f"a crown on {beside.other.spec.title} of one moulding, at one height"
                ways = tell("{} {} {}", case, by, more), same, f"no crown on {title}"
                numbers = beside.own.numbers
                yield _finding(run, tell(says, title, case, by, where), by.text, ways, numbers)


def _finding(
    run: Run, says: str, measured: str, remedies: tuple[str, ...], numbers: tuple[Dim, ...] = ()
) -> Finding:
    return Finding(
        rule=_RULE,
        severity=Severity.STOP,
        path=f"run.{run.spec.key}.crown",
        says=says,
        measured=measured,
        source="common practice",
        remedies=remedies,
        numbers=numbers,
    )
