"""Where each plan and each sheet stands in the packet, and where each part is cut from."""

from __future__ import annotations

from collections.abc import Mapping

from casewright.breakdown import Breakdown, StockPlan
from casewright.cutting.solution import SheetTree
from casewright.room.model import Room

__all__ = ["SOLID", "cutting_anchors", "plan_anchor", "sheet_anchor", "sheet_name", "sheet_places"]

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
    """'sheet 2', 'strip 14'."""
    return f"{_NOUNS[plan.kind]} {tree.sheet + 1}"


def cutting_anchors(room: Room, breakdown: Breakdown) -> dict[str, str]:
    """The sections of cuts, with what is cut there."""
    plans = [plan for plan in breakdown.plans if plan.solution.tree]
    found = {
        plan_anchor(plan): room.spec.stock[plan.stock].title
        for plan in plans
        if plan.kind == "sheets"
    }
    if len(found) < len(plans):
        found[SOLID] = "boards and strips"
    return found


def sheet_places(breakdown: Breakdown) -> Mapping[str, tuple[str, str]]:
    """For every part that is cut now: the sheet it comes from and where that is drawn."""
    return {
        piece.id: (sheet_name(plan, tree), sheet_anchor(plan, tree))
        for plan in breakdown.plans
        for tree in plan.solution.tree
        for piece, _ in plan.on_sheet(tree)
        if piece.kind == "part"
    }
