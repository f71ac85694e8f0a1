"""Numbers of heights that close: what lies over what, each with what bounds it."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from casewright.dims import Dim, Measure, Origin, total
from casewright.findings import Limit
from casewright.job.layout_numbers import LayoutNumbers
from casewright.layout.conflicts import LayoutConflict, Relief
from casewright.room.model import Room

__all__ = ["COUNTER", "HeightNumbers"]

COUNTER = Limit("counter_thickness", "3/2", "40", "thickness of a counter")
_LIES_OVER = Origin("solved", "all that lies over one another, at the least or at the most")


class HeightNumbers(LayoutNumbers):
    """Tells numbers of what the heights of a room could be.

    Parameters
    ----------
    clear
        From the highest floor to the lowest ceiling [mm].
    base
        Height of the highest base case [mm].
    """

    __slots__ = ("base", "clear")

    def __init__(self, room: Room, clear: Dim, base: Dim, step: Fraction) -> None:
        super().__init__(room, "room", "heights", step)
        self.clear, self.base = clear, base

    def size(self, value: Fraction, name: str) -> Measure:
        """A height as a sentence tells it.

        Parameters
        ----------
        value
            [mm].
        """
        return self.told(self.number(name.replace(" ", "_"), value))

    def explain(self, number: int, parts: Mapping[str, Fraction], because: str) -> None:
        """Enter what an answer decides: it closes by what is left of the clear height.

        Parameters
        ----------
        number
            Of the answer, from 1.
        parts
            What lies over what, from the floor up [mm].
        because
            What spoke for it and bound it, in words.
        """
        name, solved = f"answer_{number}", Origin("solved", because)
        given = {"base cases": self.base, "counter": self.own.limit(COUNTER), **self._crown()}
        found: dict[str, Dim] = {}
        for part, high in parts.items():
            own = f"{name}.{part.replace(' ', '_')}"
            if part in given:
                found[part] = self.given(own, high, given[part])
            elif part in ("backsplash", "wall cases"):
                key = "wall_bottom" if part == "backsplash" else "wall_height"
                rests = (self.clear, self.base, *self.of_room(f"style.{key}"))
                found[part] = self.number(own, high, solved, rests)
        rest = next(part for part in parts if part in ("frieze", "open above"))
        own = f"{name}.{rest.replace(' ', '_')}"
        self.number(own, parts[rest], solved, (self.clear, *found.values()))
        self.formula(own, self.clear - total(*found.values()))

    def _crown(self) -> dict[str, Dim]:
        crowns = (run.trims.crown for run in self.room.spec.runs)
        drops = [crown.drop for crown in crowns if crown is not None and crown.to_ceiling]
        highest = max(drops, key=lambda drop: drop.value, default=None)
        return {} if highest is None else {"crown": self.own.given("crown_drop", highest)}

    def off(self, name: str, part: str, off: Fraction) -> Measure:
        """By how much a part is more or less than wished.

        Parameters
        ----------
        name
            Of the answer.
        off
            [mm].
        """
        key = {"backsplash": "wall_bottom", "wall cases": "wall_height"}.get(part, part)
        note = Origin("solved", f"{part} against what was wished for")
        rests = (*self.of_room(f"style.{key}"), self.clear, self.base)
        return self.told(self.number(f"{name}.{part.replace(' ', '_')}_off", off, note, rests))

    def short_of(self, number: int, conflict: LayoutConflict) -> tuple[Measure, Measure]:
        """What the heights ask for together, and what they lack or leave of what is there.

        Parameters
        ----------
        number
            Of the conflict, from 1.
        """
        short = conflict.short * self.step
        rests = (self.base, self.own.limit(COUNTER), *self._crown().values())
        asked = self.number(f"asked_{number}", self.clear.value + short, _LIES_OVER, rests)
        lacks = asked - self.clear if short > 0 else self.clear - asked
        return self.told(asked), self.told(self.formula(f"short_{number}", lacks))

    def relief(self, number: int, relief: Relief) -> Measure:
        """By how much something would have to change for the heights to close.

        Parameters
        ----------
        number
            Of the conflict, from 1.
        """
        return self(abs(relief.steps), f"by_{number}_{relief.key or relief.of}".replace(" ", "_"))
