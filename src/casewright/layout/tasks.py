"""What is to be laid out along a wall, in whole steps of the shop's grid."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from casewright.dims import Measure

__all__ = ["EndFiller", "KeepClear", "Preferences", "RunPlace", "Say", "WallTask", "WidthBand"]

Say = Callable[[int, str], str | Measure]
"""How a number of steps is told, and which number it is: 'answer_1.sink', 'answer_2.off_sink'."""

WidthBand = tuple[int, int]
"""Least and greatest width [steps]."""


@dataclass(frozen=True, slots=True)
class RunPlace:
    """One place of a run: a case, or an opening for an appliance.

    Parameters
    ----------
    low, high
        Least and greatest width [steps]; equal for an opening, or where the person pinned it.
    wished
        Width asked for, if any [steps].
    start
        Where its left end must stand, from the wall's left end [steps]: a window that wall cases
        leave free, a seam the person pinned; None: anywhere.
    centre
        What its middle is to stand on, from the wall's left end [half steps]; None: nothing.
    opening
        True for what is bought and not built: it counts neither as a width to build nor as one
        that mirrors another.
    sort
        What it is, drawers or doors: two of one sort and one width may change places unnoticed.
    at_end
        The end of the run that it belongs to, where the order is free: that of its corner.
    needs
        Least filler at its left, at its right, where it stands at that end of the run beside one:
        its doors open to a right angle then [steps].
    corners
        Least and greatest width where it stands at the left, at the right end of the run, in a
        corner that another run stands round: what it opens passes that one [steps]. None: any; the
        least above the greatest: it cannot stand there.
    """

    key: str
    low: int
    high: int
    wished: int | None = None
    start: int | None = None
    centre: int | None = None
    opening: bool = False
    sort: str = ""
    at_end: Literal["left", "right"] | None = None
    needs: tuple[int, int] = (0, 0)
    corners: tuple[WidthBand | None, WidthBand | None] = (None, None)


@dataclass(frozen=True, slots=True)
class EndFiller:
    """The filler at one end of a run.

    Parameters
    ----------
    low, high
        Its band [steps].
    wished
        Width asked for, if any [steps].
    in_corner
        Whether it clears the run round a corner: then it need not be like the other one.
    clears
        What the door beside it needs of that [steps].
    """

    low: int
    high: int
    wished: int | None = None
    in_corner: bool = False
    clears: int = 0


@dataclass(frozen=True, slots=True)
class KeepClear:
    """A stretch of the wall that no side of a case is to stand before: pipes, an outlet.

    Parameters
    ----------
    low, high
        A side may stand at either, not between them, from the wall's left end [steps].
    """

    key: str
    low: int
    high: int


@dataclass(frozen=True, slots=True)
class Preferences:
    """What an answer costs, in whole points: the less the better.

    Parameters
    ----------
    off_centre
        For each half step that a middle stands off what it is to stand on [points].
    width
        For each width to build that differs from the others [points].
    mirror
        For each step by which a case differs from its mirror image in the run [points].
    fillers
        For each step by which the two fillers differ [points].
    wish, filler_wish
        For each step that a case, a filler is off a width asked for [points].
    orphan, narrow
        For each case narrower than so many steps [points], [steps].
    seam
        For each seam between two cases that stands on none of the seams it is to stand on
        [points].
    clash
        For each side of a case that stands before what is to be kept clear [points].
    proportion
        For each step that two cases are off the proportion of their widths, times both numbers of
        it [points].
    spread
        For each step from the narrowest to the widest of the cases that may have any width
        [points].

    Sources
    -------
    Own judgement after the practice of the trade; editable.
    """

    off_centre: int
    width: int
    mirror: int
    fillers: int
    wish: int
    filler_wish: int
    orphan: int
    narrow: int
    seam: int = 0
    clash: int = 0
    proportion: int = 0
    spread: int = 0

    @classmethod
    def usual(cls, steps_per_inch: int) -> Preferences:
        """In points of which an inch of a mirrored width costs five.

        Parameters
        ----------
        steps_per_inch
            Of the grid, about: 16 for sixteenths, 25 for millimetres.
        """
        inch = steps_per_inch
        return cls(
            off_centre=50, width=8 * inch, mirror=5, fillers=3, wish=2, filler_wish=1,
            orphan=20 * inch, narrow=12 * inch, seam=4 * inch, clash=60 * inch,
            proportion=12, spread=1,
        )  # fmt: skip


@dataclass(frozen=True, slots=True)
class WallTask:
    """A run to be laid out between the two ends of a wall.

    Parameters
    ----------
    length
        Of the wall: its narrowest reading less what is not known of it [steps].
    places
        Left to right; in any order where that is free.
    left, right
        Fillers at its ends; None where it begins or ends free of a wall, flush with the end.
    preferences
        What makes one answer better than another.
    is_free
        Whether the places may be put in another order.
    beside
        Keys of two places that must be neighbours, where the order is free.
    another
        Least and greatest width of a case that could be put in as well [steps]; None: not told.
    seams
        What the seams between cases are best to stand on, from the wall's left end [steps]: those
        of the run below.
    clear
        What no side of a case is to stand before.
    proportions
        Keys of two cases, and how their widths are to compare: three to two.
    """

    length: int
    places: tuple[RunPlace, ...]
    left: EndFiller | None
    right: EndFiller | None
    preferences: Preferences
    is_free: bool = False
    beside: tuple[tuple[str, str], ...] = ()
    seams: tuple[int, ...] = ()
    another: tuple[int, int] | None = None
    clear: tuple[KeepClear, ...] = ()
    proportions: tuple[tuple[str, str, int, int], ...] = ()

    @property
    def has_like_fillers(self) -> bool:
        """Whether there are two fillers that should be alike."""
        ends = (self.left, self.right)
        return all(each is not None and not each.in_corner for each in ends)

    @property
    def unseen(self) -> int:
        """By how much fillers may differ unseen, so that no other answer comes of it [steps].

        Half an inch, of 12 that make a case narrow (own judgement).
        """
        return max(self.preferences.narrow // 24, 1)

    @property
    def has_marks(self) -> bool:
        """Whether something on the wall tells its left from its right."""
        held = (each.start is not None or each.centre is not None for each in self.places)
        return bool(self.seams or self.clear) or any(held)
