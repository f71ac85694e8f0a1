"""What the rest of a case needs to know of its box."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from casewright.dims import Dim

__all__ = ["Carcase", "Opening"]


@dataclass(frozen=True, slots=True)
class Opening:
    """One opening of the box, between fixed horizontals.

    Parameters
    ----------
    name
        main (the only one, or the lower) or upper.
    y0, y1
        Clear opening in case axes [mm]: top of what is below, underside of what is above.
    face_y0, face_y1
        Stretch of the front that its doors share out [mm]: from the underside of the box, or
        the divider's centreline, to the divider's centreline or the top of the box.
    bottom, top
        What is left bare at those two ends [mm]: reveals, half the gap at a divider, the drop
        under a crown.
    shelves
        Heights of the undersides of fixed shelves inside it [mm].
    """

    name: Literal["main", "upper"]
    y0: Dim
    y1: Dim
    face_y0: Dim
    face_y1: Dim
    bottom: Dim
    top: Dim
    shelves: tuple[Dim, ...] = ()


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
