"""One wall: an order, widths and fillers that fill it exactly, at the least cost."""

from __future__ import annotations

from dataclasses import replace

from casewright.layout.demands import LayoutDemand
from casewright.layout.tasks import WallTask
from casewright.layout.wall_layout import WallLayout
from casewright.layout.wall_model import WallModel, is_given

__all__ = ["lay_out"]

_NO_DEMAND = LayoutDemand()

_MOST_NEW = 4
"""More different new widths than this are not tried [-]: nobody wants to set up for them."""


def lay_out(task: WallTask, demand: LayoutDemand = _NO_DEMAND) -> WallLayout | None:
    """The best answer to a task that meets a demand, or None when nothing fits.

    Few different widths are tried first. An answer is the best of all once one more width would
    cost more than it, whatever the rest of that answer cost.
    """
    least = WallModel(task, demand, None).solved()
    if least is None:
        return None
    free = sum(not place.opening and place.low < place.high for place in task.places)
    given = len({place.low for place in task.places if is_given(place)})
    best: WallLayout | None = None
    reached = 0
    most = min(free, _MOST_NEW)
    for new in range(most + 1):
        model = WallModel(task, demand, new)
        solved = model.solved()
        if solved is not None and (best is None or solved.cost < reached):
            best, reached = model.read(solved), solved.cost
        more = task.preferences.width * (new + 1) + least.bound
        if best is not None and (reached <= more or new == most):
            bound = min(reached, solved.bound) if solved is not None else reached
            bound = bound if new == free else min(bound, more)
            known = bound + task.preferences.width * given
            return replace(best, bound=0 if demand.on_centre is False else known)
    return _of_many_widths(task, demand, free)


def _of_many_widths(task: WallTask, demand: LayoutDemand, free: int) -> WallLayout | None:
    """The best answer where fewer widths than there are cases do not fit at all."""
    model = WallModel(task, demand, free)
    solved = model.solved()
    return None if solved is None else model.read(solved)
