"""What closes a diagonal corner at the walls: corner post, nailers, two backs."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.brads import fastener_row
from casewright.casework.diagonal.corner import Corner, Rabbet
from casewright.casework.diagonal.screws import screw_ends
from casewright.casework.features import Plane
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.parts import Part
from casewright.casework.pockets import bore_pockets
from casewright.dims import Dim

__all__ = ["add_backs", "add_nailers", "add_post", "nailer_width"]

_Mates = tuple[tuple[Plane, str, Plane], ...]

_UPRIGHT = ("left", "right", "bottom", "top")
_PLANED = Fraction(1, 2)
"""How much too wide a back may be: a few strokes of a plane (common practice) [mm]."""


def nailer_width(maker: Maker) -> Dim:
    """Width of the nailers, and of the post that they end on [mm]: more where no back is."""
    return maker.style("stretcher" if maker.spec.sink else "nailer")


def add_post(maker: Maker, corner: Corner) -> Part:
    """The post in the corner of the walls: both backs, the nailers and the shelves need it."""
    outline = maker.outline(
        "post", maker.spec.box_stock, corner.inner_head - corner.floor,
        nailer_width(maker),
        setting=f"{maker.spec.key} nailers", matched=True,
    )  # fmt: skip
    x = corner.at(corner.far_rabbet.width + outline.width)
    part = maker.add(
        outline, role="corner post", title="corner post",
        lies="+y -x +z" if corner.left else "+y +x +z",
        at=(x, corner.floor, corner.own_rabbet.width),
        ends=("bottom", "top", "nailer edge", "corner edge"), hand=corner.own_hand,
        group="nailers",
    )  # fmt: skip
    screw_ends(maker, part, corner.bottom, None if corner.top is None else (corner.top, "t1"))
    return part


def add_nailers(maker: Maker, corner: Corner, post: Part) -> None:
    """A nailer along either wall under the top; on a wall or without backs, one below, too."""
    wide = nailer_width(maker)
    levels = {"top": corner.inner_head - wide}
    if maker.spec.kind == "wall" or maker.spec.sink:
        levels["bottom"] = corner.floor
    for level, y in levels.items():
        _own_nailer(maker, corner, post, level, y)
        _far_nailer(maker, corner, post, level, y)


def _cut_nailer(maker: Maker, level: str, hand: str, long: Dim) -> Outline:
    return maker.outline(
        f"nailer_{level}_{hand}", maker.spec.box_stock, long, nailer_width(maker),
        setting=f"{maker.spec.key} nailers", matched=True,
    )  # fmt: skip


def _own_nailer(maker: Maker, corner: Corner, post: Part, level: str, y: Dim) -> None:
    hand = corner.own_hand
    outline = _cut_nailer(maker, level, hand, corner.clear_width - post.finished.width)
    x = corner.low(corner.far_rabbet.width + post.finished.width, outline.length)
    maker.add(
        outline, role="nailer", title=f"{level} nailer at the {hand}", lies="+x +y +z",
        at=(x, y, corner.own_rabbet.width), ends=_UPRIGHT, group="nailers",
    )  # fmt: skip
    mates: _Mates = (("l0", post.path, "w0"), ("l1", corner.own.path, "t1"))
    if not corner.left:
        mates = (("l0", corner.own.path, "t1"), ("l1", post.path, "w0"))
    _pocket(maker, corner, outline, mates)


def _far_nailer(maker: Maker, corner: Corner, post: Part, level: str, y: Dim) -> None:
    hand, thick = corner.far_hand, post.finished.thickness
    outline = _cut_nailer(maker, level, hand, corner.clear_depth - thick)
    near = corner.own_rabbet.width + thick
    maker.add(
        outline, role="nailer", title=f"{level} nailer at the {hand}",
        lies="-z +y +x" if corner.left else "+z +y -x",
        at=(corner.at(corner.far_rabbet.width), y, near + outline.length if corner.left else near),
        ends=_UPRIGHT, group="nailers",
    )  # fmt: skip
    mates: _Mates = (("l0", corner.far.path, "t1"), ("l1", post.path, "t1"))
    if not corner.left:
        mates = (("l0", post.path, "t1"), ("l1", corner.far.path, "t1"))
    _pocket(maker, corner, outline, mates)


def _pocket(maker: Maker, corner: Corner, outline: Outline, mates: _Mates) -> None:
    count = bore_pockets(maker, outline.path, "B", ("l0", "l1"))
    name, length = outline.path.rpartition(".")[2], maker.house.pocket_screw(maker.spec.box_stock)
    for end, mate, plane in mates:
        screws = Fastening("pocket screw", count, length, (outline.path,), mate)
        glue = Fastening("glue", 1, None, (outline.path,), mate)
        maker.join(f"joint_{name}_{end}", "butt", (outline.path, end), (mate, plane),
                   fastenings=(screws, glue))  # fmt: skip
    at_top = name.startswith("nailer_top")
    board = corner.top if at_top else corner.bottom
    if board is None:
        return
    maker.join(f"joint_{name}_board", "loose", (outline.path, "w1" if at_top else "w0"),
               (board.path, "t1"))  # fmt: skip


def add_backs(maker: Maker, corner: Corner, post: Part) -> None:
    """A thin back on either wall, each in the rabbet of its return side and bradded to the post.

    The own one laps over the edge of the far one in the corner of the walls. Where pipes come out
    of these, there is none.
    """
    if maker.spec.sink:
        return
    low = corner.deck
    tall = corner.head - low if low.path else corner.head
    for hand, wide in (
        (corner.own_hand, corner.width - corner.own.thickness + corner.own_rabbet.depth),
        (corner.far_hand, corner.clear_depth + corner.far_rabbet.depth),
    ):
        outline = maker.outline(
            f"back_{hand}", maker.spec.back_stock, tall, wide, setting=f"{maker.spec.key} backs"
        )
        if hand == corner.own_hand:
            _own_back(maker, corner, post, outline)
        else:
            _far_back(maker, corner, post, outline)


def _own_back(maker: Maker, corner: Corner, post: Part, outline: Outline) -> None:
    """At its side against the wall of the rabbet; what rounding took is at the corner."""
    end = corner.width - corner.own.thickness + corner.own_rabbet.depth
    x = corner.low(end - outline.width, outline.width) + outline.width
    z = corner.own_rabbet.width - outline.thickness
    at_side = corner.toward("room", "w1", "w0")
    _add(maker, outline, at_side, "+y -x +z", (x, corner.deck, z))
    free = outline.place.let("corner_play", end - outline.width)
    step = maker.style("cut_step").value
    maker.place.fit("back_play_fit", free, -_PLANED, 2 * step + 1, outline.path)
    middle = corner.far_rabbet.width + post.finished.width / 2 - free
    _hold(maker, corner, outline, corner.own, corner.own_rabbet, at_side)
    _on_boards(maker, corner, outline, {"bottom": "w1", "top": "w1"}, corner.clear_width)
    _on_post(maker, outline, post, "t0", (corner.toward("corner", "w1", "w0"), middle))
    _on_nailers(maker, outline)


def _far_back(maker: Maker, corner: Corner, post: Part, outline: Outline) -> None:
    end = corner.own_rabbet.width + corner.clear_depth + corner.far_rabbet.depth
    x = corner.at(corner.far_rabbet.width - outline.thickness)
    z = end - outline.width if corner.left else end
    lies = "+y +z +x" if corner.left else "+y -z -x"
    at_side: Plane = "w1" if corner.left else "w0"
    _add(maker, outline, at_side, lies, (x, corner.deck, z))
    middle = corner.own_rabbet.width + post.finished.thickness / 2 - (end - outline.width)
    _hold(maker, corner, outline, corner.far, corner.far_rabbet, at_side)
    ends: dict[str, Plane] = {"bottom": "l0" if corner.left else "l1",
                              "top": "l1" if corner.left else "l0"}  # fmt: skip
    _on_boards(maker, corner, outline, ends, corner.clear_depth)
    _on_post(maker, outline, post, "w1", ("w0" if corner.left else "w1", middle))
    _on_nailers(maker, outline)


def _add(
    maker: Maker, outline: Outline, at_side: Plane, lies: str, at: tuple[Dim, Dim, Dim]
) -> None:
    hand = outline.path.rpartition("_")[2]
    edges = ("side edge", "corner edge") if at_side == "w0" else ("corner edge", "side edge")
    maker.add(outline, role="back", title=f"{hand} back", lies=lies, at=at,
              ends=("bottom", "top", *edges))  # fmt: skip


def _brads(
    maker: Maker, joint: str, length: Dim, back: Outline, into: str, line: tuple[Plane, Dim]
) -> tuple[Fastening, ...]:
    row = fastener_row(
        maker, joint, length, "brads along the back", through=back.path, into=into,
        screw=maker.house.screw("back_brad"), line=line,
    )  # fmt: skip
    return (row,)


def _hold(
    maker: Maker, corner: Corner, back: Outline, side: Outline, rabbet: Rabbet, edge: Plane
) -> None:
    name = f"joint_{back.path.rpartition('.')[2]}_side"
    length = back.length - corner.foot if maker.spec.under else back.length
    maker.join(
        name,
        "rabbet",
        (back.path, "t1"),
        (side.path, "w0", rabbet.path),
        fastenings=_brads(maker, name, length, back, side.path, (edge, rabbet.depth / 2)),
    )
    maker.join(f"{name}_wall", "loose", (back.path, edge), (side.path, "t0", rabbet.path))


def _on_boards(
    maker: Maker, corner: Corner, back: Outline, planes: dict[str, Plane], length: Dim
) -> None:
    """Brads into the rear edges of bottom and top."""
    for word, board in (("bottom", corner.bottom), ("top", corner.top)):
        if board is None:
            continue
        name = f"joint_{back.path.rpartition('.')[2]}_{word}"
        half = board.thickness / 2
        low = corner.ceiling - corner.deck if corner.deck.path else corner.ceiling
        line = half if word == "bottom" else low + half
        maker.join(
            name,
            "butt",
            (back.path, "t1"),
            (board.path, planes[word]),
            fastenings=_brads(maker, name, length, back, board.path, ("l0", line)),
        )


def _on_post(
    maker: Maker, back: Outline, post: Part, plane: Plane, line: tuple[Plane, Dim]
) -> None:
    name = f"joint_{back.path.rpartition('.')[2]}_post"
    maker.join(
        name,
        "butt",
        (back.path, "t1"),
        (post.path, plane),
        fastenings=_brads(maker, name, post.finished.length, back, post.path, line),
    )


def _on_nailers(maker: Maker, back: Outline) -> None:
    """Its nailers lie against it."""
    hand = back.path.rpartition("_")[2]
    for level in ("top", "bottom"):
        nailer = maker.path(f"nailer_{level}_{hand}")
        if nailer in maker.parts:
            maker.join(f"joint_back_{hand}_nailer_{level}", "loose", (back.path, "t1"),
                       (nailer, "t0"))  # fmt: skip
