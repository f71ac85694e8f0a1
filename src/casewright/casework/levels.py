"""Levels of a case: where its horizontals begin and end, and how far the whole stands out."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise

from casewright.casework.parts import Part
from casewright.dims import Dim, Place

__all__ = ["ClearHeight", "Level", "clear_heights", "extent", "levels", "overall_depth"]

_HORIZONTALS = ("bottom", "divider", "fixed shelf", "shelf", "top", "stretcher")
_LOOSE = "shelf"


@dataclass(frozen=True, slots=True)
class Level:
    """A horizontal of a case.

    Parameters
    ----------
    part
        Path of the part.
    role
        Its role.
    low, high
        Its lower and upper face in case axes y [mm].
    """

    part: str
    role: str
    low: Dim
    high: Dim


@dataclass(frozen=True, slots=True)
class ClearHeight:
    """What is clear between one fixed horizontal and the next.

    Parameters
    ----------
    low, high
        The faces it lies between, in case axes y [mm].
    size
        From one to the other [mm].
    """

    low: Dim
    high: Dim
    size: Dim


def extent(part: Part, axis: int) -> tuple[Dim, Dim]:
    """Where a part begins and ends along an axis of its case [mm].

    Parameters
    ----------
    axis
        0, 1 or 2: x, y or z.
    """
    corner = (part.placed.x, part.placed.y, part.placed.z)[axis]
    size = part.finished
    for way, along in zip(
        part.placed.orientation, (size.length, size.width, size.thickness), strict=True
    ):
        if way.axis == axis:
            return (corner, corner + along) if way.sign > 0 else (corner - along, corner)
    msg = f"{part.path} has no extent along axis {axis}"
    raise ValueError(msg)


def levels(place: Place, parts: Iterable[Part]) -> tuple[Level, ...]:
    """The horizontals of a case from the floor up, their faces named `<part>.low`, `.high`.

    Parameters
    ----------
    place
        Of the case.
    """
    found = []
    for part in parts:
        if part.role in _HORIZONTALS:
            own = place.chain.place(part.path)
            low, high = extent(part, 1)
            found.append(Level(part.path, part.role, own.let("low", low), own.let("high", high)))
    return tuple(sorted(found, key=lambda level: (level.low.value, level.high.value)))


def clear_heights(place: Place, found: Iterable[Level]) -> tuple[ClearHeight, ...]:
    """Clear heights between what is fixed, from the floor up, `<case>.clear_height_<n>`."""
    return tuple(_clear(place, [level for level in found if level.role != _LOOSE]))


def _clear(place: Place, fixed: list[Level]) -> Iterator[ClearHeight]:
    number = 0
    for below, above in pairwise(fixed):
        if above.low.value > below.high.value:
            number += 1
            size = place.let(f"clear_height_{number}", above.low - below.high)
            yield ClearHeight(below.high, above.low, size)


def overall_depth(place: Place, parts: Iterable[Part], depth: Dim) -> Dim:
    """Depth with whatever stands out in front of the box: doors, nosings [mm].

    Parameters
    ----------
    depth
        Of the box.
    """
    faces = [extent(part, 2)[1] for part in parts]
    front = max(faces, key=lambda face: face.value)
    return place.let("overall_depth", front) if front.value > depth.value else depth
