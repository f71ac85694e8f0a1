"""Sheets and boards: counted on their cutting plans, parts that wait included."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Literal

from casewright.breakdown import Breakdown, StockPlan
from casewright.buying.line import BuyLine
from casewright.buying.numbers import planned
from casewright.buying.trim_spare import trim_spare
from casewright.buying.words import counted, priced
from casewright.dims import Dim, Given, Told, joined, tell
from casewright.findings import Reckoning
from casewright.room.model import Room
from casewright.stock import EMISSION_LABELS, Board, Sheet

__all__ = ["stock_lines"]


def stock_lines(room: Room, breakdown: Breakdown) -> Iterator[BuyLine]:
    """A line for each sheet stock, and for each length of board."""
    for plan in breakdown.wanted:
        goods = room.spec.stock[plan.stock]
        if isinstance(goods, Sheet) and plan.count:
            yield _sheets(room, plan, goods, breakdown)
        elif isinstance(goods, Board) and plan.kind == "boards":
            yield from _boards(room, plan, goods)


def _sheets(room: Room, plan: StockPlan, goods: Sheet, breakdown: Breakdown) -> BuyLine:
    own = planned(room, plan.stock)
    long, wide = (own.length(_sold(own, goods, name)) for name in ("length", "width"))
    held = {entry.part for entry in breakdown.waiting}
    waiting = sum(piece in held for piece in plan.pieces)
    kept = f" and {counted(len(plan.offcuts), 'offcut')} on hand" if plan.offcuts else ""
    why = f"{_contents(plan)} on {counted(plan.count, 'sheet')}{kept}; {plan.verdict}"
    if waiting:
        why += f"; {waiting} of the parts still wait{'s' * (waiting == 1)} for an answer"
    return BuyLine(
        "sheets", joined("", (f"{goods.title}, ", long, " x ", wide)), goods.key, "pieces",
        Fraction(plan.count),
        Fraction(0), Fraction(1), plan.count, "sheet", why, _parts(plan),
        note=_face(plan) + _note(goods, plan.count), numbers=own.numbers,
    )  # fmt: skip


def _face(plan: StockPlan) -> str:
    """What its face must allow where grain runs through parts."""
    counts = [len(match.parts) for match in plan.problem.matches]
    if not counts:
        return ""
    return (
        f"a face whose grain may run on through {' and through '.join(map(str, counts))} fronts; "
    )


def _note(goods: Sheet, count: int) -> str:
    """What to look for: the class on its label, and the price or what is measured first."""
    label = f'with "{goods.emission}" on its label; ' if goods.emission in EMISSION_LABELS else ""
    measure = "measure the thickness on arrival, at six places over all of them"
    return label + (priced(goods.price, count) or measure)


def _sold(own: Reckoning, goods: Sheet | Board, name: Literal["length", "width"]) -> Dim:
    """A size by its label, whatever was read since."""
    given: Given = getattr(goods, name)
    return own.given(f"{goods.key}.sold_{name}", given)


def _boards(room: Room, plan: StockPlan, goods: Board) -> Iterator[BuyLine]:
    lengths = {key: item.length.value for key, item in plan.offered.items() if not item.kept}
    spare = trim_spare(room, plan)
    kept = f" and {counted(len(plan.offcuts), 'leftover')} on hand" if plan.offcuts else ""
    bought = sorted((key for key in plan.counts if key in lengths), key=lambda key: lengths[key])
    for item in dict.fromkeys((*bought, *((spare.item,) if spare else ()))):
        count = plan.counts.get(item, 0)
        more = spare.count if spare is not None and item == spare.item else 0
        several = f" of {len(bought)} lengths in all" if len(bought) > 1 else ""
        sums = [
            f"{_contents(plan)} on {counted(plan.count, 'board')}{several}{kept}; {plan.verdict}"
        ]
        why = joined("; ", [*(sums if count else ()), *([spare.why] if spare and more else ())])
        own = planned(room, goods.key)
        yield BuyLine(
            "boards",
            joined("", (f"{goods.title}, ", _size(own, goods, plan.offered[item].length))),
            goods.key, "pieces", Fraction(count), Fraction(more), Fraction(1), count + more,
            "board", why, _parts(plan),
            note=_price(goods, lengths[item], count + more) or "straight, dry and free of knots",
            numbers=own.numbers + (spare.numbers if spare and more else ()),
        )  # fmt: skip


def _price(goods: Board, long: Fraction, count: int) -> str:
    """The price as typed; reckoned up where it is that of this length."""
    return priced(goods.price_of(long), count) or goods.price or ""


def _size(own: Reckoning, goods: Board, long: Dim) -> Told:
    """'3/4" x 5 1/2", 96" long'."""
    thick = own.given(f"{goods.key}.sold_thickness", goods.thickness)
    wide = _sold(own, goods, "width")
    return tell("{} x {}, {} long", own.thickness(thick), own.length(wide), own.length(long))


_WORDS = {
    "part": ("part", ""), "lip": ("lip", ""), "spare": ("spare strip", ""),
    "test piece": ("test piece", ""), "strip blank": ("blank for strips", "blanks for strips"),
}  # fmt: skip


def _contents(plan: StockPlan) -> str:
    counts: dict[str, int] = {}
    for piece in plan.pieces.values():
        counts[piece.kind] = counts.get(piece.kind, 0) + 1
    return ", ".join(counted(count, *_WORDS[kind]) for kind, count in counts.items())


def _parts(plan: StockPlan) -> tuple[str, ...]:
    return tuple(dict.fromkeys(path for piece in plan.pieces.values() for path in piece.serves))
