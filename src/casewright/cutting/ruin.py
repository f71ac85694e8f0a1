"""Strips taken out of a plan, so that their parts can be put back elsewhere."""

from __future__ import annotations

import random  # noqa: TID251 - only for the type: the caller seeds it
from collections.abc import Sequence

from casewright.cutting.pattern import Pattern, Strip

__all__ = ["ruin"]

_Place = tuple[int, int, int]
"""Numbers of a sheet, of a panel on it and of a strip in that."""

_MANY = 4
"""Most strips that are emptied at a time, but for whole sheets."""

_TURNED = 2
"""One whole sheet in so many is cut the other way first when it is filled anew."""


def ruin(patterns: Sequence[Pattern], rng: random.Random) -> tuple[dict[int, Pattern], list[int]]:
    """Empty strips: those alike in some way, a sheet or two, or any few.

    Returns
    -------
    The sheets that lose something, by place, as copies; and the kinds of the parts taken out.
    """
    changed: dict[int, Pattern] = {}
    loose: list[int] = []
    way = rng.randrange(5)
    for index, b, r in _choose(patterns, way, rng):
        if index not in changed:
            changed[index] = patterns[index].copy()
        strip = changed[index].panels[b].strips[r]
        loose += [slot.kind for slot in strip.slots]
        strip.slots, strip.du, strip.dv = [], 0, 0
    for pattern in changed.values():
        if way == 0 and rng.randrange(_TURNED) == 0:
            pattern.turn()
        pattern.measure()
    return changed, loose


def _choose(patterns: Sequence[Pattern], way: int, rng: random.Random) -> list[_Place]:
    places = [
        (index, b, r)
        for index, pattern in enumerate(patterns)
        for b, panel in enumerate(pattern.panels)
        for r in range(len(panel.strips))
    ]

    def strip_at(place: _Place) -> Strip:
        return patterns[place[0]].panels[place[1]].strips[place[2]]

    if way == 0:
        most = min(len(patterns), rng.choice((1, 1, 2)))
        sheets = set(rng.sample(range(len(patterns)), most))
        return [place for place in places if place[0] in sheets]
    if way == 1:
        return rng.sample(places, min(len(places), rng.randint(1, _MANY)))
    strip = strip_at(rng.choice(places))
    slot = rng.choice(strip.slots)
    if way == 2:
        alike = [place for place in places if strip_at(place).dv == strip.dv]
    elif way == 3:
        alike = [p for p in places if any(s.du == slot.du for s in strip_at(p).slots)]
    else:
        alike = [p for p in places if any(s.kind == slot.kind for s in strip_at(p).slots)]
    return alike if len(alike) <= _MANY else rng.sample(alike, _MANY)
