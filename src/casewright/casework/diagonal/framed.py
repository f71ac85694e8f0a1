"""A diagonal corner behind a face frame, between neighbours that have one.

Its frame lies across the mouth. Stiles that were square would meet the frames beside them in an
arris alone, with a wedge of 45 degrees open behind it; so their outer edges are bevelled at 45
degrees, wider behind, and each lies flat against the square edge of its neighbour, in line with
the outside of its return side. With the leg A, the depth D of the neighbours over their frames and
boards f thick:

    return sides        d = D - f sqrt(2) deep
    frame, behind       (A - d) sqrt(2), from long point to long point
    frame, its face     2 f less, which is (A - D) sqrt(2)
    stiles, behind      f wider than they show

Hinge strips stand behind the stiles, flush with their inner edges: no pads. Source: plane
geometry; that such a stile is bevelled to the line of its side is common practice.
"""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.box import Board, Box, Seat, marked_underside
from casewright.casework.carcase import Carcase
from casewright.casework.diagonal.corner import Corner
from casewright.casework.diagonal.roots import OVER_ROOT_2, across, onto_grid
from casewright.casework.face_frames import (
    FrameParts,
    FramePlan,
    bottom_rise,
    cut_members,
    frame_openings,
    planes_of,
)
from casewright.casework.features import Cut
from casewright.casework.fronts.face_edges import planned_thickness
from casewright.casework.maker import Maker, Outline
from casewright.casework.setups import bevel_setup
from casewright.dims import Dim, Unit, Way, greatest, least, tell
from casewright.findings import Finding, Severity
from casewright.sources import INCH

__all__ = ["bottom_behind_rail", "cut_frame", "frame_box", "framed_mouth", "side_depth"]

_STEPS: dict[Unit, tuple[Fraction, Fraction]] = {
    "in": (INCH / 64, INCH / 16), "mm": (Fraction(2, 5), Fraction(3, 2)),
}  # fmt: skip
"""How far its face may stand before its neighbours', and behind them [mm] (common practice)."""


def side_depth(maker: Maker, deep: Dim) -> Dim:
    """Depth of the return sides [mm]: down, so that no face stands before its neighbours'.

    Parameters
    ----------
    deep
        Of the neighbours, over their frames [mm].
    """
    thick = maker.house.thickness(maker.spec.face_stock)
    exact = maker.place.let("side_depth_exact", deep - thick * OVER_ROOT_2)
    return onto_grid(maker, maker.place, "side_depth", exact, Way.DOWN)


def bottom_behind_rail(maker: Maker, low: Dim) -> Dim:
    """Height of the bottom's underside [mm], so that the frame's lowest rail hides it.

    Parameters
    ----------
    low
        Lower end of the frame [mm].
    """
    return marked_underside(maker, low, bottom_rise(maker))


def cut_frame(maker: Maker, corner: Corner, deep: Dim, low: Dim) -> FrameParts:
    """Cut the frame to the box, and bevel its outer edges.

    Parameters
    ----------
    deep, low
        Of the neighbours, over their frames, and the lower end of the frame [mm].
    """
    place, house = maker.place.at("frame"), maker.house
    thick, board = house.thickness(maker.spec.face_stock), house.thickness(maker.spec.box_stock)
    wide = across(maker, place, "behind", _leg(corner), Way.DOWN)
    stile = place.let("stile_behind", maker.style("face_stile") + thick)
    beside = place.let("beside_strip", stile - board)
    _check_stile(maker, board, thick)
    plan = FramePlan(wide, thick, (beside, beside), (stile, stile))
    members = cut_members(maker, frame_box(maker, corner, (corner.own, corner.far), low), plan)
    for outline in (members.left, members.right):
        _bevel(maker, outline)
    place.let("face_width", members.width - members.left.thickness - members.right.thickness)
    _fit_face(maker, corner, members, deep)
    return members


def _leg(corner: Corner) -> Dim:
    """From the front of either return side to the end of the other leg, the lesser [mm]."""
    return least(corner.own_leg, corner.depth - corner.far.width)


def _bevel(maker: Maker, stile: Outline) -> None:
    """Its outer edge to 45 degrees, all of its thickness: the long point behind."""
    place, thick = stile.place.at("bevel"), stile.thickness
    face = place.let("face_width", stile.width - thick)
    maker.machine(
        stile.path,
        Cut(
            path=place.path, kind="bevel", face="A", runs="l", datum="w0", at=maker.zero,
            width=thick, depth=thick, start=None, end=None, asked_by=maker.path("frame"),
            setup=bevel_setup(maker.house, face),
        ),
    )  # fmt: skip


def _check_stile(maker: Maker, board: Dim, thick: Dim) -> None:
    """Strips behind stiles that are too narrow would stand in the return sides."""
    # A strip's outer face may be as far out as the inner front edge of a side, t / sqrt(2) from
    # the long point of the frame.
    need = board + board * OVER_ROOT_2 / 2 - thick
    stile = maker.style("face_stile")
    if not maker.place.over(need, stile, "a strip behind the stile meets the return side"):
        return
    own = maker.reckoning("narrow face frame", maker.path("frame"))
    wide, least = own.text(stile), own.text(need, "stile")
    maker.findings.append(
        Finding(
            rule="narrow face frame", severity=Severity.STOP, path=maker.path("frame"),
            says=tell(
                "behind a stile of {} no hinge strip has room beside the return side", wide
            ),
            measured=wide.text, limit=least.text, source="common practice",
            remedies=(tell("set face_stile to {} or more", least),), numbers=own.numbers,
        )
    )  # fmt: skip


def _fit_face(maker: Maker, corner: Corner, members: FrameParts, deep: Dim) -> None:
    """The face of the frame meets those beside it in an arris, or is a hair behind."""
    place = maker.place.at("frame")
    step = place.let("step", deep - corner.own.width - members.left.thickness * OVER_ROOT_2)
    proud, back = _STEPS[maker.house.unit]
    place.fit("step_beside", step, -proud, back, members.left.path)


def frame_box(maker: Maker, corner: Corner, uprights: tuple[Outline, Outline], low: Dim) -> Box:
    """The box as a frame lies before it: strips for sides, its bottom behind the lowest rail."""
    bottom = Board("bottom", "bottom", "bottom", corner.bottom, "butt", corner.deck)
    left, right = uprights
    seat = Seat(corner.own_rabbet.width, left.width, through=not corner.own_rabbet.path)
    boards = [bottom]
    if corner.top is not None:
        boards.append(Board("top", "top", "top", corner.top, "butt", corner.ceiling))
    return Box(left, right, corner.foot, corner.deck, low, corner.head, corner.clear_width, seat,
               bottom, boards)  # fmt: skip


def framed_mouth(
    maker: Maker,
    corner: Corner,
    members: FrameParts,
    strips: tuple[Outline, Outline],
    low: Dim,
) -> Carcase:
    """The mouth as a box with a frame before it.

    Parameters
    ----------
    strips
        Left and right: they stand where its sides would.
    low
        Lower end of the frame [mm].
    """
    place, (left, right) = maker.place.at("mouth"), strips
    span = maker.house.chain.nodes[f"{place.path}.span"]
    box = frame_box(maker, corner, strips, low)
    return Carcase(
        width=span, height=corner.head, depth=left.width, clear_width=members.between,
        left=left.path, right=right.path, left_thickness=left.thickness,
        right_thickness=right.thickness, seat=maker.zero,
        openings=frame_openings(maker, box, members),
        frame=planes_of(maker, members, box, span, left.width), edge=_edge(maker),
    )  # fmt: skip


def _edge(maker: Maker) -> Dim | None:
    """What a door leaves bare of the face at either end [mm]; None: it hangs inside.

    Its square edges stay the reveal behind the planes of the neighbours' frames' edges.
    """
    front, place = maker.spec.front, maker.place.at("mouth")
    if front is None or front.overlay == "inset":
        return None
    out = planned_thickness(maker, front) + maker.style("bumper")
    bare = out + maker.style("reveal") * OVER_ROOT_2
    if front.overlay == "partial":
        bare = greatest(bare, maker.style("face_stile") - maker.style("face_overlay"))
    return place.let("edge", bare)
