"""What is lifted, how, and what the lifting equation makes of it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from casewright.casework.cases import Case, Door
from casewright.casework.parts import Part
from casewright.dims import Unit
from casewright.room.model import Room
from casewright.sources import INCH, LiftingTask, hands_from_ankles, weight_limit

__all__ = [
    "STRENUOUS", "Effort", "carried_parts", "case_effort", "effort_of", "leaf_effort",
    "lid_effort", "lifted_weight",
]  # fmt: skip

STRENUOUS = 3
"""Lifting index over which the manual warns of nearly everybody: page 5, from memory [-]."""

_LOOSE = ("shelf", "plinth rail", "sleeper")
_STAND = {"in": 36 * INCH, "mm": Fraction(900)}
"""Where a wall case rests on its way up: a counter, or a stand as high (common practice) [mm]."""
_LEAST_RISE = {"in": 10 * INCH, "mm": Fraction(250)}
"""What the equation takes for a load that is shifted more than raised [mm]."""


@dataclass(frozen=True, slots=True)
class Effort:
    """A lift by one person, at the worst place of its way.

    Parameters
    ----------
    weight
        [kg].
    limit
        The recommended weight limit there [kg]; None: it is held too far from the body, or too
        high, for the equation to give one.
    worst
        That place.
    """

    weight: Fraction
    limit: Fraction | None
    worst: LiftingTask

    @property
    def is_strenuous(self) -> bool:
        """Whether it is over three times the limit, or there is none."""
        return self.index is None or self.index > STRENUOUS

    @property
    def index(self) -> Fraction | None:
        """The lifting index: weight over limit [-]."""
        return None if self.limit is None else self.weight / self.limit


def lifted_weight(room: Room, case: Case) -> Fraction:
    """Weight of the box as it is carried: no doors, loose shelves or plinth [kg]."""
    return sum(
        (
            part.weight(getattr(room.spec.stock[part.stock], "density", Fraction(0)))
            for part in carried_parts(case)
        ),
        Fraction(0),
    )


def carried_parts(case: Case) -> tuple[Part, ...]:
    """What is carried with the box: no doors, loose shelves or plinth."""
    return tuple(part for part in case.lifted if part.role not in _LOOSE)


def case_effort(room: Room, case: Case) -> Effort:
    """The box lifted to its place, hands under its lower edge, its shallow side to the body.

    A case that stands is raised just off the floor; one that hangs goes from the floor onto a
    stand as high as a counter, and from there to the height it hangs at.
    """
    unit = room.spec.unit
    hangs = case.spec.is_hung
    stops = (_STAND[unit], room.wall_bottom.value) if hangs else (_LEAST_RISE[unit],)
    deep = min(case.width.value, case.depth.value)
    return effort_of(lifted_weight(room, case), deep, (Fraction(0), *stops), unit)


def leaf_effort(room: Room, case: Case, door: Door, weight: Fraction) -> Effort:
    """A door lifted off the floor to its hinges, upright, its face to the body.

    It stands on its lower end first, and is held by both edges, a third of its height up.

    Parameters
    ----------
    weight
        Of the leaf [kg].
    """
    foot = room.wall_bottom.value if case.spec.is_hung else Fraction(0)
    grip = door.height.value / 3
    stops = grip, foot + door.y.value + grip
    return effort_of(weight, door.thickness.value, stops, room.spec.unit)


def lid_effort(room: Room, case: Case, lid: Part, weight: Fraction) -> Effort:
    """A lid lifted off a bench or a stand onto its box, flat, by its ends."""
    unit, size = room.spec.unit, lid.finished
    stops = _STAND[unit], case.height.value + size.thickness.value
    return effort_of(weight, size.width.value, stops, unit)


def effort_of(weight: Fraction, deep: Fraction, stops: tuple[Fraction, ...], unit: Unit) -> Effort:
    """A lift from stop to stop, straight before the body, without handles, once in five minutes.

    Parameters
    ----------
    weight
        [kg].
    deep
        Of the load, away from the body [mm].
    stops
        Heights of the hands on the way, the first one first [mm].
    """
    worst: tuple[Fraction, LiftingTask] | None = None
    for start, end in pairwise(stops):
        for height in (start, end):
            out = hands_from_ankles(deep, height, unit)
            task = LiftingTask(out, height, abs(end - start))
            limit = weight_limit(task, unit)
            if limit is None:
                return Effort(weight, None, task)
            if worst is None or limit < worst[0]:
                worst = limit, task
    if worst is None:
        msg = "a lift needs two heights"
        raise ValueError(msg)
    return Effort(weight, *worst)
