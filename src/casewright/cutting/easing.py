"""The same parts from no more sheets, with less work at the saw."""

from __future__ import annotations

import random  # noqa: TID251 - seeded by the caller
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from casewright.cutting.engine import Stop
from casewright.cutting.outcome import solution_of
from casewright.cutting.pattern import Kind, Pattern, Strip, kinds_of, pattern_of, tree_of
from casewright.cutting.problem import Problem
from casewright.cutting.rates import WorkModel
from casewright.cutting.repair import Repair, manners_of, sizes_of
from casewright.cutting.rough_cuts import cut_roughly
from casewright.cutting.sheet_work import SheetWork, WorkCounter
from casewright.cutting.solution import Leaf, Node, SheetTree, Solution, leaves
from casewright.cutting.steps import plan_cuts
from casewright.cutting.work import work_of

__all__ = ["ease"]

_WASTE = (20, 60, 150, 400)
"""Prices of a mean part's area of ground [hundredths of a minute], to look in different ways."""

_Place = tuple[int, int, int]
"""Numbers of a sheet, of a panel on it and of a strip in that."""

_MANY = 2
"""Most strips that are emptied at a time."""

_FRESH = 10
"""One time in so many another sheet is offered, where one more may be spent."""

_WARM, _COLD = 250, 10
"""Hundredths of a minute by which a plan may be worse and still be followed, first and last."""

_ROUND, _FEW = 400, 8
"""Places tried in the first round for each part, of which there are no fewer; the next round is
warm again, and twice as long."""

_QUIET = 4
"""Rounds without anything better after which it ends."""


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

    Strips, panels and whole sheets are taken out and their parts put back where they cost least;
    a plan that is a little worse may be followed for a while, ever less so. Where there is waste
    for it, first cuts may run wide of the line (`rough_cuts`).

    Parameters
    ----------
    problem, solution
        What is cut, and a plan for it. Sheets with defects, and such as are cut in more than
        three stages, are left as they are.
    model
        What work is reckoned by.
    stop
        When to be content; counts places tried.
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
    search = _Easing(problem, solution, model, seed, more)
    return search.run(stop or Stop())


class _Easing:
    """One search."""

    def __init__(
        self, problem: Problem, solution: Solution, model: WorkModel, seed: int, more: int
    ) -> None:
        self.problem, self.solution, self.model = problem, solution, model
        self.rng = random.Random(seed)  # noqa: S311 - to look about, not for secrets
        self.kinds = kinds_of(problem.parts)
        self.kind_of = {part: k for k, kind in enumerate(self.kinds) for part, _ in kind.copies}
        self.counter = WorkCounter(problem, self.kinds, model)
        self.fixed: list[SheetTree] = []
        self.patterns: list[Pattern] = []
        for tree in solution.tree:
            pattern = pattern_of(problem, tree, self.kind_of.__getitem__)
            if pattern is None:
                self.fixed.append(tree)
            else:
                self.patterns.append(pattern)
        self.works = [self.counter.pattern_work(pattern) for pattern in self.patterns]
        self.fixed_works = [self.counter.tree_work(_by_kind(t, self.kind_of)) for t in self.fixed]
        self.priced = solution.bound.measure == "price"
        place = {item.id: index for index, item in enumerate(problem.stock)}
        self.taken = Counter(place[tree.stock] for tree in self.fixed)
        self.most = solution.cost + more
        areas = [kind.length * kind.width * len(kind.copies) for kind in self.kinds]
        self.mean = max(1, sum(areas) // max(1, len(solution.placements)))
        self.nodes, self.round = 0, _ROUND * max(_FEW, len(solution.placements))

    def _count(self) -> None:
        self.sizes = Counter(size for pattern in self.patterns for size in sizes_of(pattern))
        self.manners = Counter(one for pattern in self.patterns for one in manners_of(pattern))

    def run(self, stop: Stop) -> Solution:
        """Round after round, each from the best plan so far, until some bring nothing."""
        best, least = self.solution, self._work(self.solution)
        patterns = calmest = self.patterns
        quiet = 0
        while True:
            for found in (patterns, *cut_roughly(self.counter, patterns, self.fixed_works)):
                plan = self._solution(found)
                work = self._work(plan)
                if work < least:
                    best, least, calmest, quiet = plan, work, patterns, 0
            if not self.patterns or quiet == _QUIET or stop.reached(self.nodes):
                return best
            self._start(calmest)
            patterns = self._round(min(stop.nodes, self.nodes + self.round), stop)
            self.round *= 2
            quiet += 1

    def _start(self, patterns: list[Pattern]) -> None:
        self.patterns = patterns
        self.works = [self.counter.pattern_work(pattern) for pattern in patterns]
        self._count()

    def _round(self, end: int, stop: Stop) -> list[Pattern]:
        """The best patterns on the way to where the round is cold."""
        start, now = self.nodes, self._total(self.works)
        calmest, lowest = self.patterns, now
        while self.nodes < end and not stop.is_asked():
            tried = self._step()
            if tried is None:
                continue
            patterns, works = tried
            total = self._total(works)
            warmth = max(_COLD, _WARM - (_WARM - _COLD) * (self.nodes - start) // (end - start))
            if total > now + self.rng.randrange(2 * warmth):
                continue
            self.patterns, self.works, now = patterns, works, total
            self._count()
            if total < lowest:
                lowest, calmest = total, patterns
        return calmest

    def _work(self, solution: Solution) -> int:
        plan = plan_cuts(self.problem, solution, self.model.limits)
        return work_of(self.problem, solution, plan, self.model).total

    def _total(self, works: Sequence[SheetWork]) -> int:
        return self.counter.total([*works, *self.fixed_works])

    def _step(self) -> tuple[list[Pattern], list[SheetWork]] | None:
        """Some parts taken out and put back; None when they find no place."""
        patterns, own, loose = self._ruin()
        if not loose:
            self.nodes += 1
            return None
        sizes, manners = self.sizes.copy(), self.manners.copy()
        for index in own:
            sizes.subtract(sizes_of(self.patterns[index]))
            sizes.update(sizes_of(patterns[index]))
            manners.subtract(manners_of(self.patterns[index]))
            manners.update(manners_of(patterns[index]))
        repair = Repair(
            self.problem, self.kinds, self.model.rates, patterns, sizes, manners,
            self.rng.choice(_WASTE), self.most, self.taken, self.priced, self.rng, self.mean, own,
        )  # fmt: skip
        if self.rng.randrange(_FRESH) == 0:
            repair.open_empty()
        by = self.rng.randrange(3)
        self.rng.shuffle(loose)
        loose.sort(key=lambda kind: _rank(self.kinds[kind], by))
        done = all(repair.put(kind) for kind in loose)
        self.nodes += repair.nodes
        if not done:
            return None
        known = {id(one): work for one, work in zip(self.patterns, self.works, strict=True)}
        patterns = [pattern for pattern in patterns if pattern.panels]
        return patterns, [known.get(id(p)) or self.counter.pattern_work(p) for p in patterns]

    def _ruin(self) -> tuple[list[Pattern], set[int], list[int]]:
        """The sheets with some strips emptied, the places of those copied, the parts taken out."""
        patterns = list(self.patterns)
        places = [
            (index, b, r)
            for index, pattern in enumerate(patterns)
            for b, panel in enumerate(pattern.panels)
            for r in range(len(panel.strips))
        ]
        chosen = self._choose(places)
        own = {index for index, _, _ in chosen}
        for index in own:
            patterns[index] = patterns[index].copy()
        loose: list[int] = []
        for index, b, r in chosen:
            strip = patterns[index].panels[b].strips[r]
            loose += [slot.kind for slot in strip.slots]
            strip.slots, strip.du, strip.dv = [], 0, 0
        for index in own:
            patterns[index].measure()
        return patterns, own, loose

    def _choose(self, places: list[_Place]) -> list[_Place]:
        """Strips to empty: those alike in some way, a sheet or two, or any few."""
        rng = self.rng
        way = rng.randrange(5)
        if way == 0:
            most = min(len(self.patterns), rng.choice((1, 1, 2)))
            sheets = set(rng.sample(range(len(self.patterns)), most))
            return [place for place in places if place[0] in sheets]
        if way == 1:
            return rng.sample(places, min(len(places), rng.randint(1, _MANY)))
        strip = self._strip(*rng.choice(places))
        slot = rng.choice(strip.slots)
        if way == 2:
            alike = [place for place in places if self._strip(*place).dv == strip.dv]
        elif way == 3:
            alike = [p for p in places if any(s.du == slot.du for s in self._strip(*p).slots)]
        else:
            alike = [p for p in places if any(s.kind == slot.kind for s in self._strip(*p).slots)]
        return alike if len(alike) <= _MANY else rng.sample(alike, _MANY)

    def _strip(self, index: int, b: int, r: int) -> Strip:
        return self.patterns[index].panels[b].strips[r]

    def _solution(self, patterns: Sequence[Pattern]) -> Solution:
        laid = {(leaf.part, leaf.copy) for tree in self.fixed for leaf in leaves(tree.root)}
        wanted = {(placement.part, placement.copy) for placement in self.solution.placements}
        free = [
            iter([copy for copy in kind.copies if copy in wanted and copy not in laid])
            for kind in self.kinds
        ]
        trees = [replace(tree, sheet=i) for i, tree in enumerate(self.fixed)]
        for pattern in sorted(patterns, key=lambda pattern: pattern.free):
            trees.append(
                tree_of(self.problem, _tidy(pattern), len(trees), lambda k: next(free[k]))
            )
        return solution_of(self.problem, tuple(trees), self.solution.unplaced, self.solution.bound)


def _by_kind(tree: SheetTree, kind_of: dict[str, int]) -> SheetTree:
    def named(node: Node) -> Node:
        if isinstance(node, Leaf):
            return replace(node, part=str(kind_of[node.part])) if node.use == "part" else node
        return replace(node, pieces=tuple(named(piece) for piece in node.pieces))

    return replace(tree, root=named(tree.root))


def _tidy(pattern: Pattern) -> Pattern:
    pattern = pattern.copy()
    for panel in pattern.panels:
        for strip in panel.strips:
            strip.slots.sort(key=lambda slot: (-slot.du, -slot.dv, slot.kind))
        panel.strips.sort(key=lambda strip: (-strip.dv, -strip.du))
    pattern.panels.sort(key=lambda panel: -panel.du)
    return pattern


def _rank(kind: Kind, sides: int) -> tuple[int, int]:
    return (
        (-kind.width, -kind.length),
        (-kind.length, -kind.width),
        (-kind.length * kind.width, 0),
    )[sides]
