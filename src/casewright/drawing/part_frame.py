"""From the axes of a part to the picture of one of its faces."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from casewright.casework.features import Bores, Cut, Face, Feature, Plane
from casewright.casework.parts import Part
from casewright.dims.units import Unit
from casewright.drawing.strip import Side

__all__ = ["Edge", "PartFrame", "faces_to_draw"]

Edge = Literal["l0", "l1", "w0", "w1"]


def faces_to_draw(part: Part) -> tuple[Face, ...]:
    """Faces to draw, the one with more work on it first; face A when there is no work.

    Holes right through are shown on the other face where that has work of its own: a door's pull
    holes among its hinge cups.
    """
    count = {face: sum(f.face == face for f in part.features) for face in ("A", "B")}
    faces: tuple[Face, ...] = ("A", "B") if count["A"] >= count["B"] else ("B", "A")
    worked = [face for face in faces if count[face]]
    own = [
        face for face in worked if any(f.face == face and not _through(f) for f in part.features)
    ]
    # Of holes right through pockets are seen on their own face alone.
    worked.sort(key=lambda face: not any(_is_pocket(f, face) for f in part.features))
    return tuple(own or worked[:1]) or ("A",)


def _is_pocket(feature: Feature, face: Face) -> bool:
    return feature.kind == "pocket" and feature.face == face


def _through(feature: Feature) -> bool:
    return isinstance(feature, Bores) and feature.depth is None


@dataclass(frozen=True, slots=True)
class PartFrame:
    """How a part lies in its picture.

    Lying, its datum edge is nearest to you and its datum end at the left for a right-hand part
    seen on face A, at the right for a left-hand one; turned end for end it shows face B. Standing,
    its datum end is down and its datum edge at the right for a right-hand part seen on face A, at
    the left for a left-hand one: a pair side by side opens like a book.
    """

    part: Part
    face: Face
    unit: Unit
    standing: bool = False

    @property
    def mirrored(self) -> bool:
        """Whether the picture is the mirror image of the part's own axes."""
        return (self.part.hand == "left") != (self.face == "B")

    def tells(self, feature: Feature) -> bool:
        """Whether a feature is lettered and dimensioned on this face."""
        if feature.face == self.face:
            return True
        if isinstance(feature, Cut) and feature.face not in ("A", "B"):
            return self.face == faces_to_draw(self.part)[0]
        return _through(feature) and feature.face not in faces_to_draw(self.part)

    @property
    def length(self) -> Fraction:
        """Finished length [mm]."""
        return self.part.finished.length.value

    @property
    def width(self) -> Fraction:
        """Finished width [mm]."""
        return self.part.finished.width.value

    def point(self, along: Fraction, across: Fraction) -> tuple[Fraction, Fraction]:
        """A place of the part [mm from l0, mm from w0] in the picture."""
        if self.standing:
            return (across if self.mirrored else self.width - across), along
        return (self.length - along if self.mirrored else along), across

    def x_or_y(self, plane: Edge, distance: Fraction) -> Fraction:
        """Where a distance from l0 (or w0) is, on the picture's axis that it runs along."""
        lengthwise = plane in ("l0", "l1")
        along, across = (distance, Fraction(0)) if lengthwise else (Fraction(0), distance)
        return self.point(along, across)[self.axis(plane)]

    def axis(self, plane: Edge) -> int:
        """Axis of the picture on which distances from a plane run: 0 for x, 1 for y."""
        return int((plane in ("w0", "w1")) != self.standing)

    def base(self, plane: Edge) -> Fraction:
        """Where a plane is, across it."""
        whole = {"l0": Fraction(0), "l1": self.length, "w0": Fraction(0), "w1": self.width}
        return self.x_or_y(plane, whole[plane])

    def side(self, plane: Edge) -> Side:
        """On which side of the picture a plane is."""
        low = self.base(plane) == 0
        if self.axis(plane) == 0:
            return "left" if low else "right"
        return "below" if low else "above"

    def from_datum(self, datum: Plane, distance: Fraction) -> Fraction:
        """Position along the part's own axis of a distance from one of its planes."""
        if datum in ("l1", "w1"):
            return (self.length if datum == "l1" else self.width) - distance
        return distance

    def cut_span(self, cut: Cut) -> tuple[Fraction, Fraction, Fraction, Fraction]:
        """A cut's l0, l1, w0, w1 in the part's axes [mm]."""
        if cut.edge is not None:
            return self._edge_span(cut)
        if cut.mitred_end is not None:
            low = cut.mitred_end == "l0"
            square = (Fraction(0), self.width) if low else (self.length - self.width, self.length)
            return (*square, Fraction(0), self.width)
        near = self.from_datum(cut.datum, cut.at.value)
        far = self.from_datum(cut.datum, cut.at.value + cut.width.value)
        across = (min(near, far), max(near, far))
        run_length = self.length if cut.runs == "l" else self.width
        start = cut.start.value if cut.start is not None else Fraction(0)
        end = cut.end.value if cut.end is not None else run_length
        if cut.runs == "l":
            return start, end, *across
        return *across, start, end

    def _edge_span(self, cut: Cut) -> tuple[Fraction, Fraction, Fraction, Fraction]:
        """A cut into an edge, as far as it reaches in from it."""
        start = cut.start.value if cut.start is not None else Fraction(0)
        end = cut.end.value if cut.end is not None else self.length
        deep = cut.depth.value
        across = (Fraction(0), deep) if cut.edge == "w0" else (self.width - deep, self.width)
        return start, end, *across
