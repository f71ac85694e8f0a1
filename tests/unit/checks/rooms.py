"""Rooms that keep or break a rule."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Any

from tests.builders import Unit, case_spec, given, job, stock

from casewright.casework.cases import Case, Front, Hinge
from casewright.dims import Dim
from casewright.facts import NO_FACTS, Facts
from casewright.room.build import build
from casewright.room.model import Room
from casewright.stock import Sheet, Stock


def soft_stock() -> dict[str, Stock]:
    """Stock whose stiffness nobody knows."""
    return {
        key: replace(item, modulus=None) if isinstance(item, Sheet) else item
        for key, item in stock().items()
    }


def room_of(
    *,
    unit: Unit = "in",
    facts: Facts = NO_FACTS,
    goods: Mapping[str, Stock] | None = None,
    screws: Mapping[str, str] | None = None,
    **changes: Any,
) -> Room:
    """A room of one case, with lengths of fasteners changed by kind."""
    spec = job(case_spec(unit, **changes), unit=unit, goods=goods)
    hardware = spec.hardware
    for kind, text in (screws or {}).items():
        sheet = replace(getattr(hardware, kind), length=given(text, unit))
        hardware = replace(hardware, **{kind: sheet})
    return build(replace(spec, hardware=hardware), facts)


def changed(room: Room, **changes: Any) -> Room:
    """The same room with its only case changed."""
    return replace(room, cases=(replace(room.cases[0], **changes),))


def without(room: Room, role: str) -> Room:
    """The same room with the parts of one role lost."""
    case = room.cases[0]
    lost = {part.path for part in case.parts if part.role == role}
    return changed(
        room,
        parts=tuple(part for part in case.parts if part.path not in lost),
        joints=tuple(j for j in case.joints if not {j.one.part, j.other.part} & lost),
    )


def _dim(inches: str | Fraction) -> Dim:
    return Dim("", (), given(inches).value)


def leaf(width: str, height: str, hinges: tuple[str, ...] = (), up: str = "0") -> Front:
    """A bare leaf of that size with hinges at heights above its lower end [in]."""
    zero = _dim("0")
    own = tuple(
        Hinge(f"upper.door.hinge_{n}", _dim(given(up).value / given("1").value
              + given(at).value / given("1").value), _dim(at), "", "")
        for n, at in enumerate(hinges, start=1)
    )  # fmt: skip
    return Front(
        "upper.door", "door", "slab", "left", zero, zero, zero, _dim(width), _dim(height), zero,
        (), own, zero, zero, zero, "", "main",
    )  # fmt: skip


def with_leaf(front: Front, **changes: Any) -> Room:
    """A plain upper with that leaf alone."""
    return changed(room_of(shelves=0, **changes), fronts=(front,))


def only_case(room: Room) -> Case:
    """The case of a room of one."""
    return room.cases[0]
