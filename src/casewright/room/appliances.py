"""Room for appliances in runs and in cases: the questions where nobody has said how much."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.casework.specs import ApplianceOpening
from casewright.dims import Dim, Given, Origin
from casewright.findings import Question
from casewright.room.model import Room
from casewright.room.specs import JobSpec, RunSpec
from casewright.sources import INCH

__all__ = [
    "appliance_questions",
    "appliance_widths",
    "held_for_appliances",
    "open_appliances",
]

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
    in_rows = {opening.key for _, opening in _openings(room)}
    return (
        *(f"appliance.{each.key}.width" for each in room.spec.appliances
          if each.width is None and each.key not in in_rows),
        *(f"appliance.{opening.key}.{name}" for _, opening in _openings(room)
          for name in _missing(opening)),
        *(path for case in room.cases for path, _ in _hood_numbers(case)),
        *(path for case in room.cases for path in _kept_clear(case)),
    )  # fmt: skip


def _openings(room: Room) -> Iterator[tuple[Case, ApplianceOpening]]:
    """Appliances that stand in the rows of cases, or that cases stand round."""
    for case in room.cases:
        if case.spec.appliance is not None:
            yield case, case.spec.appliance
        for row in case.spec.rows:
            if row.appliance is not None:
                yield case, row.appliance


def _missing(opening: ApplianceOpening) -> tuple[str, ...]:
    return tuple(name for name in ("width", "height", "depth") if getattr(opening, name) is None)


def _hood_numbers(case: Case) -> Iterator[tuple[str, str]]:
    """What the sheet of a hood's liner has not said yet: paths, and what to find out."""
    hood, liner = case.spec.hood, case.spec.appliance
    if hood is None or liner is None:
        return
    for name, given, needs in (
        ("above_cooking", hood.liner_clear, "the least height between what is cooked on and it"),
        ("duct", hood.duct, "the size of its duct"),
        ("duct_back", hood.duct_back, "how far the middle of its duct is from the wall"),
    ):
        if given is None:
            yield f"appliance.{liner.key}.{name}", needs


def _kept_clear(case: Case) -> tuple[str, ...]:
    """What is cooked on under a hood has not said how much it wants free: that sets its foot."""
    hood = case.spec.hood
    is_open = hood is not None and hood.clear is None
    return (f"appliance.{hood.over}.clear_above",) if hood is not None and is_open else ()


def _hood_questions(room: Room, waiting: Mapping[str, Sequence[str]]) -> Iterator[Question]:
    for case in room.cases:
        for path, needs in _hood_numbers(case):
            _, key, name = path.split(".")
            yield Question(
                path=path,
                needs=f"{needs}, from the sheet of {case.spec.appliance.title}"
                if case.spec.appliance
                else needs,
                because="the box is cut and hung by it; the number here is only a usual one, and "
                "the code's figure is the floor",
                waiting=tuple(waiting.get(path, ())),
                how=f'under [appliance.{key}] write {name} = "..."',
            )


def held_for_appliances(room: Room) -> dict[str, tuple[str, ...]]:
    """By the path of a part what its case waits for: the width or depth that an appliance asks.

    Neither is in the size of any part: they decide whether the case is wide and deep enough.
    """
    held: dict[str, tuple[str, ...]] = {}
    for case, opening in _openings(room):
        asked = tuple(
            f"appliance.{opening.key}.{name}" for name in _missing(opening) if name != "height"
        )
        for part in case.parts if asked else ():
            held[part.path] = (*held.get(part.path, ()), *asked)
    for case in room.cases:
        asked = (*(path for path, _ in _hood_numbers(case)), *_kept_clear(case))
        for part in case.parts if asked else ():
            held[part.path] = (*held.get(part.path, ()), *asked)
    return held


def appliance_questions(room: Room, waiting: Mapping[str, Sequence[str]]) -> Iterator[Question]:
    """One for each opening whose width is not known.

    Parameters
    ----------
    waiting
        Parts sized by it, by its path.
    """
    yield from _row_questions(room, waiting)
    yield from _hood_questions(room, waiting)
    yield from _cooking_questions(room, waiting)
    in_rows = {opening.key for _, opening in _openings(room)}
    for each in room.spec.appliances:
        if each.key in in_rows:
            continue
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


def _cooking_questions(room: Room, waiting: Mapping[str, Sequence[str]]) -> Iterator[Question]:
    """What has to stay free above each appliance that is cooked on; a hood over it waits."""
    for each in room.spec.appliances:
        if each.cooks and each.clear_above is None:
            path = f"appliance.{each.key}.clear_above"
            yield Question(
                path=path,
                needs=f"the height that stays free above {each.title}, from its own sheet",
                because="wood over a flame or a hot plate burns; until it is known the code's "
                "figure for wood that nothing protects is kept",
                waiting=tuple(waiting.get(path, ())),
                how=f'under [appliance.{each.key}] write clear_above = "..."',
            )


def _row_questions(room: Room, waiting: Mapping[str, Sequence[str]]) -> Iterator[Question]:
    """One for each size of an opening in a case that its appliance's sheet has not given yet."""
    for case, opening in _openings(room):
        for name in _missing(opening):
            path = f"appliance.{opening.key}.{name}"
            yield Question(
                path=path,
                needs=f"the {name} of the opening that the sheet of {opening.title} asks for",
                because=f"{case.spec.title} is built round it, and the number here is only a "
                "usual one",
                waiting=tuple(waiting.get(path, ())),
                how=f'under [appliance.{opening.key}] write {name} = "..."',
            )
