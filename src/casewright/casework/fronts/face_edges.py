"""How the doors of an opening lie: over the box's edges, over part of them, or inside, flush."""

from __future__ import annotations

from dataclasses import dataclass, replace

from casewright.casework.carcase import Carcase, Opening
from casewright.casework.maker import Maker
from casewright.casework.specs import FrontSpec
from casewright.dims import Dim, greatest

__all__ = ["FaceEdges", "face_edges", "inset_by", "planned_thickness", "share_of"]


@dataclass(frozen=True, slots=True)
class FaceEdges:
    """The stretch across that the leaves of an opening share out.

    Parameters
    ----------
    x0, x1
        Its ends in case axes [mm]: the outsides of the box, or the insides of its sides.
    edge
        What is left bare at either end [mm]: a reveal, or the gap beside an inset door.
    gap
        Between two leaves [mm].
    """

    x0: Dim
    x1: Dim
    edge: Dim
    gap: Dim

    @property
    def whole(self) -> Dim:
        """Its width [mm]."""
        return self.x1 - self.x0 if self.x0.path or self.x0.op else self.x1


def face_edges(maker: Maker, carcase: Carcase, front: FrontSpec | None) -> FaceEdges:
    """Where the leaves of an opening begin and end across."""
    match "full" if front is None else front.overlay:
        case "inset":
            inside, gap = carcase.left_thickness, maker.style("inset_gap")
            return FaceEdges(inside, inside + carcase.clear_width, gap, gap)
        case "partial":
            edge = maker.style("partial_reveal")
        case _:
            edge = maker.style("reveal")
    return FaceEdges(maker.zero, carcase.width, edge, maker.style("gap"))


def share_of(maker: Maker, opening: Opening) -> Opening:
    """The opening with the stretch of height that its doors share out.

    Inset doors fill the clear opening, less a gap all round. Doors that lie over part of the
    edges cover as much of each board as of the sides.
    """
    front = opening.front
    if front is None or front.overlay == "full":
        return opening
    if front.overlay == "inset":
        gap = maker.style("inset_gap")
        return replace(opening, face_y0=opening.y0, face_y1=opening.y1, bottom=gap, top=gap)
    # Of the side as it was made: its plates stay where they are, whatever the next sheet reads.
    thick = maker.parts[maker.path("side_left")].finished.thickness
    cover = thick - maker.style("partial_reveal")
    low = opening.face_y0
    below = opening.y0 - low if low.path or low.op else opening.y0
    return replace(
        opening,
        bottom=greatest(opening.bottom, below - cover),
        top=greatest(opening.top, opening.face_y1 - opening.y1 - cover),
    )


def planned_thickness(maker: Maker, front: FrontSpec) -> Dim:
    """How thick a door will be [mm], from its stock: what has to be known before it is cut."""
    thickness = maker.house.thickness
    match front.construction:
        case "slab":
            return thickness(front.slab)
        case "applied frame":
            return thickness(front.slab) + thickness(front.strip)
        case _:
            return thickness(front.frame)


def inset_by(maker: Maker, opening: Opening) -> Dim | None:
    """How far the inside of a box begins behind its front edge there [mm]; None: right at it."""
    front = opening.front
    if front is None or front.overlay != "inset":
        return None
    return planned_thickness(maker, front)
