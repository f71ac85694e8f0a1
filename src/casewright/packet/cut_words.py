"""What is known of a plan of cuts, in the words of the person at the saw."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import ceil

from casewright.breakdown import FACE_WORDS, METHOD_WORDS, Piece, SawCard, StockPlan
from casewright.casework.cautions import CAUTIONS
from casewright.cutting.work import Work
from casewright.dims.count_text import counted
from casewright.outputs.blocks import Block, Callout, Caution, Paragraph
from casewright.outputs.inlines import Inline, Strong

__all__ = [
    "how_it_is_cut",
    "plan_notes",
    "plan_summary",
    "settings_words",
    "time_words",
    "triangle_words",
    "work_minutes",
]

_STEP = 5  # to which times are rounded [min]
_SETTINGS = {
    "straightedge": "Straightedge",
    "fence": "Fence",
    "carrier": "Fence with push block",
    "sled": "Stop",
}

_BASE = "; a base that this saw has trimmed shows the line"


def plan_summary(plan: StockPlan) -> str:
    """How many, how sure that is, cuts, settings, time, and what more stock would save."""
    cuts, settings = len(plan.order.steps), len(plan.order.cards)
    kept = f" and {counted(len(plan.offcuts), 'offcut')} on hand" if plan.offcuts else ""
    words = (
        f"{counted(plan.count, _noun(plan))}{kept} ({plan.verdict}); {counted(cuts, 'cut')} at "
        f"{settings_words(plan.work, settings)}, about {time_words(work_minutes(plan.work))} at "
        "the saws for someone in practice."
    )
    return f"{words} {_trade(plan)}".rstrip()


def plan_notes(plan: StockPlan) -> Iterator[Block]:
    """How strips are milled; where the grain runs on; what must be measured first."""
    yield from _matches(plan)
    if plan.milling is not None:
        yield Callout("look", plan.milling.words, "Milled strips")
        yield Caution(CAUTIONS["resaw" if plan.milling.yields > 1 else "plane_strips"], "Milling")
    if plan.waiting_sheets:
        *most, last = (str(number + 1) for number in plan.waiting_sheets)
        numbers = (
            f"{_noun(plan)}s {', '.join(most)} and {last}" if most else f"{_noun(plan)} {last}"
        )
        them = "them" if most else "it"
        yield Callout(
            "measure first",
            f"Parts just fit on {numbers}. Measure {them} and the kerf before the first cut, and "
            "plan again if either is off.",
            "Just fits",
        )


def _matches(plan: StockPlan) -> Iterator[Block]:
    """Which pieces the grain runs through; told once for each plan."""
    rows = []
    for match in plan.problem.matches:
        names = (plan.pieces[part].mark or plan.pieces[part].title for part in match.parts)
        rows.append(", ".join(names))
    if rows:
        words = (
            f"The grain runs through {'; through '.join(rows)}: each set comes out of one piece, "
            "and stays in its order. Draw a triangle across it before it is parted, on the face "
            "that will show, as on the drawing; it tells at the bench which belongs where."
        )
        yield Callout("look", words, "Matching grain")


def how_it_is_cut(cards: Sequence[SawCard]) -> Paragraph:
    """Each way of cutting that is used, once."""
    used = dict.fromkeys(card.method for card in cards)
    words: list[Inline] = []
    for method in used:
        told = f"{METHOD_WORDS[method]}, {FACE_WORDS[method]}"
        told += _BASE if method == "straightedge" else ""
        words += [". " if words else "", Strong(_SETTINGS[method]), f": {told}"]
    return Paragraph((*words, "."))


def triangle_words(pieces: Sequence[Piece]) -> str:
    """What is done before matched pieces are parted: their order can be seen ever after."""
    names = ", ".join(piece.mark or piece.title for piece in pieces)
    return f"first draw the triangle across it: the grain runs through {names}"


def time_words(minutes: int) -> str:
    """A time no finer than it is known: '2 h 25 min'."""
    rounded = max(_STEP, round(minutes / _STEP) * _STEP)
    hours, rest = divmod(rounded, 60)
    if not hours:
        return f"{rest} min"
    return f"{hours} h {rest} min" if rest else f"{hours} h"


def work_minutes(work: Work) -> int:
    """Time at the saws alone, without the price of what takes none [min]."""
    return ceil(work.time / 100)


def settings_words(work: Work, settings: int) -> str:
    """How many settings there are, and how few any order of the same cuts needs."""
    least = work.least_settings
    bound = "the fewest" if least == settings else f"at least {least}"
    return f"{counted(settings, 'setting')} ({bound} for these cuts)"


def _trade(plan: StockPlan) -> str:
    if plan.trade is None or plan.trade.easiest is None:
        return ""
    fewest, easiest = plan.trade.fewest, plan.trade.easiest
    saved = work_minutes(fewest.work) - work_minutes(easiest.work)
    more = len(easiest.solution.tree) - len(fewest.solution.tree)
    if saved <= 0 or more <= 0:
        return ""
    count = f"One more {_noun(plan)}" if more == 1 else f"{more} more {_noun(plan)}s"
    return f"{count} would save about {time_words(saved)}."


def _noun(plan: StockPlan) -> str:
    return {"sheets": "sheet", "boards": "board", "strips": "strip"}[plan.kind]
