"""What one sheet adds to the work of a plan, so that plans can be compared sheet by sheet."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from casewright.cutting.methods import Method
from casewright.cutting.pattern import (
    Content,
    Ground,
    Kind,
    Panel,
    Pattern,
    Slot,
    Strip,
    cut_apart,
    divisions,
    ground_of,
    inner_divisions,
)
from casewright.cutting.problem import Problem
from casewright.cutting.rates import WorkModel
from casewright.cutting.sawing import Job, jobs_of
from casewright.cutting.solution import Direction, Leaf, Node, Rect, SheetTree, leaves
from casewright.cutting.tree import Axis, transpose

__all__ = ["SheetWork", "WorkCounter"]

SetUp = tuple[Method, int]

_Ways = dict[Direction, SetUp]
"""The last settings along and across that lead to a piece."""

_Grouped = tuple[int, bool, tuple[tuple[Direction, SetUp], ...]]


@dataclass(frozen=True, slots=True)
class SheetWork:
    """One sheet's share of the work, or that of a piece of it.

    Parameters
    ----------
    own
        Work that no other sheet shares [hundredths of a minute].
    set_ups
        Settings it needs, which other sheets may share.
    groups
        For parts of a group: number of the kind, turned or not, and the settings that give it.
    lays
        For parts of a group that the straightedge gives, which is never laid twice alike: number
        of the kind, turned or not, and how many ways lead to it.
    first
        The first cut, to which the piece still has to be brought; None: it is not cut.
    """

    own: int
    set_ups: frozenset[SetUp]
    groups: frozenset[_Grouped] = frozenset()
    lays: tuple[tuple[int, bool, int], ...] = ()
    first: Job | None = None


_Key = tuple[object, ...]

_Frame = tuple[int, bool]
"""Place of the stock in the problem, and whether the pattern lies across it."""

_NOTHING = SheetWork(0, frozenset())


@dataclass(frozen=True, slots=True)
class WorkCounter:
    """Counts the work of sheets; what is the same on many sheets is counted once.

    Parameters
    ----------
    problem, kinds
        What is cut, and the parts put together by what they are.
    model
        What work is reckoned by.
    """

    problem: Problem
    kinds: Sequence[Kind]
    model: WorkModel
    _known: dict[_Key, SheetWork] = field(default_factory=dict)

    def pattern_work(self, pattern: Pattern) -> SheetWork:
        """The share of a sheet."""
        contents = tuple(_key(panel) for panel in pattern.panels)
        key = (pattern.stock, pattern.swapped, contents)
        found = self._known.get(key)
        if found is None:
            ground = ground_of(self.problem, pattern)
            divided = divisions(self.problem, pattern)
            found = self._brought(
                self._piece_work(ground, divided, (pattern.stock, pattern.swapped))
            )
            self._known[key] = found
        return found

    def tree_work(self, tree: SheetTree) -> SheetWork:
        """The share of a cut tree whose parts are named by the numbers of their kinds."""
        stock = next(i for i, item in enumerate(self.problem.stock) if item.id == tree.stock)
        return self._brought(self._stub_work(tree.root, {}, stock))

    def total(self, works: Sequence[SheetWork]) -> int:
        """The work of a plan of these sheets."""
        rates = self.model.rates
        set_ups: set[SetUp] = set().union(*(work.set_ups for work in works))
        total = sum(work.own for work in works)
        total += sum(rates.stop if method == "sled" else rates.fence for method, _ in set_ups)
        settings: Counter[int] = Counter()
        ways: dict[int, set[tuple[tuple[Direction, SetUp], ...]]] = {}
        lies: dict[str, set[bool]] = {}
        for work in works:
            for kind, turned, way in work.groups:
                ways.setdefault(kind, set()).add(way)
                lies.setdefault(self.kinds[kind].group or "", set()).add(turned)
            for kind, turned, count in work.lays:
                settings[kind] += count
                lies.setdefault(self.kinds[kind].group or "", set()).add(turned)
        settings.update({kind: len(found) for kind, found in ways.items()})
        total += rates.split_group * sum(count - 1 for count in settings.values())
        return total + rates.flip * sum(len(turned) > 1 for turned in lies.values())

    def _piece_work(
        self, ground: Ground, divided: tuple[Axis, list[tuple[int, Content]]], frame: _Frame
    ) -> SheetWork:
        """The share of a piece: its own cuts, and the shares of what they leave."""
        inner: dict[str, SheetWork] = {}

        def build(content: Content, axis: Axis, rect: Rect) -> Node:
            if isinstance(content, Slot) and axis == "y":
                return Leaf(rect, "part", str(content.kind))
            left = Ground(*rect[2:], max(0, ground.u0 - rect.x), max(0, ground.v0 - rect.y))
            name = f"_{len(inner)}"
            inner[name] = self._content_work(content, left, frame)
            return Leaf(rect, "part", name)

        root = cut_apart(self.problem, ground, divided, build)
        return self._stub_work(transpose(root) if frame[1] else root, inner, frame[0])

    def _content_work(self, content: Content, ground: Ground, frame: _Frame) -> SheetWork:
        key = (frame, ground.du, ground.dv, ground.u0, ground.v0, _key(content))
        found = self._known.get(key)
        if found is None:
            found = self._piece_work(ground, inner_divisions(content), frame)
            self._known[key] = found
        return found

    def _stub_work(self, root: Node, inner: dict[str, SheetWork], stock: int) -> SheetWork:
        """The share of a tree in which some parts stand for pieces that are cut further."""
        if isinstance(root, Leaf):
            return inner.get(root.part) or self._part_work(root, {})
        jobs = jobs_of(SheetTree(0, "", root), self.problem.kerf, self.model.limits)
        own = -self._kept(root, stock)
        set_ups: set[SetUp] = set()
        groups: set[_Grouped] = set()
        lays: list[tuple[int, bool, int]] = []
        for job in jobs:
            own += self._cutting(job)
            if job.method != "straightedge":
                set_ups.add((job.method, job.setting))
            if job.before is not None:
                own += self._handling(job, jobs[job.before])
            for side in (job.low, job.high):
                if not isinstance(side, Leaf) or side.use != "part":
                    continue
                ways = _ways_to(job, jobs)
                left = inner.get(side.part) or self._part_work(side, ways)
                own += left.own
                set_ups |= left.set_ups
                lays += left.lays
                if left.first is not None:
                    own += self._handling(left.first, job)
                groups.update((k, t, _sorted({**ways, **dict(way)})) for k, t, way in left.groups)
        guided = {one for one in groups if any(setting < 0 for _, (_, setting) in one[2])}
        lays += ((k, t, n) for (k, t), n in Counter(one[:2] for one in guided).items())
        sets = frozenset(set_ups), frozenset(groups - guided)
        return SheetWork(own, *sets, tuple(lays), jobs[0])

    def _part_work(self, leaf: Leaf, ways: _Ways) -> SheetWork:
        kind = self.kinds[int(leaf.part)]
        if kind.group is None:
            return _NOTHING
        turned = tuple(leaf.rect[2:]) != (kind.length, kind.width)
        return SheetWork(0, frozenset(), frozenset([(int(leaf.part), turned, _sorted(ways))]))

    def _cutting(self, job: Job) -> int:
        """Making a cut, and laying the straightedge for it."""
        rates = self.model.rates
        along = job.rect.length if job.direction == "rip" else job.rect.width
        guide = rates.guide if job.method == "straightedge" else 0
        return rates.cut + guide + along * rates.reach // rates.reach_length

    def _kept(self, root: Node, stock: int) -> int:
        """Worth of the offcuts of a piece."""
        if not self.model.rates.hour:
            return 0
        item = self.problem.stock[stock]
        price = item.price * self.model.rates.kept_share * 60
        whole = item.length * item.width * self.model.rates.hour
        return sum(
            price * leaf.rect.area // whole for leaf in leaves(root) if leaf.use == "offcut"
        )

    def _brought(self, work: SheetWork) -> SheetWork:
        """The share with the sheet brought to the saw."""
        if work.first is None:
            return work
        return replace(work, own=work.own + self._handling(work.first, None))

    def _handling(self, job: Job, before: Job | None) -> int:
        """Lifting a piece to the saw, and turning it."""
        work = 0
        if before is not None and before.direction != job.direction:
            work += self.model.rates.turn
        if before is None or before.method != "straightedge" or job.method != "straightedge":
            area = job.rect.area
            if self.model.load.full is not None and area > self.model.load.full:
                work += self.model.rates.full_lift
            elif self.model.load.half is not None and area > self.model.load.half:
                work += self.model.rates.half_lift
        return work


def _ways_to(job: Job, jobs: Sequence[Job]) -> _Ways:
    """The last settings along and across that lead to what a cut gives.

    For the straightedge the number of the cut stands below zero: it is laid anew for each.
    """
    found: _Ways = {}
    last: Job | None = job
    while last is not None:
        guided = last.method == "straightedge"
        setting = -1 - jobs.index(last) if guided else last.setting
        found.setdefault(last.direction, (last.method, setting))
        last = None if last.before is None else jobs[last.before]
    return found


def _sorted(ways: _Ways) -> tuple[tuple[Direction, SetUp], ...]:
    return tuple(sorted(ways.items()))


def _key(content: Content) -> _Key:
    """What tells a content from others."""
    if isinstance(content, Panel):
        return content.over, tuple(_key(strip) for strip in content.strips)
    if isinstance(content, Strip):
        return content.over, *content.slots
    return content
