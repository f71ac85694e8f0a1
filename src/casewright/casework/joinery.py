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
        clearance = maker.style("dado_clearance")
        wide = wide + clearance if clearance.value else wide
    width = maker.machined(place, "width", wide)
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
    return "A" if underside_shows(spec, board.role) and spec.pockets == "hidden" else "B"


def _pocket_reach(maker: Maker, board: Board) -> Dim | None:
    """Stretch of a board's end that takes pockets.

    In front of a groove for the back; and away from the board that an upright one meets, so that
    a driver passes it.
    """
    if board.name in ("crown_stretcher", "toe_board"):
        return board.outline.width - maker.style("driver_room")
    if board.role == "bottom" and _pocket_face(maker, board) == "A":
        return board.outline.width - board.outline.thickness  # the bottom nailer stands there
    part = maker.parts[board.outline.path]
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
    if board.joint == "butt":
        count = bore_pockets(
            maker,
            path,
            _pocket_face(maker, board),
            ("l0", "l1"),
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
        screws = Fastening(
            "pocket screw", pockets, maker.house.screw("pocket_screw"), (path,), side.path
        )
        return maker.join(name, "butt", (path, end), (side.path, "t1"), fastenings=(screws, glue))
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
    middle = board.underside - box.foot if box.foot is not maker.zero else board.underside
    thick = outline.thickness / 2
    return fastener_row(
        maker, joint, outline.width, "brads across a board",
        through=side.path, into=outline.path, screw=maker.house.screw("brad"),
        line=("l0", middle + thick if middle is not maker.zero else thick),
    )  # fmt: skip
