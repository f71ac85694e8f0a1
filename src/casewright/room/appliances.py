"""Room for appliances in a run: how wide, and the question where nobody has said."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from casewright.casework.house import House
from casewright.dims import Dim, Given, Origin
from casewright.findings import Question
from casewright.room.model import Room
from casewright.room.specs import JobSpec, RunSpec
from casewright.sources import INCH

__all__ = ["appliance_questions", "appliance_widths", "open_appliances"]

_USUAL: Mapping[str, Fraction] = {"in": 24 * INCH, "mm": Fraction(600)}
"""Common practice: what most built-in appliances ask for [mm]."""


def appliance_widths(house: House, spec: JobSpec, run: RunSpec) -> dict[str, Dim]:
    """Opening for each appliance of a run, by its key [mm]; a usual one where none is given."""
    keys = {key for key, _ in run.appliances}
    found: dict[str, Dim] = {}
    for each in spec.appliances:
        if each.key not in keys:
            continue
        known = house.chain.nodes.get(f"appliance.{each.key}.width")
        usual = Given(_USUAL[house.unit], Origin("chosen", "a usual width, to be asked for"))
        found[each.key] = known or house.chain.place(f"appliance.{each.key}").given(
            "width", each.width or usual
        )
    return found


def open_appliances(room: Room) -> tuple[str, ...]:
    """Paths of the widths that nobody has given yet."""
    return tuple(
        f"appliance.{each.key}.width" for each in room.spec.appliances if each.width is None
    )


def appliance_questions(room: Room, waiting: Mapping[str, Sequence[str]]) -> Iterator[Question]:
    """One for each opening whose width is not known.

    Parameters
    ----------
    waiting
        Parts sized by it, by its path.
    """
    for each in room.spec.appliances:
        path = f"appliance.{each.key}.width"
        if each.width is None:
            yield Question(
                path=path,
                needs=f"the width of the opening for {each.title}, from its own sheet",
                because="what stands beside it is placed and sized by it, and the number here is "
                "only a usual one",
                waiting=tuple(waiting.get(path, ())),
                how=f'under [appliance.{each.key}] write width = "..."',
            )
