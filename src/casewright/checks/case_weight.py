"""Boxes heavier than one person lifts.

A box is lifted without its doors and loose shelves. Over what the shop says one person lifts
alone, or over three times the limit of the lifting equation, a helper, a jack or a cart is planned
for. The equation takes the hands under the box's lower edge, its shallow side to the body, no
handles, no twist, one lift in five minutes: a case that stands is raised 10 in (25 cm) off the
floor, one that hangs goes over a stand of 36 in (90 cm) to its place. One hand, kneeling, carrying
and standing up a tall case are outside of it: no figure is given for them. The weight is shown for
planning, never as a permission: nobody holds a box overhead while driving screws.

Passes
------
An upper 33 x 39 x 12 1/4 of 23/32 plywood, for a person who lifts 25 kg.

Fails
-----
The same upper 60 in wide.

Sources
-------
`niosh-lifting`: the equation; that over an index of 3 nearly everybody is at risk is from memory.
`common practice`: the box is lifted without doors and shelves; two people, half each; densities by
the job's stock, what one person lifts by the job's shop.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.cases import Case
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import HELPER, Lifts, lift_of, reckoning, weight_of
from casewright.dims import Dim, joined, tell
from casewright.findings import Reckoning, Severity
from casewright.room.lifting import carried_parts, case_effort
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "case weight"


def _left_off(case: Case) -> str:
    """What does not hang or lie in the box yet: ' without doors and loose shelves'."""
    loose = any(part.role == "shelf" for part in case.parts)
    kinds = {"doors": bool(case.doors), "drawers": bool(case.drawers), "loose shelves": loose}
    words = [word for word, is_there in kinds.items() if is_there]
    return f" without {' and '.join(', '.join(words).rsplit(', ', 1))}" if words else ""


def _examine(room: Room) -> Iterator[Breach]:
    most, lifts = room.spec.shop.lift, Lifts(room)
    for case in room.boxes:
        effort = case_effort(room, case)
        if effort.weight <= most and not effort.is_strenuous:
            continue
        own, title = reckoning(room, _NAME, case.key), case.spec.title
        whole = own.let("weight", weight_of(room, own, carried_parts(case)))
        weight, limit = own.weight(whole), own.weight(lift_of(room, own))
        over = effort.weight > most
        sizes = (case.width, case.depth, *((room.wall_bottom,) if case.spec.is_hung else ()))
        says = [
            tell("{} weighs about {}{}", title, weight, _left_off(case)),
            tell(", over the {} one person lifts here", limit) if over else "",
            tell("; {}", lifts.words(effort, title, own, *sizes)),
        ]
        if case.spec.is_hung:
            says.append("; a ledger or a jack carries it while it is screwed on")
        yield Breach(
            case.key,
            joined("", says),
            measured=weight.text,
            limit=limit.text,
            remedies=(HELPER, "a jack or a cart", *_halves(own, case, whole / 2)),
            own=own,
        )


def _halves(own: Reckoning, case: Case, half: Dim) -> tuple[str, ...]:
    """Two boxes side by side, where they can stand for it: in no corner, round no appliance."""
    spec = case.spec
    if spec.kind in ("hood", "surround") or spec.blind or spec.diagonal:
        return ()
    each = own.weight(half, "half_weight")
    return (tell("two boxes instead of one, each of about {}", each),)


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "niosh-lifting", _examine)
