"""What an answer costs, by the meaning of the preferences and without the model."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate, pairwise

from casewright.layout.tasks import WallTask

__all__ = ["clashes", "cost_of", "loose", "stray_seams"]


def cost_of(task: WallTask, left: int, widths: Sequence[int], right: int) -> int:
    """Points of an answer.

    Parameters
    ----------
    left, right
        Fillers [steps].
    widths
        Of the places, left to right [steps].
    """
    likes = task.preferences
    built = [(p, w) for p, w in zip(task.places, widths, strict=True) if not p.opening]
    cost = likes.width * len({width for _, width in built})
    for place, width in built:
        cost += likes.wish * abs(width - place.wished) if place.wished is not None else 0
        cost += likes.orphan if width < likes.narrow else 0
    cost += likes.mirror * _unlike_their_mirror(task, widths)
    if task.has_like_fillers:
        cost += likes.fillers * abs(left - right)
    for filler, width in ((task.left, left), (task.right, right)):
        if filler is not None and filler.wished is not None:
            cost += likes.filler_wish * abs(width - filler.wished)
    cost += likes.seam * stray_seams(task, left, widths)
    cost += likes.clash * len(clashes(task, left, widths))
    free = loose(task)
    spread = [width for place, width in zip(task.places, widths, strict=True) if place.key in free]
    cost += likes.spread * (max(spread) - min(spread)) if spread else 0
    cost += likes.proportion * _out_of_proportion(task, widths)
    start = left
    for place, width in zip(task.places, widths, strict=True):
        if place.centre is not None:
            cost += likes.off_centre * abs(2 * start + width - place.centre)
        start += width
    return cost


def loose(task: WallTask) -> set[str]:
    """Keys of the cases that may have any width: none is wished for, alone or beside another's."""
    bound = {key for pair in task.proportions for key in pair[:2]}
    return {
        place.key
        for place in task.places
        if not place.opening and place.low < place.high and place.wished is None
    } - bound


def _out_of_proportion(task: WallTask, widths: Sequence[int]) -> int:
    """By how much pairs are off their proportion, times both numbers of it [steps]."""
    wide = {place.key: width for place, width in zip(task.places, widths, strict=True)}
    return sum(
        abs(wide[one] * of_other - wide[other] * of_one)
        for one, other, of_one, of_other in task.proportions
    )


def _unlike_their_mirror(task: WallTask, widths: Sequence[int]) -> int:
    """By how much cases differ from the case as far from the other end [steps]."""
    half = len(widths) // 2
    pairs = zip(task.places[:half], widths, task.places[::-1], widths[::-1], strict=False)
    return sum(
        abs(width - other)
        for place, width, opposite, other in pairs
        if not place.opening and not opposite.opening
    )


def stray_seams(task: WallTask, left: int, widths: Sequence[int]) -> int:
    """Seams between two cases that stand on none of the seams they are to stand on [-]."""
    if not task.seams:
        return 0
    ends = accumulate(widths, initial=left)
    inner = list(ends)[1:-1]
    return sum(
        seam not in task.seams and not one.opening and not other.opening
        for seam, (one, other) in zip(inner, pairwise(task.places), strict=True)
    )


def clashes(task: WallTask, left: int, widths: Sequence[int]) -> tuple[str, ...]:
    """Keys of what is to be kept clear and has a side of a case before it, once for each side."""
    edges = accumulate(widths, initial=left)
    bare = [place.opening for place in task.places]
    sides = [
        at
        for at, one, other in zip(edges, (True, *bare), (*bare, True), strict=True)
        if not (one and other)
    ]
    return tuple(each.key for each in task.clear for at in sides if each.low < at < each.high)
