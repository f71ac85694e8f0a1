"""Proof that trims close at diagonal corners: exactly, in numbers a + b sqrt(2).

It works on sizes and placements as they are, never on the formulas that made them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from casewright.casework.case_mouth import CaseMouth
from casewright.casework.levels import extent
from casewright.casework.parts import Part
from casewright.casework.proof import Failure
from casewright.casework.proof.surds import Surd
from casewright.room.model import Room, Run
from casewright.room.specs import RunSide
from casewright.room.trims.bends import Bend, bends_of
from casewright.room.trims.model import Trim, TrimPiece

__all__ = ["bend_failures"]

_KINDS = ("toe skin", "light rail", "crown", "backing", "frieze")


@dataclass(frozen=True, slots=True)
class _Turn:
    """A trim at a bend: its last piece along the wall, and the piece across.

    Parameters
    ----------
    corner
        The corner of the walls along the run, from its left datum [mm].
    """

    bend: Bend
    mouth: CaseMouth
    trim: Trim
    straight: TrimPiece
    across: Part
    corner: Fraction

    @property
    def left(self) -> bool:
        """Whether the corner is at the left end."""
        return self.bend.side == "left"

    @property
    def end(self) -> Fraction:
        """Where the piece along the wall ends, from the corner of the walls [mm]."""
        low, high = extent(self.straight.part, 0)
        return low.value - self.corner if self.left else self.corner - high.value

    @property
    def past(self) -> Fraction:
        """How far that is past what is read of it [mm]."""
        start, along = self.trim.start, self.trim.open_lengths[0]
        low, high = extent(self.straight.part, 0)
        if start is None:
            return Fraction(0)
        return start.value - low.value if self.left else high.value - start.value - along.value

    @property
    def before(self) -> Fraction:
        """How far the rear of the piece across lies before the face [mm]."""
        return self.across.placed.z.value - self.mouth.front.value


def bend_failures(room: Room, grid: Fraction) -> Iterator[Failure]:
    """Everything about the trims at diagonal corners that does not meet.

    Parameters
    ----------
    grid
        How far rounding may take an end off its place [mm].
    """
    if all(case.mouth is None for case in room.cases):
        return
    spec, runs = room.spec, {run.spec.key: run for run in room.runs}
    pieces: dict[tuple[str, str], Part] = {
        (bend.case.key, trim.kind): piece.part
        for run in runs.values()
        for side, bend in bends_of(spec, run, runs).items()
        for trim in run.trims
        for piece in trim.across
        if bend.owns and piece.part.path.endswith(f".{side}_across")
    }
    for run in runs.values():
        for side, bend in bends_of(spec, run, runs).items():
            for trim in run.trims:
                if trim.kind in _KINDS and _turns(trim, side):
                    yield from _judge(run, bend, trim, pieces, grid)


def _turns(trim: Trim, side: RunSide) -> bool:
    pieces = trim.along
    if not pieces:
        return False
    return (pieces[0].left if side == "left" else pieces[-1].right).is_bend


def _judge(
    run: Run, bend: Bend, trim: Trim, pieces: Mapping[tuple[str, str], Part], grid: Fraction
) -> Iterator[Failure]:
    across, mouth = pieces.get((bend.case.key, trim.kind)), bend.case.mouth
    straight = trim.along[0 if bend.side == "left" else -1]
    if across is None or mouth is None:
        says = f"nothing goes on from the {straight.part.title} across {bend.case.spec.title}"
        yield Failure("parts", (straight.part.path, bend.case.key), says)
        return
    turn = _Turn(bend, mouth, trim, straight, across, _corner(run, bend))
    yield from _closes(turn, grid)
    if bend.owns:
        yield from _lies(turn)
        yield from _long(turn, grid)
    off = abs(extent(across, 1)[1].value - extent(straight.part, 1)[1].value)
    if off:
        says = f"the {across.title} is not level with the {straight.part.title}"
        yield Failure("size", (across.path, straight.part.path), says, off)


def _corner(run: Run, bend: Bend) -> Fraction:
    if bend.owns:
        start = run.starts[run.cases.index(bend.case)].value
        return start if bend.side == "left" else start + bend.case.width.value
    return Fraction(0) if bend.side == "left" else run.length.value


def _closes(turn: _Turn, grid: Fraction) -> Iterator[Failure]:
    """Both rears end where they cross: R - z + n sqrt(2) from the corner of the walls."""
    part, read = turn.straight.part, turn.trim.open_lengths[0]
    if read.built is None:
        whole = turn.mouth.reach.value - part.placed.z.value - turn.end
        if _sign(whole + grid * 2, turn.before) < 0 or _sign(whole - 2 * grid, turn.before) > 0:
            says = f"the {part.title} does not end where it meets the {turn.across.title}"
            yield Failure("joints", (part.path, turn.across.path), says)


def _lies(turn: _Turn) -> Iterator[Failure]:
    """It lies in the middle of the face, where the trim's piece along the wall lies."""
    part, thick = turn.across, turn.across.finished.thickness.value
    off = abs(part.placed.x.value * 2 + part.finished.length.value - turn.mouth.width.value)
    if off:
        says = f"the {part.title} is not in the middle of the face"
        yield Failure("size", (part.path,), says, off)
    face = turn.bend.case.face_plane.value
    before = turn.straight.part.placed.z.value - face
    if turn.trim.kind in ("light rail", "backing"):
        off = abs(turn.before + thick)
        says = f"the {part.title} is not flush with the face"
    elif turn.trim.kind in ("frieze", "crown"):
        off = abs(turn.before - before)
        says = f"the {part.title} does not lie as far before the face as that along the wall"
    else:
        board = next((p for p in turn.bend.case.parts if p.path.endswith(".toe_board")), None)
        rear = board.placed.z.value + board.finished.thickness.value if board else Fraction(0)
        off = abs(part.placed.z.value - rear)
        says = f"the {part.title} does not lie on the toe board"
    if off:
        yield Failure("joints", (part.path,), says, off)


def _long(turn: _Turn, grid: Fraction) -> Iterator[Failure]:
    """It goes past what is read of it as far as the piece along the wall does, at either end.

    What is planned to be read is the length between the two crossings.
    """
    part = turn.across
    read = next(d for d in turn.trim.open_lengths if d.path.endswith(f"across_{turn.bend.side}"))
    off = abs(part.finished.length.value - read.value - 2 * turn.past)
    if off:
        says = f"the {part.title} and the {turn.straight.part.title} do not close their mitre"
        yield Failure("joints", (part.path, turn.straight.part.path), says, off)
    if read.built is not None:
        return
    # (R - 2 z) sqrt(2) + 2 n, from long point to long point.
    root = turn.mouth.reach.value - 2 * turn.straight.part.placed.z.value
    whole = 2 * turn.before - part.finished.length.value
    if _sign(whole, root) > 0 or _sign(whole + 4 * grid, root) < 0:
        says = f"the {part.title} does not reach from one corner of the face to the other"
        yield Failure("size", (part.path,), says)


def _sign(whole: Fraction, root: Fraction) -> int:
    """Of whole + root sqrt(2)."""
    scale = lcm(whole.denominator, root.denominator)
    return Surd(int(whole * scale), int(root * scale)).sign
