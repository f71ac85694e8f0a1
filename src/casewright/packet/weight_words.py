"""What cards say of weights: of a case as it stands and as it is lifted, of an island."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.lifted import lift_path, told_weight
from casewright.casework.parts import Part
from casewright.dims import Measure, Told, tell
from casewright.room.lifting import Effort, case_effort, lifted_weight
from casewright.room.model import Island, Room

__all__ = ["case_weighs", "island_weighs", "weight_of"]


def weight_of(room: Room, parts: Iterable[Part], path: str, *, fine: bool = False) -> Measure:
    """What parts weigh together, as a sentence tells it.

    Parameters
    ----------
    path
        Where their weight stands on the chain.
    fine
        Kilograms to a tenth; else whole.
    """
    goods = room.spec.stock
    kilos = sum(
        (part.weight(getattr(goods[part.stock], "density", Fraction(0))) for part in parts),
        Fraction(0),
    )
    return told_weight(kilos, room.spec.unit, path, fine=fine)


def case_weighs(room: Room, case: Case) -> Told:
    """What it weighs as it stands, and as it is lifted."""
    return tell(
        " It weighs about {}{}, from the density of its stock.{}",
        weight_of(room, case.lifted, lift_path(case.key)),
        _without(case),
        "" if case.is_plinth else _lifted(room, case, case_effort(room, case)),
    )


def _lifted(room: Room, case: Case, effort: Effort) -> Told:
    """What the lifting equation says of the bare box: for planning, never a permission."""
    unit = room.spec.unit
    bare = told_weight(effort.weight, unit, lift_path(case.key, "bare_weight"))
    if effort.limit is None or effort.index is None:
        return tell(
            " Bare, {}, it is too deep to be lifted close to the body: do not lift it alone.", bare
        )
    return tell(
        " Bare, {}, its lifting index is {}: the lifting equation recommends at most {} where it "
        "is held worst. Over 1 plan for help.",
        bare,
        f"{float(effort.index):.1f}",
        told_weight(effort.limit, unit, lift_path(case.key, "limit_weight")),
    )


def _without(case: Case) -> str:
    """What is taken off before it is lifted."""
    if case.drawers:
        return " without doors and drawers" if case.doors else " without drawers"
    return " without doors" if case.fronts else ""


def island_weighs(room: Room, island: Island) -> Told:
    """What its boxes weigh with its panels and cleats."""
    cases = [case for run in room.runs_of(island) for case in run.cases]
    kilos = sum(
        (lifted_weight(room, each) for each in (*cases, room.case_of(island))), Fraction(0)
    )
    return tell(
        " Empty, without doors and counter, it weighs about {}.",
        told_weight(kilos, room.spec.unit, lift_path(island.key, "empty_weight")),
    )
