"""Corners that a crown turns: returns at open ends, inside corners with another run's crown."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction
from math import isqrt

from casewright.room.run_ends import round_corner
from casewright.room.specs import JobSpec, RunSide, RunSpec
from casewright.room.trims.bends import BENT, BENT_COSINE, bend_at
from casewright.room.trims.crown_beside import CrownNeighbour
from casewright.room.trims.model import SQUARE, EndCut, EndKind
from casewright.room.trims.saw_settings import Spring, corner_tenths, cosine_of, crown_setting
from casewright.room.trims.specs import CrownSpec, InsideCut
from casewright.survey.survey import Survey

__all__ = ["CrownEnd", "beside_end", "crown_end", "met_in_corner", "over_corner"]

_SQUARE = Fraction(0)


@dataclass(frozen=True, slots=True)
class CrownEnd:
    """How a crown ends.

    Parameters
    ----------
    kind
        return: at an open end, back to the wall; inside: against another run's crown; bend: across
        the face of a diagonal corner; beside: against the return of another crown on its wall;
        side: square into the side of a case; straight: on into another crown; wall.
    cut
        Of the front piece there.
    cosine
        Of the corner [-]: as read, else of a square one.
    other
        Key of the run whose crown it meets; empty: none. A return then ends at that run's face.
    rear
        How a return is cut at its rear end.
    """

    kind: str
    cut: EndCut
    cosine: Fraction = _SQUARE
    other: str = ""
    rear: EndCut = SQUARE


def crown_end(
    spec: JobSpec, run: RunSpec, side: RunSide, spring: Spring, measured: Survey,
    beside: CrownNeighbour | None = None,
) -> CrownEnd:  # fmt: skip
    """What the crown of a run does at an end.

    Parameters
    ----------
    beside
        The case of another run that it ends at; None: none stands there.
    """
    crown = run.trims.crown
    if crown is None:
        msg = f"run {run.key} has no crown"
        raise ValueError(msg)
    if bend_at(spec, run, side) is not None:
        return _bend(crown, side, spring)
    if beside is not None and beside.kind != "clash":
        return beside_end(crown, side, spring, beside)
    if run.end(side) == "open":
        return _return(crown, side, spring)
    other = met_in_corner(spec, run, side)
    if other is None:
        return CrownEnd("wall", EndCut("square"))
    cosine, is_read = _corner_read(run, crown, side, measured)
    keeps_out = run if run.end(side) == "corner" else other
    is_coped = keeps_out.trims.crown is not None and keeps_out.trims.crown.inside == "coped"
    coped, through = is_coped and keeps_out is run, is_coped and keeps_out is not run
    setting = crown_setting(cosine, spring)
    cut = EndCut("cope" if coped else "inside mitre", corner_tenths(cosine), is_read, setting)
    return CrownEnd("inside", EndCut("square") if through else cut, cosine, other.key)


def beside_end(
    crown: CrownSpec, side: RunSide, spring: Spring, beside: CrownNeighbour
) -> CrownEnd:  # fmt: skip
    """At a hood, or a case of another run: into its side, against its crown, or back to that."""
    other = beside.other.spec
    if beside.kind == "over":
        return _return(crown, side, spring)
    if beside.kind in ("side", "straight"):
        return CrownEnd(beside.kind, SQUARE)
    if beside.kind == "inside":
        cut, cosine = _inner(crown, side, spring, crown.inside)
        return CrownEnd("beside", cut, cosine, other.key)
    met = other.trims.crown or crown
    rear = SQUARE
    if met.inside == "mitred":
        back: RunSide = "right" if side == "left" else "left"
        rear, _ = _inner(met, back, spring, "mitred")
    return replace(_return(crown, side, spring), other=other.key, rear=rear)


def _inner(
    crown: CrownSpec, side: RunSide, spring: Spring, inside: InsideCut
) -> tuple[EndCut, Fraction]:
    """Cut and cosine of the corner between a crown and the return of a deeper case beside it."""
    read = crown.corner(side)
    cosine = cosine_of(Decimal(read)) if read else _SQUARE
    setting = crown_setting(cosine, spring)
    kind: EndKind = "cope" if inside == "coped" else "inside mitre"
    return EndCut(kind, corner_tenths(cosine), bool(read), setting), cosine


def _bend(crown: CrownSpec, side: RunSide, spring: Spring) -> CrownEnd:
    """Mitred, as it was read between the front and the face of the corner, else at 135."""
    read = crown.corner(side)
    cosine = cosine_of(Decimal(read)) if read else BENT_COSINE
    setting = crown_setting(cosine, spring)
    return CrownEnd(
        "bend", EndCut("inside mitre", corner_tenths(cosine), bool(read), setting, BENT), cosine
    )


def met_in_corner(spec: JobSpec, run: RunSpec, side: RunSide) -> RunSpec | None:
    """The run whose crown meets this one's in the inside corner at an end; None: none does."""
    if run.end(side) == "corner":
        other = round_corner(spec, run, side)
        return other if other is not None and other.trims.crown is not None else None
    back: RunSide = "right" if side == "left" else "left"
    for other in spec.runs:
        if other.trims.crown is not None and other.end(back) == "corner":
            into = round_corner(spec, other, back)
            if into is not None and into.key == run.key:
                return other
    return None


def _return(crown: CrownSpec, side: RunSide, spring: Spring) -> CrownEnd:
    read = crown.corner(side)
    cosine = cosine_of(Decimal(read)) if read else _SQUARE
    setting = crown_setting(cosine, spring)
    cut = EndCut("outside mitre", corner_tenths(cosine), bool(read), setting)
    return CrownEnd("return", cut, cosine)


def _corner_read(
    run: RunSpec, crown: CrownSpec, side: RunSide, measured: Survey
) -> tuple[Fraction, bool]:
    """Cosine of an inside corner: as read at the crown, else by the survey, else square."""
    read = crown.corner(side)
    if read:
        return cosine_of(Decimal(read)), True
    for corner in measured.corners.values():
        here = corner.spec.right if side == "left" else corner.spec.left
        if here == run.on and not corner.spec.outside and corner.cosine is not None:
            return corner.cosine.value, True
    return _SQUARE, False


def over_corner(projection: Fraction, cosine: Fraction, step: Fraction) -> Fraction:
    """How much longer a piece is at its long point round an outside corner [mm].

    p / tan(a / 2), where 1 / tan(a / 2) = sqrt((1 + cos a) / (1 - cos a)): exact in a square
    corner, else up to the next step, by whole numbers alone.

    Parameters
    ----------
    projection
        Of the moulding [mm].
    cosine
        Of the corner [-]; over -1 and under 1.
    step
        Grid [mm], above 0.

    Examples
    --------
    >>> over_corner(Fraction(76), Fraction(0), Fraction(1, 2))
    Fraction(76, 1)
    """
    square = projection**2 * (1 + cosine) / (1 - cosine) / step**2
    root = isqrt(square.numerator // square.denominator)
    return (root if root**2 == square else root + 1) * step if cosine else projection
