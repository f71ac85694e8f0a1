"""Strips under a board's front edge: nosings against sag, and the skirt that hides pockets."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.casework.box import Board, Box
from casewright.casework.brads import fastener_row, row_marks
from casewright.casework.carcase import Carcase
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker
from casewright.casework.naming import the
from casewright.dims import Dim, Way

__all__ = ["add_nosings", "add_skirt"]


@dataclass(frozen=True, slots=True)
class _Strip:
    """A strip to be cut: its name in the case, role, title, stock and height [mm]."""

    name: str
    role: str
    title: str
    stock: str
    height: Dim


def add_nosings(maker: Maker, box: Box, carcase: Carcase) -> None:
    """Cut a nosing for every shelf, bottom and top included, and glue it under the front edge.

    The bottom's lies on the toe board, which stands back for it. Under a crown the top has its
    stretcher there instead.
    """
    given = maker.spec.nosing
    if given is None:
        return
    height = maker.place.given("nosing_height", given)
    for board in box.boards:
        if _takes_nosing(maker, box, board, height):
            title = f"nosing of {the(board.title)}"
            strip = _Strip(f"nosing.{board.name}", "nosing", title, maker.spec.strip_stock, height)
            _hang(maker, board, carcase, strip)


def _takes_nosing(maker: Maker, box: Box, board: Board, height: Dim) -> bool:
    """Whether a board gets a nosing: it shows its front edge, and there is room under it."""
    if maker.spec.framed and board.role != "fixed shelf":
        return False  # a rail of the frame lies there
    if board.role == "bottom" and maker.spec.skirt is not None:
        return False
    if board.role == "bottom":
        return not maker.place.over(
            height, box.deck, "no nosing under the bottom: it would reach below the floor"
        )
    return board.role == "fixed shelf" or (board.role == "top" and not maker.spec.crown)


def add_skirt(maker: Maker, box: Box, carcase: Carcase) -> None:
    """Close the space under a wall case's bottom in front, so that its pockets do not show.

    It goes in last: before that it would stand in the driver's way.
    """
    if maker.spec.skirt is not None:
        strip = _Strip("skirt", "skirt", "skirt strip", maker.spec.box_stock, box.deck)
        _hang(maker, box.bottom, carcase, strip)


def _hang(maker: Maker, board: Board, carcase: Carcase, strip: _Strip) -> None:
    outline = maker.outline(
        strip.name, strip.stock, carcase.clear_width, strip.height,
        setting=f"{maker.spec.key} {strip.role}", way=Way.NEAREST, length_way=Way.DOWN,
    )  # fmt: skip
    path, above = outline.path, board.outline.path
    maker.add(
        outline, role=strip.role, title=strip.title, lies="+x +y +z",
        at=(
            carcase.left_thickness,
            board.underside - outline.width,
            carcase.depth - outline.thickness,
        ),
        ends=("left", "right", "bottom", "top"), shows=("t1", "w0"), group=strip.role,
    )  # fmt: skip
    name = f"joint_{strip.name.replace('.', '_')}"
    brads = fastener_row(
        maker, name, outline.length, f"brads along the {strip.role}",
        through=above, into=path, screw=maker.house.screw("brad"),
        line=("w0", outline.thickness / 2),
    )  # fmt: skip
    lies = maker.parts[above].placed.orientation
    joint = maker.join(
        name, "face", (path, "w1"),
        (above, "t0" if lies.thickness.sign > 0 else "t1"),
        fastenings=(
            Fastening("glue", 1, None, (path,), above),
            brads,
        ),
    )  # fmt: skip
    behind = _on_toe_board(maker, board, path)
    maker.step(
        "fit", path, "-z",
        f"Glue the {strip.title} under the front edge of {the(board.title)}"
        f"{' and against the toe board' if behind else ''}, flush in front; "
        "brads down through the board, set and filled; wipe off the squeeze-out.",
        joints=(joint, *behind), marks=row_marks(maker, (joint,)), cautions=("brad_points",),
    )  # fmt: skip


def _on_toe_board(maker: Maker, board: Board, path: str) -> tuple[str, ...]:
    """The joint of the bottom's nosing with the toe board, where the two touch."""
    toe, strip = maker.parts.get(maker.path("toe_board")), maker.parts[path]
    if toe is None or board.role != "bottom" or strip.role != "nosing":
        return ()
    face = toe.placed.z + toe.finished.thickness
    if maker.place.over(strip.placed.z, face, "the toe board stands clear of the nosing"):
        return ()
    glue = Fastening("glue", 1, None, (path,), toe.path)
    name = "joint_nosing_toe_board"
    return (maker.join(name, "face", (path, "t0"), (toe.path, "t1"), fastenings=(glue,)),)
