"""What changes when the rest of the cuts is planned anew, told to whoever stands at the saw."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import UTC, datetime

from casewright.breakdown import StockPlan
from casewright.dims.count_text import counted
from casewright.room.model import Room
from casewright.web.hand_plan import HandPlan, SheetKey
from casewright.web.shop_schema import ShopAnew, ShopGone

__all__ = ["anew_told", "gone_of", "sheets_text"]


def anew_told(room: Room, before: Sequence[HandPlan], after: Sequence[HandPlan]) -> ShopAnew:
    """What is another than before.

    Parameters
    ----------
    before, after
        The plans in hand; the last of those after is the one made anew.
    """
    new = after[-1]
    lost = new.rest.lost if new.rest else frozenset[str]()
    return ShopAnew(
        plan=new.name,
        at=datetime.now(UTC).isoformat(timespec="seconds"),
        gone=gone_of(room, lost),
        says=tuple(_says(room, before, after)),
    )


def gone_of(room: Room, paths: frozenset[str]) -> tuple[ShopGone, ...]:
    """Pieces that are to be made again, by their labels."""
    return tuple(
        ShopGone(path=part.path, mark=part.mark, title=part.title)
        for part in room.parts
        if part.path in paths
    )


def _says(room: Room, before: Sequence[HandPlan], after: Sequence[HandPlan]) -> Iterator[str]:
    *kept, new = after
    stocks = {plan.path for plan in new.breakdown.plans}
    goes_on = {key for plan in kept for key in plan.sheets or ()}
    for text in sheets_text(room, kept, sorted(key for key in goes_on if key[0] in stocks)):
        yield f"{text}: as before."
    yield "All other stock: as before."
    old = {key for plan in before for key in _sheets(plan)} - goes_on
    for text in sheets_text(room, before, sorted(old)):
        yield f"{text}: not cut any more as it was planned."
    for plan in new.breakdown.plans:
        kept_ones = [tree for tree in plan.solution.tree if plan.offered[tree.stock].kept]
        fresh = sorted((plan.path, tree.sheet) for tree in plan.solution.tree)
        (text,) = sheets_text(room, (new,), fresh) or ("",)
        yield f"{text}: planned anew."
        if kept_ones:
            yield f"{counted(len(kept_ones), 'offcut')} of it used up."
        more = len(fresh) - len(kept_ones) - sum(path == plan.path for path, _ in old)
        if more > 0:
            noun = plan.kind.removesuffix("s")
            yield f"{counted(more, noun)} more than before: see that it is there."


def _sheets(hand: HandPlan) -> Iterator[SheetKey]:
    for plan in hand.breakdown.plans:
        for tree in plan.solution.tree:
            if hand.has(plan, tree.sheet):
                yield plan.path, tree.sheet


def sheets_text(
    room: Room, plans: Sequence[HandPlan], keys: Sequence[SheetKey]
) -> tuple[str, ...]:
    """'Birch plywood, sheets 1 and 2', stock by stock."""
    of: dict[str, StockPlan] = {plan.path: plan for hand in plans for plan in hand.breakdown.plans}
    found: dict[str, list[int]] = {}
    for path, sheet in keys:
        found.setdefault(path, []).append(sheet + 1)
    return tuple(
        f"{room.spec.stock[of[path].stock].title}, {_noun(of[path], numbers)} {_listed(numbers)}"
        for path, numbers in found.items()
        if path in of
    )


def _noun(plan: StockPlan, numbers: Sequence[int]) -> str:
    return plan.kind.removesuffix("s") if len(set(numbers)) == 1 else plan.kind


def _listed(numbers: Sequence[int]) -> str:
    """'1', '1 and 2', '1 to 3, 5 and 7 to 9'."""
    words: list[str] = []
    for number in sorted(set(numbers)):
        first, _, last = words[-1].partition(" to ") if words else ("", "", "")
        if words and int(last or first) == number - 1 and number - 1 in numbers:
            words[-1] = f"{first} to {number}"
        else:
            words.append(str(number))
    words = [_short(each) for each in words]
    return " and ".join(filter(None, (", ".join(words[:-1]), words[-1])))


def _short(words: str) -> str:
    """Two that follow each other as what they are: '1 to 2' as '1, 2'."""
    first, _, last = words.partition(" to ")
    return f"{first}, {last}" if last and int(last) == int(first) + 1 else words
