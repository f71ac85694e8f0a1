"""What an answer costs, by the meaning of the preferences and without the model."""

from __future__ import annotations

from collections.abc import Sequence

from casewright.layout.tasks import WallTask

__all__ = ["cost_of"]


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
    half = len(built) // 2
    for (_, one), (_, other) in zip(built[:half], built[::-1], strict=False):
        cost += likes.mirror * abs(one - other)
    if task.left is not None and task.right is not None:
        cost += likes.fillers * abs(left - right)
    for filler, width in ((task.left, left), (task.right, right)):
        if filler is not None and filler.wished is not None:
            cost += likes.filler_wish * abs(width - filler.wished)
    start = left
    for place, width in zip(task.places, widths, strict=True):
        if place.centre is not None:
            cost += likes.off_centre * abs(2 * start + width - place.centre)
        start += width
    return cost
