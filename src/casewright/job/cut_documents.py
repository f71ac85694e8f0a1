"""The JSON documents of cutting: the plans of a job, the plan of a bare problem."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from casewright.breakdown import (
    Breakdown,
    InHand,
    JustFit,
    SawCard,
    SawStep,
    StockPlan,
    saw_cards,
    saw_steps,
)
from casewright.buying import trim_spare
from casewright.cutting.codec import fingerprint
from casewright.cutting.solution import Unplaced
from casewright.cutting.solution_codec import rect_json, write_solution
from casewright.cutting.trade import Trade
from casewright.cutting.violations import Violation
from casewright.dims import Dim, Unit, length_json
from casewright.job.bare_cutting import CutAnswer
from casewright.job.cut_file import CutTask
from casewright.job.documents import finding_json, head_json, question_json
from casewright.job.plan_file import PlanFile, is_of
from casewright.job.unplaced import remedy_of
from casewright.job.work_document import work_json
from casewright.packet.cut_words import work_minutes
from casewright.room.model import Room

__all__ = ["answer_document", "cut_document", "verdict_document"]

_Json = dict[str, Any]


def cut_document(room: Room, breakdown: Breakdown) -> _Json:
    """`cut --json`: what can be cut now, what must be bought, and who waits."""
    spec = room.spec
    return {
        **head_json("cut", spec),
        "plans": [_plan(plan, spec.unit) for plan in breakdown.plans],
        "wanted": [
            {
                "stock": plan.stock,
                "kind": plan.kind,
                "counts": dict(plan.counts),
                "spare": _spare(room, plan),
            }
            for plan in breakdown.wanted
        ],
        "waiting": [
            {"part": entry.part, "questions": list(entry.questions)} for entry in breakdown.waiting
        ],
        "questions": [question_json(question) for question in breakdown.questions],
        "findings": [finding_json(finding) for finding in breakdown.findings],
    }


def _spare(room: Room, plan: StockPlan) -> _Json:
    """Boards to buy beyond the plan, by id of its stock."""
    spare = trim_spare(room, plan)
    return {} if spare is None else {spare.item: spare.count}


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
                   for key, value in rect_json(placed.rect).items()},
            }
            for placed in plan.solution.placements
        ],
        "steps": [_step(step, unit) for step in saw_steps(plan)],
        "cards": [_card(card, unit) for card in saw_cards(plan)],
        "matches": [
            {"match": match.id, "pieces": list(match.parts)} for match in plan.problem.matches
        ],
        "just_fit": [_just_fit(fit, unit) for fit in plan.just_fit],
        "work": work_json(plan.work),
        "trade": _trade(plan.trade),
        "from_offcuts": [piece.id for piece in plan.from_offcuts],
        "milling": plan.milling.words if plan.milling else None,
    }  # fmt: skip


def _trade(trade: Trade | None) -> _Json | None:
    """What more stock than the fewest would save; null where it saves nothing."""
    if trade is None or trade.easiest is None:
        return None
    fewest, easiest = trade.fewest, trade.easiest
    return {
        "more": len(easiest.solution.tree) - len(fewest.solution.tree),
        "saved_minutes": work_minutes(fewest.work) - work_minutes(easiest.work),
        "work": work_json(easiest.work),
    }


def _just_fit(fit: JustFit, unit: Unit) -> _Json:
    return {
        "sheet": fit.sheet + 1,
        "side": fit.side,
        "spare": length_json(fit.spare, unit),
        "parts": list(fit.parts),
    }


def _length(dim: Dim, unit: Unit) -> _Json:
    return {**length_json(dim.value, unit), "path": dim.path}


def _card(card: SawCard, unit: Unit) -> _Json:
    return {
        "number": card.number,
        "method": card.method,
        "setting": _length(card.setting, unit),
        "steps": [step.number for step in card.steps],
        "marks": list(card.marks),
    }


def _step(step: SawStep, unit: Unit) -> _Json:
    def in_hand(piece: InHand) -> _Json:
        return {
            "name": piece.name,
            "length": _length(piece.length, unit),
            "width": _length(piece.width, unit),
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
        "setting": _length(step.setting, unit),
        "along": _length(step.along, unit),
        "gives": [in_hand(piece) for piece in step.gives],
        "cautions": list(step.cautions),
    }


def answer_document(answer: CutAnswer) -> _Json:
    """`cut --problem --json`: the plan of a bare problem, whole numbers of its unit throughout.

    It can be read back as a plan, and checked.
    """
    problem, solution = answer.task.problem, answer.solution
    return {
        **write_solution(problem, solution, answer.order),
        "kerf": problem.kerf,
        "stages": "free" if problem.stages is None else problem.stages,
        "ending": answer.ending.value,
        "work": work_json(answer.work),
        "trade": _trade(answer.trade),
        "unplaced": [_unplaced(answer, entry) for entry in solution.unplaced],
        "last": _last(answer),
    }


def _unplaced(answer: CutAnswer, entry: Unplaced) -> _Json:
    miss = remedy_of(answer.task.problem, entry)
    nearest = {
        "stock": miss.stock, "l": miss.length, "w": miss.width,
        "over_l": miss.over_length, "over_w": miss.over_width,
    }  # fmt: skip
    return {
        "part": entry.part,
        "count": entry.count,
        "reason": entry.reason.value,
        "nearest": nearest if miss.stock else None,
    }


def _last(answer: CutAnswer) -> _Json | None:
    """How far a plan moved from the last one; null where there was none."""
    made = answer.made
    if made is None:
        return None
    moved = made.movement
    return {
        "cut": sorted(answer.done),
        "origins": list(made.origins),
        "kept": moved.kept,
        "moved": moved.moved,
        "added": moved.added,
        "dropped": moved.dropped,
    }


def verdict_document(task: CutTask, plan: PlanFile, breaches: Sequence[Violation]) -> _Json:
    """`verify --json`: whether a plan is sound, and each breach; sheets from 0."""
    return {
        "schema": "casewright/verify/1",
        "job": None,
        "fingerprint": fingerprint(task.problem),
        "sound": not breaches,
        "same_problem": is_of(task, plan),
        "has_steps": plan.order is not None,
        "breaches": [
            {
                "breach": breach.breach.value,
                "says": breach.says,
                "sheet": breach.sheet,
                "part": breach.part or None,
            }
            for breach in breaches
        ],
    }
