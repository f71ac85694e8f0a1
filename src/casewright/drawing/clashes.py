"""What lies over something else on a finished plot though both must be read."""

from __future__ import annotations

from collections.abc import Sequence

from casewright.drawing.marks import Area, Group, Word
from casewright.drawing.taken import Grid, Segment, bodies, box, figures, inside, lines, overlap

__all__ = ["clashes", "struck"]

_UNSEEN = 0.02  # common ground that nobody sees [mm2 of paper]
_GRAZED = 0.5  # length of a line along the rim of a word that nobody minds [mm]


def clashes(groups: Sequence[Group]) -> list[tuple[Group, Group]]:
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


def struck(groups: Sequence[Group]) -> list[Group]:
    """Groups with a word that a line of another group runs through.

    A word on a patch or in a ring hides the lines drawn before it.
    """
    ground: Grid[tuple[int, Segment]] = Grid()
    for number, group in enumerate(groups):
        for line in lines(group):
            ground.add(box(line), (number, line))
    return [group for number, group in enumerate(groups) if _is_struck(number, group, ground)]


def _is_struck(number: int, group: Group, ground: Grid[tuple[int, Segment]]) -> bool:
    covered = any(not isinstance(mark, Word) and mark.fill is not None for mark in group.marks)
    for mark in group.marks:
        if not isinstance(mark, Word):
            continue
        area = figures(mark)
        for _, (other, line) in ground.near(area):
            if other == number or (covered and other < number):
                continue
            if inside(line, area) > _GRAZED:
                return True
    return False
