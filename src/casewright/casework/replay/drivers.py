"""Room for the driver: a long bit and the head of the driver in line with every pocket."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from functools import cache
from math import ceil, floor
from typing import NamedTuple

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.pocket_screws import COSINE, PARTS, SINE, PocketScrew, board_box
from casewright.casework.proof.solids import Solid
from casewright.casework.replay.bench import Move
from casewright.geometry import Box

__all__ = ["check_drivers"]

# Common practice [mm]: a bit of 150 stands 100 out of the pocket; behind it the head of a
# compact driver takes 100 more and is 50 across.
_BIT = Fraction(100)
_BIT_RADIUS = Fraction(4)
_HEAD = Fraction(100)
_HEAD_RADIUS = Fraction(25)


class _Envelope(NamedTuple):
    """A box round a piece of the driver, from the pocket's mouth back along the board [unit]."""

    near: int
    far: int
    low: int
    high: int
    half: int


def check_drivers(
    case: Assembled, steps: list[Move], screws: dict[str, list[PocketScrew]]
) -> Iterator[Failure]:
    """Pocket screws that cannot be reached at the step that drives them.

    A plinth is built flat on the bench, apart from the box that will be set on it.

    Parameters
    ----------
    screws
        By the path of the joint they close.
    """
    pieces = _driver(case.units.per_mm)
    for move in steps:
        there = [*move.there.values(), *move.coming]
        told: set[tuple[str, str]] = set()
        for path in move.step.joints:
            for screw in screws.get(path, ()):
                for solid in _in_the_way(case, screw, pieces, there):
                    key = (screw.row.bores.path, solid.part.path)
                    if key not in told:
                        told.add(key)
                        says = f"{solid.part.title} leaves no room to drive a pocket screw"
                        yield Failure("driver", (key[0], path, key[1]), says)


def _in_the_way(
    case: Assembled, screw: PocketScrew, pieces: tuple[_Envelope, ...], there: list[Solid]
) -> Iterator[Solid]:
    board = case.solids[screw.board]
    boxes = [_placed(board, screw, piece) for piece in pieces]
    for solid in there:
        apart = (solid.part.group == "plinth") != (board.part.group == "plinth")
        if (
            solid is not board
            and not apart
            and solid.part.turned == board.part.turned
            and any(
                box.meets(solid.outer) and any(box.meets(piece) for piece in solid.pieces)
                for box in boxes
            )
        ):
            yield solid


@cache
def _driver(unit: int) -> tuple[_Envelope, _Envelope]:
    """The bit, and the driver's head behind it."""
    zero = Fraction(0)
    return (
        _enclosed(unit, zero, _BIT, _BIT_RADIUS),
        _enclosed(unit, _BIT, _BIT + _HEAD, _HEAD_RADIUS),
    )


def _enclosed(unit: int, start: Fraction, end: Fraction, radius: Fraction) -> _Envelope:
    """Bounds of a cylinder that leans at 15 degrees, rounded outward."""
    unit_part = Fraction(unit, PARTS)
    return _Envelope(
        floor((start * COSINE[0] - radius * SINE[1]) * unit_part),
        ceil((end * COSINE[1] + radius * SINE[1]) * unit_part),
        max(0, floor((start * SINE[0] - radius * COSINE[1]) * unit_part)),
        ceil((end * SINE[1] + radius * COSINE[1]) * unit_part),
        ceil(radius * unit),
    )


def _placed(board: Solid, screw: PocketScrew, piece: _Envelope) -> Box:
    run = screw.run
    over = (-run - piece.far, -run - piece.near)
    return board_box(board, screw.row, screw.hole, over, (-piece.high, -piece.low), piece.half)
