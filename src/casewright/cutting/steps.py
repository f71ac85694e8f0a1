"""The order of work: numbered saw cuts, and a card for every setting across all sheets."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from casewright.cutting.cut_order import order_cuts
from casewright.cutting.methods import Caution, Limits, Method
from casewright.cutting.problem import Problem
from casewright.cutting.sawing import Edge, Job, jobs_of
from casewright.cutting.solution import Direction, Leaf, Rect, SheetTree, Solution, Use

__all__ = ["Card", "CutPlan", "Piece", "Sheet", "Step", "plan_cuts"]


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece in hand.

    Parameters
    ----------
    name
        Number of its sheet, then its own number there in the order of work: '2.7'. A whole sheet
        is '2'.
    rect
        Where it came from on the stock.
    use
        What it is; None: it is cut further.
    part, copy
        The label to put on it when it is a part.
    """

    name: str
    rect: Rect
    use: Use | None = None
    part: str = ""
    copy: int = 0


@dataclass(frozen=True, slots=True)
class Step:
    """One cut.

    Parameters
    ----------
    number
        In the order of work, from 1.
    card
        Number of the setting card it belongs to.
    sheet
        Number of the sheet, from 0.
    piece
        What is cut.
    direction
        Rip or crosscut.
    method, cautions
        How, and what to take care of.
    datum
        The edge that is measured from: it rides the fence, meets the stop, or carries the tape.
    is_factory
        Whether the datum is still an edge of the stock as bought.
    setting
        From the datum to the blade [unit]: the first-piece check dimension.
    along
        Length of the cut [unit].
    leaves
        The pieces afterwards, the one at the datum first.
    """

    number: int
    card: int
    sheet: int
    piece: Piece
    direction: Direction
    method: Method
    cautions: tuple[Caution, ...]
    datum: Edge
    is_factory: bool
    setting: int
    along: int
    leaves: tuple[Piece, ...]


@dataclass(frozen=True, slots=True)
class Card:
    """One setting of a saw and everything cut with it, in one run.

    Parameters
    ----------
    number
        From 1.
    method, setting
        What is set, and to what; check it on the first piece [unit].
    steps
        Numbers of the steps.
    """

    number: int
    method: Method
    setting: int
    steps: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Sheet:
    """A piece of stock as it comes from the pile; it may be a part as it stands."""

    stock: str
    piece: Piece


@dataclass(frozen=True, slots=True)
class CutPlan:
    """The order of work for a solution: sheets by number, steps, cards in their order."""

    sheets: tuple[Sheet, ...]
    steps: tuple[Step, ...]
    cards: tuple[Card, ...]

    def on_sheet(self, sheet: int) -> tuple[Step, ...]:
        """The steps that cut a sheet or a piece of it."""
        return tuple(step for step in self.steps if step.sheet == sheet)


def plan_cuts(problem: Problem, solution: Solution, limits: Limits | None = None) -> CutPlan:
    """Put the cuts of a solution into the order of a careful person.

    Sheets that are too heavy or too large for the saws are broken down first, one after the
    other, with the straightedge. Then fence settings from wide to narrow, then stops from long
    to short, each setting once for all sheets if the pieces allow it (`order_cuts`).

    Parameters
    ----------
    problem, solution
        What is cut.
    limits
        What the shop can do; None: anything.

    Returns
    -------
    The steps. Every piece that a step cuts is stock or was left by an earlier step.
    """
    jobs: list[Job] = []
    for tree in solution.tree:
        jobs += jobs_of(tree, problem.kerf, limits or Limits(), len(jobs))
    order = order_cuts(problem, jobs)
    sheets = tuple(_sheet(tree) for tree in solution.tree)
    steps = tuple(_steps(order, jobs, sheets))
    cards = tuple(
        Card(number, run[0].method, run[0].setting, tuple(step.number for step in run))
        for number, run in enumerate(_steps_by_card(steps), 1)
    )
    return CutPlan(sheets, steps, cards)


def _runs(order: Sequence[int], jobs: Sequence[Job]) -> Iterator[list[int]]:
    """Consecutive jobs with one method and setting."""
    run: list[int] = []
    for index in order:
        if run and _setup(jobs[index]) != _setup(jobs[run[-1]]):
            yield run
            run = []
        run.append(index)
    if run:
        yield run


def _setup(job: Job) -> tuple[Method, int]:
    return job.method, job.setting


def _steps(order: Sequence[int], jobs: Sequence[Job], sheets: Sequence[Sheet]) -> Iterator[Step]:
    pieces = {(i, sheet.piece.rect): sheet.piece for i, sheet in enumerate(sheets)}
    names: Counter[int] = Counter()
    number = 0
    for card, run in enumerate(_runs(order, jobs), 1):
        for index in run:
            job = jobs[index]
            number += 1
            piece = pieces[job.sheet, job.rect]
            sides = (job.low, job.high) if job.datum in {"left", "bottom"} else (job.high, job.low)
            leaves = []
            for side in sides:
                if side is not None:
                    names[job.sheet] += 1
                    leaves.append(_piece(f"{job.sheet + 1}.{names[job.sheet]}", side))
            pieces.update({(job.sheet, leaf.rect): leaf for leaf in leaves})
            yield _step(number, card, job, piece, tuple(leaves), sheets[job.sheet])


def _sheet(tree: SheetTree) -> Sheet:
    name = f"{tree.sheet + 1}"
    side = tree.root if isinstance(tree.root, Leaf) else tree.root.rect
    return Sheet(tree.stock, _piece(name, side))


def _piece(name: str, side: Leaf | Rect) -> Piece:
    if isinstance(side, Leaf):
        return Piece(name, side.rect, side.use, side.part, side.copy)
    return Piece(name, side)


def _step(
    number: int,
    card: int,
    job: Job,
    piece: Piece,
    leaves: tuple[Piece, ...],
    sheet: Sheet,
) -> Step:
    rect, whole = job.rect, sheet.piece.rect
    edges = {"left": rect.x == whole.x, "right": rect.x1 == whole.x1}
    edges |= {"bottom": rect.y == whole.y, "top": rect.y1 == whole.y1}
    return Step(
        number, card, job.sheet, piece, job.direction, job.method, job.cautions, job.datum,
        edges[job.datum], job.setting, rect.length if job.direction == "rip" else rect.width,
        leaves,
    )  # fmt: skip


def _steps_by_card(steps: Sequence[Step]) -> Iterator[list[Step]]:
    runs: dict[int, list[Step]] = {}
    for step in steps:
        runs.setdefault(step.card, []).append(step)
    yield from runs.values()
