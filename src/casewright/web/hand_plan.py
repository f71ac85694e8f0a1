"""A plan of cuts in hand: wholly, or for those of its sheets that are still cut by it."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import NamedTuple

from casewright.breakdown import Breakdown, StockPlan
from casewright.casework.parts import Part
from casewright.job.rest_plan import Rest
from casewright.room.model import Room

__all__ = [
    "HandPlan",
    "Left",
    "Lie",
    "SheetKey",
    "lies_in",
    "lies_of",
    "open_parts",
    "plan_name",
    "rests_left",
    "stale",
]

SheetKey = tuple[str, int]
"""Where a plan stands on the chain, and the number of its sheet, from 0."""

_FEW = (1, 3)
"""Sheets of a stock that are planned anew before all are [-]."""

_NOTE = re.compile(r"(?:sawn: cut (\d+)|kept: (\d+)(?:\.\d+)?) of (\S+) plan ([0-9a-f]{8})$")


@dataclass(frozen=True, slots=True)
class HandPlan:
    """A plan of cuts that is worked by.

    Parameters
    ----------
    breakdown
        The plan.
    name
        Its name, as entries of the record carry it.
    entries
        Ids of those that the record held when it was planned.
    before
        What had been spoiled by then, and when.
    rest
        What was planned anew by it; None: all that was to be cut.
    sheets
        Those that are still cut by it; None: all.
    """

    breakdown: Breakdown
    name: str
    entries: tuple[str, ...] = ()
    before: Mapping[str, object] | None = None
    rest: Rest | None = None
    sheets: frozenset[SheetKey] | None = None

    def has(self, plan: StockPlan, sheet: int) -> bool:
        """Whether a sheet is cut by it; `sheet` from 0."""
        return self.sheets is None or (plan.path, sheet) in self.sheets


class Lie(NamedTuple):
    """Where a part lies.

    Parameters
    ----------
    sheet
        On none, where no stock is large enough: -1.
    length, width
        Its size there [mm].
    """

    plan: HandPlan
    stock: StockPlan
    sheet: int
    length: Fraction
    width: Fraction

    @property
    def key(self) -> SheetKey:
        """Of its sheet."""
        return self.stock.path, self.sheet


def plan_name(breakdown: Breakdown) -> str:
    """Short name of a plan: it changes with any of its cuts."""
    digest = hashlib.sha256()
    for plan in breakdown.plans:
        digest.update(plan.path.encode())
        for step in plan.order.steps:
            said = (step.number, step.sheet, step.piece.name, step.setting, step.direction)
            digest.update(repr((said, [leaf.part for leaf in step.leaves])).encode())
    return digest.hexdigest()[:8]


def lies_in(plans: Iterable[HandPlan], spoiled: Mapping[str, object]) -> dict[str, Lie]:
    """Where each part lies; one that was spoiled after it was planned has no place any more.

    Parameters
    ----------
    spoiled
        What is spoiled, and when it was.
    """
    found: dict[str, Lie] = {}
    for plan in plans:
        before = plan.before or {}
        found |= {
            path: lie for path, lie in lies_of(plan) if spoiled.get(path) == before.get(path)
        }
    return found


def lies_of(hand: HandPlan) -> Iterator[tuple[str, Lie]]:
    """Where each part of a plan lies on the sheets that are cut by it, spoiled or not."""
    for plan in hand.breakdown.plans:
        sheets = {placed.part: placed.sheet for placed in plan.solution.placements}
        for piece in plan.pieces.values():
            sheet = sheets.get(piece.id, -1)
            if piece.kind == "part" and hand.has(plan, sheet):
                yield piece.id, Lie(hand, plan, sheet, piece.length, piece.width)


def open_parts(room: Room) -> Iterator[Part]:
    """Parts that can be cut now and are not yet."""
    return (part for part in room.parts if part.state == "planned" and not part.waits_for)


class Left(NamedTuple):
    """One way to plan the rest anew.

    Parameters
    ----------
    kept
        The plans that are cut by already, with the sheets that go on by them.
    rest
        What is planned anew.
    """

    kept: tuple[HandPlan, ...]
    rest: Rest


def rests_left(
    plans: Sequence[HandPlan], room: Room, spoiled: Mapping[str, object], notes: Iterable[str]
) -> tuple[Left, ...]:
    """What would be planned anew.

    Parameters
    ----------
    spoiled
        As for `lies_in`.
    notes
        Notes of the record that stand.

    Returns
    -------
    The ways, the least first: with so many of the emptiest sheets that are not begun of each stock
    that something is lost of, in the end with all of them.
    """
    lies, words = lies_in(plans, spoiled), tuple(notes)
    gone = {part.stock for part in open_parts(room) if part.path not in lies}
    begun = {hand.name: _begun_sheets(hand, room, spoiled, words, gone) for hand in plans}
    free = {hand.name: _sheets(hand) - begun[hand.name] for hand in plans}
    ranked = _emptiest_first(plans, free)
    ways = [
        {name: begun[name] | (keys - _first(ranked, count)) for name, keys in free.items()}
        for count in _FEW
        if any(count < len(keys) for keys in ranked.values())
    ]
    return tuple(_left(plans, room, lies, stays) for stays in (*ways, begun))


def _sheets(hand: HandPlan) -> frozenset[SheetKey]:
    every = ((p.path, tree.sheet) for p in hand.breakdown.plans for tree in p.solution.tree)
    return frozenset(key for key in every if hand.sheets is None or key in hand.sheets)


def _first(ranked: Mapping[str, Sequence[SheetKey]], count: int) -> frozenset[SheetKey]:
    return frozenset(key for keys in ranked.values() for key in keys[:count])


def _emptiest_first(
    plans: Sequence[HandPlan], free: Mapping[str, Collection[SheetKey]]
) -> dict[str, list[SheetKey]]:
    """Sheets of each plan, those first on which least lies; offcuts are no sheets."""
    found: dict[str, list[tuple[Fraction, SheetKey]]] = {}
    for hand in plans:
        for plan in hand.breakdown.plans:
            for tree in plan.solution.tree:
                key = (plan.path, tree.sheet)
                if key in free[hand.name] and not plan.offered[tree.stock].kept:
                    lies = sum((p.length * p.width for p, _ in plan.on_sheet(tree)), Fraction())
                    found.setdefault(plan.path, []).append((lies, key))
    return {path: [key for _, key in sorted(keys)] for path, keys in found.items()}


def _left(
    plans: Sequence[HandPlan], room: Room, lies: Mapping[str, Lie],
    stays: Mapping[str, frozenset[SheetKey]],
) -> Left:  # fmt: skip
    """The rest, when some sheets stay."""
    kept = tuple(replace(hand, sheets=stays[hand.name]) for hand in plans if stays[hand.name])
    lost, held = set[str](), set[str]()
    for part in open_parts(room):
        lie = lies.get(part.path)
        if lie is None:
            lost.add(part.path)
        elif lie.key in stays[lie.plan.name]:
            held.add(part.path)
    after: dict[str, int] = {}
    for hand in plans:
        for plan in hand.breakdown.plans:
            last = max((tree.sheet + 1 for tree in plan.solution.tree), default=0)
            for item in plan.problem.stock:
                after[item.id] = max(after.get(item.id, 0), last)
    dropped = sum(len(_sheets(hand) - stays[hand.name]) for hand in plans)
    return Left(kept, Rest(frozenset(lost), frozenset(held), after, dropped))


def _begun_sheets(
    hand: HandPlan, room: Room, spoiled: Mapping[str, object], notes: Iterable[str],
    gone: Collection[str],
) -> frozenset[SheetKey]:  # fmt: skip
    """Sheets that something was cut from, as far as ticks say.

    Boards and strips count as begun: what is ripped of them serves several. So do the sheets of a
    stock of which nothing is `gone`: nobody's work is changed without need.
    """
    states = {part.path: part.state for part in room.parts}
    before = hand.before or {}
    found = {
        lie.key for path, lie in lies_of(hand)
        if states.get(path) != "planned" or spoiled.get(path) != before.get(path)
    }  # fmt: skip
    found |= set(_noted(hand, notes))
    for plan in hand.breakdown.plans:
        if plan.kind != "sheets" or plan.stock not in gone:
            found |= {(plan.path, tree.sheet) for tree in plan.solution.tree}
    on_sheets = (key for key in found if key[1] >= 0)
    return frozenset(key for key in on_sheets if hand.sheets is None or key in hand.sheets)


def _noted(hand: HandPlan, notes: Iterable[str]) -> Iterator[SheetKey]:
    sheets = {
        (plan.path, step.number): step.sheet
        for plan in hand.breakdown.plans
        for step in plan.order.steps
    }
    for note in notes:
        found = _NOTE.match(note)
        if found is None or found[4] != hand.name:
            continue
        number, kept, path = found[1], found[2], found[3]
        sheet = int(kept) - 1 if kept else sheets.get((path, int(number)), -1)
        yield path, sheet


def stale(parts: Iterable[Part], lies: Mapping[str, Lie], lost: Collection[str]) -> bool:
    """Whether a part that is still to be cut is on no plan at the size that it has now."""
    return any(
        part.path not in lost
        and (
            part.path not in lies
            or lies[part.path][3:] != (part.blank.length.value, part.blank.width.value)
        )
        for part in parts
    )
