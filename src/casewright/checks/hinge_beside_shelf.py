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

from casewright.casework.cases import Case, Hinge
from casewright.casework.levels import extent
from casewright.casework.parts import Part
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning, style_of, style_value
from casewright.dims import Dim, greatest, tell
from casewright.findings import Severity
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "hinge beside shelf"

_ROLES = ("shelf", "fixed shelf", "divider", "bottom", "top", "stretcher")


def _faces(part: Part) -> tuple[Dim, Dim] | None:
    """Case heights of the lower and the upper face of a flat board; None when it stands."""
    lies = part.placed.orientation.thickness
    if lies.axis != 1:
        return None
    corner, thick = part.placed.y, part.finished.thickness
    return (corner, corner + thick) if lies.sign > 0 else (corner - thick, corner)


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        clear = style_value(room, case, "hinge_clear")
        if not case.doors:
            continue
        boards = [
            (part, faces) for part in case.parts
            if part.role in _ROLES and (faces := _faces(part)) is not None
        ]  # fmt: skip
        for front in case.doors:
            for hinge in front.hinges:
                centre = hinge.height.value
                for board, (low, high) in boards:
                    if max(low.value - centre, centre - high.value) < clear:
                        yield _breach(room, case, hinge, board)


def _breach(room: Room, case: Case, hinge: Hinge, board: Part) -> Breach:
    own = reckoning(room, _NAME, f"{hinge.path}.{board.path}")
    low, high = extent(board, 1)
    centre, clear = hinge.height, style_of(room, own, "hinge_clear", case)
    away = own.length(greatest(low - centre, centre - high, own.none), "away")
    wants = own.length(clear)
    up, down = centre + clear - low, high - (centre - clear)
    is_up = up.value <= down.value
    loose = board.role == "shelf"
    move = own.length(up if is_up else down, "move")
    by = tell("{} {}", move, "up" if is_up else "down")
    return Breach(
        hinge.path,
        tell(
            "the {} lies {} from the centre of a hinge of {}; the plate wants {}",
            board.title, away, case.spec.title, wants,
        ),
        measured=away.text,
        limit=wants.text,
        remedies=(
            tell("put the shelf on pins {} or more", by)
            if loose
            else tell("move the fixed board {}", by),
        ),
        severity=Severity.CARE if loose else Severity.STOP,
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.STOP, __doc__ or "", "common practice", _examine)
