"""Panels, and strips, of two sheets that change places."""

from __future__ import annotations

import random  # noqa: TID251 - only for the type: the caller seeds it
from collections.abc import Sequence

from casewright.cutting.pattern import Panel, Pattern

__all__ = ["exchange"]

_STRIPS = 60
"""So many times in a hundred strips change places, else panels."""


def exchange(
    patterns: Sequence[Pattern], rng: random.Random, *, may_part: bool = True
) -> dict[int, Pattern] | None:
    """Let a panel or a strip change places with one of another sheet, or go over to it.

    Parameters
    ----------
    may_part
        Whether a sheet may have more panels than one.

    Returns
    -------
    The two sheets after it, by place; None where they do not fit, or nothing would change.
    """
    i, j = rng.randrange(len(patterns)), rng.randrange(len(patterns))
    one, other = patterns[i], patterns[j]
    if i == j or one.swapped != other.swapped or one.v != other.v:
        return None
    by_strips = rng.randrange(100) < _STRIPS
    panels = (_strips if by_strips else _panels)(one, other, rng)
    if panels is None:
        return None
    found = {}
    if not may_part and max(map(len, panels)) > 1:
        return None
    for index, old, row in zip((i, j), (one, other), panels, strict=True):
        found[index] = Pattern(old.stock, old.swapped, old.u, old.v, row)
        found[index].measure()
    return found if all(pattern.du <= pattern.u for pattern in found.values()) else None


def _panels(
    one: Pattern, other: Pattern, rng: random.Random
) -> tuple[list[Panel], list[Panel]] | None:
    """Panels of two sheets after one of the first has gone, for one of the second or for none."""
    a, b = rng.randrange(len(one.panels)), rng.randrange(len(other.panels) + 1)
    gone, back = one.panels[a : a + 1], other.panels[b : b + 1]
    longer = sum(panel.du for panel in gone) - sum(panel.du for panel in back)
    if longer > other.u - other.du or -longer > one.u - one.du:
        return None
    if [_parts(panel) for panel in gone] == [_parts(panel) for panel in back]:
        return None
    rows = [*one.panels[:a], *one.panels[a + 1 :], *back]
    return rows, [*other.panels[:b], *other.panels[b + 1 :], *gone]


def _strips(
    one: Pattern, other: Pattern, rng: random.Random
) -> tuple[list[Panel], list[Panel]] | None:
    """The same for strips of one panel each."""
    a, b = rng.randrange(len(one.panels)), rng.randrange(len(other.panels))
    giver, taker = one.panels[a].strips, other.panels[b].strips
    r, t = rng.randrange(len(giver)), rng.randrange(len(taker) + 1)
    gone, back = giver[r : r + 1], taker[t : t + 1]
    higher = sum(strip.dv for strip in gone) - sum(strip.dv for strip in back)
    if higher > other.v - other.panels[b].dv or -higher > one.v - one.panels[a].dv:
        return None
    if [strip.slots for strip in gone] == [strip.slots for strip in back]:
        return None
    left = [*giver[:r], *giver[r + 1 :], *back]
    filled = [*taker[:t], *taker[t + 1 :], *gone]
    rows = [*one.panels[:a], *one.panels[a + 1 :]]
    return (
        [*rows, Panel(left)] if left else rows,
        [*other.panels[:b], *other.panels[b + 1 :], Panel(filled)],
    )


def _parts(panel: Panel) -> list[object]:
    return [strip.slots for strip in panel.strips]
