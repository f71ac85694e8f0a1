"""Numbers of the buy list, worked out line by line: each can be asked for its reason."""

from __future__ import annotations

from collections.abc import Iterable

from casewright.buying.words import long_length
from casewright.dims import Dim, Measure, total
from casewright.findings import Reckoning
from casewright.room.model import Room

__all__ = ["BOUGHT", "ROOT", "long", "planned", "sum_of", "sums"]

ROOT = "buy"
"""Under which they stand on the chain."""

BOUGHT = "plan.bought"
"""Under which those stand that rest on the cutting plans."""


def sums(room: Room, line: str, of: str) -> Reckoning:
    """Where the numbers of a line are worked out: `buy.LINE.OF.NAME`."""
    return Reckoning(line, of, room.spec.unit, room.chain.nodes, ROOT)


def planned(room: Room, stock: str) -> Reckoning:
    """Where those of a stock are worked out, counted on its plan: `plan.bought.STOCK.NAME`."""
    return Reckoning(stock, "stock", room.spec.unit, room.chain.nodes, BOUGHT)


def long(own: Reckoning, dim: Dim, name: str) -> Measure:
    """A long length as it is bought, in feet or metres."""
    return own.said(dim, long_length(dim.value, own.unit), name)


def sum_of(dims: Iterable[Dim]) -> Dim:
    """A sum in which like lengths stand once, with how many there are; one at least."""
    counts: dict[object, list[Dim]] = {}
    for dim in dims:
        counts.setdefault(dim.value, []).append(dim)
    return total(*(same[0] * len(same) if same[1:] else same[0] for same in counts.values()))
