"""The closed box of a diagonal corner: two return sides square to each other, bottom and top."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.box import front_edges, underside_shows
from casewright.casework.brads import fastener_row
from casewright.casework.diagonal.bowl import (
    block_front,
    cut_blocks,
    join_blocks,
    place_blocks,
)
from casewright.casework.diagonal.clips import clip
from casewright.casework.diagonal.corner import Corner, Rabbet
from casewright.casework.diagonal.screws import case_screw
from casewright.casework.features import Cut, Plane
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.setups import rip_cut_setup
from casewright.casework.specs import Hand
from casewright.casework.toes import notch_sides
from casewright.dims import Cause, Dim, Way

__all__ = ["cut_corner", "join_boards", "place_boards"]

_SHIFT = (Fraction(3, 10), Fraction(6, 10))
"""Shift of a joint as it is screwed together [mm]: deviation and limit (common practice)."""

_FLAT = ("left", "right", "front", "back")
_FLIPPED = ("right", "left", "front", "back")


def cut_corner(maker: Maker, leg: Dim, height: Dim, deep: Dim, deck: Dim) -> Corner:
    """Cut sides, bottom and top, and clip the two boards.

    The board between the sides is the datum: A - tb - t square, its clip A - d - 2t; one under
    the sides is A - tb square, its clip A - d (common practice).

    Parameters
    ----------
    leg, height, deep, deck
        Along either wall, outside height, depth of the return sides, underside of the bottom
        wished for [mm].
    """
    spec, hand = maker.spec, maker.spec.diagonal or "left"
    board = maker.house.thickness(spec.box_stock)
    thin = maker.zero if spec.sink else maker.house.thickness(spec.back_stock)
    on_plinth = spec.toe == "plinth" and bool(deck.path)
    tall = height - board if spec.under else height - deck if on_plinth else height
    left, right = (_side(maker, word, tall, deep) for word in ("left", "right"))
    own, far = (right, left) if hand == "left" else (left, right)
    inner = maker.outline(
        "top" if spec.under else "bottom", spec.box_stock,
        *(leg - side.thickness if thin is maker.zero else leg - side.thickness - thin
          for side in (own, far)),
        setting=f"{spec.key} boards", way=Way.NEAREST, length_way=Way.NEAREST,
    )  # fmt: skip
    rabbets = [_no_rabbet(maker) if spec.sink else _rabbet(maker, side, thin)
               for side in (own, far)]  # fmt: skip
    across = _clear(maker, "clear_width", inner.length)
    along = _clear(maker, "clear_depth", inner.width)
    width = maker.place.follows("width", _from(rabbets[1].width, across) + own.thickness)
    depth = maker.place.follows("depth", _from(rabbets[0].width, along) + far.thickness)
    other = None if spec.sink else _other(maker, inner, own, far)
    bottom, top = (other, inner) if other is not None and spec.under else (inner, other)
    blocks: tuple[Outline, ...] = cut_blocks(maker, own, far) if spec.sink else ()
    foot = deck if on_plinth else maker.zero
    if spec.under:
        foot = maker.place.let("foot", deck + bottom.thickness)
    head = maker.place.follows("height", foot + left.length if foot.path else left.length)
    ceiling = maker.place.let("ceiling", head - (top or blocks[0]).thickness)
    corner = Corner(
        hand, own, far, rabbets[0], rabbets[1], width, depth, across, along,
        foot, deck, ceiling, head, bottom, top, blocks,
    )  # fmt: skip
    _clip_boards(maker, corner)
    notch_sides(maker, (left, right), deck)
    return corner


def _side(maker: Maker, hand: str, tall: Dim, deep: Dim) -> Outline:
    return maker.outline(
        f"side_{hand}", maker.spec.box_stock, tall, deep, edges=front_edges(maker.spec),
        setting=f"{maker.spec.key} sides", way=Way.NEAREST,
    )  # fmt: skip


def _clear(maker: Maker, name: str, size: Dim) -> Dim:
    place = maker.place
    return place.follows(name, size, (Cause(f"{place.path}.{name}", *_SHIFT),))


def _from(low: Dim, by: Dim) -> Dim:
    """So far from a plane; one that is the wall itself is left out of the formula [mm]."""
    return low + by if low.path else by


def _other(maker: Maker, inner: Outline, own: Outline, far: Outline) -> Outline:
    """The second board: as the first, or so much larger that the sides stand on it."""
    spec = maker.spec
    if spec.under:
        return maker.outline(
            "bottom", spec.box_stock, inner.length + own.thickness, inner.width + far.thickness,
            setting=f"{spec.key} bottom", way=None, matched=True,
        )  # fmt: skip
    return maker.outline(
        "top", spec.box_stock, inner.length, inner.width, setting=f"{spec.key} boards",
        way=Way.NEAREST, length_way=Way.NEAREST,
    )  # fmt: skip


def _no_rabbet(maker: Maker) -> Rabbet:
    """Where the back is open, everything reaches to the walls."""
    return Rabbet("", maker.zero, maker.zero)


def _rabbet(maker: Maker, side: Outline, thin: Dim) -> Rabbet:
    place = side.place.at("rabbet_back")
    width = maker.machined(place, "width", thin)
    depth = maker.machined(place, "depth", maker.style("rabbet_depth"))
    setup = rip_cut_setup(
        maker.house, place, at=maker.zero, width=width, depth=depth, name="rabbet"
    )
    hand = side.path.rpartition("_")[2]
    maker.machine(
        side.path,
        Cut(
            path=place.path, kind="rabbet", face="A", runs="l", datum="w1", at=maker.zero,
            width=width, depth=depth, start=None, end=None,
            asked_by=maker.path(f"back_{hand}"), setup=setup,
        ),
    )  # fmt: skip
    return Rabbet(place.path, width, depth)


def _clip_boards(maker: Maker, corner: Corner) -> None:
    """The face runs from the front of one return side to that of the other: u + v = A + d."""
    leg, own = corner.own_leg, corner.own.thickness
    inner = leg - own - corner.far.thickness
    for board, flipped in ((corner.bottom, False), (corner.top, True)):
        if board is None:
            continue
        exact = leg if maker.spec.under and not flipped else inner
        end: Plane = "l1" if corner.left != flipped else "l0"
        clip(maker, board, end, exact)
    for side, block in zip((corner.own, corner.far), corner.blocks, strict=False):
        clip(maker, block, "l1", block_front(maker, side, block), small=True)


def place_boards(maker: Maker, corner: Corner) -> None:
    """Put sides, bottom and top in their places."""
    _place_sides(maker, corner)
    spec = maker.spec
    x = corner.low(corner.far_rabbet.width, corner.bottom.length)
    front = corner.own_rabbet.width + corner.bottom.width
    under: tuple[Plane, ...] = ("t0",) if underside_shows(spec, "bottom") else ()
    maker.add(
        corner.bottom, role="bottom", title="bottom", lies="+x -z +y", at=(x, corner.deck, front),
        ends=_FLAT, shows=under, group="horizontals",
    )  # fmt: skip
    if corner.top is None:
        place_blocks(maker, corner)
        return
    x = corner.low(corner.far_rabbet.width, corner.top.length) + corner.top.length
    front = corner.own_rabbet.width + corner.top.width
    maker.add(
        corner.top, role="top", title="top", lies="-x -z -y", at=(x, corner.head, front),
        ends=_FLIPPED, group="horizontals",
    )  # fmt: skip


def _place_sides(maker: Maker, corner: Corner) -> None:
    """Left and right as seen from the room, facing the mouth."""
    foot, zero = corner.foot, maker.zero
    own_at = (corner.width if corner.left else zero, foot, corner.own.width)
    out = corner.far.width if corner.left else corner.width - corner.far.width
    placed: tuple[tuple[Outline, Hand, str, tuple[Dim, Dim, Dim]], ...] = (
        (corner.own, corner.own_hand, "+y -z -x" if corner.left else "+y -z +x", own_at),
        (corner.far, corner.far_hand, "+y -x -z" if corner.left else "+y +x -z",
         (out, foot, corner.depth)),
    )  # fmt: skip
    for outline, hand, lies, at in placed:
        maker.add(
            outline, role="side", title=f"{hand} return side", lies=lies, at=at,
            ends=("bottom", "top", "front", "back"), hand=hand, shows=front_edges(maker.spec),
            group="sides",
        )  # fmt: skip


def join_boards(maker: Maker, corner: Corner) -> None:
    """Screws through the return sides into the boards between them, or up from below."""
    join_blocks(maker, corner)
    for board, flipped in ((corner.bottom, False), (corner.top, True)):
        if board is None:
            continue
        for side, hand in ((corner.own, corner.own_hand), (corner.far, corner.far_hand)):
            if maker.spec.under and not flipped:
                _stand_on(maker, corner, side, hand)
            else:
                _between(maker, corner, board, side, flipped=flipped)


def _between(
    maker: Maker, corner: Corner, board: Outline, side: Outline, *, flipped: bool
) -> None:
    hand = side.path.rpartition("_")[2]
    name = f"joint_{board.path.rpartition('.')[2]}_{hand}"
    end: Plane = "w0"
    if side is corner.own:
        end = "l1" if corner.left != flipped else "l0"
    half = board.thickness / 2
    up = half if flipped or corner.foot is corner.deck else corner.deck + half
    row = fastener_row(
        maker, name, _reach(corner, side), "screws into a board's edge",
        through=side.path, into=board.path, screw=case_screw(maker, side.thickness),
        line=("l1" if flipped else "l0", up), kind="case screw",
    )  # fmt: skip
    glue = Fastening("glue", 1, None, (board.path,), side.path)
    maker.join(name, "butt", (board.path, end), (side.path, "t1"), fastenings=(row, glue))


def _reach(corner: Corner, side: Outline) -> Dim:
    """How far a return side and a board meet: from its front to the back [mm]."""
    rabbet = corner.own_rabbet if side is corner.own else corner.far_rabbet
    return side.width - rabbet.width


def _stand_on(maker: Maker, corner: Corner, side: Outline, hand: Hand) -> None:
    board, name = corner.bottom, f"joint_bottom_{hand}"
    edge: Plane = "w0"
    if side is corner.own:
        edge = "l1" if corner.left else "l0"
    row = fastener_row(
        maker, name, _reach(corner, side), "screws up into a side",
        through=board.path, into=side.path, screw=case_screw(maker, board.thickness),
        line=(edge, side.thickness / 2), kind="case screw",
    )  # fmt: skip
    glue = Fastening("glue", 1, None, (side.path,), board.path)
    maker.join(name, "butt", (side.path, "l0"), (board.path, "t1"), fastenings=(row, glue))
