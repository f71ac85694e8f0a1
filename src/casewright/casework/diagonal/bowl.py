"""What ties a diagonal corner under a bowl, in place of a top: two corner blocks, a rail on edge.

A corner block lies flat in the angle between a return side and its hinge strip, over the end of
the strip and behind the rail: L = w + t long, with the width w of the strip and its thickness t,
and 2 L + t - s sqrt(2) wide, its front corner clipped, s from the face to the back of the rail:
its thickness, behind an inset front that and the bumpers more. Both are alike: one is turned over.
Source: plane geometry; that such blocks and a rail tie a box without a top is common practice.
"""

from __future__ import annotations

from casewright.casework.box import Board, Box, Seat, front_edges
from casewright.casework.brads import fastener_row
from casewright.casework.diagonal.corner import Corner
from casewright.casework.diagonal.roots import OVER_ROOT_2
from casewright.casework.diagonal.screws import case_screw
from casewright.casework.features import Plane
from casewright.casework.fronts.face_edges import planned_thickness
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.parts import Part
from casewright.casework.pockets import bore_pockets
from casewright.casework.rows import front_rail_height
from casewright.casework.specs import Hand
from casewright.dims import Dim, Way
from casewright.findings import Question

__all__ = [
    "add_front_rail", "ask_for_bowl", "block_front", "corner_box", "cut_blocks", "join_blocks",
    "over_strip", "place_blocks", "strip_width",
]  # fmt: skip

_ENDS = ("free end", "side end", "front edge", "rear edge")


def strip_width(maker: Maker) -> Dim:
    """How far the strips reach in from the face [mm]: by an inset door's thickness more."""
    front, wide = maker.spec.front, maker.style("hinge_strip")
    if front is None or front.overlay != "inset" or maker.spec.framed:
        return wide
    return wide + planned_thickness(maker, front)


def _set_back(maker: Maker) -> Dim | None:
    """How far the rail on edge stands behind the face [mm]; None: in its plane."""
    over = next((row for row in maker.spec.rows if row.kind == "false front"), None)
    if over is None or over.front is None or over.front.overlay != "inset":
        return None
    return planned_thickness(maker, over.low or over.front) + maker.style("bumper")


def _behind_rail(maker: Maker) -> Dim:
    """From the face to the back of the rail [mm]."""
    back, thick = _set_back(maker), maker.house.thickness(maker.spec.box_stock)
    return thick if back is None else back + thick


def _reach(maker: Maker) -> Dim:
    """How far a block reaches along its side and away from it: past the end of the strip [mm]."""
    thick = maker.house.thickness(maker.spec.box_stock)
    return maker.on_grid("block_reach", strip_width(maker) + thick)


def cut_blocks(maker: Maker, own: Outline, far: Outline) -> tuple[Outline, Outline]:
    """Cut both blocks, for the own and the far return side, as they will be clipped."""
    reach = _reach(maker)
    # Their fronts lie behind the rail, at 45 degrees: its back counts with the root of 2.
    rail = _behind_rail(maker) * OVER_ROOT_2
    first, second = (
        maker.outline(
            f"block_{side.path.rpartition('_')[2]}", maker.spec.box_stock, reach,
            2 * reach + side.thickness - rail, setting=f"{maker.spec.key} blocks",
            way=Way.DOWN, length_way=Way.NEAREST,
        )
        for side in (own, far)
    )  # fmt: skip
    return first, second


def block_front(maker: Maker, side: Outline, block: Outline) -> Dim:
    """Leg of a block's clip [mm]: from its front corner to where the back of the rail meets it."""
    rail = _behind_rail(maker) * OVER_ROOT_2
    return block.width - _reach(maker) - side.thickness + rail


def _looks_down(corner: Corner, hand: Hand) -> Plane:
    """Which face of the block at that hand lies on its strip."""
    return "t0" if corner.left == (hand == corner.own_hand) else "t1"


def _slid(maker: Maker, block: Outline) -> Dim:
    """How far back along its side a block lies whose clip was made for a thinner rail [mm]."""
    nodes, clip = maker.house.chain.nodes, block.place.at("clip").path
    return block.place.let("slid_back", nodes[f"{clip}.leg_to_mark"] - nodes[f"{clip}.leg"])


def place_blocks(maker: Maker, corner: Corner) -> None:
    """Lay them at the front of either return side, flush with its upper end."""
    own, far = corner.blocks
    reach, zero = _reach(maker), corner.head
    front = corner.own.width - reach + own.width - _slid(maker, own)
    inside = corner.width - corner.own.thickness - own.length
    if corner.left:
        lies, at = "+x -z +y", (inside, corner.ceiling, front)
    else:
        lies, at = "-x -z -y", (corner.own.thickness + own.length, zero, front)
    maker.add(own, role="corner block", title=f"{corner.own_hand} corner block", lies=lies, at=at,
              ends=_ENDS, group="blocks")  # fmt: skip
    out = corner.far.width - reach + far.width - _slid(maker, far)
    z = corner.depth - corner.far.thickness - far.length
    if corner.left:
        lies, at = "+z -x -y", (out, zero, z)
    else:
        lies, at = "+z +x +y", (corner.width - out, corner.ceiling, z)
    maker.add(far, role="corner block", title=f"{corner.far_hand} corner block", lies=lies, at=at,
              ends=_ENDS, group="blocks")  # fmt: skip


def join_blocks(maker: Maker, corner: Corner) -> None:
    """Screws through each return side into the end of its block."""
    for side, block in zip((corner.own, corner.far), corner.blocks, strict=False):
        hand = side.path.rpartition("_")[2]
        name = f"joint_block_{hand}"
        row = fastener_row(
            maker, name, _reach(maker), "screws into a block's end",
            through=side.path, into=block.path, screw=case_screw(maker, side.thickness),
            line=("l1", block.thickness / 2), kind="case screw",
        )  # fmt: skip
        glue = Fastening("glue", 1, None, (block.path,), side.path)
        maker.join(name, "butt", (block.path, "l1"), (side.path, "t1"), fastenings=(row, glue))


def over_strip(corner: Corner, hand: Hand) -> tuple[Outline, Plane]:
    """What lies on the strip at that hand, and which of its planes looks down."""
    if corner.top is not None:
        return corner.top, "t1"
    own, far = corner.blocks
    return own if hand == corner.own_hand else far, _looks_down(corner, hand)


def ask_for_bowl(maker: Maker) -> None:
    """What hangs in it decides how long the legs must be: ask for it where it is not known."""
    if not maker.spec.sink or maker.spec.bowl is not None:
        return
    waiting = tuple(
        part.path
        for part in maker.parts.values()
        if part.role in ("bottom", "nailer", "rail", "door", "slab", "false front")
    )
    maker.questions.append(
        Question(
            path=maker.path("bowl"),
            needs=f"read on the sheet of the sink how large the bowl of {maker.spec.title} is "
            "below the counter: across, and from front to back",
            because="across a corner the legs decide what hangs between nailers, corner blocks "
            "and rail",
            waiting=waiting,
            how=f"[case.{maker.spec.key}]: bowl = [across, front to back]",
        )
    )


def corner_box(maker: Maker, corner: Corner) -> Box:
    """The box as what parts a face into rows needs it: between inset ones lies a rail."""
    bottom = Board("bottom", "bottom", "bottom", corner.bottom, "butt", corner.deck)
    seat = Seat(corner.own_rabbet.width, corner.own.width, through=not corner.own_rabbet.path)
    return Box(
        corner.own, corner.far, corner.foot, corner.deck, corner.deck, corner.head,
        corner.clear_width, seat, bottom, [bottom, *_rail_between(maker)],
    )  # fmt: skip


def _rail_between(maker: Maker) -> list[Board]:
    """The rail under an inset false front, once it is there."""
    part = maker.parts.get(maker.path("row_board.1"))
    if part is None:
        return []
    outline = Outline(part.path, maker.house.chain.place(part.path), part.stock, part.finished,
                      part.blank, part.edges)  # fmt: skip
    return [Board("row_board.1", "stretcher", part.title, outline, "butt", part.placed.y)]


def add_front_rail(
    maker: Maker, corner: Corner, strips: tuple[Part, Part], clear: Dim, front: Dim
) -> None:
    """The rail on edge between the strips, flush with the face and with the upper ends of all.

    Parameters
    ----------
    strips
        Left and right.
    clear
        Between them [mm].
    front
        Plane of the face, in the axes of the mouth [mm].
    """
    back = _set_back(maker)
    if back is not None:
        _add_rail_between(maker, corner, strips, clear, front)
        front = maker.place.let("rail_front", front - back)
    wide = front_rail_height(maker, corner_box(maker, corner), corner.head)
    outline = maker.outline(
        "front_rail", maker.spec.box_stock, clear, wide, setting=f"{maker.spec.key} rail",
        matched=True,
    )  # fmt: skip
    maker.turned = True
    part = maker.add(
        outline, role="rail", title="front rail on edge", lies="+x +y +z",
        at=(strips[0].finished.thickness, corner.head - outline.width, front - outline.thickness),
        ends=("left", "right", "bottom", "top"), group="horizontals",
    )  # fmt: skip
    maker.turned = False
    _screw_between(maker, part, "joint_front_rail", strips)


def _add_rail_between(
    maker: Maker, corner: Corner, strips: tuple[Part, Part], clear: Dim, front: Dim
) -> None:
    """The rail under an inset false front, flat, no farther back than the rail on edge.

    A bowl hangs down behind both (common practice).
    """
    over = maker.spec.rows[0]
    thick = maker.house.thickness(maker.spec.box_stock)
    tall = None if over.height is None else maker.number("false_front_height", over.height)
    gap = 2 * maker.style("inset_gap")
    if tall is None:
        tall = (corner.head - corner.floor - thick - 2 * gap) / 2
    outline = maker.outline(
        "row_board.1", maker.spec.box_stock, clear, _behind_rail(maker),
        edges=front_edges(maker.spec, "stretcher"), setting=f"{maker.spec.key} rail",
        way=Way.DOWN, matched=True,
    )  # fmt: skip
    under = maker.place.let("row_1_board", corner.head - tall - gap - outline.thickness)
    maker.turned = True
    part = maker.add(
        outline, role="stretcher", title="rail under row 1", lies="+x -z +y",
        at=(strips[0].finished.thickness, under, front),
        ends=("left", "right", "front", "back"), shows=front_edges(maker.spec, "stretcher"),
        group="horizontals",
    )  # fmt: skip
    maker.turned = False
    _screw_between(maker, part, "joint_row_board", strips)


def _screw_between(maker: Maker, part: Part, name: str, strips: tuple[Part, Part]) -> None:
    """Pocket screws from its hidden face into both strips."""
    count = bore_pockets(maker, part.path, "B", ("l0", "l1"))
    length = maker.house.pocket_screw(maker.spec.box_stock)
    ends: tuple[Plane, Plane] = ("l0", "l1")
    for end, strip in zip(ends, strips, strict=True):
        held = Fastening("pocket screw", count, length, (part.path,), strip.path)
        glue = Fastening("glue", 1, None, (part.path,), strip.path)
        maker.join(f"{name}_{end}", "butt", (part.path, end), (strip.path, "t1"),
                   fastenings=(held, glue))  # fmt: skip
