"""How horizontals meet the sides: butt with pocket screws, dado, rabbet."""

from __future__ import annotations

from casewright.casework.box import Board, Box, end_depth, underside_shows
from casewright.casework.brads import fastener_row
from casewright.casework.features import Cut, Face, Plane
from casewright.casework.joints import Fastening, JointForm
from casewright.casework.maker import Maker, Outline
from casewright.casework.pockets import bore_pockets
from casewright.casework.setups import cross_dado_setup
from casewright.casework.specs import Hand
from casewright.casework.toes import toe_setback
from casewright.dims import Dim

__all__ = ["join_board", "machine_sides"]


def _cut_name(board: Board) -> str:
    return f"{board.joint}_{board.name.replace('.', '_')}"


def _at_head(board: Board) -> bool:
    return board.joint == "rabbet" and board.name != "bottom"


def machine_sides(maker: Maker, box: Box, board: Board) -> tuple[Dim, Dim]:
    """Cut the dadoes or rabbets a horizontal sits in.

    The lower wall of a dado is its datum; any clearance opens above the board.

    Returns
    -------
    Depths of the cuts in the left and in the right side [mm]; nothing for a butt joint.
    """
    if board.joint == "butt":
        return maker.zero, maker.zero
    left = _machine_side(maker, box, board, box.left, "left")
    return left, _machine_side(maker, box, board, box.right, "right")


def _machine_side(maker: Maker, box: Box, board: Board, side: Outline, hand: Hand) -> Dim:
    place = side.place.at(_cut_name(board))
    at, wide = maker.zero, board.outline.thickness
    if board.joint == "dado":
        at = maker.machined(place, "at", board.underside - box.foot)
        wide = wide + maker.style("dado_clearance")
    width = maker.machined(place, "width", wide, tool="router")
    if board.joint == "dado":
        maker.board_fit(place, width, board.outline.thickness)
    depth = maker.machined(place, "depth", end_depth(maker, board.joint))
    cut = Cut(
        path=place.path,
        kind="dado" if board.joint == "dado" else "rabbet",
        face="A",
        runs="w",
        datum="l1" if _at_head(board) else "l0",
        at=at,
        width=width,
        depth=depth,
        start=None,
        end=None,
        asked_by=maker.path(f"joint_{board.name.replace('.', '_')}_{hand}"),
        setup=cross_dado_setup(
            maker.house, place, at=at, width=width, depth=depth, name=board.joint
        ),
    )
    maker.machine(side.path, cut)
    return depth


def _pocket_face(maker: Maker, board: Board) -> Face:
    """The face the pockets go into: one that does not show, where there is one.

    The underside of a wall case shows unless a skirt hides it; then the pockets are plugged, or
    go inside the box, behind its doors, as the person chose.
    """
    spec = maker.spec
    bare = underside_shows(spec, board.role) and spec.pockets == "hidden"
    return "A" if bare or _is_before_back(maker, board) else "B"


def _is_before_back(maker: Maker, board: Board) -> bool:
    """Whether a nailer stands in front of a captured back, which then covers its rear face."""
    part = maker.parts[board.outline.path]
    return board.role == "nailer" and maker.spec.back == "grooved" and part.placed.z.value > 0


def _stands_on_bottom(maker: Maker, board: Board) -> bool:
    """Whether the driver must keep from the board below instead of the one above."""
    return board.name == "nailer_bottom" and _is_before_back(maker, board)


def _is_bradded(maker: Maker, board: Board) -> bool:
    """Whether a butted board has no face for pockets: the room sees one, the back covers one."""
    shows = maker.spec.front is None and maker.spec.pockets == "hidden"
    return board.joint == "butt" and shows and _is_before_back(maker, board)


def _pocket_start(maker: Maker, board: Board) -> Dim | None:
    """Where the pockets of a bottom begin; None: at its front edge.

    Behind the toe board, where a driver has no room in front of it.
    """
    if board.role != "bottom" or maker.path("toe_board") not in maker.parts:
        return None
    if _pocket_face(maker, board) == "A":
        return None
    # Half the head of a driver, on the far side of the pocket: about an inch (common practice).
    needed = maker.style("pocket_edge") + 2 * maker.style("driver_room")
    if not maker.place.over(needed, toe_setback(maker), "no room for a driver at the toe board"):
        return None
    behind = maker.parts[maker.path("toe_board")].finished.thickness
    return toe_setback(maker) + behind + maker.style("driver_room")


def _pocket_reach(maker: Maker, board: Board) -> Dim | None:
    """Stretch of a board's end that takes pockets.

    In front of a groove for the back; and away from the board that an upright one meets, so that
    a driver passes it.
    """
    upright = ("crown_stretcher", "front_rail", "toe_board")
    if board.name in upright or _is_before_back(maker, board):
        return board.outline.width - maker.style("driver_room")
    part = maker.parts[board.outline.path]
    nailer = maker.parts.get(maker.path("nailer_bottom"))
    if nailer and board.role == "bottom" and _pocket_face(maker, board) == "A":
        reach = part.placed.z - nailer.placed.z - nailer.finished.thickness
        close = maker.place.over(maker.style("pocket_edge") * 3, reach, "so shallow a bottom")
        return reach - maker.style("driver_room") if close else reach
    groove = next((f for f in part.features if isinstance(f, Cut) and f.kind == "groove"), None)
    return None if groove is None else board.outline.width - groove.at - groove.width


def join_board(maker: Maker, box: Box, board: Board) -> tuple[str, str]:
    """Record the joints of a horizontal with both sides; bore pockets where they hold it.

    Returns
    -------
    Paths of the joints with the left and with the right side.
    """
    path = board.outline.path
    count = 0
    if board.joint == "butt" and not _is_bradded(maker, board):
        count = bore_pockets(
            maker,
            path,
            _pocket_face(maker, board),
            ("l0", "l1"),
            along="w1" if _stands_on_bottom(maker, board) else "w0",
            start=_pocket_start(maker, board),
            reach=_pocket_reach(maker, board),
        )
    return (
        _join_side(maker, box, board, "left", count),
        _join_side(maker, box, board, "right", count),
    )


def _join_side(maker: Maker, box: Box, board: Board, hand: Hand, pockets: int) -> str:
    side = box.left if hand == "left" else box.right
    path = board.outline.path
    lies = maker.parts[path].placed.orientation
    end: Plane = "l0" if (hand == "left") == (lies.length.sign > 0) else "l1"
    name = f"joint_{board.name.replace('.', '_')}_{hand}"
    glue = Fastening("glue", 1, None, (path,), side.path)
    if board.joint == "butt":
        length = maker.house.pocket_screw(maker.spec.box_stock)
        screws = Fastening("pocket screw", pockets, length, (path,), side.path)
        hold = screws if pockets else _brads(maker, box, board, side, name)
        return maker.join(name, "butt", (path, end), (side.path, "t1"), fastenings=(hold, glue))
    cut = f"{side.path}.{_cut_name(board)}"
    form: JointForm = "dado" if board.joint == "dado" else "rabbet"
    held = (
        (glue,) if hand in maker.spec.finished else (glue, _brads(maker, box, board, side, name))
    )
    joint = maker.join(name, form, (path, end), (side.path, "t0", cut), fastenings=held)
    lower: Plane = "t0" if lies.thickness.sign > 0 else "t1"
    upper: Plane = "t1" if lies.thickness.sign > 0 else "t0"
    if form == "rabbet" and not _at_head(board):
        maker.join(f"{name}_seat", form, (path, upper), (side.path, "l1", cut))
    else:
        maker.join(f"{name}_seat", form, (path, lower), (side.path, "l0", cut))
    return joint


def _brads(maker: Maker, box: Box, board: Board, side: Outline, joint: str) -> Fastening:
    """Brads through the outside of a side, to hold a glued joint while it dries."""
    outline = board.outline
    half = outline.thickness / 2
    if board.role == "nailer":
        line: tuple[Plane, Dim] = ("w1", maker.parts[outline.path].placed.z + half)
    else:
        up = board.underside - box.foot if box.foot is not maker.zero else board.underside
        line = ("l0", up + half if up is not maker.zero else half)
    return fastener_row(
        maker, joint, outline.width, "brads across a board",
        through=side.path, into=outline.path, screw=maker.house.screw("brad"), line=line,
    )  # fmt: skip
