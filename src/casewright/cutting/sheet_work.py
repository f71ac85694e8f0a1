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
from casewright.cutting.work import lost_datums

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
    heads, orders
        Settings that need no piece from another; and pairs of which the second needs one that the
        first gives. The straightedge is passed over.
    """

    own: int
    set_ups: frozenset[SetUp]
    groups: frozenset[_Grouped] = frozenset()
    lays: tuple[tuple[int, bool, int], ...] = ()
    first: Job | None = None
    heads: frozenset[SetUp] = frozenset()
    orders: frozenset[tuple[SetUp, SetUp]] = frozenset()


_Key = tuple[object, ...]

_Frame = tuple[int, bool]
"""Place of the stock in the problem, and whether the pattern lies across it."""

_MOST_KNOWN = 50_000
"""Sheets, and pieces of them, of which the work is remembered."""

_NOTHING = SheetWork(0, frozenset())


@dataclass(frozen=True, slots=True)
class WorkCounter:
    """Counts the work of sheets, each by itself (`WorkCount` adds them up).

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
        if len(self._known) > _MOST_KNOWN:
            self._known.clear()
        contents = tuple(_key(panel) for panel in pattern.panels)
        key = (pattern.stock, pattern.swapped, contents)
        found = self._known.get(key)
        if found is None:
            ground = ground_of(self.problem, pattern)
            divided = divisions(self.problem, pattern)
            found = self._brought(
                self._piece_work(ground, divided, (pattern.stock, pattern.swapped))
            )
            # Patterns begin at the low edges; where these are trimmed, the others are too.
            trim = self.problem.stock[pattern.stock].trim
            lost = (trim.left > 0) + (trim.bottom > 0)
            found = replace(found, own=found.own + lost * self.model.rates.lost_datum)
            self._known[key] = found
        return found

    def tree_work(self, tree: SheetTree) -> SheetWork:
        """The share of a cut tree whose parts are named by the numbers of their kinds."""
        stock = next(i for i, item in enumerate(self.problem.stock) if item.id == tree.stock)
        work = self._brought(self._stub_work(tree.root, {}, stock))
        parts = [leaf.rect for leaf in leaves(tree.root) if leaf.use == "part"]
        lost = lost_datums(parts, self.problem.stock[stock]) if parts else 0
        return replace(work, own=work.own + lost * self.model.rates.lost_datum)

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
        chain = _Chain()
        groups: set[_Grouped] = set()
        lays: list[tuple[int, bool, int]] = []
        for job in jobs:
            own += self._cutting(job)
            chain.add(job)
            if job.before is not None:
                own += self._handling(job, jobs[job.before])
            for side in (job.low, job.high):
                if not isinstance(side, Leaf) or side.use != "part":
                    continue
                ways = _ways_to(job, jobs)
                left = inner.get(side.part) or self._part_work(side, ways)
                own += left.own
                lays += left.lays
                chain.lead_to(left)
                if left.first is not None:
                    own += self._handling(left.first, job)
                groups.update((k, t, _sorted({**ways, **dict(way)})) for k, t, way in left.groups)
        guided = {one for one in groups if any(setting < 0 for _, (_, setting) in one[2])}
        lays += ((k, t, n) for (k, t), n in Counter(one[:2] for one in guided).items())
        return SheetWork(
            own, frozenset(chain.set_ups), frozenset(groups - guided), tuple(lays), jobs[0],
            frozenset(chain.heads), frozenset(chain.orders),
        )  # fmt: skip

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


@dataclass(slots=True)
class _Chain:
    """Settings of a piece, and which of them comes before which; `_last` is that of each cut."""

    set_ups: set[SetUp] = field(default_factory=set)
    heads: set[SetUp] = field(default_factory=set)
    orders: set[tuple[SetUp, SetUp]] = field(default_factory=set)
    _last: list[SetUp | None] = field(default_factory=list)

    def add(self, job: Job) -> None:
        """The next cut."""
        before = None if job.before is None else self._last[job.before]
        if job.method == "straightedge":
            self._last.append(before)
            return
        own = job.method, job.setting
        self._link(before, own)
        self.set_ups.add(own)
        self._last.append(own)

    def lead_to(self, left: SheetWork) -> None:
        """What the last cut leaves is cut further."""
        for head in left.heads:
            self._link(self._last[-1], head)
        self.set_ups |= left.set_ups
        self.orders |= left.orders

    def _link(self, before: SetUp | None, after: SetUp) -> None:
        if before is None:
            self.heads.add(after)
        elif before != after:
            self.orders.add((before, after))


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
