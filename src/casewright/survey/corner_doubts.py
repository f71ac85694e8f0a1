"""Corners whose readings contradict each other."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence

from casewright.dims import Told
from casewright.survey.angles import Angle, angle_of
from casewright.survey.corner_advice import WANDER_DEGREES
from casewright.survey.corners import SurveyedCorner
from casewright.survey.doubts import Doubt
from casewright.survey.specs import CornerSpec, SurveySpec

__all__ = ["corner_doubts"]

_SIGMAS = 3
_LEAST_WALLS = 3
_STRAIGHT = 180


def corner_doubts(spec: SurveySpec, corners: Mapping[str, SurveyedCorner]) -> Iterator[Doubt]:
    """Corners read in two ways that disagree, and a closed room whose angles do not sum."""
    odd = [doubt for corner in corners.values() for doubt in _two_ways(corner)]
    yield from odd
    if not odd:
        for ring in _rings(spec.corners):
            yield from _closure([corners[corner.key] for corner in ring])


def _paths(corner: SurveyedCorner) -> tuple[str, ...]:
    """The readings of a corner that are not sure."""
    path, triangle = f"survey.corner.{corner.spec.key}", corner.spec.triangle
    named = [] if triangle is None else [
        (triangle.across, "across"), (triangle.left, "along_left"), (triangle.right, "along_right")
    ]  # fmt: skip
    if corner.spec.diagonal is not None:
        named.append((corner.spec.diagonal, "diagonal"))
    return tuple(f"{path}.{name}" for reading, name in named if not reading.sure)


def _two_ways(corner: SurveyedCorner) -> Iterator[Doubt]:
    angles = [angle_of(way.cosine) for way in corner.ways]
    if len(angles) < 2 or not _paths(corner):
        return
    one, other = angles
    if abs(one.degrees - other.degrees) <= _within(angles):
        return
    says = (
        f"{corner.spec.title} has {one.degrees:.1f} degrees by its triangle and "
        f"{other.degrees:.1f} by the diagonal of its walls"
    )
    if abs(one.degrees + other.degrees - _STRAIGHT) <= _within(angles):
        # Where opposite walls are alike, the angle by the other diagonal is what is left of 180.
        says += "; was the other diagonal measured?"
    again = f"the triangle and the diagonal of {corner.spec.title}"
    yield Doubt(_paths(corner), Told(says), Told(again))


def _within(angles: Sequence[Angle]) -> float:
    """How far angles may be off together before they are doubted [deg]."""
    wander = WANDER_DEGREES * math.sqrt(len(angles))
    return _SIGMAS * math.hypot(wander, *(each.sigma_degrees for each in angles))


def _rings(corners: Sequence[CornerSpec]) -> Iterator[list[CornerSpec]]:
    """Corners that lead from wall to wall round a whole room, each ring once."""
    after = {corner.left: corner for corner in corners}
    seen: set[str] = set()
    for corner in corners:
        ring: list[CornerSpec] = []
        here: CornerSpec | None = corner
        while here is not None and here.key not in seen:
            seen.add(here.key)
            ring.append(here)
            here = after.get(here.right)
        if here is corner and len(ring) >= _LEAST_WALLS:
            yield ring


def _closure(ring: Sequence[SurveyedCorner]) -> Iterator[Doubt]:
    """Inner angles of n corners sum to (n - 2) x 180 degrees (Euclid)."""
    read = [corner.cosine for corner in ring]
    angles = [angle_of(cosine) for cosine in read if cosine is not None]
    paths = tuple(path for corner in ring for path in _paths(corner))
    if len(angles) < len(ring) or not paths:
        return
    inner = (
        360.0 - angle.degrees if corner.spec.outside else angle.degrees
        for corner, angle in zip(ring, angles, strict=True)
    )  # fmt: skip
    reached, whole = sum(inner), (len(ring) - 2) * 180
    if abs(reached - whole) <= _within(angles):
        return
    names = ", ".join(corner.spec.title for corner in ring)
    says = (
        f"the corners {names} sum to {reached:.1f} degrees; those of a closed room of "
        f"{len(ring)} walls sum to {whole}"
    )
    yield Doubt(paths, Told(says), Told("the triangle of each corner, with longer sides"))
