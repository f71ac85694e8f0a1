"""Proof of the fillers of a run, as their pieces are cut."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.levels import extent
from casewright.casework.parts import Part
from casewright.casework.proof import Failure
from casewright.room.model import Filler, Run

__all__ = ["filler_failures"]


def filler_failures(run: Run) -> Iterator[Failure]:
    """Each face closes its gap, from the side of its case to what the run ends at and past it."""
    for filler in run.fillers:
        left = filler.side == "left"
        case = run.cases[0] if left else run.cases[-1]
        edge = run.starts[0].value if left else run.cases_end.value
        yield from _face(filler, case, edge, run.length.value)
        yield from _tall(filler.part, case, run)
        if filler.lip is not None:
            yield from _lip(filler.part, filler.lip, edge, left=left)


def _face(filler: Filler, case: Case, edge: Fraction, length: Fraction) -> Iterator[Failure]:
    part = filler.part
    low, high = (end.value for end in extent(part, 0))
    left = filler.side == "left"
    off = abs((high if left else low) - edge)
    if off:
        yield Failure("size", (part.path, case.key), f"{part.title} does not meet its case", off)
    wall = filler.beyond.value if left else length - filler.beyond.value
    short = low - wall if left else wall - high
    if short > 0:
        yield Failure("size", (part.path,), f"{part.title} does not reach across its gap", short)
    off = abs(extent(part, 2)[1].value - case.face_plane.value)
    if off:
        says = f"{part.title} is not flush with the front of its case"
        yield Failure("fronts", (part.path, case.key), says, off)


def _tall(part: Part, case: Case, run: Run) -> Iterator[Failure]:
    """From the foot of its case, or over a toe skin from its bottom, to its head."""
    low, high = (end.value - run.lift.value for end in extent(part, 1))
    skin = any(trim.kind == "toe skin" for trim in run.trims)
    bottoms = [level.low.value for level in case.levels if level.role == "bottom"]
    foot = bottoms[0] if skin and bottoms else Fraction(0)
    off = max(abs(high - case.height.value), abs(low - foot))
    if off:
        says = f"{part.title} does not begin and end with its case"
        yield Failure("size", (part.path, case.key), says, off)


def _lip(face: Part, lip: Part, edge: Fraction, *, left: bool) -> Iterator[Failure]:
    """Against the side of the case, behind the face, under all of its length."""
    x = extent(lip, 0)[1 if left else 0].value
    if x != edge:
        says = f"{lip.title} does not lie against the side of its case"
        yield Failure("joints", (lip.path,), says, abs(x - edge))
    z = extent(lip, 2)[1].value - extent(face, 2)[0].value
    if z:
        says = f"{lip.title} does not meet the back of the {face.title}"
        yield Failure("joints", (lip.path, face.path), says, abs(z))
    own, other = (tuple(end.value for end in extent(part, 1)) for part in (lip, face))
    if own != other:
        off = max(abs(a - b) for a, b in zip(own, other, strict=True))
        says = f"{lip.title} and {face.title} do not end alike"
        yield Failure("joints", (lip.path, face.path), says, off)
