"""A beam search over whole generations of half-made plans at once."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from casewright.cutting.generation import Expander, Generation, Ints, Ways
from casewright.cutting.shapes import Action, Found, Task

__all__ = ["Beam"]

_STRESS = (10, 50)
"""How much the share of waste counts against the area laid, guide by guide; the last guide takes
the waste itself."""

_SPARE = 3
_AT_ONCE = 32


_Small = npt.NDArray[np.int32]


class _Step(NamedTuple):
    """Which plan of the generation before, which move, which action: one of each a row."""

    row: _Small
    move: _Small
    action: _Small


class Beam:
    """Beam searches over one task.

    Parameters
    ----------
    task
        What to cut, from stock without defects; see `is_countable`.
    is_over
        Whether to give up; `nodes` counts the places tried so far, many at once as one.
    """

    guides = 3

    def __init__(self, task: Task, is_over: Callable[[], bool]) -> None:
        self.task = task
        self.nodes = 0
        self._is_over = is_over
        self._expander = Expander(task)
        self._pieces = int(self._expander.count.sum())

    def run(
        self,
        width: int,
        guide: int = 0,
        *,
        limit: int | None = None,
        seed: int | None = None,
        finish: bool = False,
    ) -> Found | None:
        """Fill sheets keeping the best `width` plans of every generation.

        Parameters
        ----------
        width
            Plans kept.
        guide
            How half-made plans are compared, below `guides`.
        limit
            Price that no plan may pass; None: no limit.
        seed
            Blurs the comparison when given.
        finish
            Go on to the end whatever `is_over` says.

        Returns
        -------
        The cheapest full plan. Where the stock ran out, the plan with most area laid. None when
        nothing came within the limits.
        """
        rng = None if seed is None else np.random.default_rng(seed)
        g = self._expander.root()
        steps: list[_Step] = []
        most, best = 0, (0, 0)
        for _ in range(self._pieces):
            ways = self._expander.ways(g, limit)
            self.nodes += _AT_ONCE + g.left.size // _AT_ONCE + len(ways.row) // _AT_ONCE
            if not finish and self._is_over():
                return None
            if not len(ways.row):
                return None if limit is not None else self._found(steps[: best[0]], best[1])
            chosen = self._select(g, ways, width, guide, rng)
            ways = Ways(*(column[chosen] for column in ways))
            g = self._expander.after(g, ways)
            steps.append(_Step(*(column.astype(np.int32) for column in ways[:3])))
            top = int(g.placed.argmax())
            if g.placed[top] > most:
                most, best = int(g.placed[top]), (len(steps), top)
        return self._found(steps, int(np.lexsort((g.closed, g.price))[0]))

    def _select(
        self,
        g: Generation,
        ways: Ways,
        width: int,
        guide: int,
        rng: np.random.Generator | None,
    ) -> Ints:
        """The best ways, each leading to another plan."""
        placed, par = self._expander.placed(g, ways), self._expander.par
        waste = ways.used - placed * par
        # One division of whole numbers is rounded in the same way on every machine.
        if guide < len(_STRESS):
            score = (_STRESS[guide] * waste + ways.used) / ways.used / placed
        else:
            score = (_STRESS[0] * waste + self._expander.mean * par) / placed
        if rng is not None:
            score *= rng.integers(1000, 1020, len(score))
        if width == 1:
            return np.array([score.argmin()])
        keep = _SPARE * width
        if len(score) > keep:
            index = (score <= np.partition(score, keep - 1)[keep - 1]).nonzero()[0]
            index = index[score[index].argsort(kind="stable")]
        else:
            index = score.argsort(kind="stable")
        code = self._expander.hashes(g, Ways(*(column[index] for column in ways)))
        order = code.argsort(kind="stable")
        code = code[order]
        first = order[np.append(True, code[1:] != code[:-1])]
        first.sort()
        best: Ints = index[first[:width]]
        return best

    def _found(self, steps: Sequence[_Step], row: int) -> Found:
        """The plan that ends in a row of the last of these steps."""
        path: list[tuple[int, int]] = []
        for step in reversed(steps):
            path.append((int(step.move[row]), int(step.action[row])))
            row = int(step.row[row])
        laid = tuple(self._expander.laid(reversed(path)))
        price = sum(self.task.bins[p.bin].price for p in laid if p.action == Action.NEW_SHEET)
        return Found(laid, price, len(laid) == self._pieces)
