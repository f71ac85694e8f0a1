"""Joints of the boards of a box: with its sides, and along the faces they stand against."""

from __future__ import annotations

from casewright.casework.box import Board, Box
from casewright.casework.joinery import join_board
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker

__all__ = ["join_all"]


def join_all(maker: Maker, box: Box) -> None:
    """Every board with the sides, and those glued along a face with that."""
    for board in box.boards:
        join_board(maker, box, board)
    by_name = {board.name: board for board in box.boards}
    head = by_name.get("top") or by_name.get("rear_stretcher")
    front_head = by_name.get("front_stretcher")
    for name, edge, target, plane in (
        ("nailer_top", "w1", head, "t1"),
        ("nailer_bottom", "w0", box.bottom, "t1"),
        ("crown_stretcher", "w1", head, "t1"),
        ("front_rail", "w1", None if maker.spec.framed else front_head, "t1"),
        ("front_rail", "w0", box.bottom if maker.spec.lid == "hinged" else None, "t1"),
        ("toe_board", "w1", box.bottom, "t0"),
    ):
        if name in by_name and target is not None:
            _join_edge(maker, by_name[name], edge == "w1", target, plane == "t1")


def _join_edge(maker: Maker, board: Board, upper: bool, target: Board, inside: bool) -> None:
    path, other = board.outline.path, target.outline.path
    maker.join(
        f"joint_{board.name}_edge", "butt",
        (path, "w1" if upper else "w0"), (other, "t1" if inside else "t0"),
        fastenings=(Fastening("glue", 1, None, (path,), other),),
    )  # fmt: skip
