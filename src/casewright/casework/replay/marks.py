"""Marks: where a step says a part sits is where it sits."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.contacts import patch_of
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.units import apart
from casewright.casework.replay.bench import Move

__all__ = ["check_marks"]


def check_marks(case: Assembled, steps: list[Move]) -> Iterator[Failure]:
    """Marks that are not as far from their datum as the part in its place."""
    for move in steps:
        step = move.step
        if step.planes and len(step.planes) != len(step.marks):
            yield Failure("marks", (step.part,), "not every mark has its two planes")
            continue
        for (words, dim), (one, other) in zip(step.marks, step.planes, strict=False):
            first, second = patch_of(case, one), patch_of(case, other)
            if first is None or second is None or first.facing.axis != second.facing.axis:
                yield Failure("marks", (step.part,), f"nothing to measure: {words}")
                continue
            distance = case.units.length(apart(first.at, second.at))
            if distance != dim.value:
                says = f"the part does not sit on its mark: {words}"
                yield Failure("marks", (step.part,), says, abs(distance - dim.value))
