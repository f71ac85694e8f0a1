"""Where each plan and each sheet stands in the packet, and where each part is cut from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from casewright.breakdown import Breakdown, Piece, StockPlan
from casewright.cutting.solution import SheetTree
from casewright.dims import Dim
from casewright.room.model import Room

__all__ = [
    "SOLID",
    "CuttingPlace",
    "cutting_places",
    "plan_anchor",
    "rough_lengths",
    "sheet_anchor",
    "sheet_name",
    "sheet_places",
]

SOLID = "cutting:solid"
"""Anchor of the section for boards and the strips that come out of them."""

_NOUNS = {"sheets": "sheet", "boards": "board", "strips": "strip"}


def plan_anchor(plan: StockPlan) -> str:
    """Where the cuts of a plan begin."""
    return f"cutting:{plan.path}"


def sheet_anchor(plan: StockPlan, tree: SheetTree) -> str:
    """Where a sheet is drawn."""
    return f"{plan_anchor(plan)}:{tree.sheet + 1}"


def sheet_name(plan: StockPlan, tree: SheetTree) -> str:
    """'sheet 2', 'strip 14', 'sheet 3, offcut 1f2e3d4c'."""
    kept = f", {tree.stock.replace('.', ' ')}" if plan.offered[tree.stock].kept else ""
    return f"{_NOUNS[plan.kind]} {tree.sheet + 1}{kept}"


@dataclass(frozen=True, slots=True)
class CuttingPlace:
    """A section of cuts.

    Parameters
    ----------
    title
        What is cut there.
    pieces
        Paths of the parts that come out of it, of strip blanks those they are for.
    """

    title: str
    pieces: frozenset[str]


def cutting_places(room: Room, breakdown: Breakdown) -> dict[str, CuttingPlace]:
    """The sections of cuts by their anchors."""
    found: dict[str, CuttingPlace] = {}
    solid: set[str] = set()
    for plan in breakdown.plans:
        pieces = frozenset(path for piece in plan.pieces.values() for path in _serves(piece))
        if plan.solution.tree and plan.kind == "sheets":
            title = room.spec.stock[plan.stock].title
            found[plan_anchor(plan)] = CuttingPlace(title, pieces)
        elif plan.solution.tree:
            solid |= pieces
    if solid:
        found[SOLID] = CuttingPlace("boards and strips", frozenset(solid))
    return found


def _serves(piece: Piece) -> tuple[str, ...]:
    return (piece.id,) if piece.kind == "part" else piece.serves


def sheet_places(breakdown: Breakdown) -> Mapping[str, tuple[str, str]]:
    """For every part that is cut now: the sheet it comes from and where that is drawn."""
    return {
        piece.id: (sheet_name(plan, tree), sheet_anchor(plan, tree))
        for plan in breakdown.plans
        for tree in plan.solution.tree
        for piece, _ in plan.on_sheet(tree)
        if piece.kind == "part"
    }


def rough_lengths(breakdown: Breakdown) -> Mapping[str, Dim]:
    """For every part that is cut long and sawn to length when it is fitted: what it is cut to."""
    return {
        piece.id: piece.long
        for plan in breakdown.plans
        for piece in plan.pieces.values()
        if piece.kind == "part" and piece.rough
    }
