"""Room for the driver: a long bit and the head of the driver in line with every pocket."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import ceil, floor

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.pocket_screws import COSINE, SINE, PocketScrew, board_box
from casewright.casework.replay.bench import Move
from casewright.geometry import Box

__all__ = ["check_drivers", "driver_boxes"]

# Common practice [mm]: a bit of 150 stands 100 out of the pocket; behind it the head of a
# compact driver takes 100 more and is 50 across.
_BIT = Fraction(100)
_BIT_RADIUS = Fraction(4)
_HEAD = Fraction(100)
_HEAD_RADIUS = Fraction(25)


def check_drivers(
    case: Assembled, steps: list[Move], screws: dict[str, list[PocketScrew]]
) -> Iterator[Failure]:
    """Pocket screws that cannot be reached at the step that drives them.

    Parameters
    ----------
    screws
        By the path of the joint they close.
    """
    for move in steps:
        there = [*move.there.values(), *move.coming]
        told: set[tuple[str, str]] = set()
        for path in move.step.joints:
            for screw in screws.get(path, ()):
                boxes = driver_boxes(case, screw)
                for solid in there:
                    key = (screw.board, solid.part.path)
                    if screw.board == solid.part.path or key in told:
                        continue
                    if any(box.meets(solid.outer) and _meets(box, solid.pieces) for box in boxes):
                        told.add(key)
                        says = f"{solid.part.title} leaves no room to drive a pocket screw"
                        yield Failure("driver", (screw.row.bores.path, path, key[1]), says)


def _meets(box: Box, pieces: tuple[Box, ...]) -> bool:
    return any(box.meets(piece) for piece in pieces)


def driver_boxes(case: Assembled, screw: PocketScrew) -> tuple[Box, Box]:
    """The bit and the driver's head as boxes that enclose them, in case axes."""
    unit = case.units.per_mm
    solid = case.solids[screw.board]
    length, width, _ = solid.size
    hole = screw.hole
    runs = {"l0": hole.length, "l1": length - hole.length, "w0": hole.width,
            "w1": width - hole.width}  # fmt: skip
    run = runs[screw.row.bores.toward or "l0"]

    def enclosed(start: Fraction, end: Fraction, radius: Fraction) -> Box:
        near = floor((start * COSINE[0] - radius * SINE[1]) * unit)
        far = ceil((end * COSINE[1] + radius * SINE[1]) * unit)
        low = max(0, floor((start * SINE[0] - radius * COSINE[1]) * unit))
        high = ceil((end * SINE[1] + radius * COSINE[1]) * unit)
        return board_box(
            solid, screw.row, hole, (-run - far, -run - near), (-high, -low), ceil(radius * unit)
        )

    bit = enclosed(Fraction(0), _BIT, _BIT_RADIUS)
    return bit, enclosed(_BIT, _BIT + _HEAD, _HEAD_RADIUS)
