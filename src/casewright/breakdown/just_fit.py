"""Sheets whose parts leave so little to spare that the sheet in hand must be measured first."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.breakdown.plan import JustFit
from casewright.breakdown.solving import Solved
from casewright.stock import Sheet

__all__ = ["just_fits"]


def just_fits(solved: Solved, sheet: Sheet, least: Fraction) -> Iterator[JustFit]:
    """Every side of a sheet along which less than `least` is to spare.

    Structural plywood may be 1/16 in under its label (`ps1`), and three cuts with a blade
    1/64 in wider than believed take as much again. A sheet whose size was entered as measured
    does not wait.

    Parameters
    ----------
    least
        [mm].
    """
    places = solved.solution.placements
    items = {item.id: item for item in solved.problem.stock}
    for tree in solved.solution.tree:
        item = items[tree.stock]
        mine = [place for place in places if place.sheet == tree.sheet]
        parts = tuple(dict.fromkeys(place.part for place in mine))
        far_x, far_y = max(p.rect.x1 for p in mine), max(p.rect.y1 for p in mine)
        spare = solved.unit.length(item.length - item.trim.right - far_x)
        if spare < least and sheet.length.origin.kind != "measured":
            yield JustFit(tree.sheet, "length", spare, parts)
        spare = solved.unit.length(item.width - item.trim.top - far_y)
        if spare < least and sheet.width.origin.kind != "measured":
            yield JustFit(tree.sheet, "width", spare, parts)
