"""The face frame across a diagonal corner: bevelled to its neighbours, its face in theirs."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.case_mouth import CaseMouth
from casewright.casework.features import Cut
from casewright.casework.joints import Joint
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.plans import Plans
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.surds import Surd
from casewright.casework.proof.units import apart

__all__ = ["check_corner_frame", "check_slant"]


def check_corner_frame(
    case: Assembled, mouth: CaseMouth, plans: Plans, grid: Fraction
) -> Iterator[Failure]:
    """A frame that does not close against those beside it, or whose strips are not behind it.

    Parameters
    ----------
    grid
        How far rounding may keep an edge or the face back [mm].
    """
    if not case.model.spec.framed:
        return
    stiles = [s for s in case.solids.values() if s.part.role == "frame stile"]
    units = case.units
    ends = {"u": units.of(case.model.width), "v": units.of(case.model.depth)}
    for stile in stiles:
        yield from _check_bevel(stile)
        pieces = plans.of(stile, units)
        wall = "v" if stile.part.hand == mouth.corner else "u"
        ended = [plan.v.high if wall == "v" else plan.u.high for plan in pieces]
        most, short = 2 * ends[wall], 2 * units.up(grid)
        past = any(high.minus(Surd(most)).sign > 0 for high in ended)
        if past or not any(_just_under(high, most, short) for high in ended):
            says = f"{stile.part.title} does not end at the edge of the frame beside it"
            yield Failure("fronts", (stile.part.path,), says)
        face = 2 * (min(ends.values()) + units.of(mouth.beside))
        if not _just_under(plans.turned(stile.outer).both.high, face, 2 * units.up(2 * grid)):
            says = f"the face of {stile.part.title} does not meet those of its neighbours"
            yield Failure("fronts", (stile.part.path,), says)
        yield from _check_strip(case, stile)


def _just_under(found: Surd, most: int, short: int) -> bool:
    """Whether a place is not past a plane, and not farther behind it than so much."""
    return found.minus(Surd(most)).sign <= 0 and Surd(most - short).minus(found).sign <= 0


def _check_bevel(stile: Solid) -> Iterator[Failure]:
    """One bevel, along all of its outer edge, as deep as it is thick, its long point behind."""
    bevels = [f for f in stile.part.features if isinstance(f, Cut) and f.kind == "bevel"]
    thick, left = stile.part.finished.thickness.value, stile.part.hand == "left"
    good = len(bevels) == 1 and all(
        {cut.width.value, cut.depth.value} == {thick}
        and not cut.at.value and cut.start is None and cut.end is None
        and str(stile.way(cut.datum)) == ("-x" if left else "+x")
        and cut.face == "A" and str(stile.way("t1")) == "+z"
        for cut in bevels
    )  # fmt: skip
    if not good:
        says = f"{stile.part.title} is not bevelled along its outer edge"
        yield Failure("cuts", (stile.part.path,), says)


def _check_strip(case: Assembled, stile: Solid) -> Iterator[Failure]:
    """The strip behind a stile is flush with its inner edge: plates need no pad."""
    for strip in case.solids.values():
        if strip.part.role != "hinge strip" or strip.part.hand != stile.part.hand:
            continue
        left = stile.part.hand == "left"
        off = apart(strip.outer.x1, stile.outer.x1) if left else apart(
            strip.outer.x0, stile.outer.x0)  # fmt: skip
        if off:
            says = f"{strip.part.title} is not flush with the inner edge of its stile"
            yield Failure("fronts", (strip.part.path, stile.part.path), says,
                          case.units.length(off))  # fmt: skip


def check_slant(case: Assembled, plans: Plans, joint: Joint, grid: Fraction) -> Iterator[Failure]:
    """A rail before the slant of a board: as high, and no farther off than a step of the grid."""
    board, rail = case.solids[joint.one.part], case.solids[joint.other.part]
    paths = (joint.path, joint.one.part, joint.other.part)
    line = plans.clip_line(board, case.units)
    if case.units.of(joint.gap):
        yield Failure("joints", paths, f"{rail.part.title} is glued to {board.part.title}: no gap")
    back = plans.turned(rail.outer).both.low
    if line is None or not _just_under(Surd(2 * line), back.whole, 2 * case.units.up(2 * grid)):
        yield Failure("joints", paths, f"{rail.part.title} does not lie on {board.part.title}")
    elif rail.outer.y0 >= board.outer.y1 or rail.outer.y1 <= board.outer.y0:
        yield Failure("joints", paths, "the two surfaces lie beside each other")
