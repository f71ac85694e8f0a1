"""A leaf from above, opened to a right angle, and the way of its free edge."""

from __future__ import annotations

import math
from collections.abc import Iterator

from casewright.drawing.marks import Tag
from casewright.drawing.pens import DIMENSION, HIDDEN, THIN
from casewright.drawing.shapes import Arc, Element, Point, Polyline

__all__ = ["leaf_swing"]

_PLAIN = Tag()


def leaf_swing(
    hinge: Point, opened: Point, shut: Point, wide: float, tag: Tag = _PLAIN, *,
    hung: bool = False,
) -> Iterator[Element]:  # fmt: skip
    """The open leaf, and the arc to where it shuts, the shorter way round.

    Parameters
    ----------
    hinge, opened, shut
        Its axis, and its free edge in both places.
    wide
        Of the leaf [mm of model].
    hung
        Whether it opens over what stands below it: then its lines are broken.
    """
    yield Polyline((hinge, opened), HIDDEN if hung else THIN, tag=tag)
    begin, end = _angle(hinge, opened), _angle(hinge, shut)
    turned = (end - begin + 180.0) % 360.0 - 180.0
    if turned < 0:
        begin, turned = end, -turned
    yield Arc(hinge, wide, HIDDEN if hung else DIMENSION, start_deg=begin, sweep_deg=turned)


def _angle(hinge: Point, end: Point) -> float:
    return math.degrees(
        math.atan2(float(end[1]) - float(hinge[1]), float(end[0]) - float(hinge[0]))
    )
