"""What `cut --problem` prints for people: the settings with their cuts, then sheet by sheet."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping

from casewright.breakdown import CAUTION_WORDS, DANGERS, FACE_WORDS, METHOD_WORDS
from casewright.cli.count_texts import Tape
from casewright.cutting.problem import Match
from casewright.cutting.solution import Reason, Rect, Status, Unplaced, leaves
from casewright.cutting.steps import Piece, Step
from casewright.dims.count_text import counted
from casewright.job.bare_cutting import CutAnswer
from casewright.job.patience import Ending
from casewright.job.unplaced import Remedy, remedy_of
from casewright.packet.cut_words import settings_words, time_words, work_minutes

__all__ = ["answer_lines"]

_WORTH = 5
"""Minutes saved from which more stock is worth a word."""

_ENDINGS = {
    Ending.CONTENT: "",
    Ending.TIME: "The time was over: this is the best plan found until then.",
    Ending.ASKED: "Stopped on request: this is the best plan found until then.",
}


def answer_lines(answer: CutAnswer) -> Iterator[str]:
    """The sum, what did not fit, the cuts by setting, and what lies on each sheet."""
    tape = Tape(answer.task.problem.unit)
    yield from _sum_lines(answer, tape)
    for entry in answer.solution.unplaced:
        yield _unplaced_line(answer, entry, tape)
    steps = {step.number: step for step in answer.order.steps}
    for card in answer.order.cards:
        yield ""
        how = f"{METHOD_WORDS[card.method]}, {FACE_WORDS[card.method]}"
        yield f"SETTING {card.number}: {tape.text(card.setting)}, {how}"
        for number in card.steps:
            yield from _step_lines(steps[number], tape)
    yield from _sheet_lines(answer, tape)


def _noun(answer: CutAnswer) -> str:
    return "board" if answer.task.is_lengths else "sheet"


def _sum_lines(answer: CutAnswer, tape: Tape) -> Iterator[str]:
    solution, noun = answer.solution, _noun(answer)
    if not answer.task.problem.parts:
        yield "nothing to cut: there are no parts in the problem"
        return
    if not solution.tree:
        yield f"no {noun} is cut: none of the parts fits; {tape.note}"
        return
    used = Counter(tree.stock for tree in solution.tree)
    of = ", ".join(f"{count} of {stock}" for stock, count in used.items())
    cost = f", cost {solution.cost}" if solution.bound.measure == "price" else ""
    part = " for what fits" if solution.unplaced and solution.status is not Status.SHORT else ""
    yield (
        f"{counted(len(solution.tree), noun)}{f' ({of})' if of else ''}{cost}: "
        f"{solution.verdict}{part}; {tape.note}"
    )
    if answer.order.steps:
        yield (
            f"{counted(len(answer.order.steps), 'cut')} at "
            f"{settings_words(answer.work, len(answer.order.cards))}, about "
            f"{time_words(work_minutes(answer.work))} at the saws for someone in practice"
        )
    yield from _trade_lines(answer)
    yield from _movement_lines(answer)
    if _ENDINGS[answer.ending]:
        yield _ENDINGS[answer.ending]
    if answer.order.steps and not answer.task.has_shop:
        yield (
            "CAUTION  The problem does not say what your saws reach and what you can lift, so "
            'nothing is out of reach here: say it under "shop", or judge each cut yourself. '
            "The makers' instructions come first."
        )


def _trade_lines(answer: CutAnswer) -> Iterator[str]:
    if answer.trade is None or answer.trade.easiest is None:
        return
    fewest, easiest = answer.trade.fewest, answer.trade.easiest
    saved = work_minutes(fewest.work) - work_minutes(easiest.work)
    more = len(easiest.solution.tree) - len(fewest.solution.tree)
    if saved >= _WORTH and more > 0:
        yield (
            f"{counted(more, _noun(answer))} more would save about {time_words(saved)}: worth it "
            f"where {'one costs' if more == 1 else 'they cost'} you less than that time"
        )


def _movement_lines(answer: CutAnswer) -> Iterator[str]:
    if answer.made is None:
        return
    moved, noun = answer.made.movement, _noun(answer)
    yield (
        f"Against the last plan: {moved.kept} kept, {moved.moved} moved, {moved.added} added, "
        f"{moved.dropped} dropped"
    )
    for number, origin in enumerate(answer.made.origins, 1):
        if origin is None:
            yield f"  {noun} {number} is new"
        elif origin + 1 != number:
            yield f"  {noun} {number} was {noun} {origin + 1}"


def _unplaced_line(answer: CutAnswer, entry: Unplaced, tape: Tape) -> str:
    miss = _miss_text(remedy_of(answer.task.problem, entry), tape)
    fixes = {
        Reason.AGAINST_GRAIN: 'it fits if it may be turned: "rotate": true',
        Reason.DEFECTS: f"it fits a {_noun(answer)} without that defect",
        Reason.NO_STOCK: "it needs more stock, or a larger piece of it",
        Reason.TOO_LARGE: miss,
        Reason.MATCHED: f"together {miss}",
    }
    reason = entry.reason
    return f"LEFT OVER  {entry.count} of {entry.part}: {reason.value}; {fixes[reason]}"


def _miss_text(miss: Remedy, tape: Tape) -> str:
    """By how much a part is too large; nothing where that is not what is wrong."""
    over = [
        f"{tape.text(by)} too {word}"
        for by, word in ((miss.over_length, "long"), (miss.over_width, "wide"))
        if by
    ]
    most = tape.size(Rect(0, 0, miss.length, miss.width))
    return f"{' and '.join(over)} for {miss.stock}, which holds {most} at the most"


def _step_lines(step: Step, tape: Tape) -> Iterator[str]:
    edge = f"{step.datum} edge{', as bought' if step.is_factory else ''}"
    gives = "; ".join(_given(piece, tape) for piece in step.leaves)
    yield (
        f"  {step.number:3}  {step.direction} piece {step.piece.name} "
        f"({tape.size(step.piece.rect)}) from its {edge}"
    )
    yield f"       gives {gives}"
    for word, is_danger in (("CAUTION", True), ("BECAUSE", False)):
        told = [CAUTION_WORDS[each] for each in step.cautions if (each in DANGERS) is is_danger]
        if told:
            yield f"       {word}  {' '.join(told)}"


def _given(piece: Piece, tape: Tape) -> str:
    if piece.use == "part":
        return f"{piece.name} = {piece.part}.{piece.copy} {tape.size(piece.rect)}"
    if piece.use == "waste":
        return "waste"
    word = " to keep" if piece.use == "offcut" else ""
    return f"{piece.name}{word} {tape.size(piece.rect)}"


def _sheet_lines(answer: CutAnswer, tape: Tape) -> Iterator[str]:
    kept = {
        (step.sheet, piece.rect): piece.name
        for step in answer.order.steps
        for piece in step.leaves
        if piece.use == "offcut"
    }
    cuts = Counter(step.sheet for step in answer.order.steps)
    turned = {(placed.part, placed.copy) for placed in answer.solution.placements if placed.turned}
    for tree in answer.solution.tree:
        made = "cut already" if tree.sheet in answer.done else counted(cuts[tree.sheet], "cut")
        size = tape.size(tree.root.rect)
        yield ""
        yield f"{_noun(answer).upper()} {tree.sheet + 1}: {tree.stock} {size}, {made}"
        for leaf in leaves(tree.root):
            at = f"{tape.size(leaf.rect)} at {tape.text(leaf.rect.x)}, {tape.text(leaf.rect.y)}"
            if leaf.use == "part":
                lies = ", turned" if (leaf.part, leaf.copy) in turned else ""
                yield f"  {leaf.part}.{leaf.copy}  {at}{lies}"
            elif leaf.use == "offcut":
                name = kept.get((tree.sheet, leaf.rect), f"{tree.sheet + 1}")
                yield f"  left, to keep: {name}  {at}"
        yield from _match_lines(answer, tree.sheet)


def _match_lines(answer: CutAnswer, sheet: int) -> Iterator[str]:
    """The matches of a sheet; their parts stay in the order in which they lie."""
    parts = {placed.part for placed in answer.solution.placements if placed.sheet == sheet}
    counts = {part.id: part.count for part in answer.task.problem.parts}
    for match in answer.task.problem.matches:
        if parts.intersection(match.parts):
            yield f"  the grain runs through {match.id}: {_row_text(match, counts)}"


def _row_text(match: Match, counts: Mapping[str, int]) -> str:
    names: list[str] = []
    for one in match.of:
        if isinstance(one, Match):
            names.append(f"({_row_text(one, counts)})")
        else:
            names += (f"{one}.{copy}" for copy in range(1, counts[one] + 1))
    way = "side by side from the bottom" if match.way == "across" else "in line from the left"
    return f"{', '.join(names)} {way}"
