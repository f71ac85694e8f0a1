"""What a plan asks of the person at the saw, counted on its order of work."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from casewright.cutting.problem import Problem, StockItem
from casewright.cutting.rates import Load, Rates, WorkModel
from casewright.cutting.solution import Rect, Solution
from casewright.cutting.steps import CutPlan

__all__ = ["Work", "lost_datums", "work_of"]


@dataclass(frozen=True, slots=True)
class Work:
    """Counts of what is done, and their sum at the rates.

    Parameters
    ----------
    full_lifts, half_lifts
        Cuts for which a heavy, or half heavy, piece is brought to the saw.
    fences, stops, guides
        Settings of the fence, settings of a stop, layings of the straightedge.
    cuts, length
        Cuts, and how far they run [unit].
    parts
        Pieces that get a label.
    turns
        Cuts across the direction of the cut that gave their piece.
    split_groups
        Settings more than one for each group of matching parts.
    flips
        Groups with parts both along and across the stock.
    lost_datums
        Of every sheet the length, and the width, along which no part begins at an edge as bought:
        both are trimmed off, and what takes their place has to be made.
    least_settings
        Different settings of fence, stop and straightedge: no order of these cuts makes fewer.
    offcuts
        Worth of what is kept, at the rates [hundredths of a minute].
    price
        Of split groups, flips and lost datums, which take no time [hundredths of a minute].
    total
        Sum, less the offcuts [hundredths of a minute].
    """

    full_lifts: int
    half_lifts: int
    fences: int
    stops: int
    guides: int
    cuts: int
    length: int
    parts: int
    turns: int
    split_groups: int
    flips: int
    lost_datums: int
    least_settings: int
    offcuts: int
    price: int
    total: int

    @property
    def settings(self) -> int:
        """Settings of fence and stop together."""
        return self.fences + self.stops

    @property
    def time(self) -> int:
        """What it takes at the saws [hundredths of a minute]."""
        return self.total + self.offcuts - self.price


def work_of(problem: Problem, solution: Solution, plan: CutPlan, model: WorkModel) -> Work:
    """Count what a plan asks for.

    Parameters
    ----------
    problem, solution, plan
        What is cut, how, and in which order.
    model
        What work is reckoned by.
    """
    rates = model.rates
    full, half = _lifts(plan, model.load)
    methods = [card.method for card in plan.cards]
    counts = {
        "full_lifts": full,
        "half_lifts": half,
        "fences": sum(method in {"fence", "carrier"} for method in methods),
        "stops": methods.count("sled"),
        "guides": sum(step.method == "straightedge" for step in plan.steps),
        "cuts": len(plan.steps),
        "length": sum(step.along for step in plan.steps),
        "parts": len(solution.placements),
        "turns": _turns(plan),
        "split_groups": sum(count - 1 for count in _group_settings(problem, plan)),
        "flips": _flips(problem, solution),
        "lost_datums": sum(_lost_datums(problem, solution)),
    }
    kept = _kept(problem, plan, rates)
    along = sum(step.along * rates.reach // rates.reach_length for step in plan.steps)
    price, time = _sums(counts, rates)
    least = len({(step.method, step.setting) for step in plan.steps})
    return Work(
        **counts, least_settings=least, offcuts=kept, price=price,
        total=price + time + along - kept,
    )  # fmt: skip


def _sums(counts: dict[str, int], rates: Rates) -> tuple[int, int]:
    """What takes no time, and what does, cuts by their length apart."""
    priced = {
        "split_groups": rates.split_group, "flips": rates.flip, "lost_datums": rates.lost_datum,
    }  # fmt: skip
    timed = {
        "full_lifts": rates.full_lift, "half_lifts": rates.half_lift, "fences": rates.fence,
        "stops": rates.stop, "guides": rates.guide, "cuts": rates.cut, "parts": rates.label,
        "turns": rates.turn,
    }  # fmt: skip
    price, time = (sum(counts[n] * rate for n, rate in r.items()) for r in (priced, timed))
    return price, time


def _lost_datums(problem: Problem, solution: Solution) -> Iterator[int]:
    """For each sheet with parts, how many of its two directions have lost both edges."""
    items = {item.id: item for item in problem.stock}
    on: dict[int, list[Rect]] = {}
    for placement in solution.placements:
        on.setdefault(placement.sheet, []).append(placement.rect)
    for sheet, rects in on.items():
        yield lost_datums(rects, items[solution.tree[sheet].stock])


def lost_datums(parts: Sequence[Rect], item: StockItem) -> int:
    """In how many directions no part of a sheet begins at an edge of the stock."""
    along = any(rect.x == 0 or rect.x1 == item.length for rect in parts)
    across = any(rect.y == 0 or rect.y1 == item.width for rect in parts)
    return 2 - along - across


def _lifts(plan: CutPlan, load: Load) -> tuple[int, int]:
    """Heavy and half heavy pieces brought to a saw; what is cut on where it lies is not lifted."""
    full = half = 0
    came = {leaf.name: step.method for step in plan.steps for leaf in step.leaves}
    for step in plan.steps:
        if step.method == "straightedge" and came.get(step.piece.name) == "straightedge":
            continue
        area = step.piece.rect.area
        if load.full is not None and area > load.full:
            full += 1
        elif load.half is not None and area > load.half:
            half += 1
    return full, half


def _turns(plan: CutPlan) -> int:
    came = {leaf.name: step.direction for step in plan.steps for leaf in step.leaves}
    return sum(came.get(step.piece.name, step.direction) != step.direction for step in plan.steps)


def _group_settings(problem: Problem, plan: CutPlan) -> Iterator[int]:
    """For each group and size in it, over how many sets of settings its pieces are spread.

    Pieces of a group that differ in size need settings of their own; like ones should share them.
    """
    group = {
        part.id: (part.group, part.length, part.width) for part in problem.parts if part.group
    }
    cards: dict[str, dict[str, int]] = {}
    found: dict[tuple[str | None, int, int], set[tuple[tuple[str, int], ...]]] = {}
    for step in plan.steps:
        # Every laying of the straightedge is a setting of its own.
        setting = -step.number if step.method == "straightedge" else step.card
        for leaf in step.leaves:
            own = cards.get(step.piece.name, {}) | {step.direction: setting}
            cards[leaf.name] = own
            if leaf.use == "part" and leaf.part in group:
                found.setdefault(group[leaf.part], set()).add(tuple(sorted(own.items())))
    yield from (len(settings) for settings in found.values())


def _flips(problem: Problem, solution: Solution) -> int:
    group = {part.id: part.group for part in problem.parts if part.group}
    lies: dict[str, set[bool]] = {}
    for placement in solution.placements:
        name = group.get(placement.part)
        if name:
            lies.setdefault(name, set()).add(placement.turned)
    return sum(len(ways) > 1 for ways in lies.values())


def _kept(problem: Problem, plan: CutPlan, rates: Rates) -> int:
    """Worth of the offcuts [hundredths of a minute], each at its share of its sheet's price."""
    if not rates.hour:
        return 0
    items = {item.id: item for item in problem.stock}
    total = 0
    for sheet, rect in _offcuts(plan):
        item = items[plan.sheets[sheet].stock]
        money = item.price * rates.kept_share * rect.area * 60
        total += money // (item.length * item.width * rates.hour)
    return total


def _offcuts(plan: CutPlan) -> Iterator[tuple[int, Rect]]:
    for step in plan.steps:
        yield from ((step.sheet, leaf.rect) for leaf in step.leaves if leaf.use == "offcut")
