"""The mouth of a diagonal corner: hinge strips square to the door, toe board, and the door.

What lies in the mouth is placed in axes of its own: x along the face from its left strip, seen
from the room, z out of the mouth. Both strips touch the inner front edges of the return sides:
sqrt(2) (A - d - t) apart, outside to outside. The door is

    (A - d) sqrt(2) - 2 td - 2 sqrt(2) r

wide, so that its square outer edges stay r behind the planes of its neighbours' sides; a bumper
counts with its thickness. One of partial overlay is no wider, and leaves as much of the strips
bare as it does of other boxes; an inset one hangs between the strips, which are deeper by its
thickness. Source: common practice.
"""

from __future__ import annotations

from dataclasses import dataclass

from casewright.casework.box import front_edges
from casewright.casework.carcase import Carcase, Opening
from casewright.casework.diagonal.bowl import (
    add_front_rail,
    corner_box,
    over_strip,
    strip_width,
)
from casewright.casework.diagonal.corner import Corner
from casewright.casework.diagonal.roots import across
from casewright.casework.diagonal.screws import case_screw, screw_ends
from casewright.casework.face_frames import FrameParts
from casewright.casework.features import Plane
from casewright.casework.fronts.face_edges import planned_thickness
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.parts import Part
from casewright.casework.rows import part_into_rows
from casewright.dims import Dim, Way, greatest, least

__all__ = ["Mouth", "add_strips", "add_toe_board", "mouth_carcase"]


@dataclass(frozen=True, slots=True)
class Mouth:
    """What stands in the mouth.

    Parameters
    ----------
    span
        Between the outer faces of its strips [mm].
    clear
        Between their inner faces [mm].
    front
        Plane z of the face, in its own axes: the strips' width [mm].
    left, right
        The strips.
    strips
        As they were cut.
    """

    span: Dim
    clear: Dim
    front: Dim
    left: Part
    right: Part
    strips: tuple[Outline, Outline]


def add_strips(maker: Maker, corner: Corner, members: FrameParts | None) -> Mouth:
    """Two uprights between bottom and top, square to the door: its hinges need no other angle.

    Parameters
    ----------
    members
        Of a face frame, whose stiles they stand behind.
    """
    place = maker.place.at("mouth")
    _tell_sizes(maker, corner)
    left, right = (
        maker.outline(
            f"strip_{hand}", maker.spec.box_stock, corner.ceiling - corner.floor,
            strip_width(maker), edges=front_edges(maker.spec),
            setting=f"{maker.spec.key} strips", matched=True,
        )
        for hand in ("left", "right")
    )  # fmt: skip
    span = _span(maker, corner, members, (left, right))
    front = left.width
    maker.turned = True
    parts = []
    for outline, lies, x in ((left, "+y -z +x", maker.zero), (right, "+y -z -x", span)):
        hand = "left" if outline is left else "right"
        parts.append(
            maker.add(
                outline, role="hinge strip", title=f"{hand} hinge strip", lies=lies,
                at=(x, corner.floor, front), ends=("bottom", "top", "front", "back"),
                hand="left" if hand == "left" else "right", shows=_shown(maker),
                group="strips",
            )
        )  # fmt: skip
    maker.turned = False
    for part in parts:
        screw_ends(maker, part, corner.bottom, over_strip(corner, part.hand or "left"))
    clear = place.let(
        "clear_between", span - parts[0].finished.thickness - parts[1].finished.thickness
    )
    if maker.spec.sink:
        add_front_rail(maker, corner, (parts[0], parts[1]), clear, front)
    return Mouth(span, clear, front, parts[0], parts[1], (left, right))


def _span(
    maker: Maker, corner: Corner, members: FrameParts | None, strips: tuple[Outline, Outline]
) -> Dim:
    """Between the outer faces of the strips [mm]: inside the return sides, or behind stiles."""
    place = maker.place.at("mouth")
    if members is not None:
        return place.let("span", members.between + strips[0].thickness + strips[1].thickness)
    inner = least(
        corner.own_leg - corner.own.thickness,
        corner.depth - corner.far.width - corner.far.thickness,
    )
    return across(maker, place, "span", inner, Way.DOWN)


def _shown(maker: Maker) -> tuple[Plane, ...]:
    """Front edges; where no door lies over them, the face beside the neighbour, too."""
    front, edges = maker.spec.front, front_edges(maker.spec)
    covered = front is None or front.overlay == "full" or maker.spec.framed
    return edges if covered else (*edges, "t0")


def _edge(maker: Maker, corner: Corner, mouth: Mouth) -> Dim | None:
    """What a door leaves bare of either strip [mm]; None: it hangs between them."""
    front = maker.spec.front
    if front is not None and front.overlay == "inset":
        return None
    place = maker.place.at("mouth")
    clear = (mouth.span - _door_width(maker, corner)) / 2
    if front is not None and front.overlay == "partial":
        clear = greatest(clear, maker.style("partial_reveal"))
    return place.let("edge", clear)


def _tell_sizes(maker: Maker, corner: Corner) -> None:
    """The face from corner to corner, and its clear mouth between the sides: to be measured."""
    place = maker.place.at("mouth")
    across(maker, place, "face", corner.own_leg, Way.DOWN)
    across(maker, place, "clear", corner.own_leg - 2 * corner.own.thickness, Way.DOWN)


def _door_width(maker: Maker, corner: Corner) -> Dim:
    """Width of the door, from its thickness, its bumper and the reveal [mm]."""
    front, place = maker.spec.front, maker.place.at("mouth")
    if front is None:
        msg = f"{maker.spec.key} is a diagonal corner without a door"
        raise ValueError(msg)
    wide = across(maker, place, "between_planes", corner.own_leg - 2 * maker.style("reveal"),
                  Way.DOWN)  # fmt: skip
    out = planned_thickness(maker, front) + maker.style("bumper")
    return place.let("door", wide - 2 * out)


def mouth_carcase(maker: Maker, corner: Corner, mouth: Mouth) -> Carcase:
    """The mouth as a box that a door hangs on: its strips are the sides."""
    thick = mouth.left.finished.thickness, mouth.right.finished.thickness
    base = maker.spec.has_toe
    bay = Opening(
        name="main", y0=corner.floor, y1=_under_head(maker, corner),
        face_y0=corner.deck, face_y1=corner.head, bottom=maker.style("bottom_reveal"),
        top=maker.style("base_top_reveal" if base else "top_reveal"), front=maker.spec.front,
    )  # fmt: skip
    return Carcase(
        width=mouth.span, height=corner.head, depth=mouth.front,
        clear_width=mouth.clear,
        left=mouth.left.path, right=mouth.right.path, left_thickness=thick[0],
        right_thickness=thick[1], seat=maker.zero,
        openings=part_into_rows(maker, corner_box(maker, corner), bay),
        edge=_edge(maker, corner, mouth),
    )  # fmt: skip


def _under_head(maker: Maker, corner: Corner) -> Dim:
    """Underside of what closes the mouth at its top [mm]: of the top, or of the rail on edge."""
    rail = maker.parts.get(maker.path("front_rail"))
    return corner.ceiling if rail is None else rail.placed.y


def add_toe_board(maker: Maker, corner: Corner, mouth: Mouth) -> Outline | None:
    """The board across the toe space: between the notches of the return sides, or over a plinth.

    Before a plinth it reaches from the outside of one return side to that of the other.
    """
    if maker.spec.toe == "none" or not maker.spec.has_toe or not corner.deck.path:
        return None
    back, place = maker.style("toe_setback"), maker.place.at("toe_board")
    leg = corner.own_leg + back
    if maker.spec.toe == "notch":
        leg = leg - corner.own.thickness
    long = across(maker, place, "long", leg, Way.DOWN)
    # Square to the face it stands back by the setback over the root of 2.
    square = across(maker, place, "square_back", back / 2, Way.UP)
    outline = maker.outline(
        "toe_board", maker.spec.box_stock, long, corner.deck,
        setting=f"{maker.spec.key} toe", matched=True,
    )  # fmt: skip
    maker.turned = True
    part = maker.add(
        outline, role="rail", title="toe board", lies="+x +y +z",
        at=((mouth.span - outline.length) / 2, maker.zero,
            mouth.front - square - outline.thickness),
        ends=("left", "right", "bottom", "top"), shows=("t1",), group="horizontals",
    )  # fmt: skip
    maker.turned = False
    size = case_screw(maker, corner.bottom.thickness)
    screws = Fastening("case screw", _count(maker, part), size, (corner.bottom.path,), part.path)
    glue = Fastening("glue", 1, None, (part.path,), corner.bottom.path)
    maker.join("joint_toe_board", "butt", (part.path, "w1"), (corner.bottom.path, "t0"),
               fastenings=(screws, glue))  # fmt: skip
    return outline


def _count(maker: Maker, part: Part) -> int:
    place = maker.house.chain.place(part.path)
    spacing = maker.style("brad_spacing")
    return max(2, place.times(part.finished.length, spacing, "screws down into the toe board"))
