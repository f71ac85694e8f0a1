"""Which place stands where along a wall: as given, or as the model finds best."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import combinations
from typing import Protocol

from casewright.layout.programme import LayoutProgramme
from casewright.layout.tasks import RunPlace, WallTask

__all__ = ["GivenOrder", "LayoutOrder", "WallOrder", "order_kind"]


class WallOrder(Protocol):
    """Slots from left to right, each with the width of the place that stands there."""

    slots: list[int]
    """Variables of their widths."""

    def where(self, place: int) -> list[tuple[int, int | None]]:
        """Slots that a place can have, each with the choice that puts it there; None: it is."""

    def opened(self, slot: int) -> tuple[dict[int, int], int]:
        """A sum of choices and a number that is 1 where an opening stands there, else 0."""

    def read(self, values: Sequence[int]) -> tuple[int, ...]:
        """Numbers of the places, left to right."""


class GivenOrder:
    """The places as they are listed."""

    def __init__(self, task: WallTask, widths: list[int]) -> None:
        self.task = task
        self.slots = widths

    def where(self, place: int) -> list[tuple[int, int | None]]:
        """Its own slot."""
        return [(place, None)]

    def opened(self, slot: int) -> tuple[dict[int, int], int]:
        """As the place is."""
        return {}, int(self.task.places[slot].opening)

    def read(self, values: Sequence[int]) -> tuple[int, ...]:
        """As listed."""
        return tuple(range(len(self.slots)))


class LayoutOrder:
    """Every place in one slot, every slot with one place.

    Places that differ in nothing but their names keep the order they are listed in: to swap
    them would give the same wall.

    Parameters
    ----------
    unlike
        Orders that are not wanted again, nor what looks like them: numbers of the places.
    """

    def __init__(
        self,
        task: WallTask,
        widths: list[int],
        programme: LayoutProgramme,
        unlike: Sequence[tuple[int, ...]],
    ) -> None:
        self.task, self.programme = task, programme
        count = range(len(widths))
        self.at = [[programme.choice() for _ in count] for _ in count]
        low = min(place.low for place in task.places)
        high = max(place.high for place in task.places)
        self.slots = [programme.number(low, high) for _ in count]
        for n in count:
            programme.require(dict.fromkeys(self.at[n], 1), low=1, high=1)
            programme.require({row[n]: 1 for row in self.at}, low=1, high=1)
        for slot in self.slots:
            self._bounded(slot)
        for place, width in enumerate(widths):
            for slot, at in zip(self.slots, self.at[place], strict=True):
                programme.require_if(at, {slot: 1, width: -1}, low=0, high=0, reach=high - low)
        self._listed()
        self._neighbours()
        self._held_at_ends()
        for order in unlike:
            looks = [_look(task.places[n]) for n in order]
            for same in (looks, looks[::-1]):
                stays = {
                    self.at[place][slot]: 1
                    for slot, look in enumerate(same)
                    for place, each in enumerate(task.places)
                    if _look(each) == look
                }
                programme.require(stays, high=len(same) - 1)

    def _bounded(self, slot: int) -> None:
        """A slot is as wide as what stands there can be: which the bound would not know."""
        n = self.slots.index(slot)
        places = self.task.places
        least = {row[n]: -place.low for row, place in zip(self.at, places, strict=True)}
        most = {row[n]: -place.high for row, place in zip(self.at, places, strict=True)}
        self.programme.require({slot: 1, **least}, low=0)
        self.programme.require({slot: 1, **most}, high=0)

    def _listed(self) -> None:
        for one, other in combinations(range(len(self.at)), 2):
            if _interchangeable(self.task, one, other):
                terms = {at: slot for slot, at in enumerate(self.at[one])}
                terms |= {at: -slot for slot, at in enumerate(self.at[other])}
                self.programme.require(terms, high=-1)

    def _neighbours(self) -> None:
        number = {place.key: n for n, place in enumerate(self.task.places)}
        for one, other in self.task.beside:
            here, there = self.at[number[one]], self.at[number[other]]
            for slot, at in enumerate(here):
                near = [there[n] for n in (slot - 1, slot + 1) if 0 <= n < len(there)]
                self.programme.require({at: 1, **dict.fromkeys(near, -1)}, high=0)

    def _held_at_ends(self) -> None:
        """A filler is screwed to a case: no opening stands where one is. Each corner its case."""
        for place, row in zip(self.task.places, self.at, strict=True):
            for end, at in ((self.task.left, row[0]), (self.task.right, row[-1])):
                if place.opening and end is not None:
                    self.programme.require({at: 1}, high=0)
            if place.at_end is not None:
                at = row[0 if place.at_end == "left" else -1]
                self.programme.require({at: 1}, low=1)

    def where(self, place: int) -> list[tuple[int, int | None]]:
        """Every slot."""
        return list(enumerate(self.at[place]))

    def opened(self, slot: int) -> tuple[dict[int, int], int]:
        """By what stands there."""
        pairs = zip(self.at, self.task.places, strict=True)
        return {row[slot]: 1 for row, place in pairs if place.opening}, 0

    def read(self, values: Sequence[int]) -> tuple[int, ...]:
        """By the choices."""
        slots = [[values[at] for at in row].index(1) for row in self.at]
        return tuple(sorted(range(len(slots)), key=slots.__getitem__))


def _interchangeable(task: WallTask, one: int, other: int) -> bool:
    """Whether two places differ in nothing but their names."""
    named = {key for pair in task.beside for key in pair}
    first, second = (replace(task.places[n], key="") for n in (one, other))
    return first == second and not named & {task.places[n].key for n in (one, other)}


def order_kind(task: WallTask, order: tuple[int, ...]) -> tuple[int, ...]:
    """The same number for places that look alike, in an order or its mirror image.

    Two orders of a task are of one kind when this is the same.
    """
    looks = [_look(place) for place in task.places]
    numbers = tuple(looks.index(looks[n]) for n in order)
    return min(numbers, numbers[::-1])


def _look(place: RunPlace) -> RunPlace:
    """What is seen of a place whatever width it gets."""
    bare = replace(place, key="", wished=None)
    return bare if place.low == place.high else replace(bare, low=0, high=0)
