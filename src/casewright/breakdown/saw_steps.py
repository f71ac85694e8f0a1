"""The order of work told in lengths and parts: what a person at the saw reads."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from casewright.breakdown.pieces import Piece
from casewright.breakdown.plan import StockPlan
from casewright.cutting.methods import Caution, Method
from casewright.cutting.sawing import Edge
from casewright.cutting.solution import Direction, Placement, Rect, Use
from casewright.cutting.steps import Piece as CutPiece
from casewright.dims import Dim

__all__ = [
    "CAUTION_WORDS", "DANGERS", "EDGE_WORDS", "FACE_WORDS", "METHOD_WORDS", "InHand", "SawCard",
    "SawStep", "saw_cards", "saw_steps",
]  # fmt: skip

METHOD_WORDS: Mapping[Method, str] = MappingProxyType(
    {
        "straightedge": "circular saw along the clamped straightedge, the piece flat on foam",
        "fence": "table saw, the datum edge against the fence",
        "carrier": "table saw, the piece held on a push block that carries it past the blade",
        "sled": "crosscut sled, the datum end against the stop",
    }
)
"""How each cut is made."""

FACE_WORDS: Mapping[Method, str] = MappingProxyType(
    {
        "straightedge": "good face down",
        "fence": "good face up",
        "carrier": "good face up",
        "sled": "good face up",
    }
)
"""Which face shows: a blade that comes up through the table tears out below, a hand-held one above
(common practice)."""

EDGE_WORDS: Mapping[Edge, str] = MappingProxyType(
    {"bottom": "lower edge", "top": "upper edge", "left": "left end", "right": "right end"}
)
"""Edges as they lie in the drawing of a sheet."""

DANGERS: frozenset[Caution] = frozenset(
    ("heavy", "narrow rip", "short piece", "beyond straightedge")
)
"""Cautions of the cut as it is made; the others say why it is not made at another saw."""

CAUTION_WORDS: Mapping[Caution, str] = MappingProxyType(
    {
        "heavy": "More than one person handles at the saw: leave it on the floor, on foam.",
        "beyond fence": "Wider than the fence opens.",
        "wide against fence": "Wider than long at the fence: it would turn and be thrown back.",
        "short along fence": "Too short an edge for the fence.",
        "narrow rip": "The hand would come near the blade: a push block carries it; guard and "
        "splitter on.",
        "too wide for sled": "Wider than the sled carries.",
        "long crosscut": "Hangs far off the sled.",
        "short piece": "Too short to hold at the stop: clamp it to the sled.",
        "beyond straightedge": "Longer than the straightedge: move it along the line and check.",
    }
)
"""What each caution of the plan means at the saw. The maker's instructions come first."""


@dataclass(frozen=True, slots=True)
class InHand:
    """A piece on the bench.

    Parameters
    ----------
    name
        Sheet and number: '2.7'; a whole sheet is '2'.
    length, width
        Along and across the stock's grain.
    use
        part, offcut, waste, or None when it is cut further.
    piece
        What it is when it is done.
    """

    name: str
    length: Dim
    width: Dim
    use: Use | None
    piece: Piece | None


@dataclass(frozen=True, slots=True)
class SawStep:
    """One cut.

    Parameters
    ----------
    number, card
        In the order of work; the setting it belongs to.
    sheet
        Number of the sheet, from 1.
    takes, gives
        What is cut, and what is there afterwards, the piece at the datum first.
    setting
        From the datum to the blade: what the first piece must measure.
    along
        Length of the cut.
    datum, is_factory
        Edge that is measured from; whether it is still as bought.
    cautions
        Sentences for this very cut: what can hurt at it, and why it is not made at another saw.
    dangers
        Those of them that tell what can hurt.
    matched
        Where it is the first to part a match: its pieces, in the order in which the grain runs
        through them.
    fixes
        Pieces it does not give yet, but is the first to give their final length or width: what
        hangs on a reading must be read before.
    """

    number: int
    card: int
    sheet: int
    takes: InHand
    direction: Direction
    method: Method
    datum: Edge
    is_factory: bool
    setting: Dim
    along: Dim
    gives: tuple[InHand, ...]
    cautions: tuple[str, ...]
    dangers: tuple[str, ...] = ()
    matched: tuple[Piece, ...] = ()
    fixes: tuple[Piece, ...] = ()


@dataclass(frozen=True, slots=True)
class SawCard:
    """One setting and everything cut with it.

    Parameters
    ----------
    setting
        Check it on the first piece.
    steps
        In their order.
    marks
        Labels of the parts it finishes.
    """

    number: int
    method: Method
    setting: Dim
    steps: tuple[SawStep, ...]
    marks: tuple[str, ...]


def saw_steps(plan: StockPlan) -> Iterator[SawStep]:
    """Every cut of a plan, in the order of work."""
    parting, fixing = dict(_parting(plan)), _fixing(plan)
    for step in plan.order.steps:
        taken = _in_hand(plan, step.piece)
        gives = tuple(_in_hand(plan, leaf) for leaf in step.leaves)
        is_rip = step.direction == "rip"
        yield SawStep(
            number=step.number,
            card=step.card,
            sheet=step.sheet + 1,
            takes=taken,
            direction=step.direction,
            method=step.method,
            datum=step.datum,
            is_factory=step.is_factory,
            setting=gives[0].width if is_rip else gives[0].length,
            along=taken.length if is_rip else taken.width,
            gives=gives,
            cautions=tuple(CAUTION_WORDS[caution] for caution in step.cautions),
            dangers=tuple(CAUTION_WORDS[each] for each in step.cautions if each in DANGERS),
            matched=parting.get(step.number, ()),
            fixes=fixing.get(step.number, ()),
        )


def _parting(plan: StockPlan) -> Iterator[tuple[int, tuple[Piece, ...]]]:
    """For each match the number of the first cut between its pieces, and these."""
    lies = {placed.part: placed for placed in plan.solution.placements}
    for match in plan.problem.matches:
        own = [lies[part] for part in match.parts if part in lies]
        for step in plan.order.steps:
            sheet = [placed for placed in own if placed.sheet == step.sheet]
            held = [
                sum(_holds(leaf.rect, placed.rect) for placed in sheet) for leaf in step.leaves
            ]
            is_whole = own == sheet and all(_holds(step.piece.rect, p.rect) for p in own)
            if own and is_whole and max(held, default=0) < len(own):
                yield step.number, tuple(plan.pieces[part] for part in match.parts)
                break


def _fixing(plan: StockPlan) -> dict[int, tuple[Piece, ...]]:
    """For each cut the pieces that get a final size first by it, and are not cut free yet."""
    open_yet: dict[int, list[Placement]] = {}
    for placed in plan.solution.placements:
        open_yet.setdefault(placed.sheet, []).append(placed)
    found: dict[int, tuple[Piece, ...]] = {}
    for step in plan.order.steps:
        side = "width" if step.direction == "rip" else "length"
        fixed = [
            placed
            for leaf in step.leaves
            for placed in open_yet.get(step.sheet, ())
            if _holds(leaf.rect, placed.rect)
            and getattr(leaf.rect, side) == getattr(placed.rect, side)
        ]
        done = {leaf.part for leaf in step.leaves}
        fixes = tuple(plan.pieces[each.part] for each in fixed if each.part not in done)
        if fixes:
            found[step.number] = fixes
        left = [each for each in open_yet.get(step.sheet, ()) if each not in fixed]
        open_yet[step.sheet] = left
    return found


def _holds(whole: Rect, rect: Rect) -> bool:
    across = whole.y <= rect.y and rect.y1 <= whole.y1
    return across and whole.x <= rect.x and rect.x1 <= whole.x1


def saw_cards(plan: StockPlan) -> Iterator[SawCard]:
    """A card for every setting, in the order of work."""
    steps = {step.number: step for step in saw_steps(plan)}
    for card in plan.order.cards:
        own = tuple(steps[number] for number in card.steps)
        done = [given.piece for step in own for given in step.gives if given.piece is not None]
        marks = tuple(piece.mark for piece in done if piece.mark)
        setting = plan.numbers.settings[card.number]
        yield SawCard(card.number, card.method, setting, own, marks)


def _in_hand(plan: StockPlan, piece: CutPiece) -> InHand:
    return InHand(
        piece.name,
        *plan.numbers.sizes[piece.name],
        piece.use,
        plan.pieces.get(piece.part),
    )
