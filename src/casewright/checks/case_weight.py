"""Boxes heavier than one person lifts.

A box is lifted without its doors and loose shelves. Over what the shop says one person lifts
alone, a helper, a jack or a cart is planned for. The weight is shown for planning, never as a
permission: nobody holds a box overhead while driving screws.

Passes
------
An upper 33 x 39 x 12 1/4 of 23/32 plywood, for a person who lifts 25 kg.

Fails
-----
The same upper 60 in wide.

Sources
-------
`common practice`: the box is lifted without doors and shelves; densities by the job's stock,
the limit by the job's shop.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.cases import Case
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import kilograms
from casewright.findings import Severity
from casewright.room.lifting import lifted_weight
from casewright.room.model import Room

__all__ = ["RULE"]


def _left_off(case: Case) -> str:
    """What does not hang or lie in the box yet: ' without doors and loose shelves'."""
    loose = any(part.role == "shelf" for part in case.parts)
    kinds = {"doors": bool(case.doors), "drawers": bool(case.drawers), "loose shelves": loose}
    words = [word for word, is_there in kinds.items() if is_there]
    return f" without {' and '.join(', '.join(words).rsplit(', ', 1))}" if words else ""


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        weight = lifted_weight(room, case)
        if weight > room.spec.shop.lift:
            up = case.spec.kind == "wall"
            yield Breach(
                case.key,
                f"{case.spec.title} weighs about {kilograms(room, weight)}{_left_off(case)}, "
                f"over the {kilograms(room, room.spec.shop.lift)} one person lifts here"
                + ("; a ledger or a jack carries it while it is screwed on" if up else ""),
                measured=kilograms(room, weight),
                limit=kilograms(room, room.spec.shop.lift),
                remedies=("a helper that day", "a jack or a cart", "two boxes instead of one"),
            )


RULE = Rule("case weight", Severity.CARE, __doc__ or "", "common practice", _examine)
