"""What is bought of trim boards beyond the plan: a margin, a knot, test pieces of corners."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from casewright.breakdown import StockPlan
from casewright.buying.numbers import planned, sum_of
from casewright.dims import Dim, Origin, tell
from casewright.room.model import Room

__all__ = ["TrimSpare", "trim_spare"]

_MARGIN = Fraction(1, 10)
"""Of the length of all trim from a stock (common practice)."""
_LEFT = Origin("solved", "face that the cutting plan leaves over, as so much of the widest trim")


@dataclass(frozen=True, slots=True)
class TrimSpare:
    """Boards on top of those that a plan uses.

    Parameters
    ----------
    item
        Which length, by its id in the plan.
    count
        How many [-].
    why
        The sum in words.
    numbers
        What it works out.
    """

    item: str
    count: int
    why: str
    numbers: tuple[Dim, ...] = field(default=(), compare=False, repr=False)


def trim_spare(room: Room, plan: StockPlan) -> TrimSpare | None:
    """The boards that a margin over the trims of a stock takes; None where the plan leaves it.

    One tenth of their length, one knot, and two test pieces for each corner that a crown turns.
    """
    if plan.kind != "boards":
        return None
    style = room.spec.style
    trims = [trim for run in room.runs for trim in run.trims]
    own = {part.path for trim in trims for part in trim.parts if part.path in plan.pieces}
    if not own:
        return None
    sums = planned(room, plan.stock)
    whole = sums.let("trims", sum_of(plan.pieces[path].long for path in sorted(own)))
    ends = sum(
        cut.turns
        for trim in trims if trim.kind == "crown"
        for piece in trim.pieces if piece.part.path in own
        for cut in (piece.left, piece.right)
    )  # fmt: skip
    tests = ends * style["test_piece_length"].value
    knot = sums.given("style.knot_margin", style["knot_margin"])
    margin = whole.value * _MARGIN + knot.value + tests
    widest = max((plan.pieces[path] for path in sorted(own)), key=lambda piece: piece.width)
    left = _left(plan, widest.width)
    if left >= margin:
        return None
    lengths = {key: item.length.value for key, item in plan.offered.items() if not item.kept}
    item = min(lengths, key=lambda each: (lengths[each], each))
    tested = f", {ends} test pieces of corners" if ends else ""
    over = sums.worked("left_over", max(left, Fraction(0)), _LEFT, widest.wide,
                       *(plan.offered[item].length for item in plan.counts))  # fmt: skip
    why = tell(
        "for trims a tenth of {}, {} for a knot{} on top; the plan leaves {}",
        sums.length(whole), sums.length(knot), tested, sums.length(over),
    )  # fmt: skip
    lost = {item.id: plan.length(item.length - item.usable_length) for item in plan.problem.stock}
    count = int(-(-(margin - left) // (lengths[item] - lost[item])))
    return TrimSpare(item, count, why, sums.numbers)


def _left(plan: StockPlan, wide: Fraction) -> Fraction:
    """Length of the widest trim that what the plan leaves over would make, by its face [mm]."""
    sizes = {item.id: (item.usable_length, item.width) for item in plan.problem.stock}
    bought = sum(
        (
            plan.length(sizes[item][0]) * plan.length(sizes[item][1]) * count
            for item, count in plan.counts.items()
        ),
        Fraction(0),
    )
    used = sum((piece.length * piece.width for piece in plan.pieces.values()), Fraction(0))
    return (bought - used) / wide
