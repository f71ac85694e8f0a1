"""Hinges that a shelf is in the way of.

The plate and its arm need room above and below: a shelf nearer to the hinge's centre than
style 'hinge_clear' keeps the door from closing, or the screwdriver from the plate. An
adjustable shelf can be moved to another pin; a fixed one cannot.

Passes
------
A shelf 2 in above a hinge's centre.

Fails
-----
A shelf whose lower face is 1/2 in above it.

Sources
-------
`common practice`; the distance is style 'hinge_clear'.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case, Hinge
from casewright.casework.parts import Part
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import length, style_value
from casewright.findings import Severity
from casewright.room.model import Room

__all__ = ["RULE"]

_ROLES = ("shelf", "fixed shelf", "divider", "bottom", "top", "stretcher")


def _faces(part: Part) -> tuple[Fraction, Fraction] | None:
    """Case heights of the lower and the upper face of a flat board; None when it stands."""
    lies = part.placed.orientation.thickness
    if lies.axis != 1:
        return None
    corner, thick = part.placed.y.value, part.finished.thickness.value
    return (corner, corner + thick) if lies.sign > 0 else (corner - thick, corner)


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        clear = style_value(room, case, "hinge_clear")
        boards = [part for part in case.parts if part.role in _ROLES]
        for front in case.doors:
            for hinge in front.hinges:
                for board in boards:
                    yield from _pair(room, case, hinge, board, clear)


def _pair(room: Room, case: Case, hinge: Hinge, board: Part, clear: Fraction) -> Iterator[Breach]:
    faces = _faces(board)
    if faces is None:
        return
    low, high = faces
    centre = hinge.height.value
    away = max(low - centre, centre - high, Fraction(0))
    if away >= clear:
        return
    loose = board.role == "shelf"
    up, down = centre + clear - low, high - (centre - clear)
    by = f"{length(room, min(up, down))} {'up' if up <= down else 'down'}"
    yield Breach(
        hinge.path,
        f"the {board.title} lies {length(room, away)} from the centre of a hinge of "
        f"{case.spec.title}; the plate wants {length(room, clear)}",
        measured=length(room, away),
        limit=length(room, clear),
        remedies=(
            f"put the shelf on pins {by} or more" if loose else f"move the fixed board {by}",
        ),
        severity=Severity.CARE if loose else Severity.STOP,
    )


RULE = Rule("hinge beside shelf", Severity.STOP, __doc__ or "", "common practice", _examine)
