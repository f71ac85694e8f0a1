"""Cut trees taken apart into single saw cuts, each with its datum, setting and method."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, NamedTuple

from casewright.cutting.methods import Caution, Limits, Method, Sawing, choose_method, is_over
from casewright.cutting.solution import Direction, Leaf, Node, Rect, SheetTree, Split

__all__ = ["Edge", "Job", "jobs_of"]

Edge = Literal["left", "right", "bottom", "top"]
_Side = Literal["low", "high"]


@dataclass(frozen=True, slots=True)
class Job:
    """One cut through one piece.

    Parameters
    ----------
    before
        Place in the list of the cut that gives the piece; None: it is the whole stock.
    sheet
        Number of the sheet.
    rect
        The piece.
    direction, at
        The cut, and where the blade's low side runs.
    datum, setting
        The edge that is measured from, and how far from it the blade runs [unit].
    method, cautions
        How it is made.
    low, high
        What it leaves on either side; None: the blade takes all. A rectangle is cut further.
    """

    before: int | None
    sheet: int
    rect: Rect
    direction: Direction
    at: int
    datum: Edge
    setting: int
    method: Method
    cautions: tuple[Caution, ...]
    low: Leaf | Rect | None
    high: Leaf | Rect | None


class _Band(NamedTuple):
    """What lies between two neighbouring cuts; no node where the blades meet."""

    low: int
    high: int
    node: Node | None
    is_kept: bool


@dataclass(frozen=True, slots=True)
class _Run:
    """A piece with parallel cuts still to be made: the bands from `first` to `last`."""

    split: Split
    bands: Sequence[_Band]
    first: int
    last: int
    rect: Rect
    is_rip: bool

    @property
    def low(self) -> int:
        return self.rect.y if self.is_rip else self.rect.x

    @property
    def high(self) -> int:
        return self.rect.y1 if self.is_rip else self.rect.x1


def jobs_of(tree: SheetTree, kerf: int, limits: Limits, start: int = 0) -> list[Job]:
    """The cuts of one sheet, each after the cut that gives its piece; numbered from `start`."""
    jobs: list[Job] = []
    waiting: list[tuple[int | None, _Run]] = []
    root = _begin(tree.root, kerf)
    if root is not None:
        waiting.append((None, root))
    while waiting:
        before, run = waiting.pop()
        index, datum = _choose(run, kerf, limits)
        at = run.split.cuts[index]
        sides = _side(run, run.first, index, kerf), _side(run, index + 1, run.last, kerf)
        origin = before, tree.sheet
        jobs.append(_job(run, at, datum, origin, sides, kerf=kerf, limits=limits))
        number = start + len(jobs) - 1
        waiting += [(number, side) for side in reversed(sides) if isinstance(side, _Run)]
    return jobs


def _begin(node: Node, kerf: int) -> _Run | None:
    if isinstance(node, Leaf):
        return None
    is_rip = node.direction == "rip"
    rect, cuts = node.rect, node.cuts
    low, high = (rect.y, rect.y1) if is_rip else (rect.x, rect.x1)
    bands: list[_Band] = []
    pieces = iter(node.pieces)
    for start, end in zip((low, *(cut + kerf for cut in cuts)), (*cuts, high), strict=True):
        piece = next(pieces) if end > start else None
        is_kept = piece is not None and (isinstance(piece, Split) or piece.use == "part")
        bands.append(_Band(start, end, piece, is_kept))
    return _Run(node, bands, 0, len(cuts), rect, is_rip)


def _side(run: _Run, first: int, last: int, kerf: int) -> _Run | Leaf | None:
    """What a cut leaves on one side: with cuts still to come, done, or nothing."""
    low, high = run.bands[first].low, run.bands[last].high
    if high <= low:
        return None
    if first < last:
        whole = run.rect
        if run.is_rip:
            rect = Rect(whole.x, low, whole.length, high - low)
        else:
            rect = Rect(low, whole.y, high - low, whole.width)
        return _Run(run.split, run.bands, first, last, rect, run.is_rip)
    node = run.bands[first].node
    return node if node is None or isinstance(node, Leaf) else _begin(node, kerf)


def _job(
    run: _Run,
    at: int,
    datum: _Side,
    origin: tuple[int | None, int],
    sides: tuple[_Run | Leaf | None, _Run | Leaf | None],
    *,
    kerf: int,
    limits: Limits,
) -> Job:
    setting = at - run.low if datum == "low" else run.high - at - kerf
    sizes = (run.rect.length, run.rect.width)
    along, across = sizes if run.is_rip else (sizes[1], sizes[0])
    method, cautions = choose_method(Sawing(run.split.direction, setting, along, across), limits)
    edges: dict[str, Edge] = (
        {"low": "bottom", "high": "top"} if run.is_rip else {"low": "left", "high": "right"}
    )
    left = [side.rect if isinstance(side, _Run) else side for side in sides]
    return Job(
        *origin, run.rect, run.split.direction, at, edges[datum], setting, method, cautions, *left
    )


def _choose(run: _Run, kerf: int, limits: Limits) -> tuple[int, _Side]:
    """The next cut of a piece and the side it is measured from.

    A piece that is too heavy is parted near its middle. Else the widest band with a clean outer
    edge comes off; what is left of a rough edge comes off last, from the sawn edge opposite.
    """
    bands = run.bands[run.first : run.last + 1]
    kept = [i for i, band in enumerate(bands) if band.is_kept] or [0]
    lowest, highest, end = kept[0], kept[-1], len(bands) - 1
    if is_over(run.rect.area, limits.lift_area):
        middle = run.low + run.high - kerf
        index = min(range(end), key=lambda i: abs(bands[i].high * 2 - middle))
        return run.first + index, "low" if index >= lowest else "high"
    if lowest == highest:
        if highest < end:
            return run.first + highest, "low"
        return run.first + lowest - 1, "high"
    is_low_clean, is_high_clean = lowest == 0, highest == end
    wider = bands[highest].high - bands[highest].low > bands[lowest].high - bands[lowest].low
    from_high = is_high_clean and (not is_low_clean or wider)
    return (run.first + highest - 1, "high") if from_high else (run.first + lowest, "low")
