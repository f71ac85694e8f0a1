"""Where the metal of straight fasteners stands in a case: rods along one axis."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from math import floor
from typing import NamedTuple

from casewright.casework.features import Plane
from casewright.casework.joints import Fastening, Joint
from casewright.casework.parts import Part
from casewright.checks.fastener_bite import drive_of
from casewright.geometry import Box, Direction, Number

__all__ = ["Row", "Span", "outer_box", "own_axes", "row_of_rods", "span_along"]

_THICK: Mapping[str, Fraction] = {"brad": Fraction(3, 5), "staple": Fraction(3, 5)}
_SCREW = Fraction(2)
"""Half the thickness of a brad of 1.2 mm, of a wood screw of 4 mm (common practice) [mm]."""


Span = tuple[Number, Number]
"""From where to where along an axis [mm]."""


class Row(NamedTuple):
    """A row of brads or screws.

    Parameters
    ----------
    along
        Axis of the row: 0, 1 or 2.
    box
        Encloses its metal, in case axes [mm].
    """

    joint: Joint
    held: Fastening
    along: int
    box: Box

    @property
    def half(self) -> Fraction:
        """Half the thickness of one [mm]."""
        return _THICK.get(self.held.kind, _SCREW)

    def nearest(self, span: Span) -> Fraction | None:
        """Middle of the first brad or screw that reaches into a stretch of the row [mm]."""
        first = self.box[2 * self.along] + self.half
        pitch = self.held.pitch
        if pitch is None:
            return None
        number = max(0, floor((span[0] - self.half - first) / pitch.value) + 1)
        at = first + number * pitch.value
        return Fraction(at) if number < self.held.count and at - self.half < span[1] else None


def outer_box(part: Part) -> Box:
    """A part before any cut, in case axes [mm]."""
    size, at = part.finished, part.placed
    corner = (at.x.value, at.y.value, at.z.value)
    spans: list[tuple[Number, Number]] = [(0, 0)] * 3
    for way, dim in zip(at.orientation, (size.length, size.width, size.thickness), strict=True):
        near = corner[way.axis]
        far = near + dim.value if way.sign > 0 else near - dim.value
        spans[way.axis] = (near, far) if way.sign > 0 else (far, near)
    return Box(*(end for span in spans for end in span))


def own_axes(part: Part, box: Box) -> Box:
    """A box in case axes in part axes [mm]."""
    at = part.placed
    corner = (at.x.value, at.y.value, at.z.value)
    spans: list[Number] = []
    for way in at.orientation:
        low, high = (box[2 * way.axis + side] - corner[way.axis] for side in (0, 1))
        spans += (low, high) if way.sign > 0 else (-high, -low)
    return Box(*spans)


def span_along(part: Part, own: Box, axis: int) -> Span:
    """From where to where a box in part axes reaches along an axis of the case [mm]."""
    at = part.placed
    corner = (at.x.value, at.y.value, at.z.value)[axis]
    number, way = next((n, w) for n, w in enumerate(at.orientation) if w.axis == axis)
    low, high = own[2 * number], own[2 * number + 1]
    return (corner + low, corner + high) if way.sign > 0 else (corner - high, corner - low)


def row_of_rods(joint: Joint, held: Fastening, parts: Mapping[str, Part]) -> Row | None:
    """A row of brads or screws whose line is known; None for other fasteners."""
    if held.line is None or held.edge is None or held.pitch is None:
        return None
    last, into = parts[held.through[-1]], parts[held.into]
    surface = joint.one if joint.one.part == last.path else joint.other
    way = _way(last, surface.plane)
    if surface.cut:
        way = way.opposite if surface.plane[0] != "t" else way
    plane, off = held.line
    across = _way(last, plane)
    drive = drive_of(joint, held, parts)
    if drive is None or across.axis == way.axis:
        return None
    one, other = outer_box(last), outer_box(into)
    along = 3 - way.axis - across.axis
    spans: list[tuple[Number, Number]] = [(0, 0)] * 3
    half = _THICK.get(held.kind, _SCREW)
    line = _edge(one, across) - across.sign * off.value
    spans[across.axis] = (line - half, line + half)
    head = _edge(one, way.opposite)
    point = head + way.sign * (drive.through + drive.bite)
    spans[way.axis] = (min(head, point), max(head, point))
    first = max(one[2 * along], other[2 * along]) + held.edge.value
    spans[along] = (first - half, first + (held.count - 1) * held.pitch.value + half)
    return Row(joint, held, along, Box(*(end for span in spans for end in span)))


def _way(part: Part, plane: Plane) -> Direction:
    way = part.placed.orientation["lwt".index(plane[0])]
    return way if plane[1] == "1" else way.opposite


def _edge(box: Box, way: Direction) -> Number:
    return box[2 * way.axis + (way.sign > 0)]
