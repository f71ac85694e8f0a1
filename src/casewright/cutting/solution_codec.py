"""Cutting plans as JSON: what `cut --problem` writes."""

from __future__ import annotations

from typing import Any

from casewright.cutting.codec import fingerprint
from casewright.cutting.problem import Problem
from casewright.cutting.solution import Leaf, Node, Placement, Rect, Solution
from casewright.cutting.steps import CutPlan, Piece, Step

__all__ = ["rect_json", "write_solution"]


def write_solution(
    problem: Problem, solution: Solution, plan: CutPlan | None = None
) -> dict[str, Any]:
    """The solution as JSON would hold it; with an order of work also its steps.

    Lengths are whole numbers of the problem's unit, x and y from the lower left corner of the
    stock, sheets numbered from 0. `cards` are the settings of the order of work when there is
    one, with the numbers of their steps.
    """
    stock = [tree.stock for tree in solution.tree]
    document: dict[str, Any] = {
        "schema": "casewright/cut/1",
        "job": None,
        "fingerprint": fingerprint(problem),
        "unit": problem.unit,
        "placements": [_placement(placed, stock) for placed in solution.placements],
        "tree": [
            {"sheet": tree.sheet, "stock": tree.stock, "root": _node(tree.root)}
            for tree in solution.tree
        ],
        "cards": _cards(solution, plan),
        "cost": solution.cost,
        "bound": {
            "value": solution.bound.value,
            "scope": solution.bound.scope,
            "measure": solution.bound.measure,
        },
        "gap": solution.gap,
        "status": solution.status.value,
        "verdict": solution.verdict,
        "unplaced": [
            {"part": entry.part, "count": entry.count, "reason": entry.reason.value}
            for entry in solution.unplaced
        ],
    }
    if plan is not None:
        document["steps"] = [_step(step) for step in plan.steps]
    return document


def rect_json(rect: Rect) -> dict[str, int]:
    """A rectangle in the form of plan files: its corner, its length and its width [unit]."""
    return {"x": rect.x, "y": rect.y, "l": rect.length, "w": rect.width}


def _placement(placed: Placement, stock: list[str]) -> dict[str, Any]:
    return {
        "part": placed.part,
        "copy": placed.copy,
        "sheet": placed.sheet,
        "stock": stock[placed.sheet],
        **rect_json(placed.rect),
        "turned": placed.turned,
    }


def _node(node: Node) -> dict[str, Any]:
    if isinstance(node, Leaf):
        label = {"part": node.part, "copy": node.copy} if node.use == "part" else {}
        return {**rect_json(node.rect), "use": node.use, **label}
    pieces = [_node(piece) for piece in node.pieces]
    cuts = list(node.cuts)
    return {**rect_json(node.rect), "direction": node.direction, "cuts": cuts, "pieces": pieces}


def _cards(solution: Solution, plan: CutPlan | None) -> list[dict[str, Any]]:
    if plan is None:
        return [
            {
                "direction": card.direction,
                "setting": card.setting,
                "pieces": card.pieces,
                "sheets": list(card.sheets),
            }
            for card in solution.cards
        ]
    return [
        {
            "number": card.number,
            "method": card.method,
            "setting": card.setting,
            "steps": list(card.steps),
        }
        for card in plan.cards
    ]


def _piece(piece: Piece) -> dict[str, Any]:
    label = {"part": piece.part, "copy": piece.copy} if piece.use == "part" else {}
    return {"name": piece.name, **rect_json(piece.rect), "use": piece.use, **label}


def _step(step: Step) -> dict[str, Any]:
    return {
        "number": step.number,
        "card": step.card,
        "sheet": step.sheet,
        "piece": _piece(step.piece),
        "direction": step.direction,
        "method": step.method,
        "cautions": list(step.cautions),
        "datum": step.datum,
        "factory": step.is_factory,
        "setting": step.setting,
        "along": step.along,
        "leaves": [_piece(piece) for piece in step.leaves],
    }
