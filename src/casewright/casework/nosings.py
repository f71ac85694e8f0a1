"""Nosings: solid strips under the front edges of a bookcase's shelves, against sag."""

from __future__ import annotations

from casewright.casework.box import Board, Box
from casewright.casework.carcase import Carcase
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker
from casewright.casework.spacing import spaced
from casewright.dims import Dim, Way

__all__ = ["add_nosings"]


def add_nosings(maker: Maker, box: Box, carcase: Carcase) -> None:
    """Cut a nosing for every shelf but the lowest and glue it under the front edge."""
    given = maker.spec.nosing
    if given is None:
        return
    height = maker.place.given("nosing_height", given)
    for board in box.boards:
        if board.role in ("top", "fixed shelf"):
            _add(maker, board, carcase, height)


def _add(maker: Maker, board: Board, carcase: Carcase, height: Dim) -> None:
    outline = maker.outline(
        f"nosing.{board.name}", maker.spec.strip_stock, carcase.clear_width, height,
        setting=f"{maker.spec.key} nosings", way=Way.NEAREST, length_way=Way.DOWN,
    )  # fmt: skip
    path, shelf = outline.path, board.outline.path
    maker.add(
        outline, role="nosing", title=f"nosing of the {board.title}", lies="+x +y +z",
        at=(
            carcase.left_thickness,
            board.underside - outline.width,
            carcase.depth - outline.thickness,
        ),
        ends=("left", "right", "bottom", "top"), shows=("t1", "w0"), group="nosings",
    )  # fmt: skip
    row = spaced(
        outline.place, outline.length, maker.style("brad_spacing"), maker.style("pocket_edge"),
        "brads along a nosing",
    )  # fmt: skip
    lies = maker.parts[shelf].placed.orientation
    joint = maker.join(
        f"joint_nosing_{board.name.replace('.', '_')}", "face", (path, "w1"),
        (shelf, "t0" if lies.thickness.sign > 0 else "t1"),
        fastenings=(
            Fastening("glue", 1, None, (path,), shelf),
            Fastening("brad", len(row), maker.house.screw("brad"), (shelf,), path),
        ),
    )  # fmt: skip
    maker.step(
        "fit", path, "-z",
        f"Glue the nosing under the front edge of the {board.title}, flush in front; brads "
        "down through the board, set and filled; wipe off the squeeze-out.",
        joints=(joint,), cautions=("brad_points",),
    )  # fmt: skip
