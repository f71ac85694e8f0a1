"""Whole units: so small that every length of a case is an even number of them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from math import lcm

from casewright.casework.cases import Case
from casewright.casework.features import Bores, Feature
from casewright.casework.parts import Part
from casewright.dims import Dim
from casewright.geometry.box import Number

__all__ = ["Units", "apart", "units_of"]


class Units:
    """Lengths as whole numbers, exactly.

    Parameters
    ----------
    per_mm
        Units to a millimetre; every length of the case is an even number of them, so that
        halves are whole, too.
    """

    __slots__ = ("per_mm",)

    def __init__(self, per_mm: int) -> None:
        self.per_mm = per_mm

    def of(self, dim: Dim) -> int:
        """A length of the case."""
        value = dim.value
        return value.numerator * (self.per_mm // value.denominator)

    def up(self, millimetres: Fraction) -> int:
        """A constant that need not be whole, rounded up."""
        return -(-millimetres.numerator * self.per_mm // millimetres.denominator)

    def down(self, millimetres: Fraction) -> int:
        """A constant that need not be whole, rounded down."""
        return millimetres.numerator * self.per_mm // millimetres.denominator

    def length(self, units: Number) -> Fraction:
        """Back to millimetres."""
        return Fraction(units) / self.per_mm


def apart(one: Number, other: Number) -> Number:
    """How far two numbers are from each other."""
    return one - other if one > other else other - one


def units_of(case: Case) -> Units:
    """The units every length that the checks read is whole in."""
    return Units(2 * lcm(*{dim.value.denominator for dim in _dims(case)}))


def _dims(case: Case) -> Iterator[Dim]:
    yield from (case.width, case.height, case.depth, case.standing, case.overall_width)
    yield from case.wanted
    for part in case.parts:
        yield from _part_dims(part)
    for joint in case.joints:
        yield joint.gap
        for held in joint.fastenings:
            row = (held.length, held.edge, held.pitch, held.line[1] if held.line else None)
            yield from (dim for dim in row if dim is not None)
    for face in case.faces:
        yield from (face.x0, face.x1, face.y0, face.y1, *face.gaps)
        yield from (face.left, face.right, face.bottom, face.top)
    for front in case.fronts:
        yield from (front.x, front.y, front.z, front.width, front.height, front.thickness)
    for drawer in case.drawers:
        yield from (drawer.x, drawer.y, drawer.z, drawer.width, drawer.height, drawer.depth)
        yield from (drawer.inside_width, drawer.slide_length)
    yield from _frame_dims(case)
    for front in case.doors:
        yield from (front.bore_distance, front.plate_height, front.overlay)
        if front.crank is not None:
            yield front.crank
        for hinge in front.hinges:
            yield from (hinge.height, hinge.on_door)


def _frame_dims(case: Case) -> Iterator[Dim]:
    frame, mouth = case.frame, case.mouth
    if mouth is not None:
        yield from (mouth.width, mouth.front, mouth.reach, mouth.side, mouth.beside, mouth.band)
    if frame is not None:
        yield from (frame.x, frame.y, frame.z, frame.width, frame.height, frame.thickness)


def _part_dims(part: Part) -> Iterator[Dim]:
    size, blank, placed = part.finished, part.blank, part.placed
    yield from (size.length, size.width, size.thickness)
    yield from (blank.length, blank.width, blank.thickness)
    yield from (placed.x, placed.y, placed.z)
    yield from (edge.thickness for edge in part.edges)
    if part.corner_radius is not None:
        yield part.corner_radius
    if part.film is not None:
        yield from (part.film.length, part.film.width, part.film.margin)
    yield from _feature_dims(part.features)


def _feature_dims(features: Iterable[Feature]) -> Iterator[Dim]:
    for feature in features:
        if isinstance(feature, Bores):
            yield feature.diameter
            if feature.depth is not None:
                yield feature.depth
            for place in feature.places:
                yield from place
            continue
        yield from (feature.at, feature.width, feature.depth)
        more = (feature.start, feature.end, feature.radius)
        yield from (dim for dim in more if dim is not None)
