"""What `cut` prints for people: which sheets, then every setting with its cuts."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.breakdown import (
    EDGE_WORDS,
    FACE_WORDS,
    METHOD_WORDS,
    Breakdown,
    InHand,
    SawStep,
    StockPlan,
    saw_cards,
)
from casewright.buying import TrimSpare, trim_spare
from casewright.dims import Unit, reading_text, shop_text
from casewright.dims.count_text import counted
from casewright.packet.cut_words import plan_summary, triangle_words
from casewright.room.model import Room
from casewright.room.specs import JobSpec

__all__ = ["cut_lines"]

_NOUNS = {"sheets": "sheet", "boards": "board", "strips": "strip"}


def cut_lines(breakdown: Breakdown, room: Room) -> Iterator[str]:
    """What to buy, what waits, and the cuts in the order of work."""
    spec = room.spec
    for plan in breakdown.wanted:
        yield _need(plan, spec)
        if (spare := trim_spare(room, plan)) is not None:
            yield f"      and {_spare(plan, spare, spec.unit)}"
    for question in breakdown.questions:
        yield f"ASK   {question.needs}: {question.because}"
        yield f"      {question.how}"
    for finding in breakdown.findings:
        yield f"{finding.severity.value.upper()}  {finding.path}: {finding.says}"
    if breakdown.waiting:
        asked = sorted({path for entry in breakdown.waiting for path in entry.questions})
        yield f"WAIT  {counted(len(breakdown.waiting), 'part')} until known: {', '.join(asked)}"
    for plan in breakdown.plans:
        yield ""
        yield from _plan_lines(plan, spec)


def _need(plan: StockPlan, spec: JobSpec) -> str:
    """What to buy for a plan; strips are milled from boards in the shop."""
    goods, count = spec.stock[plan.stock].title, counted(plan.count, _NOUNS[plan.kind])
    kept = f"; {counted(len(plan.offcuts), 'offcut')} on hand" if plan.offcuts else ""
    if plan.milling is None and plan.kind == "boards":
        return f"BUY   {count} of {goods}: {_lengths(plan, spec.unit)}{kept}"
    if plan.milling is None:
        return f"BUY   {count} of {goods}{kept}"
    wide = shop_text(plan.milling.width, spec.unit, with_unit=True)
    return f"MILL  {goods}: {count} {wide} wide from {spec.stock[plan.milling.source].title}"


def _spare(plan: StockPlan, spare: TrimSpare, unit: Unit) -> str:
    """Boards beyond the plan, with the reason, as on the buy list."""
    size = shop_text(plan.offered[spare.item].length.value, unit, with_unit=True)
    return f"{spare.count} more of {size}: {spare.why}"


def _lengths(plan: StockPlan, unit: Unit) -> str:
    """How many of each length: '4 of 96", 3 of 120"'."""
    counts = {key: count for key, count in plan.counts.items() if not plan.offered[key].kept}
    sizes = {key: plan.offered[key].length.value for key in counts}
    return ", ".join(
        f"{counts[key]} of {shop_text(sizes[key], unit, with_unit=True)}"
        for key in sorted(counts, key=lambda key: sizes[key])
    )


def _plan_lines(plan: StockPlan, spec: JobSpec) -> Iterator[str]:
    unit = spec.unit
    yield f"{spec.stock[plan.stock].title}"
    yield f"  {plan_summary(plan)}"
    if plan.milling is not None:
        yield f"  {plan.milling.words}"
    for number in plan.waiting_sheets:
        yield f"  {_NOUNS[plan.kind]} {number + 1} just fits: measure it and the kerf first"
    for card in saw_cards(plan):
        setting = reading_text(card.setting.value, unit, with_unit=True)
        yield f"  {setting}, {METHOD_WORDS[card.method]}, {FACE_WORDS[card.method]}"
        for step in card.steps:
            yield from _step_lines(step, unit)


def _step_lines(step: SawStep, unit: Unit) -> Iterator[str]:
    gives = "; ".join(_given(piece, unit) for piece in step.gives)
    edge = f"{'factory' if step.is_factory else 'sawn'} {EDGE_WORDS[step.datum]}"
    yield f"    {step.number:3}  {step.direction} {_taken(step.takes, unit)} from its {edge}"
    if step.matched:
        yield f"         {triangle_words(step.matched)}"
    yield f"         gives {gives}"
    for caution in step.dangers:
        yield f"         CAUTION  {caution}"


def _size(piece: InHand, unit: Unit) -> str:
    return f"{reading_text(piece.length.value, unit)} x {reading_text(piece.width.value, unit)}"


def _taken(piece: InHand, unit: Unit) -> str:
    return f"piece {piece.name} ({_size(piece, unit)})"


def _given(piece: InHand, unit: Unit) -> str:
    if piece.piece is not None:
        name = f"{piece.piece.mark} {piece.piece.title}".strip()
        return f"{name} {_size(piece, unit)}"
    if piece.use == "waste":
        return "waste"
    word = "to keep" if piece.use == "offcut" else ""
    return f"{piece.name} {word} {_size(piece, unit)}".replace("  ", " ")
