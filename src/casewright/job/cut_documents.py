"""JSON documents of cutting: the plans of a job, and the answer to a bare problem."""

from __future__ import annotations

import hashlib
from dataclasses import asdict
from fractions import Fraction
from typing import Any

from casewright.breakdown import (
    Breakdown,
    InHand,
    SawCard,
    SawStep,
    StockPlan,
    saw_cards,
    saw_steps,
)
from casewright.cutting.problem import Problem
from casewright.cutting.solution import Leaf, Node, Rect, Solution
from casewright.dims import Unit, length_json
from casewright.job.documents import finding_json, head_json, question_json
from casewright.room.specs import JobSpec

__all__ = ["cut_document", "solution_document"]

_Json = dict[str, Any]


def solution_document(problem: Problem, solution: Solution) -> _Json:
    """`cut --problem FILE --json`: whole numbers of the problem's unit throughout."""
    return {
        "schema": "casewright/solution/1",
        "job": None,
        "fingerprint": hashlib.sha256(repr(problem).encode()).hexdigest()[:12],
        "unit": problem.unit,
        "placements": [
            {
                "part": placed.part,
                "copy": placed.copy,
                "sheet": placed.sheet,
                **_rect(placed.rect),
                "turned": placed.turned,
            }
            for placed in solution.placements
        ],
        "tree": [
            {"sheet": tree.sheet, "stock": tree.stock, "root": _node(tree.root)}
            for tree in solution.tree
        ],
        "cards": [{**asdict(card), "sheets": list(card.sheets)} for card in solution.cards],
        "cost": solution.cost,
        "bound": {
            "value": solution.bound.value,
            "scope": solution.bound.scope,
            "measure": solution.bound.measure,
        },
        "status": solution.status.value,
        "unplaced": [
            {"part": entry.part, "count": entry.count, "reason": entry.reason.value}
            for entry in solution.unplaced
        ],
    }


def _rect(rect: Rect) -> _Json:
    return {"x": rect.x, "y": rect.y, "l": rect.length, "w": rect.width}


def _node(node: Node) -> _Json:
    if isinstance(node, Leaf):
        return {**_rect(node.rect), "use": node.use, "part": node.part, "copy": node.copy}
    return {
        **_rect(node.rect),
        "direction": node.direction,
        "cuts": list(node.cuts),
        "pieces": [_node(piece) for piece in node.pieces],
    }


def cut_document(spec: JobSpec, breakdown: Breakdown) -> _Json:
    """`cut --json`: what can be cut now, what must be bought, and who waits."""
    return {
        **head_json("cut", spec),
        "plans": [_plan(plan, spec.unit) for plan in breakdown.plans],
        "wanted": [
            {"stock": plan.stock, "kind": plan.kind, "counts": dict(plan.counts)}
            for plan in breakdown.wanted
        ],
        "waiting": [
            {"part": entry.part, "questions": list(entry.questions)} for entry in breakdown.waiting
        ],
        "questions": [question_json(question) for question in breakdown.questions],
        "findings": [finding_json(finding) for finding in breakdown.findings],
    }


def _plan(plan: StockPlan, unit: Unit) -> _Json:
    bound = plan.solution.bound
    return {
        "stock": plan.stock,
        "kind": plan.kind,
        "counts": dict(plan.counts),
        "status": plan.solution.status.value,
        "bound": {"value": bound.value, "scope": bound.scope, "measure": bound.measure},
        "placements": [
            {
                "piece": placed.part,
                "copy": placed.copy,
                "sheet": placed.sheet + 1,
                "turned": placed.turned,
                **{key: length_json(plan.length(value), unit)
                   for key, value in _rect(placed.rect).items()},
            }
            for placed in plan.solution.placements
        ],
        "steps": [_step(step, unit) for step in saw_steps(plan)],
        "cards": [_card(card, unit) for card in saw_cards(plan)],
        "just_fit": [
            {
                "sheet": fit.sheet + 1,
                "side": fit.side,
                "spare": length_json(fit.spare, unit),
                "parts": list(fit.parts),
            }
            for fit in plan.just_fit
        ],
        "from_offcuts": [piece.id for piece in plan.from_offcuts],
        "milling": plan.milling.words if plan.milling else None,
    }  # fmt: skip


def _card(card: SawCard, unit: Unit) -> _Json:
    return {
        "number": card.number,
        "method": card.method,
        "setting": length_json(card.setting, unit),
        "steps": [step.number for step in card.steps],
        "marks": list(card.marks),
    }


def _step(step: SawStep, unit: Unit) -> _Json:
    def length(value: Fraction) -> Any:
        return length_json(value, unit)

    def in_hand(piece: InHand) -> _Json:
        return {
            "name": piece.name,
            "length": length(piece.length),
            "width": length(piece.width),
            "use": piece.use,
            "part": piece.piece.id if piece.piece else None,
        }

    return {
        "number": step.number,
        "card": step.card,
        "sheet": step.sheet,
        "takes": in_hand(step.takes),
        "direction": step.direction,
        "method": step.method,
        "datum": step.datum,
        "factory_edge": step.is_factory,
        "setting": length(step.setting),
        "along": length(step.along),
        "gives": [in_hand(piece) for piece in step.gives],
        "cautions": list(step.cautions),
    }
