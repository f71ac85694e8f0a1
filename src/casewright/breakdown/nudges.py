"""Small moves of a depth that save a sheet or a setting, tried on the job itself."""

from __future__ import annotations

from collections import Counter
from collections.abc import Generator, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import NamedTuple

from casewright.breakdown.desk import USUAL_STOP, Desk
from casewright.breakdown.each import Each, in_turn
from casewright.breakdown.lots import settle_all
from casewright.breakdown.plan import Breakdown
from casewright.breakdown.sheets import draft_sheets
from casewright.casework.specs import CaseKind
from casewright.cutting.engine import Stop
from casewright.cutting.settling import Task, TaskSolution
from casewright.cutting.work import Work
from casewright.dims import Given, Origin, Unit
from casewright.facts import NO_FACTS, Facts
from casewright.room.build import build
from casewright.room.model import Room
from casewright.room.specs import JobSpec
from casewright.sources import INCH

__all__ = ["DepthGroup", "Nudge", "depth_groups", "find_nudges", "moved"]

_REACH: Mapping[Unit, tuple[Fraction, Fraction]] = {
    "in": (INCH * 3 / 4, INCH / 4), "mm": (Fraction(20), Fraction(6)),
}  # fmt: skip
"""How far a depth may go down and up [mm]: nobody misses it on a shelf (judgement)."""

_STEP: Mapping[Unit, Fraction] = {"in": INCH / 32, "mm": Fraction(1)}
"""Depths are tried in these steps [mm]."""

_COUNTING = 50_000
"""Places that count the sheets of a room to one or none over the bound (measured on kitchens)."""


@dataclass(frozen=True, slots=True)
class DepthGroup:
    """Cases of one kind that are of one depth, and line up.

    Parameters
    ----------
    kind
        Of all of them.
    cases
        Their keys, as in the job.
    depth
        Outside depth of each, as it was asked for [mm].
    """

    kind: CaseKind
    cases: tuple[str, ...]
    depth: Fraction


@dataclass(frozen=True, slots=True)
class Nudge:
    """A depth that saves something on this job.

    Parameters
    ----------
    group
        The cases that change, with the depth they have.
    depth
        The depth that saves [mm].
    sheets
        By key of the stock, where they differ: sheets now, and with the other depth.
    settings
        Settings of fence, stop and straightedge over all sheets, now and with the other depth;
        None: they were not compared, for sheets are saved.
    """

    group: DepthGroup
    depth: Fraction
    sheets: Mapping[str, tuple[int, int]]
    settings: tuple[int, int] | None = None


def depth_groups(room: Room) -> Iterator[DepthGroup]:
    """The depths of a room that may still move: no part of their cases is cut or read yet."""
    begun = {part.case for part in room.parts if part.state != "planned"}
    begun |= {path.partition(".")[0] for path in room.chain.used_facts}
    found: dict[tuple[CaseKind, Fraction], list[str]] = {}
    for case in room.spec.cases:
        found.setdefault((case.kind, case.depth.value), []).append(case.key)
    for (kind, depth), keys in found.items():
        if not begun.intersection(keys):
            yield DepthGroup(kind, tuple(keys), depth)


def moved(spec: JobSpec, group: DepthGroup, depth: Fraction) -> JobSpec:
    """The job with another depth for a group of cases."""
    given = Given(depth, Origin("chosen", "a depth that was tried"))
    cases = tuple(
        replace(case, depth=given) if case.key in group.cases else case for case in spec.cases
    )
    return replace(spec, cases=cases)


def find_nudges(
    room: Room, breakdown: Breakdown, facts: Facts = NO_FACTS, *, stop: Stop | None = None,
    each: Each = in_turn,
) -> list[Nudge]:  # fmt: skip
    """Look for the least change of each depth that saves a sheet, else one that saves settings.

    Nothing is guessed: the whole job is built with the other depth and its sheets are laid out
    anew; what is told to be saved is looked for as long as the job's own plan was, so that it is
    there when the job is built so. A depth that needs more sheets of any stock is no saving.
    Settings are compared only where no part waits: sizes still to come may change them.

    Parameters
    ----------
    breakdown
        How the job is cut as it stands.
    facts
        With which the room was built.
    stop
        With which the job was broken down; None: as `break_down` does.
    each
        How several stocks are planned.
    """
    groups = depth_groups(room)
    trials = [_Trial(room, breakdown, facts, stop or USUAL_STOP, group) for group in groups]
    found = _side_by_side([trial.run() for trial in trials], each)
    return [nudge for nudge in found if nudge is not None]


class _Asked(NamedTuple):
    """A stock of a room to be planned; nothing else of the room is kept.

    Parameters
    ----------
    kept
        Ids of the offcuts that are offered.
    """

    stock: str
    tasks: tuple[Task, ...]
    kept: frozenset[str]

    def sheets(self, settled: TaskSolution) -> int:
        """Sheets used, offcuts on hand apart [-]."""
        return sum(tree.stock not in self.kept for tree in settled.sawn.solution.tree)


_Asking = Generator[list[_Asked], list[TaskSolution], "_Sheets"]
"""Asks for the sheets of a room to be planned."""

_Looking = Generator[list[_Asked], list[TaskSolution], Nudge | None]


def _side_by_side(trials: Sequence[_Looking], each: Each) -> list[Nudge | None]:
    """What several trials find; what they ask for at the same time is planned together."""
    found: list[Nudge | None] = [None] * len(trials)
    answers: dict[int, list[TaskSolution] | None] = dict.fromkeys(range(len(trials)))
    while answers:
        asked: dict[int, list[_Asked]] = {}
        for number, answer in answers.items():
            trial = trials[number]
            try:
                asked[number] = next(trial) if answer is None else trial.send(answer)
            except StopIteration as end:
                found[number] = end.value
        done = settle_all((one.tasks for stocks in asked.values() for one in stocks), each)
        answers = {n: [done[one.tasks] for one in stocks] for n, stocks in asked.items()}
    return found


class _Trial:
    """The job with one depth after another for a group of cases."""

    def __init__(
        self, room: Room, breakdown: Breakdown, facts: Facts, stop: Stop, group: DepthGroup
    ) -> None:
        self.room, self.facts, self.group, self.stop = room, facts, group, stop
        self.step = _STEP[room.spec.unit]
        down, up = (reach // self.step for reach in _REACH[room.spec.unit])
        self.least, self.most = -int(down), int(up)
        self.is_known = not breakdown.waiting
        self.plans = [plan for plan in breakdown.wanted if plan.kind == "sheets"]
        self.now = _Sheets([(plan.stock, plan.count, plan.work) for plan in self.plans])

    def run(self) -> _Looking:
        """What another depth saves."""
        fewer = yield from self._fewer_sheets()
        if fewer is None and self.is_known:
            return (yield from self._fewer_settings())
        return fewer

    def _fewer_sheets(self) -> _Looking:
        """The shortest move that saves as many sheets as the farthest down does."""
        target = yield from self._saved(self.least)
        if target < 1:
            return None
        near, far = 0, self.least
        while near - far > 1:
            middle = (near + far) // 2
            saved = yield from self._saved(middle)
            near, far = (near, middle) if saved >= target else (middle, far)
        fewest = yield from self._sheets(far, self.stop, eases=False)
        if self.now.saved(fewest) < 1:
            return None
        now, then = self.now.counts, fewest.counts
        sheets = {key: (now[key], then.get(key, 0)) for key in now if then.get(key, 0) != now[key]}
        return Nudge(self.group, self._depth(far), sheets)

    def _fewer_settings(self) -> _Looking:
        """The move that brings most widths of rips together, if it saves a setting."""
        meeting = Counter(self._meeting())
        if not meeting:
            return None
        by = min(meeting, key=lambda by: (-meeting[by], abs(by), by))
        then = yield from self._sheets(by, self.stop, eases=True)
        saves = then.settings < self.now.settings and then.work < self.now.work
        if not saves or self.now.saved(then) < 0:
            return None
        settings = (self.now.settings, then.settings)
        return Nudge(self.group, self._depth(by), {}, settings)

    def _meeting(self) -> Iterator[int]:
        """For each width in these cases the moves that bring it to a width in other cases."""
        for plan in self.plans:
            widths = {
                own: {
                    piece.width
                    for piece in plan.pieces.values()
                    if (piece.case in self.group.cases) is own
                }
                for own in (True, False)
            }
            for mine in widths[True] - widths[False]:
                for other in widths[False]:
                    by, over = divmod(other - mine, self.step)
                    if by and not over and self.least <= by <= self.most:
                        yield by

    def _saved(self, by: int) -> Generator[list[_Asked], list[TaskSolution], int]:
        """Sheets that a move saves, soon counted."""
        brief = replace(self.stop, nodes=min(self.stop.nodes, _COUNTING))
        return self.now.saved((yield from self._sheets(by, brief, eases=False)))

    def _sheets(self, by: int, stop: Stop, *, eases: bool) -> _Asking:
        """The sheets of all parts, those that wait included, with a depth moved."""
        room = build(moved(self.room.spec, self.group, self._depth(by)), self.facts)
        desk = Desk(room, stop, eases)
        drafts = draft_sheets(desk, (part for part in room.parts if part.state == "planned"))
        kept = [frozenset(o.id for o in d.drafts[0].offered.values() if o.kept) for d in drafts]
        asked = [_Asked(d.stock, d.tasks, own) for d, own in zip(drafts, kept, strict=True)]
        del room, desk, drafts  # several trials wait at a time
        done = yield asked
        works = [its.sawn.work for its in done]
        counts = [one.sheets(its) for one, its in zip(asked, done, strict=True)]
        stocks = [one.stock for one in asked]
        return _Sheets([*zip(stocks, counts, works, strict=True)])

    def _depth(self, by: int) -> Fraction:
        return self.group.depth + by * self.step


class _Sheets:
    """All sheet goods, and what they ask for.

    Parameters
    ----------
    plans
        Of each stock its key, the sheets it takes [-], and the work at the saw.
    """

    def __init__(self, plans: Sequence[tuple[str, int, Work]]) -> None:
        self.counts = {stock: count for stock, count, _ in plans}
        works = [work for _, _, work in plans]
        self.settings = sum(work.fences + work.stops + work.guides for work in works)
        self.work = sum(work.total for work in works)

    def saved(self, then: _Sheets) -> int:
        """Sheets that another way saves; below 0 where any stock needs more."""
        less = [count - then.counts.get(key, 0) for key, count in self.counts.items()]
        return min(0, *less) or sum(less)
