"""How fronts lie: over the edges of the box or the face frame, over part of them, or inside."""

from __future__ import annotations

from dataclasses import dataclass, replace

from casewright.casework.carcase import Carcase, FrameEdges, Opening
from casewright.casework.maker import Maker
from casewright.casework.specs import FrontSpec, OverlayKind
from casewright.dims import Dim, greatest

__all__ = [
    "FaceEdges", "blind_edge", "cover_of", "face_edges", "inset_by", "low_front",
    "planned_thickness", "share_of",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class FaceEdges:
    """The stretch across that the leaves of an opening share out.

    Parameters
    ----------
    x0, x1
        Its ends in case axes [mm]: the outsides of the box, or the insides of its sides; of a
        face frame its outsides (of a stile of the usual width) or the edges of its opening.
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
    if carcase.frame is not None and maker.spec.framed:
        edges = _frame_edges(maker, carcase.frame, front)
        return edges if carcase.edge is None else replace(edges, edge=carcase.edge)
    if carcase.edge is not None:
        return FaceEdges(maker.zero, carcase.width, carcase.edge, maker.style("gap"))
    match "full" if front is None else front.overlay:
        case "inset":
            return _inside(maker, carcase, maker.style("inset_gap"))
        case "partial":
            edge = maker.style("partial_reveal")
        case _:
            edge = maker.style("reveal")
    if maker.spec.blind is not None:
        return _beside_blind(maker, carcase, edge)
    return FaceEdges(maker.zero, carcase.width, edge, maker.style("gap"))


def _inside(maker: Maker, carcase: Carcase, gap: Dim) -> FaceEdges:
    """From side to side; in a blind corner from the panel, as it was cut, to the side beyond."""
    low = carcase.left_thickness
    high = low + carcase.clear_width
    if maker.spec.blind is not None:
        wide = maker.house.chain.nodes[maker.path("blind.width")]
        if maker.spec.blind == "left":
            low = low + wide
        else:
            high = high - wide
    return FaceEdges(low, high, gap, gap)


def _beside_blind(maker: Maker, carcase: Carcase, edge: Dim) -> FaceEdges:
    """In a blind corner a door begins a gap beyond the filler, as it would beside another."""
    gap = maker.style("gap")
    begins = blind_edge(maker) + gap - edge
    if maker.spec.blind == "left":
        return FaceEdges(begins, carcase.width, edge, gap)
    return FaceEdges(maker.zero, carcase.width - begins, edge, gap)


def blind_edge(maker: Maker) -> Dim:
    """From the outside of a blind corner base, on its blind side, to where its mouth begins [mm].

    X0 - q, with X0 = D2 + bp + td + P2 + cl (common practice); doors inside their frame take
    neither bumper nor thickness. Of a framed one it is where the door begins, from the outside of
    the frame.
    """
    known = maker.house.chain.nodes.get(maker.path("blind_edge"))
    if known is not None:
        return known
    front, given = maker.spec.front, maker.spec.corner_depth
    deep = maker.style("base_depth") if given is None else maker.number("corner_depth", given)
    first = deep
    if front is None or front.overlay != "inset":
        first = first + maker.style("bumper")
    if front is not None:
        if front.overlay != "inset":
            first = first + planned_thickness(maker, front)
        if front.pull:
            first = first + maker.house.pull("projection")
    first = maker.place.let("first_edge", first + maker.style("corner_clear"))
    return maker.place.let("blind_edge", first - maker.style("blind_pull_off"))


def cover_of(maker: Maker, front: FrontSpec | None) -> Dim | None:
    """How far a door lies over a stile of a face frame [mm]; None: it lies inside its opening."""
    overlay = "full" if front is None else front.overlay
    if overlay == "inset":
        return None
    stile, reveal = maker.style("face_stile"), maker.style("reveal")
    if overlay == "partial":
        reveal = greatest(reveal, stile - maker.style("face_overlay"))
    return stile - reveal


def _frame_edges(maker: Maker, frame: FrameEdges, front: FrontSpec | None) -> FaceEdges:
    """On a face frame; before a mullion two leaves are as far apart as it wants."""
    overlay: OverlayKind = "full" if front is None else front.overlay
    left, right = frame.mouth(maker.spec.blind)
    stile, gap = maker.style("face_stile"), maker.style("gap")
    mullion = stile if maker.spec.mullion else None
    if overlay == "inset":
        edge = maker.style("inset_gap")
        between = edge if mullion is None else mullion + 2 * edge
        return FaceEdges(left, right, edge, between)
    reveal = maker.style("reveal")
    if overlay == "partial":
        cover = maker.style("face_overlay")
        reveal = greatest(reveal, stile - cover)
        if mullion is not None:
            gap = greatest(gap, mullion - 2 * cover)
    return FaceEdges(left - stile, right + stile, reveal, gap)


def share_of(maker: Maker, opening: Opening) -> Opening:
    """The opening with the stretch of height that its doors share out.

    Inset doors fill the clear opening, less a gap all round. Doors that lie over part of the
    edges cover as much of each board as of the sides. A false front lies before its rail whole.
    """
    front = opening.front
    if front is None or front.overlay == "full":
        return opening
    if front.overlay == "inset":
        gap = maker.style("inset_gap")
        return replace(opening, face_y0=opening.y0, face_y1=opening.y1, bottom=gap, top=gap)
    if maker.spec.framed:
        cover = maker.style("face_overlay")
    else:
        # Of the side as it was made: its plates stay where they are, whatever the next sheet
        # reads.
        thick = maker.parts[maker.path("side_left")].finished.thickness
        cover = thick - maker.style("partial_reveal")
    low = opening.face_y0
    below = opening.y0 - low if low.path or low.op else opening.y0
    top = greatest(opening.top, opening.face_y1 - opening.y1 - cover)
    if opening.row == "false front" and not maker.spec.framed:
        top = opening.top
    return replace(opening, bottom=greatest(opening.bottom, below - cover), top=top)


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


def low_front(maker: Maker, opening: Opening) -> FrontSpec | None:
    """How the front of a row is built: a drawer's or a false one too low for a frame is a slab."""
    front = opening.front
    if front is None or opening.row == "doors" or front.construction == "slab":
        return front
    low = opening.face_y0
    tall = opening.face_y1.value - low.value - opening.bottom.value - opening.top.value
    if tall >= 3 * maker.style("rail").value:
        return front
    return next((row.low for row in maker.spec.rows if row.front is front and row.low), front)


def inset_by(maker: Maker, opening: Opening) -> Dim | None:
    """How far the inside of a box begins behind its front edge there [mm]; None: right at it."""
    front = opening.front
    if front is None or front.overlay != "inset":
        return None
    return planned_thickness(maker, low_front(maker, share_of(maker, opening)) or front)
