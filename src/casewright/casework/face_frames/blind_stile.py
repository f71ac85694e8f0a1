"""The stile of a face frame that stands where the run round a blind corner ends.

It begins behind that run's frame, by the width of a stile, so that this closes against its face;
it shows as wide as doors, pulls and the air before them ask, and ends where the mouth begins. An
end stile, the rails and a panel behind are all that is farther in the corner. Source: common
practice.
"""

from __future__ import annotations

from casewright.casework.carcase import FrameEdges
from casewright.casework.fronts.face_edges import blind_edge, cover_of
from casewright.casework.maker import Maker, Outline
from casewright.dims import Dim, Way

__all__ = ["blind_edges", "cut_blind_stile"]


def cut_blind_stile(maker: Maker, length: Dim) -> Outline | None:
    """Its outline; None where no side of the case is blind.

    X0 - D2 wide beyond the run round the corner, and a stile behind that; what its door covers
    comes on top.

    Parameters
    ----------
    length
        Between the rails [mm].
    """
    if maker.spec.blind is None:
        return None
    mouth = _mouth(maker)
    given = maker.spec.corner_depth
    deep = maker.style("base_depth") if given is None else maker.number("corner_depth", given)
    begins = deep - maker.style("blind_pull_off") - maker.style("face_stile")
    return maker.outline(
        "frame.blind_stile", maker.spec.face_stock, length, mouth - begins,
        setting=f"{maker.spec.key} blind stile", way=Way.NEAREST, matched=True,
    )  # fmt: skip


def _mouth(maker: Maker) -> Dim:
    """From the outer edge of the frame on the blind side to where its opening begins [mm]."""
    known = maker.house.chain.nodes.get(maker.path("frame.mouth"))
    if known is not None:
        return known
    cover = cover_of(maker, maker.spec.front)
    edge = blind_edge(maker)
    return maker.place.at("frame").let("mouth", edge if cover is None else edge + cover)


def blind_edges(maker: Maker, edges: FrameEdges, stile: Outline, ends: Dim) -> tuple[Dim, Dim]:
    """Case x of its left and right edge [mm].

    Parameters
    ----------
    ends
        Width of the frame's end stile on the blind side [mm].
    """
    inner = _mouth(maker) - ends
    if maker.spec.blind == "left":
        high = stile.place.let("x", edges.left + inner)
        return stile.place.let("left_edge", high - stile.width), high
    low = stile.place.let("left_edge", edges.right - inner)
    return low, stile.place.let("x", low + stile.width)
