"""The answer to a cutting problem: where each part lies and how each sheet is divided."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum
from typing import Literal, NamedTuple

__all__ = [
    "Bound", "Direction", "Leaf", "Measure", "Node", "Placement", "Reason", "Rect", "SettingCard",
    "SheetTree", "Solution", "Split", "Status", "Unplaced", "Use", "leaves", "splits",
]  # fmt: skip

Direction = Literal["rip", "crosscut"]
"""A rip runs along the stock's length, a crosscut across it."""

Use = Literal["part", "offcut", "waste"]

Measure = Literal["sheets", "price"]


class Rect(NamedTuple):
    """A rectangle on a piece of stock, from the stock's lower left corner [unit]."""

    x: int
    y: int
    length: int
    width: int

    def __str__(self) -> str:
        return f"{self.length} x {self.width} at {self.x}, {self.y}"

    @property
    def x1(self) -> int:
        """Right edge [unit]."""
        return self.x + self.length

    @property
    def y1(self) -> int:
        """Top edge [unit]."""
        return self.y + self.width

    @property
    def area(self) -> int:
        """Area [unit squared]."""
        return self.length * self.width


@dataclass(frozen=True, slots=True)
class Placement:
    """One part on one sheet.

    Parameters
    ----------
    part, copy
        Which part, and which of its pieces, from 1.
    sheet
        Number of the sheet, from 0.
    rect
        Where it lies.
    turned
        Whether the part's length lies across the stock.
    """

    part: str
    copy: int
    sheet: int
    rect: Rect
    turned: bool = False


@dataclass(frozen=True, slots=True)
class Leaf:
    """A piece that is not cut further: a part, an offcut to keep, or waste."""

    rect: Rect
    use: Use
    part: str = ""
    copy: int = 0


@dataclass(frozen=True, slots=True)
class Split:
    """A piece divided by parallel cuts, in whatever order they are made.

    Parameters
    ----------
    rect
        The piece before the cuts.
    direction
        Of the cuts.
    cuts
        Where the blade's low side runs, ascending: y for rips, x for crosscuts. The blade may
        hang over the edge of the piece, or run over ground that an earlier cut has taken.
    pieces
        What is left between the cuts, ascending; a gap of no width leaves no piece.
    """

    rect: Rect
    direction: Direction
    cuts: tuple[int, ...]
    pieces: tuple[Node, ...]


Node = Leaf | Split


@dataclass(frozen=True, slots=True)
class SheetTree:
    """How one piece of stock is divided: its number, the stock's id, the whole piece."""

    sheet: int
    stock: str
    root: Node


@dataclass(frozen=True, slots=True)
class SettingCard:
    """All pieces that one setting gives: direction, size, how many, from which sheets."""

    direction: Direction
    setting: int
    pieces: int
    sheets: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Bound:
    """No plan can need less than `value`.

    Parameters
    ----------
    value
        Sheets, or money.
    scope
        For which layouts it holds: 'any layout'.
    measure
        What `value` counts. Sheets when every piece of stock costs the same.
    """

    value: int
    scope: str = "any layout"
    measure: Measure = "sheets"


class Status(Enum):
    """How good the plan is known to be."""

    PROVED = "proved"
    BOUNDED = "bounded"
    SHORT = "short of stock"


class Reason(Enum):
    """Why a part could not be placed."""

    TOO_LARGE = "larger than any stock"
    AGAINST_GRAIN = "fits only when turned against the grain"
    DEFECTS = "fits only over a defect"
    MATCHED = "larger than any stock where its match stays in one piece"
    NO_STOCK = "no stock left"


@dataclass(frozen=True, slots=True)
class Unplaced:
    """Pieces of a part that could not be placed, and why."""

    part: str
    count: int
    reason: Reason


@dataclass(frozen=True, slots=True)
class Solution:
    """A plan for a problem.

    Parameters
    ----------
    placements
        Every placed piece.
    tree
        One cut tree a sheet, sheets numbered from 0.
    cards
        Pieces by setting across all sheets, widest rips first, then longest crosscuts.
    cost
        In the measure of the bound.
    bound
        What no plan can beat.
    status
        Proved when the cost equals the bound.
    unplaced
        What could not be placed.
    """

    placements: tuple[Placement, ...]
    tree: tuple[SheetTree, ...]
    cards: tuple[SettingCard, ...]
    cost: int
    bound: Bound
    status: Status
    unplaced: tuple[Unplaced, ...] = ()

    @property
    def gap(self) -> int:
        """How much more than the bound the plan costs."""
        return self.cost - self.bound.value

    @property
    def verdict(self) -> str:
        """What is known of the plan, in words."""
        if self.status is Status.BOUNDED:
            return f"at most {self.gap} more than needed"
        if self.status is Status.PROVED:
            return f"proved minimum for {self.bound.scope}"
        return "parts left over: not enough stock"


def leaves(node: Node) -> Iterator[Leaf]:
    """All pieces of a tree that are not cut further, in order of position."""
    if isinstance(node, Leaf):
        yield node
    else:
        for piece in node.pieces:
            yield from leaves(piece)


def splits(node: Node) -> Iterator[Split]:
    """All divided pieces of a tree, parents first."""
    if isinstance(node, Split):
        yield node
        for piece in node.pieces:
            yield from splits(piece)
