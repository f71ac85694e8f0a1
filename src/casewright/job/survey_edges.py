"""Where what is on a wall begins and ends, from the tables alone: to judge a file by."""

from __future__ import annotations

from fractions import Fraction

from casewright.job.tables import RunTable, WallTable

__all__ = ["edges_of", "free_width"]

_Edge = Fraction | None


def edges_of(wall: WallTable, key: str, *, depth: int = 0) -> tuple[_Edge, _Edge]:
    """Left and right edge from the wall's left end [mm], each the worse of the ways to it.

    Parameters
    ----------
    depth
        How many things it was reached through; rings end there.
    """
    thing = wall.fixed.get(key)
    if thing is None or depth > len(wall.fixed):
        return None, None
    left, width, right, centre = (
        None if each is None else each.read
        for each in (thing.left, thing.width, thing.right, thing.centre)
    )
    if thing.after is not None and left is not None:
        before = edges_of(wall, thing.after, depth=depth + 1)[1]
        left = None if before is None else left + before
    widest = min((each.read for each in wall.width), default=None)
    end = None if right is None or widest is None else widest - right
    half = (width or Fraction(0)) / 2
    lefts = [left, _moved(end, width, -1), None if centre is None else centre - half]
    rights = [_moved(left, width, 1), end, None if centre is None else centre + half]
    return (
        min((each for each in lefts if each is not None), default=None),
        max((each for each in rights if each is not None), default=None),
    )


def _moved(edge: _Edge, width: _Edge, sign: int) -> _Edge:
    return None if edge is None or width is None else edge + sign * width


def free_width(run: RunTable, wall: WallTable) -> _Edge:
    """Room for a run on its wall [mm]; None while an edge is not known."""
    end: _Edge = min((each.read for each in wall.width), default=None)
    if run.before is not None:
        end = edges_of(wall, run.before)[0]
    start: _Edge = Fraction(0) if run.after is None else edges_of(wall, run.after)[1]
    return None if start is None or end is None else end - start
