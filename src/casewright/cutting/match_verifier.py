"""Checks that matched parts lie as the grain is to run: side by side or in line, in their order.

Written from the contract alone; shares no code with what makes the plans.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise

from casewright.cutting.problem import Match, Problem
from casewright.cutting.solution import Rect, Solution
from casewright.cutting.violations import Breach, Violation

__all__ = ["match_faults", "match_violations"]

Lies = tuple[int, Rect]
"""Number of a sheet, and where a part lies on it."""


def match_violations(problem: Problem, solution: Solution) -> Iterator[Violation]:
    """What is wrong with the matches of a plan; those that are left over whole are not."""
    lies = {
        (placed.part, placed.copy): (placed.sheet, placed.rect) for placed in solution.placements
    }
    for name, part, says in match_faults(problem, lies):
        at = [sheet for (held, _), (sheet, _) in lies.items() if held == part]
        yield Violation(Breach.MATCH, f'match "{name}": {says}', at[0] if at else None, part)


def match_faults(
    problem: Problem, lies: Mapping[tuple[str, int], Lies]
) -> Iterator[tuple[str, str, str]]:
    """For every match that is not kept its id, a part and what is wrong."""
    counts = {part.id: part.count for part in problem.parts}
    for match in problem.matches:
        wanted = [(part, copy) for part in match.parts for copy in range(1, counts[part] + 1)]
        there = [one for one in wanted if one in lies]
        if not there:
            continue
        if len(there) < len(wanted):
            missing = next(one for one in wanted if one not in lies)
            yield match.id, missing[0], f"piece {missing[1]} of {missing[0]} is missing"
        elif len({lies[one][0] for one in wanted}) > 1:
            yield match.id, wanted[0][0], "its parts lie on several sheets"
        else:
            places = {one: lies[one][1] for one in wanted}
            for part, says in _row_faults(match, counts, places, problem.kerf):
                yield match.id, part, says


def _row_faults(
    match: Match, counts: Mapping[str, int], places: Mapping[tuple[str, int], Rect], kerf: int
) -> Iterator[tuple[str, str]]:
    """Walk along the row: piece, blade, piece; all begin at one line."""
    row: list[tuple[str, Rect]] = []
    for one in match.of:
        if isinstance(one, Match):
            yield from _row_faults(one, counts, places, kerf)
            inner = [
                places[part, copy] for part in one.parts for copy in range(1, counts[part] + 1)
            ]
            row.append((one.parts[0], _around(inner)))
        else:
            row += ((one, places[one, copy]) for copy in range(1, counts[one] + 1))
    is_across = match.way == "across"
    for (_, before), (part, rect) in pairwise(row):
        gap = rect.y - before.y1 if is_across else rect.x - before.x1
        is_level = rect.x == before.x if is_across else rect.y == before.y
        if gap != kerf or not is_level:
            way = "beside" if is_across else "in line after"
            yield part, f"{part} at {rect} does not lie {way} {before}, a kerf apart"


def _around(rects: list[Rect]) -> Rect:
    x, y = min(rect.x for rect in rects), min(rect.y for rect in rects)
    x1, y1 = max(rect.x1 for rect in rects), max(rect.y1 for rect in rects)
    return Rect(x, y, x1 - x, y1 - y)
