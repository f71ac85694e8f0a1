"""Numbers of where an island could stand, each with what bounds it."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from casewright.dims import Dim, Origin
from casewright.job.layout_numbers import LayoutNumbers
from casewright.layout.island_tasks import IslandAnswer
from casewright.room.floor_spec import FloorPlace
from casewright.room.model import Island, Room
from casewright.room.wall_stands import joined_walls

__all__ = ["IslandNumbers"]

_UP = Origin("solved", "in whole marks of the tape, the last one filled up")
_MORE = Origin("solved", "what its ends and its counter add to its cases, to whole marks")


class IslandNumbers(LayoutNumbers):
    """Tells numbers of what an island could be.

    Parameters
    ----------
    place
        What the file says of where it stands.
    """

    __slots__ = ("island", "place")

    def __init__(self, room: Room, island: Island, place: FloorPlace, step: Fraction) -> None:
        super().__init__(room, "island", island.spec.key, step)
        self.island, self.place = island, place

    def explain(
        self, number: int, answer: IslandAnswer, shares: Mapping[str, int], because: str
    ) -> None:
        """Enter what an answer decides, with what bounds it.

        Parameters
        ----------
        number
            Of the answer, from 1.
        shares
            Widths of the cases that are left open, by key [steps].
        because
            What spoke for it, in words.
        """
        name, solved = f"answer_{number}", Origin("solved", because)
        walls = list(self._walls())
        long, deep = self._sizes(name, answer, shares, solved)
        near = (answer.near - answer.task.base) * self.step
        off = self.number(f"{name}.off", near, solved, [*walls, deep])
        along = self.number(f"{name}.along", answer.left * self.step, solved, [*walls, long])
        for way, (gap, each) in answer.gaps().items():
            left = Origin("solved", f"floor left between its counter and {each.key}")
            rests = [off, deep] if way in ("near", "far") else [along, long]
            self.number(f"{name}.aisle_{way}", gap * self.step, left, [*rests, *walls])
        if answer.task.centre is not None:
            apart = Origin("solved", f"from its middle to that of {self.place.centre}")
            by = abs(answer.off_centre) // 2 * self.step
            self.number(f"{name}.off_centre", by, apart, [along, long])

    def _walls(self) -> list[Dim]:
        """Widths of the walls of its room, as far as they meet in corners."""
        keys = sorted(joined_walls(self.room.survey, self.place.wall))
        return list(self.of_room(*(f"survey.wall.{key}.width" for key in keys)))

    def _sizes(
        self, name: str, answer: IslandAnswer, shares: Mapping[str, int], solved: Origin
    ) -> tuple[Dim, Dim]:
        """Length and depth of its counter."""
        own, runs, step = self.island.key, self.room.runs_of(self.island), self.step
        (first, *_), walls = runs, self._walls()
        bodies = [self.number(f"{name}.{key}", share * step, solved, walls)
                  for key, share in shares.items()]  # fmt: skip
        keys = [case.key for case in first.cases if case.key not in shares]
        bodies += self.of_room(*(f"{key}.wanted_width" for key in keys))
        more = self.number("ends_and_counter", answer.task.more * step, _MORE, list(self.of_room(
            f"{own}.counter_length", f"run.{first.spec.key}.cases_end"
        )))  # fmt: skip
        whole = (answer.boxes + answer.task.more) * step
        long = self.number(f"{name}.length", whole, _UP, [*bodies, more])
        deep = list(self.of_room(f"{own}.counter_depth"))
        return long, self.number(f"{name}.depth", answer.task.depth * step, _UP, deep)
