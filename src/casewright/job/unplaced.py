"""What would make a part fit that could not be placed."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from casewright.cutting.problem import PartDemand, Problem, StockItem
from casewright.cutting.solution import Reason, Unplaced

__all__ = ["Remedy", "remedy_of"]


class Remedy(NamedTuple):
    """The nearest fix for a part that fits nowhere.

    Parameters
    ----------
    stock
        Which stock comes nearest; empty where it does not matter.
    length, width
        The most that a part may measure along and across that stock [unit].
    over_length, over_width
        By how much the part, or the piece of its match, is larger, as it would lie [unit].
    """

    stock: str = ""
    length: int = 0
    width: int = 0
    over_length: int = 0
    over_width: int = 0


def remedy_of(problem: Problem, entry: Unplaced) -> Remedy:
    """The stock that a part comes nearest to, and what is missing.

    Nothing is missing where the part would fit, if it might be turned, if the defect were not
    there, or if there were more of the stock.
    """
    parts = {part.id: part for part in problem.parts}
    part = parts[entry.part]
    if entry.reason is Reason.MATCHED:
        match = next(match for match in problem.matches if entry.part in match.parts)
        part = PartDemand(match.id, *match.size(parts, problem.kerf))
    elif entry.reason is not Reason.TOO_LARGE:
        return Remedy()
    return min(_misses(problem, part), key=lambda miss: (sum(miss[3:]), max(miss[3:])))


def _misses(problem: Problem, part: PartDemand) -> Iterator[Remedy]:
    ways = [(part.length, part.width)]
    if part.rotate:
        ways.append((part.width, part.length))
    for item in problem.stock:
        for length, width in ways:
            yield _miss(item, length, width)


def _miss(item: StockItem, length: int, width: int) -> Remedy:
    most = item.usable_length, item.usable_width
    return Remedy(item.id, *most, max(0, length - most[0]), max(0, width - most[1]))
