"""Corners sharper than square, where the width was read at the back alone.

In a corner of less than 90 degrees the other wall comes in toward the front, by the depth over the
tangent of the angle. A run as wide as the back then does not go in at the front.

Passes
------
A corner of 88 degrees beside a wall whose width was read at the front too.

Fails
-----
The same corner with readings at the back alone: over 24 in the wall comes in by 7/8.

Sources
-------
`common practice`; the departure is D / tan(angle), by trigonometry, over 1/8 in (3 mm) told.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import about, by_unit, length
from casewright.dims import Way
from casewright.findings import Severity
from casewright.room.model import Room, Run
from casewright.survey.angles import angle_of, departure_mm
from casewright.survey.corners import SurveyedCorner

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    for run in room.runs:
        wall = room.survey.walls.get(run.spec.on)
        if wall is None or any(each.depth == "front" for each in wall.spec.widths):
            continue
        for corner in room.survey.corners.values():
            right = "" if run.spec.before else run.spec.right
            left = "" if run.spec.after else run.spec.left
            ends = ((corner.spec.left, right), (corner.spec.right, left))
            if (wall.spec.key, "wall") in ends and not corner.spec.outside:
                yield from _beside(room, run, corner)


def _beside(room: Room, run: Run, corner: SurveyedCorner) -> Iterator[Breach]:
    if corner.cosine is None:
        return
    depth = max(case.depth.value for case in run.cases)
    comes_in = departure_mm(corner.cosine.value, depth)
    if comes_in <= float(by_unit(room, "1/8", "3")):
        return
    yield Breach(
        corner.cosine.path,
        f"{corner.spec.title} has {angle_of(corner.cosine).degrees:.1f} degrees: over the "
        f"{length(room, depth)} of {run.spec.title} the wall comes in by {about(room, comes_in)}, "
        "and the width was read at the back alone",
        measured=about(room, comes_in),
        remedies=(
            'read the width where the fronts will be: { read = ..., depth = "front" }',
            f"a filler {about(room, comes_in, Way.UP)} wider at that end, scribed to the wall",
        ),
    )


RULE = Rule("sharp corner", Severity.CARE, __doc__ or "", "common practice", _examine)
