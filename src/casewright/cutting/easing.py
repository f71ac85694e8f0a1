"""The same parts from no more sheets, with less work at the saw."""

from __future__ import annotations

import random  # noqa: TID251 - seeded by the caller
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial

from casewright.cutting.engine import Stop
from casewright.cutting.exchange import exchange
from casewright.cutting.outcome import solution_of
from casewright.cutting.pattern import Kind, Pattern, kinds_of, pattern_of, tree_of
from casewright.cutting.plain import Plain, is_plain
from casewright.cutting.plan_sheets import PlanSheets
from casewright.cutting.problem import Problem
from casewright.cutting.rates import WorkModel
from casewright.cutting.repair import Repair, ways_of
from casewright.cutting.rough_cuts import settle
from casewright.cutting.ruin import ruin
from casewright.cutting.sheet_work import WorkCounter
from casewright.cutting.solution import Leaf, Node, SheetTree, Solution, leaves
from casewright.cutting.steps import plan_cuts
from casewright.cutting.work import work_of
from casewright.cutting.work_count import WorkCount

__all__ = ["ease"]

_WASTE = (20, 60, 150, 400)
"""Prices of a mean part's area of ground [hundredths of a minute], to look in different ways."""

_FRESH = 10
"""One time in so many another sheet is offered, where one more may be spent."""

_EXCHANGE, _TRIED, _TAKEN_OUT = 50, 5, 10
"""So many times in a hundred, pieces of two sheets change places. It takes as long as some places,
and so does taking parts out for others (measured)."""

_CIRCLE = 1000
"""What two settings that need each other's pieces count as [hundredths of a minute]: one is made
twice, and often parts that belong together are spread over both (measured)."""

_WARM, _COLD = 250, 20
"""Hundredths of a minute by which a plan may be worse and still be followed, first and last."""

_ROUND, _FEW = 500, 2
"""Places tried in the first round for each part, of which there are no fewer; the next round is
warm again, and twice as long."""

_QUIET = 3
"""Rounds without anything better after which it ends."""


_START = 1_000
"""So many parts are looked at whatever the stop, and so many ways of cutting them at the start:
that takes some tenths of a second (measured)."""

_BY_WAY = 2
"""Places that a way of cutting a piece counts for at the start of a round. All together count on
their own: beside a round of any length they are few."""


def ease(
    problem: Problem,
    solution: Solution,
    model: WorkModel,
    stop: Stop | None = None,
    seed: int = 0,
    *,
    more: int = 0,
) -> Solution:
    """Look for a plan with less work.

    Strips and whole sheets are taken out and their parts put back where they cost least; panels
    and strips change places. A plan that is a little worse may be followed for a while, ever less
    so. Where there is waste for it, first cuts may run wide of the line (`rough_cuts`).

    Parameters
    ----------
    problem, solution
        What is cut, and a plan for it. Sheets with defects, and such as are cut in more than
        three stages, are left as they are.
    model
        What work is reckoned by.
    stop
        When to be content; counts places tried. How the sheets found are cut is looked at for no
        longer than that either, and not at all where the parts are more than the places.
    seed
        Where to look.
    more
        Sheets, or money, that may be spent over what `solution` costs.

    Returns
    -------
    The plan with the least work that was found, `solution` itself if there was none better.

    Sources
    -------
    Schrimpf et al. 2000, ruin and recreate; Christiaens and Vanden Berghe 2020, places passed
    over at random.
    """
    if is_plain(problem):
        judge = partial(_work, problem, model)
        return _Easing(problem, solution, model, seed, more, judge).run(stop or Stop())
    plain = Plain.of_plan(problem, solution.tree)
    if plain.kept(solution.tree) < {match.id for match in problem.matches}:
        return solution
    inner = plain.within(solution)

    def judged(found: Solution) -> int:
        return _work(problem, model, plain.outer(found))

    eased = _Easing(plain.inner, inner, model, seed, more, judged).run(stop or Stop())
    return solution if eased is inner else plain.outer(eased, solution.bound)


def _work(problem: Problem, model: WorkModel, solution: Solution) -> int:
    """What a plan asks for, counted on its order of work [hundredths of a minute]."""
    plan = plan_cuts(problem, solution, model.limits)
    return work_of(problem, solution, plan, model).total


class _Short:
    """Whether the start of a round has taken long enough; each time it is asked counts."""

    def __init__(self, stop: Stop) -> None:
        self._stop, self._left = stop, max(_START, stop.nodes // _BY_WAY)

    def __call__(self) -> bool:
        self._left -= 1
        return self._left < 0 or self._stop.is_asked()


class _Easing:
    """One search."""

    def __init__(
        self,
        problem: Problem,
        solution: Solution,
        model: WorkModel,
        seed: int,
        more: int,
        judge: Callable[[Solution], int],
    ) -> None:
        self.problem, self.solution, self.model, self.judge = problem, solution, model, judge
        self.rng = random.Random(seed)  # noqa: S311 - to look about, not for secrets
        self.kinds = kinds_of(problem.parts)
        self.kind_of = {part: k for k, kind in enumerate(self.kinds) for part, _ in kind.copies}
        self.ways = [ways_of(k, kind, problem.kerf) for k, kind in enumerate(self.kinds)]
        self.counter = WorkCounter(problem, self.kinds, model)
        self.fixed: list[SheetTree] = []
        self.patterns: list[Pattern] = []
        for tree in solution.tree:
            pattern = pattern_of(problem, tree, self.kind_of.__getitem__)
            if pattern is None:
                self.fixed.append(tree)
            else:
                self.patterns.append(pattern)
        self.priced = solution.bound.measure == "price"
        place = {item.id: index for index, item in enumerate(problem.stock)}
        self.taken = Counter(place[tree.stock] for tree in self.fixed)
        self.most = solution.cost + more
        areas = [kind.length * kind.width * len(kind.copies) for kind in self.kinds]
        self.mean = max(1, sum(areas) // max(1, len(solution.placements)))
        self.nodes, self.round = 0, _ROUND * max(_FEW, len(solution.placements))

    def run(self, stop: Stop) -> Solution:
        """Round after round, each from the best plan so far, until some bring nothing."""
        if stop.is_asked() or len(self.solution.placements) > max(_START, stop.nodes):
            return self.solution
        best, least, quiet = self.solution, self.judge(self.solution), 0
        calmest, sheets = self.patterns, self._start(self.patterns, stop)
        patterns, cut = sheets.patterns, sheets.cut
        while True:
            cut = settle(self.counter, cut, self._count(), _Short(stop))
            plan = self._solution(cut)
            work = self.judge(plan)
            if work < least:
                best, least, calmest, quiet = plan, work, patterns, 0
            if not self.patterns or quiet == _QUIET or stop.reached(self.nodes):
                return best
            sheets = self._start(calmest, stop)
            patterns, cut = self._round(sheets, min(stop.nodes, self.nodes + self.round), stop)
            self.round *= 2
            quiet += 1

    def _count(self) -> WorkCount:
        """The work of the sheets that stay as they are."""
        count = WorkCount(self.model.rates, _CIRCLE)
        for tree in self.fixed:
            count.add(self.counter.tree_work(_by_kind(tree, self.kind_of)))
        return count

    def _start(self, patterns: Sequence[Pattern], stop: Stop) -> PlanSheets:
        return PlanSheets(self.counter, self._count(), patterns, _Short(stop))

    def _round(
        self, sheets: PlanSheets, end: int, stop: Stop
    ) -> tuple[list[Pattern], list[Pattern]]:
        """The best sheets on the way to where the round is cold, and as they are cut."""
        start, lowest = self.nodes, sheets.work
        calmest = sheets.patterns, sheets.cut
        while self.nodes < end and not stop.is_asked():
            warmth = _COLD + (_WARM - _COLD) * (end - self.nodes) ** 2 // (end - start) ** 2
            changed = self._change(sheets)
            most = sheets.work + self.rng.randrange(2 * warmth)
            if changed and sheets.change(changed, most, self.rng) and sheets.work < lowest:
                lowest, calmest = sheets.work, (sheets.patterns, sheets.cut)
        return calmest

    def _change(self, sheets: PlanSheets) -> dict[int, Pattern] | None:
        """Some sheets changed, by place; None when it did not come to that."""
        if self.rng.randrange(100) < _EXCHANGE and len(sheets.patterns) > 1:
            self.nodes += _TRIED
            return exchange(sheets.patterns, self.rng, may_part=self.problem.stages != 2)
        changed, loose = ruin(sheets.patterns, self.rng)
        patterns = [changed.get(i, pattern) for i, pattern in enumerate(sheets.patterns)]
        repair = Repair(
            self.problem, self.kinds, self.model.rates, patterns, sheets.counts_after(changed),
            self.ways, self.rng.choice(_WASTE), self.most, self.taken, self.priced, self.rng,
            self.mean, set(changed),
        )  # fmt: skip
        if self.rng.randrange(_FRESH) == 0:
            repair.open_empty()
        by = self.rng.randrange(3)
        self.rng.shuffle(loose)
        loose.sort(key=lambda kind: _rank(self.kinds[kind], by))
        done = all(repair.put(kind) for kind in loose)
        self.nodes += repair.nodes + _TAKEN_OUT
        return {index: patterns[index] for index in sorted(repair.own)} if done else None

    def _solution(self, patterns: Sequence[Pattern]) -> Solution:
        laid = {(leaf.part, leaf.copy) for tree in self.fixed for leaf in leaves(tree.root)}
        wanted = {(placement.part, placement.copy) for placement in self.solution.placements}
        free = [
            iter([copy for copy in kind.copies if copy in wanted and copy not in laid])
            for kind in self.kinds
        ]
        trees = [replace(tree, sheet=i) for i, tree in enumerate(self.fixed)]
        for pattern in sorted(patterns, key=lambda pattern: pattern.free):
            trees.append(tree_of(self.problem, pattern, len(trees), lambda k: next(free[k])))
        return solution_of(self.problem, tuple(trees), self.solution.unplaced, self.solution.bound)


def _by_kind(tree: SheetTree, kind_of: dict[str, int]) -> SheetTree:
    def named(node: Node) -> Node:
        if isinstance(node, Leaf):
            return replace(node, part=str(kind_of[node.part])) if node.use == "part" else node
        return replace(node, pieces=tuple(named(piece) for piece in node.pieces))

    return replace(tree, root=named(tree.root))


def _rank(kind: Kind, sides: int) -> tuple[int, int]:
    return (
        (-kind.width, -kind.length),
        (-kind.length, -kind.width),
        (-kind.length * kind.width, 0),
    )[sides]
