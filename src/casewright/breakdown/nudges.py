"""Small moves of a depth that save a sheet or a setting, tried on the job itself."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import partial

from casewright.breakdown.desk import USUAL_STOP, Desk
from casewright.breakdown.each import Each, in_turn
from casewright.breakdown.plan import Breakdown, StockPlan
from casewright.breakdown.sheets import plan_sheets
from casewright.casework.specs import CaseKind
from casewright.cutting.engine import Stop
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
        How several depths are looked at.
    """
    look = partial(_nudge, room, breakdown, facts, stop or USUAL_STOP)
    found = each(look, list(depth_groups(room)))
    return [nudge for nudge in found if nudge is not None]


def _nudge(
    room: Room, breakdown: Breakdown, facts: Facts, stop: Stop, group: DepthGroup
) -> Nudge | None:
    """What another depth of one group saves."""
    trial = _Trial(room, breakdown, facts, stop, group)
    return trial.fewer_sheets() or (None if breakdown.waiting else trial.fewer_settings())


class _Trial:
    """The job with one depth after another for a group of cases."""

    def __init__(
        self, room: Room, breakdown: Breakdown, facts: Facts, stop: Stop, group: DepthGroup
    ) -> None:
        self.room, self.facts, self.group, self.stop = room, facts, group, stop
        self.step = _STEP[room.spec.unit]
        down, up = (reach // self.step for reach in _REACH[room.spec.unit])
        self.least, self.most = -int(down), int(up)
        self.now = _Sheets([plan for plan in breakdown.wanted if plan.kind == "sheets"])
        self.counted: dict[int, _Sheets] = {}

    def fewer_sheets(self) -> Nudge | None:
        """The shortest move that saves as many sheets as the farthest down does."""
        target = self._saved(self.least)
        if target < 1:
            return None
        near, far = 0, self.least
        while near - far > 1:
            middle = (near + far) // 2
            near, far = (near, middle) if self._saved(middle) >= target else (middle, far)
        fewest = _Sheets(_plans(self._desk(far, self.stop, eases=False)))
        if self.now.saved(fewest) < 1:
            return None
        now, then = self.now.counts, fewest.counts
        sheets = {key: (now[key], then.get(key, 0)) for key in now if then.get(key, 0) != now[key]}
        return Nudge(self.group, self._depth(far), sheets)

    def fewer_settings(self) -> Nudge | None:
        """The move that brings most widths of rips together, if it saves a setting."""
        meeting = Counter(self._meeting())
        if not meeting:
            return None
        by = min(meeting, key=lambda by: (-meeting[by], abs(by), by))
        then = _Sheets(_plans(self._desk(by, self.stop, eases=True)))
        saves = then.settings < self.now.settings and then.work < self.now.work
        if not saves or self.now.saved(then) < 0:
            return None
        settings = (self.now.settings, then.settings)
        return Nudge(self.group, self._depth(by), {}, settings)

    def _meeting(self) -> Iterator[int]:
        """For each width in these cases the moves that bring it to a width in other cases."""
        for plan in self.now.plans:
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

    def _saved(self, by: int) -> int:
        return self.now.saved(self._counted(by))

    def _counted(self, by: int) -> _Sheets:
        if by not in self.counted:
            brief = replace(self.stop, nodes=min(self.stop.nodes, _COUNTING))
            self.counted[by] = _Sheets(_plans(self._desk(by, brief, eases=False)))
        return self.counted[by]

    def _desk(self, by: int, stop: Stop, *, eases: bool) -> Desk:
        room = build(moved(self.room.spec, self.group, self._depth(by)), self.facts)
        return Desk(room, stop, eases)

    def _depth(self, by: int) -> Fraction:
        return self.group.depth + by * self.step


class _Sheets:
    """The plans of all sheet goods, and what they ask for."""

    def __init__(self, plans: Sequence[StockPlan]) -> None:
        self.plans = plans
        self.counts = {plan.stock: plan.count for plan in plans}
        works = [plan.work for plan in plans]
        self.settings = sum(work.fences + work.stops + work.guides for work in works)
        self.work = sum(work.total for work in works)

    def saved(self, then: _Sheets) -> int:
        """Sheets that another way saves; below 0 where any stock needs more."""
        less = [count - then.counts.get(key, 0) for key, count in self.counts.items()]
        return min(0, *less) or sum(less)


def _plans(desk: Desk) -> list[StockPlan]:
    """The sheets of all parts, those that wait included."""
    return plan_sheets(desk, (part for part in desk.room.parts if part.state == "planned"))
