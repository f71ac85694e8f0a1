"""The plan of cuts in hand: the one that the sheets on the bench were begun by.

Once a piece is marked cut, it is no longer on the plan of what is left: that plan lays the rest
out on whole sheets. Whoever stands at the saw with half a sheet needs the plan by which it was
begun. So that plan is kept while it holds: while every piece that is still to be cut is on it, at
its size. A piece that was cut by it and spoiled is not: its place on the sheet is gone. When
nothing else is left, the next plan takes over.

A server that is started in the middle of a sheet plans once more what was planned before the first
cut. It is the plan in hand if it bears the name that the entries of the record carry.
"""

from __future__ import annotations

import hashlib
import threading
from collections.abc import Callable, Container, Iterator, Mapping
from fractions import Fraction

from casewright.breakdown import Breakdown
from casewright.room.model import Room
from casewright.web.snapshot import Snapshot

__all__ = ["PlanInHand", "plan_name"]


class PlanInHand:
    """Keeps the plan that cutting was begun by.

    Parameters
    ----------
    noted
        Gives the name of the plan that was last sawn by, as the record has it; empty: none.
    """

    def __init__(self, noted: Callable[[], str]) -> None:
        self._lock = threading.Lock()
        self._noted = noted
        self._kept: Breakdown | None = None
        self._before: Mapping[str, object] = {}  # what was spoiled when it was made, and when

    def of(self, snapshot: Snapshot) -> Breakdown | None:
        """The plan to work by now; None: it is still being worked out."""
        planned = snapshot.purchases.breakdown if snapshot.purchases else None
        room, spoiled = snapshot.worked.room, snapshot.recorded.marks.spoiled
        with self._lock:
            if self._kept is None and snapshot.begun is not None:
                self._take_up(snapshot.begun)
            lost = {path for path, when in spoiled.items() if self._before.get(path) != when}
            kept = self._kept
            if kept is not None and _holds(kept, room, lost, new=planned):
                return kept
            if planned is not None:
                self._kept, self._before = planned, spoiled
            return planned

    def _take_up(self, begun: Breakdown) -> None:
        """Go on by what was begun under another server."""
        if plan_name(begun) == self._noted():
            self._kept = begun


def plan_name(breakdown: Breakdown) -> str:
    """Short name of a plan: it changes with any of its cuts."""
    digest = hashlib.sha256()
    for plan in breakdown.plans:
        digest.update(plan.path.encode())
        for step in plan.order.steps:
            said = (step.number, step.sheet, step.piece.name, step.setting, step.direction)
            digest.update(repr((said, [leaf.part for leaf in step.leaves])).encode())
    return digest.hexdigest()[:8]


def _holds(kept: Breakdown, room: Room, lost: Container[str], *, new: Breakdown | None) -> bool:
    """Whether what is left can be cut by a plan that was kept."""
    pieces = _pieces(kept)
    left = [part for part in room.parts if part.state == "planned" and not part.waits_for]
    sound = [part for part in left if part.path not in lost]
    for part in sound:
        if pieces.get(part.path) != (part.blank.length.value, part.blank.width.value):
            return False
    if left and not sound:
        return False
    begun = any(part.state != "planned" and part.path in pieces for part in room.parts)
    return begun or new is None or plan_name(new) == plan_name(kept)


def _pieces(breakdown: Breakdown) -> dict[str, tuple[Fraction, Fraction]]:
    return dict(_sized(breakdown))


def _sized(breakdown: Breakdown) -> Iterator[tuple[str, tuple[Fraction, Fraction]]]:
    for plan in breakdown.plans:
        for piece in plan.pieces.values():
            if piece.kind == "part":
                yield piece.id, (piece.length, piece.width)
