"""Proof that crowns of runs side by side on a wall close: one's return begins at the other's face.

It works on sizes and placements as they are, never on the formulas that made them.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.levels import extent
from casewright.casework.parts import Part
from casewright.casework.proof import Failure
from casewright.room.model import Room, Run
from casewright.room.specs import RunSide
from casewright.room.trims.corners import met_in_corner
from casewright.room.trims.model import EndCut, Trim

__all__ = ["beside_failures"]

_READ = Fraction(25)
"""What a length that was read may differ from the plan here, about 1 in [mm]."""
_CLOSES = ("cope", "inside mitre")


@dataclass(frozen=True, slots=True)
class _End:
    """An end of a crown that meets another on its wall.

    Parameters
    ----------
    x
        From the wall's left end [mm].
    is_read
        Whether it is cut to what was read, which may differ from the plan.
    cut
        Of that end, or of a return's rear end.
    """

    run: Run
    part: Part
    side: RunSide
    x: Fraction
    cut: EndCut
    is_read: bool


def beside_failures(room: Room) -> Iterator[Failure]:
    """Every crown along a wall that meets no return, and every return that meets no crown."""
    straight, returns = list(_straight(room)), list(_returns(room))
    for end in straight:
        met = next((each for each in returns if _meet(end, each)), None)
        if met is None:
            yield Failure("joints", (end.part.path,), f"the {end.part.title} meets no crown")
            continue
        yield from _closed(end, met)
    for end in returns:
        if not any(_meet(each, end) for each in straight):
            says = f"the {end.part.title} begins where no crown is"
            yield Failure("joints", (end.part.path,), says)


def _crowns(room: Room) -> Iterator[tuple[Run, Trim]]:
    for run in room.runs:
        yield from ((run, trim) for trim in run.trims if trim.kind == "crown")


def _straight(room: Room) -> Iterator[_End]:
    """Ends along the wall that close against something, apart from those in a corner."""
    sides: tuple[RunSide, RunSide] = ("left", "right")
    for run, trim in _crowns(room):
        for side in sides:
            piece = trim.along[0 if side == "left" else -1]
            cut = piece.left if side == "left" else piece.right
            last = [each for each in run.trims if each.kind == "crown"][
                0 if side == "left" else -1
            ]
            in_corner = trim is last and met_in_corner(room.spec, run.spec, side) is not None
            if cut.kind not in _CLOSES or cut.is_bend or in_corner:
                continue
            low, high = extent(piece.part, 0)
            x = run.begins.value + (low if side == "left" else high).value
            yield _End(run, piece.part, side, x, cut, trim.open_lengths[0].built is not None)


def _returns(room: Room) -> Iterator[_End]:
    """Returns that do not begin at the wall."""
    for run, trim in _crowns(room):
        for piece in trim.pieces:
            if piece.rear is None:
                continue
            left = piece.part.placed.orientation.length.sign > 0
            low, high = extent(piece.part, 0)
            x = run.begins.value + (high if left else low).value
            cut = piece.left if left else piece.right
            read = any(length.built is not None for length in trim.open_lengths)
            yield _End(run, piece.part, "left" if left else "right", x, cut, read)


def _meet(end: _End, other: _End) -> bool:
    near = _READ if end.is_read or other.is_read else 0
    one, two = end.run.spec, other.run.spec
    here = end.side != other.side and (one.key == two.key or one.on == two.on != "")
    return here and abs(end.x - other.x) <= near


def _closed(end: _End, met: _End) -> Iterator[Failure]:
    """Level, the return from the face that the other is nailed to; cut alike or coped."""
    paths = (end.part.path, met.part.path)
    off = max(abs(one.value - other.value) for one, other in
              zip(extent(end.part, 1), extent(met.part, 1), strict=True))  # fmt: skip
    if off:
        says = f"the {met.part.title} is not level with the {end.part.title}"
        yield Failure("size", paths, says, off)
    off = abs(extent(end.part, 2)[0].value - extent(met.part, 2)[0].value)
    if off:
        says = f"the {met.part.title} does not begin at the face that it meets"
        yield Failure("joints", paths, says, off)
    if (end.cut.kind, met.cut.kind) not in (("cope", "square"), ("inside mitre",) * 2):
        says = f"the {met.part.title} is not cut to close with the {end.part.title}"
        yield Failure("joints", paths, says)
