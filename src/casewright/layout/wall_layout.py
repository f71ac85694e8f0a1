"""A wall filled to the step."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.layout.tasks import WallTask

__all__ = ["WallLayout"]


@dataclass(frozen=True, slots=True)
class WallLayout:
    """An answer: it fills the wall to the step.

    Parameters
    ----------
    task
        What it answers, its places in the order they were put in.
    widths
        Of the places, left to right [steps].
    left, right
        Fillers [steps]; 0 where there is none.
    cost, bound
        What it costs, and what no answer to the same task and demand costs less than; 0 where
        that is not known [points].
    order
        Numbers of the places as they were listed, where their order was free.
    """

    task: WallTask
    widths: tuple[int, ...]
    left: int
    right: int
    cost: int
    bound: int
    order: tuple[int, ...] = ()

    @property
    def starts(self) -> tuple[int, ...]:
        """Left ends of the places from the wall's left end [steps]."""
        ends = [self.left]
        for width in self.widths:
            ends.append(ends[-1] + width)
        return tuple(ends[:-1])

    @property
    def is_proved(self) -> bool:
        """Whether no better answer exists."""
        return self.bound == self.cost

    def off_centre(self, number: int) -> int:
        """How far the middle of a place stands right of what it is to stand on [half steps]."""
        centre = self.task.places[number].centre
        if centre is None:
            return 0
        return 2 * self.starts[number] + self.widths[number] - centre
