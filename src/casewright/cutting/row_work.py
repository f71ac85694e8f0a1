"""The work of dividing one piece by parallel cuts, whatever its pieces are for.

Sheets are divided into rows of few different sizes again and again, so that a row is looked at
once. Settings are numbers, told apart from each other fast: see `SetUp`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from casewright.cutting.methods import Method
from casewright.cutting.problem import Problem
from casewright.cutting.rates import WorkModel
from casewright.cutting.sawing import Job, jobs_of
from casewright.cutting.solution import Leaf, Node, SheetTree, Split, leaves

__all__ = [
    "GUIDED",
    "CutRow",
    "GivenPiece",
    "SetUp",
    "pair_of",
    "reversed_pair",
    "row_of",
    "takes_stop",
]

SetUp = int
"""A setting of fence or stop: the measure times 4 and the method's number, from 1 on."""

GUIDED: SetUp = 0
"""The straightedge, which keeps no setting."""

_NUMBER: dict[Method, int] = {"straightedge": GUIDED, "fence": 1, "carrier": 2, "sled": 3}
_PAIR = 40
"""Bits of the second setting in the number of a pair."""


class GivenPiece(NamedTuple):
    """How a piece of a row comes to be.

    Parameters
    ----------
    way
        The setting that gives it; below 0 for the straightedge, another number for each cut.
    last
        The last setting kept on the way to it; `GUIDED`: there is none.
    """

    way: int
    last: SetUp


class CutRow(NamedTuple):
    """A piece divided by parallel cuts.

    Parameters
    ----------
    is_rip
        Whether the cuts run along the stock.
    own
        Its cuts, what is laid for them, and the handling between them, less the worth of what is
        left over [hundredths of a minute].
    lift
        Lifting the piece to the saw for its first cut [hundredths of a minute].
    is_guided
        Whether the straightedge makes its first cut.
    given
        How each piece comes to be, in the order of the row.
    set_ups, heads, orders
        Settings; those that need no piece from another; pairs of which the second needs a piece
        that the first gives.
    """

    is_rip: bool
    own: int
    lift: int
    is_guided: bool
    given: tuple[GivenPiece, ...]
    set_ups: frozenset[SetUp]
    heads: frozenset[SetUp]
    orders: frozenset[int]


def takes_stop(set_up: SetUp) -> bool:
    """Whether a setting is that of a stop, not of the fence."""
    return set_up & 3 == _NUMBER["sled"]


def pair_of(first: SetUp, second: SetUp) -> int:
    """Two settings as one number."""
    return first << _PAIR | second


def reversed_pair(pair: int) -> int:
    """The same two the other way round."""
    return (pair & ((1 << _PAIR) - 1)) << _PAIR | pair >> _PAIR


def row_of(problem: Problem, model: WorkModel, stock: int, split: Split) -> CutRow:
    """A piece as the row that it is divided into.

    Parameters
    ----------
    stock
        Place of its stock in the problem.
    split
        The piece. Whatever in it is cut further, or is a part, stands there as a part.
    """
    jobs = jobs_of(SheetTree(0, "", split), problem.kerf, model.limits)
    own = -_kept(problem, model, stock, split)
    given: dict[tuple[int, int], GivenPiece] = {}
    last: list[SetUp] = []
    heads, orders = set[SetUp](), set[int]()
    for number, job in enumerate(jobs):
        before = GUIDED if job.before is None else last[job.before]
        set_up = job.setting << 2 | _NUMBER[job.method] if _NUMBER[job.method] else GUIDED
        own += _cutting(model, job)
        if job.before is not None and not (
            set_up == GUIDED and jobs[job.before].method == "straightedge"
        ):
            own += _lift(model, job)
        if set_up and not before:
            heads.add(set_up)
        elif set_up and before != set_up:
            orders.add(pair_of(before, set_up))
        last.append(set_up or before)
        for side in (job.low, job.high):
            if isinstance(side, Leaf) and side.use == "part":
                given[side.rect.x, side.rect.y] = GivenPiece(set_up or -1 - number, last[-1])
    set_ups = frozenset(one for one in last if one)
    return CutRow(
        split.direction == "rip", own, _lift(model, jobs[0]), jobs[0].method == "straightedge",
        tuple(_in_order(split.pieces, given)), set_ups, frozenset(heads), frozenset(orders),
    )  # fmt: skip


def _in_order(
    pieces: Sequence[Node], given: dict[tuple[int, int], GivenPiece]
) -> list[GivenPiece]:
    places = ((piece.rect.x, piece.rect.y) for piece in pieces)
    return [given[place] for place in places if place in given]


def _cutting(model: WorkModel, job: Job) -> int:
    """Making a cut, and laying the straightedge for it."""
    rates = model.rates
    along = job.rect.length if job.direction == "rip" else job.rect.width
    guide = rates.guide if job.method == "straightedge" else 0
    return rates.cut + guide + along * rates.reach // rates.reach_length


def _lift(model: WorkModel, job: Job) -> int:
    area, load = job.rect.area, model.load
    if load.full is not None and area > load.full:
        return model.rates.full_lift
    return model.rates.half_lift if load.half is not None and area > load.half else 0


def _kept(problem: Problem, model: WorkModel, stock: int, split: Split) -> int:
    """Worth of the offcuts of a piece."""
    if not model.rates.hour:
        return 0
    item = problem.stock[stock]
    price = item.price * model.rates.kept_share * 60
    whole = item.length * item.width * model.rates.hour
    return sum(price * leaf.rect.area // whole for leaf in leaves(split) if leaf.use == "offcut")
