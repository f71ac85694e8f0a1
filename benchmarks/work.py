"""Sheets and work at the saw for rooms of the shop: kitchens, offcuts, large numbers of parts.

Run with `python benchmarks/work.py`. The problems come from `kitchens.py`. Work is reckoned in
minutes by the model in `casewright.cutting.rates`; ratios are against our bound, or against the
plan from the fewest sheets as it was first found, before work was looked at.
"""

from __future__ import annotations

import resource
import sys
import time
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import partial
from typing import TypeVar

from kitchens import LIMITS, LOAD, kitchen, offcuts

from casewright.cutting import (
    Problem,
    Solution,
    Stop,
    WorkModel,
    ease,
    plan_cuts,
    replan,
    solve,
    verify,
    work_of,
)

MODEL = WorkModel(LIMITS, load=LOAD)
SECONDS_10 = Stop(4_000_000)
"""About ten seconds on the machine of the table in docs/benchmarks.md."""

SECONDS_2 = Stop(1_000_000)
EASING = Stop(400_000)

_T = TypeVar("_T")


def timed(work: Callable[[], _T]) -> tuple[float, _T]:
    """Seconds of the processor, and the result."""
    start = time.process_time()
    result = work()
    return time.process_time() - start, result


def solved(problem: Problem, stop: Stop) -> tuple[float, Solution]:
    """A verified plan."""
    seconds, solution = timed(lambda: solve(problem, stop))
    wrong = verify(problem, solution)
    assert not wrong, wrong
    return seconds, solution


def minutes(problem: Problem, solution: Solution) -> float:
    """Work of a plan at the saw."""
    plan = plan_cuts(problem, solution, LIMITS)
    return work_of(problem, solution, plan, MODEL).total / 100


def parts_of(problem: Problem) -> int:
    """Pieces wanted."""
    return sum(part.count for part in problem.parts)


def fewest(problem: Problem, stop: Stop) -> tuple[float, Solution, Solution]:
    """Seconds, the plan from the fewest sheets as it was first found, and the plan chosen."""
    seen: list[Solution] = []
    seconds, solution = timed(
        lambda: solve(problem, stop, watch=lambda p: seen.append(p.solution))
    )
    assert not verify(problem, solution)
    return seconds, next(plan for plan in seen if plan.cost == solution.cost), solution


def kitchens() -> Iterator[str]:
    """First plan, sheets after two seconds, work before and after easing."""
    yield (
        "kitchen  parts  first: s  sheets  2 s: s  sheets  bound  work  chosen  eased  saved  in s"
    )
    for cases, seed in ((20, 1), (28, 2), (36, 3), (38, 4)):
        problem = kitchen(cases, seed)
        first_s, first = solved(problem, Stop(0))
        seconds, found, solution = fewest(problem, SECONDS_2)
        before, chosen = minutes(problem, found), minutes(problem, solution)
        ease_s, eased = timed(partial(ease, problem, solution, MODEL, EASING))
        assert not verify(problem, eased)
        assert eased.cost <= solution.cost
        after = minutes(problem, eased)
        yield (
            f"{cases:>2} cases {parts_of(problem):>5} {first_s:>9.2f} {first.cost:>7}"
            f" {seconds:>7.2f} {solution.cost:>7} {solution.bound.value:>6} {before:>5.0f}"
            f" {chosen:>7.0f} {after:>6.0f} {1 - after / before:>6.1%} {seconds + ease_s:>5.1f}"
        )


def large() -> Iterator[str]:
    """One kitchen five times over, and from 300 to 3,000 parts: fixed work, then ten seconds."""
    yield "parts   10 s: s  sheets  bound  ratio  fixed work s  growth"
    least: float | None = None
    once = kitchen(20, 1)
    five = replace(once, parts=tuple(replace(p, count=5 * p.count) for p in once.parts))
    for name, problem in (("five", five), *(("", kitchen(n, 5)) for n in (44, 110, 220, 440))):
        seconds, solution = solved(problem, SECONDS_10)
        fixed = min(timed(partial(solve, problem, Stop(0)))[0] for _ in range(3))
        if not name:
            least = least or fixed
        growth = f"{fixed / least:>7.1f}" if least else "      -"
        yield (
            f"{parts_of(problem):<6} {seconds:>8.2f} {solution.cost:>7} {solution.bound.value:>6}"
            f" {solution.cost / solution.bound.value:>6.4f} {fixed:>13.2f} {growth}"
        )


def leftovers() -> Iterator[str]:
    """Offcuts that cost nothing beside new sheets: what must be bought."""
    yield "kitchen with offcuts  parts  seconds  money  bound  ratio"
    for cases, seed in ((20, 1), (28, 2), (36, 3)):
        problem = offcuts(kitchen(cases, seed), seed)
        seconds, solution = solved(problem, SECONDS_10)
        yield (
            f"{cases:>2} cases {parts_of(problem):>18} {seconds:>8.2f} {solution.cost:>6}"
            f" {solution.bound.value:>6} {solution.cost / solution.bound.value:>6.4f}"
        )


def edits() -> Iterator[str]:
    """How far a plan moves after one part of it changes, with a third of its sheets cut."""
    yield "kitchen, edit             parts  sheets  kept  moved  added  anew: sheets  kept    s"
    for cases, seed in ((20, 1), (28, 2)):
        before = kitchen(cases, seed)
        last = solve(before, SECONDS_2)
        cut = range(last.cost // 3)
        first, *rest = before.parts
        for name, changed in (
            ("one more", replace(first, count=first.count + 1)),
            ("1/4 in longer", replace(first, length=first.length + 8)),
            ("one fewer", replace(first, count=first.count - 1)),
        ):
            problem = replace(before, parts=(changed, *rest))
            seconds, made = timed(partial(replan, problem, last, cut, SECONDS_2))
            assert not verify(problem, made.solution)
            anew = replan(problem, replace(last, tree=()), (), SECONDS_2)
            went = made.movement
            yield (
                f"{cases} cases, {name:<15} {parts_of(problem):>5} {made.solution.cost:>7}"
                f" {went.kept:>5} {went.moved:>6} {went.added:>6} {anew.solution.cost:>13}"
                f" {_same_places(last, anew.solution):>5} {seconds:>4.1f}"
            )


def _same_places(last: Solution, now: Solution) -> int:
    """Pieces that lie on the sheet of the same number where they lay."""
    before = Counter((p.part, p.sheet, p.rect) for p in last.placements)
    after = Counter((p.part, p.sheet, p.rect) for p in now.placements)
    return (before & after).total()


def main() -> None:
    """Print the tables."""
    for table in (kitchens, large, leftovers, edits):
        for line in table():
            print(line, flush=True)
        print()
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    print(f"peak memory {peak // 1024 if sys.platform != 'darwin' else peak >> 20} MB of 1000 MB")


if __name__ == "__main__":
    main()
