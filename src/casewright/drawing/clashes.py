"""What lies over something else on a finished plot though both must be read."""

from __future__ import annotations

from collections.abc import Iterable

from casewright.drawing.marks import Area, Group
from casewright.drawing.taken import bodies, overlap

__all__ = ["clashes"]

_UNSEEN = 0.02  # common ground that nobody sees [mm2 of paper]


def clashes(groups: Iterable[Group]) -> list[tuple[Group, Group]]:
    """Pairs of groups whose words, rings, signs or holes lie over each other.

    Swept from left to right: of all bodies only those that reach as far right are compared.
    """
    found: dict[tuple[int, int], tuple[Group, Group]] = {}
    every = [
        (body, number, group) for number, group in enumerate(groups) for body in bodies(group)
    ]
    open_bodies: list[tuple[Area, int, Group]] = []
    for body, number, group in sorted(every, key=lambda each: (each[0].x0, each[1])):
        open_bodies = [each for each in open_bodies if each[0].x1 > body.x0]
        for other, earlier, before in open_bodies:
            if earlier != number and overlap(body, other) > _UNSEEN:
                low, high = sorted(((earlier, before), (number, group)), key=lambda each: each[0])
                found[low[0], high[0]] = (low[1], high[1])
        open_bodies.append((body, number, group))
    return [found[key] for key in sorted(found)]
