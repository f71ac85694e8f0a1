"""What the rest of a case needs to know of its box."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.casework.specs import ApplianceOpening, FrontSpec, Hand, RowKind
from casewright.dims import Dim

__all__ = ["Carcase", "FrameEdges", "Opening"]


@dataclass(frozen=True, slots=True)
class Opening:
    """One row of the face, with the part of the box's inside that lies behind it.

    Parameters
    ----------
    name
        main (the only one, or the doors of the lower), upper, drawer_1, false_front.
    y0, y1
        Clear opening in case axes [mm]: top of what is below, underside of what is above; where
        no board parts two rows, the middle of the gap between them.
    face_y0, face_y1
        Stretch of the front that its row shares out [mm]: from the underside of the box, or the
        middle of the gap below, to the middle of the gap above or the top of the box.
    bottom, top
        What is left bare at those two ends [mm]: reveals, half a gap, the drop under a crown.
    shelves
        Heights of the undersides of fixed shelves inside it [mm].
    row
        What closes it.
    front
        How its fronts are built; None where it is open.
    appliance
        What stands in it; None: nothing.
    hung
        Case height that cleats reach down to over it, beside its mouth, behind a face frame [mm];
        None: there are none.
    """

    name: str
    y0: Dim
    y1: Dim
    face_y0: Dim
    face_y1: Dim
    bottom: Dim
    top: Dim
    shelves: tuple[Dim, ...] = ()
    row: RowKind = "doors"
    front: FrontSpec | None = None
    appliance: ApplianceOpening | None = None
    hung: Dim | None = None


@dataclass(frozen=True, slots=True)
class FrameEdges:
    """What the rest of a case needs to know of the face frame before its box.

    Parameters
    ----------
    left, right
        Case x of the inner edges of its stiles [mm].
    front
        Case z of its front [mm].
    room
        From the inside of the left and of the right side to these edges [mm].
    pads
        Thickness of the pads that bring hardware out there [mm]; None where a side needs none.
    faces
        Case x of the planes that hardware is screwed to: of the pads, or of the sides [mm].
    mullion
        Case x of the edges of the mullion before its main opening [mm]; None without one.
    blind
        Case x of the edges of the stile beside the mouth of a blind corner [mm]; None elsewhere.
    """

    left: Dim
    right: Dim
    front: Dim
    room: tuple[Dim, Dim]
    pads: tuple[Dim | None, Dim | None]
    faces: tuple[Dim, Dim]
    mullion: tuple[Dim, Dim] | None = None
    blind: tuple[Dim, Dim] | None = None

    def mouth(self, hand: Hand | None) -> tuple[Dim, Dim]:
        """Case x of the edges of its openings [mm]: beside a blind part they begin there.

        Parameters
        ----------
        hand
            The blind side.
        """
        if self.blind is None:
            return self.left, self.right
        return (self.blind[1], self.right) if hand == "left" else (self.left, self.blind[0])


@dataclass(frozen=True, slots=True)
class Carcase:
    """The box as it results from its parts.

    Parameters
    ----------
    width, height, depth
        Outside [mm]. Its axes: x from its left outer face, y up from the floor (or from its own
        underside for a wall case), z from its rear plane; `depth` is the plane of its front.
    clear_width
        Between the sides [mm].
    left, right
        Paths of the sides.
    left_thickness, right_thickness
        [mm].
    seat
        Plane z that a back's front face lies on [mm]: the rear of the clear inside.
    openings
        From the bottom up.
    frame
        The face frame before it; None where fronts lie on the edges of the box.
    edge
        What its door leaves bare at either side [mm], where no reveal decides it: in the mouth of
        a diagonal corner.
    """

    width: Dim
    height: Dim
    depth: Dim
    clear_width: Dim
    left: str
    right: str
    left_thickness: Dim
    right_thickness: Dim
    seat: Dim
    openings: tuple[Opening, ...]
    frame: FrameEdges | None = None
    edge: Dim | None = None

    @property
    def front(self) -> Dim:
        """Plane z that its fronts lie against [mm]: of the face frame, or of the box."""
        return self.depth if self.frame is None else self.frame.front
