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
from fractions import Fraction

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import Origin, Way, tell
from casewright.findings import Limit, Severity
from casewright.room.model import Room, Run
from casewright.survey.angles import angle_of, departure_mm
from casewright.survey.corners import SurveyedCorner

__all__ = ["RULE"]

_NAME = "sharp corner"
_MOST = Limit("sharp_corner.most", "1/8", "3", "how far a wall may come in at the fronts")
_COMES_IN = Origin("solved", "the depth over the tangent of the corner's angle")
_GRAINS = 10**6  # of a millimetre


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
    depth = max((case.depth for case in run.cases), key=lambda dim: dim.value)
    comes_in_mm = departure_mm(corner.cosine.value, depth.value)
    if comes_in_mm <= float(_MOST.of(room.spec.unit)):
        return
    own = reckoning(room, _NAME, f"{corner.spec.key}.{run.spec.key}")
    exact = Fraction(round(comes_in_mm * _GRAINS), _GRAINS)
    comes_in = own.worked("comes_in_exact", exact, _COMES_IN, depth, corner.cosine)
    told = own.about(comes_in, "comes_in")
    yield Breach(
        corner.cosine.path,
        tell(
            "{} has {} degrees: over the {} of {} the wall comes in by {}, and the width was "
            "read at the back alone",
            corner.spec.title, f"{angle_of(corner.cosine).degrees:.1f}", own.length(depth),
            run.spec.title, told,
        ),
        measured=told.text,
        remedies=(
            'read the width where the fronts will be: { read = ..., depth = "front" }',
            tell(
                "a filler {} wider at that end, scribed to the wall",
                own.about(comes_in, "wider", Way.UP),
            ),
        ),
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
