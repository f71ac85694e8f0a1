"""Tongues and mitres are tried in a test joint before their frame is put together."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.cases import FaceFrame, Front
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.replay.bench import Move

__all__ = ["check_holds"]


def check_holds(case: Assembled, steps: list[Move]) -> Iterator[Failure]:
    """Frames with tongues or mitres that no hold comes before."""
    first: dict[str, int] = {}
    for move in steps:
        if move.work and move.coming:
            first.setdefault(move.work, move.number)
    held = {move.number for move in steps if move.step.verb == "hold"}
    frame = case.model.frame
    works: tuple[Front | FaceFrame, ...] = case.model.fronts
    for front in works if frame is None else (*works, frame):
        tried = first.get(front.path, 0) - 1 in held
        if not tried and _wants_a_trial(case, front):
            says = f"{front.title} is put together before its joint is tried"
            yield Failure("order", (front.path,), says)


def _wants_a_trial(case: Assembled, front: Front | FaceFrame) -> bool:
    parts = (case.solids[path].part for path in front.parts if path in case.solids)
    return any(feature.kind in ("tongue", "mitre") for part in parts for feature in part.features)
