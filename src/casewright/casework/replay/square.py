"""A box is checked for square before its back closes it, a frame before its pane holds it."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.replay.bench import Move

__all__ = ["check_square"]

_CLOSES = {
    "back": ("side",), "pane": ("stile", "rail"), "panel": ("stile", "rail"),
    "drawer bottom": ("drawer side",),
}  # fmt: skip


def check_square(case: Assembled, steps: list[Move]) -> Iterator[Failure]:
    """Works whose check for square is missing, too early or too late."""
    yield from _check_open(case, steps)
    yield from _check_frame(case, steps)
    for path, solid in case.solids.items():
        frame = _CLOSES.get(solid.part.role)
        if frame is None:
            continue
        work = solid.part.front if solid.part.front in case.works else ""
        own = [move for move in steps if move.work == work]
        checks = [move.number for move in own if move.step.verb == "check square"]
        at = next((move.number for move in own if move.step.part == path), None)
        last = max((move.number for move in own if _role(move) in frame), default=None)
        if at is None or last is None:
            continue
        # A captured back goes in before the last side, a panel before the last stile: the check
        # follows at once.
        good = [n for n in checks if (last < n < at if at > last else n == last + 1)]
        if not good:
            says = f"nothing is checked for square before {solid.part.title} holds it"
            yield Failure("square", (path,), says)


def _check_open(case: Assembled, steps: list[Move]) -> Iterator[Failure]:
    """A box whose back stays open is checked as soon as its last side is on.

    A diagonal corner is, as soon as its last corner block is: what ties it in place of a top.
    """
    if case.model.spec.back != "open" or not case.model.spec.is_box:
        return
    own = [move for move in steps if not move.work]
    closing = "side" if case.model.mouth is None else "corner block"
    last = max((move.number for move in own if _role(move) == closing), default=None)
    checks = [move.number for move in own if move.step.verb == "check square"]
    if last is not None and last + 1 not in checks:
        says = f"nothing is checked for square when the last {closing} is on"
        yield Failure("square", (case.model.key,), says)


def _check_frame(case: Assembled, steps: list[Move]) -> Iterator[Failure]:
    """A face frame is checked as soon as its last member is on: the box is glued to it."""
    frame = case.model.frame
    if frame is None or not case.model.spec.framed:
        return
    own = [move for move in steps if move.work == frame.path]
    last = max((move.number for move in own if move.coming), default=None)
    checks = [move.number for move in own if move.step.verb == "check square"]
    if last is not None and last + 1 not in checks:
        says = "nothing is checked for square when the face frame is together"
        yield Failure("square", (frame.path,), says)


def _role(move: Move) -> str:
    return move.coming[0].part.role if len(move.coming) == 1 else ""
