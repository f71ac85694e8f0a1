"""A simulator that knows only saws and pieces: it makes the cuts of a plan, one after the other.

It works out from stock, datum, setting and kerf alone what each cut leaves, and shares no code
with what made the plan.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import Enum

from casewright.cutting.match_verifier import match_faults
from casewright.cutting.methods import Limits, Method
from casewright.cutting.problem import MatchWay, Problem
from casewright.cutting.solution import Direction, Rect
from casewright.cutting.steps import CutPlan, Step

__all__ = ["Misstep", "Slip", "Walk", "walk"]


class Slip(Enum):
    """What can go wrong on the way through a plan."""

    NO_STOCK = "there is no such stock, or not enough of it"
    NOT_IN_HAND = "the piece to cut is not in hand"
    NO_CUT = "the blade misses the piece"
    WRONG_LEAVINGS = "the cut leaves other pieces than the step says"
    WRONG_SIZE = "a piece labelled as a part has not its size"
    HEAVY = "more than one person handles at the saw"
    REACH = "beyond the reach of the saw"
    CONTACT = "too little edge along the fence"
    NARROW = "a narrow rip by hand"
    TRAPPED = "a loose offcut between blade and fence"
    SHEET = "the step is told of another sheet than the one its piece is cut from"
    CARD = "the step is not on its card, or the card is set otherwise"
    MATCH = "matched parts do not come out of one piece in their order"
    PARTED = "matched parts of one size come off several settings"


@dataclass(frozen=True, slots=True)
class Misstep:
    """One slip, at which step (0: before or after all), in words."""

    slip: Slip
    step: int
    says: str


@dataclass(frozen=True, slots=True)
class Walk:
    """What a plan really gives.

    Parameters
    ----------
    made
        How many right-sized pieces of each part lie there in the end.
    left
        All other pieces: name and size.
    missteps
        What went wrong.
    """

    made: Mapping[str, int]
    left: tuple[tuple[str, Rect], ...]
    missteps: tuple[Misstep, ...]


def walk(problem: Problem, plan: CutPlan, limits: Limits | None = None) -> Walk:
    """Make every cut of a plan in order.

    Parameters
    ----------
    problem
        Stock, kerf and the sizes of the parts.
    plan
        What to do.
    limits
        What the shop can do; None: anything.

    Returns
    -------
    The parts made, the rest, and every slip; a step that cannot be made is skipped.
    """
    missteps: list[Misstep] = []
    pieces = dict(_stock(problem, plan, missteps))
    labels = {sheet.piece.name: sheet.piece.part for sheet in plan.sheets}
    copies: dict[str, tuple[str, int]] = {}
    missteps += _misplaced(plan)
    for step in plan.steps:
        rect = pieces.pop(step.piece.name, None)
        if rect is None:
            missteps.append(Misstep(Slip.NOT_IN_HAND, step.number, step.piece.name))
            continue
        missteps += _unsafe(step, rect, limits or Limits())
        missteps += _saw(step, rect, problem.kerf, pieces)
        done = [leaf for leaf in step.leaves if leaf.use == "part"]
        labels |= {leaf.name: leaf.part for leaf in done}
        copies |= {leaf.name: (leaf.part, leaf.copy) for leaf in done}
    if problem.matches:
        sheets = {leaf.name: step.sheet for step in plan.steps for leaf in step.leaves}
        there = {
            copy: (sheets[name], pieces[name]) for name, copy in copies.items() if name in pieces
        }
        missteps += _unmatched(problem, plan, there)
    return _result(problem, pieces, labels, missteps)


def _misplaced(plan: CutPlan) -> Iterator[Misstep]:
    """Steps that are told of another sheet, or on another card, than they belong to."""
    cards = {number: card for card in plan.cards for number in card.steps}
    sheets = {sheet.piece.name: number for number, sheet in enumerate(plan.sheets)}
    for step in plan.steps:
        card = cards.get(step.number)
        if card is None or (card.method, card.setting) != (step.method, step.setting):
            yield Misstep(Slip.CARD, step.number, f"card {step.card}")
        sheet = sheets.get(step.piece.name)
        if sheet is not None and sheet != step.sheet:
            yield Misstep(Slip.SHEET, step.number, f"sheet {step.sheet}")
        if sheet is not None:
            sheets.update((leaf.name, sheet) for leaf in step.leaves)


def _unmatched(
    problem: Problem, plan: CutPlan, there: Mapping[tuple[str, int], tuple[int, Rect]]
) -> Iterator[Misstep]:
    """Matches that the cuts do not give, or not in one setting for parts of one size."""
    for name, _, says in match_faults(problem, there):
        yield Misstep(Slip.MATCH, 0, f'match "{name}": {says}')
    of = {part: match for match in problem.matches for part in match.parts}
    cards: dict[tuple[str, Method, int], set[int]] = {}
    for step in plan.steps:
        first = step.leaves[0] if step.leaves else step.piece
        match = of.get(first.part) if first.use == "part" else None
        is_laid = step.method == "straightedge"  # which is laid anew for each cut
        if match is not None and step.direction == _WAYS[match.way] and not is_laid:
            cards.setdefault((match.id, step.method, step.setting), set()).add(step.card)
    for (name, method, setting), found in cards.items():
        if len(found) > 1:
            yield Misstep(Slip.PARTED, 0, f'match "{name}": {method} {setting}')


_WAYS: Mapping[MatchWay, Direction] = {"across": "rip", "along": "crosscut"}


def _stock(problem: Problem, plan: CutPlan, missteps: list[Misstep]) -> Iterator[tuple[str, Rect]]:
    """Take the sheets of a plan from the pile."""
    items = {item.id: item for item in problem.stock}
    for name, used in Counter(sheet.stock for sheet in plan.sheets).items():
        count = items[name].count if name in items else 0
        if count is not None and used > count:
            missteps.append(Misstep(Slip.NO_STOCK, 0, f'{used} of "{name}", there are {count}'))
    for sheet in plan.sheets:
        if sheet.stock in items:
            item = items[sheet.stock]
            yield sheet.piece.name, Rect(0, 0, item.length, item.width)


def _saw(step: Step, rect: Rect, kerf: int, pieces: dict[str, Rect]) -> Iterator[Misstep]:
    """Run the blade through a piece and name what falls."""
    is_rip = step.datum in {"bottom", "top"}
    size = rect.width if is_rip else rect.length
    rest = size - step.setting - kerf
    if is_rip != (step.direction == "rip") or min(step.setting, rest) + kerf <= 0:
        yield Misstep(Slip.NO_CUT, step.number, f"{step.datum} {step.setting} on {rect}")
        return
    low = step.setting if step.datum in {"left", "bottom"} else rest
    fallen = [
        piece
        for start, end in ((0, low), (low + kerf, size))
        if min((piece := _part(rect, start, end, is_rip=is_rip))[2:]) > 0
    ]
    if fallen != sorted(leaf.rect for leaf in step.leaves):
        says = "; ".join(str(piece) for piece in fallen)
        yield Misstep(Slip.WRONG_LEAVINGS, step.number, says)
        return
    pieces |= {leaf.name: leaf.rect for leaf in step.leaves}


def _part(rect: Rect, start: int, end: int, *, is_rip: bool) -> Rect:
    if is_rip:
        return Rect(rect.x, rect.y + start, rect.length, end - start)
    return Rect(rect.x + start, rect.y, end - start, rect.width)


def _unsafe(step: Step, rect: Rect, limits: Limits) -> Iterator[Misstep]:
    along, across = rect.length, rect.width
    if step.direction == "crosscut":
        along, across = across, along
    checks: list[tuple[Slip, bool]] = []
    if step.method == "straightedge":
        is_told = "beyond straightedge" in step.cautions
        checks.append((Slip.REACH, _over(along, limits.straightedge) and not is_told))
    else:
        checks.append((Slip.HEAVY, _over(along * across, limits.lift_area)))
    if step.method == "sled":
        checks.append((Slip.REACH, _over(along, limits.crosscut_capacity)))
        checks.append((Slip.REACH, _over(across, limits.longest_on_sled)))
        is_told = "short piece" in step.cautions
        checks.append((Slip.NARROW, step.setting < limits.narrowest_rip and not is_told))
    if step.method in {"fence", "carrier"}:
        checks.append((Slip.REACH, _over(step.setting, limits.rip_capacity)))
        is_short = along < max(step.setting, limits.shortest_on_fence)
        checks.append((Slip.CONTACT, is_short))
        checks.append((Slip.TRAPPED, step.leaves[0].use in {"offcut", "waste"}))
    if step.method == "fence":
        checks.append((Slip.NARROW, step.setting < limits.narrowest_rip))
    for slip, is_so in checks:
        if is_so:
            yield Misstep(slip, step.number, f"{step.method} {step.setting} on {rect}")


def _over(value: int, limit: int | None) -> bool:
    return limit is not None and value > limit


def _result(
    problem: Problem, pieces: dict[str, Rect], labels: dict[str, str], missteps: list[Misstep]
) -> Walk:
    parts = {part.id: part for part in problem.parts}
    made: Counter[str] = Counter()
    left: list[tuple[str, Rect]] = []
    for name, rect in pieces.items():
        part = parts.get(labels.get(name, ""))
        size = (rect.length, rect.width)
        if part is None:
            left.append((name, rect))
        elif size == (part.length, part.width) or (
            part.rotate and size == (part.width, part.length)
        ):
            made[part.id] += 1
        else:
            missteps.append(Misstep(Slip.WRONG_SIZE, 0, f"{part.id}: {rect}"))
    return Walk(dict(made), tuple(left), tuple(missteps))
