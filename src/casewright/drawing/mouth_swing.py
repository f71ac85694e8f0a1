"""The door of a diagonal corner from above, opened to a right angle, and the way of its edge."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

from casewright.casework.cases import Case, Door
from casewright.drawing.leaf_swing import leaf_swing
from casewright.drawing.marks import Tag
from casewright.drawing.pens import HIDDEN, THIN
from casewright.drawing.shapes import Element, Point, Polyline

__all__ = ["mouth_swing"]

_ROOT = math.sqrt(2)


def mouth_swing(case: Case, at: Callable[[float, float], Point]) -> Iterator[Element]:
    """Each door of a diagonal corner: shut, opened, and the arc between.

    Parameters
    ----------
    at
        Where a place of the case is on the drawing, by its case x and z [mm].
    """
    for door in case.fronts:
        if not isinstance(door, Door):
            continue
        out = float(door.z.value + door.thickness.value)
        left, wide = float(door.x.value), float(door.width.value)
        hinged_left = door.hinge_side == "left"
        axis, free = (left, left + wide) if hinged_left else (left + wide, left)
        hinge, shut, opened = (
            _place(case, at, *spot) for spot in ((axis, out), (free, out), (axis, out + wide))
        )
        tag = Tag(path=case.key, title=door.title, target=case.key)
        hung = case.spec.is_hung
        yield Polyline((hinge, shut), HIDDEN if hung else THIN, tag=tag)
        yield from leaf_swing(hinge, opened, shut, wide, tag, hung=hung)


def _place(case: Case, at: Callable[[float, float], Point], x: float, z: float) -> Point:
    """A place in the axes of the mouth."""
    mouth = case.mouth
    if mouth is None:
        return at(x, z)
    aside = (x - float(mouth.width.value) / 2) / _ROOT
    out = (z - float(mouth.front.value)) / _ROOT
    half = float(mouth.reach.value) / 2
    if mouth.corner == "left":
        return at(half + out + aside, half + out - aside)
    return at(float(case.width.value) - half - out + aside, half + out + aside)
