"""Rooms that keep or break a rule."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Any

from tests.builders import (
    GLASS,
    PANEL,
    SLAB,
    Unit,
    case_spec,
    drawer_base,
    given,
    job,
    plain_style,
    stock,
)

from casewright.casework.cases import Case, Door, Front, Hinge
from casewright.casework.specs import FrontSpec, Hand
from casewright.checks import check
from casewright.dims import Dim, Given, Origin
from casewright.facts import NO_FACTS, Facts
from casewright.findings import Finding
from casewright.room.build import build
from casewright.room.model import Room
from casewright.room.specs import RunSpec
from casewright.stock import Board, Glazing, Moisture, Sheet, Stock

BASE: dict[str, Any] = {
    "kind": "base", "toe": "notch", "height": "34 1/2", "depth": "23 1/4", "shelves": 1,
}  # fmt: skip
BOOKCASE: dict[str, Any] = {"kind": "bookcase", "height": "84", "depth": "12", "shelves": 3}


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


def framed(species: str, percent: str, front: FrontSpec = PANEL, **changes: Any) -> Room:
    """Frames of a wood made at a moisture, for a room that comes to 11 %."""
    goods = stock()
    board = goods["board"]
    assert isinstance(board, Board)
    goods["board"] = replace(board, species=species)
    room = room_of(front=front, goods=goods, **changes)
    made = Given(Fraction(percent), Origin("measured", "meter"))
    return build(replace(room.spec, moisture=Moisture.of(30, 60, made)))


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
    size = given(inches)
    dim = Dim("", (), size.value)
    dim.origin = size.origin
    return dim


def leaf(width: str, height: str, hinges: tuple[str, ...] = (), up: str = "0") -> Door:
    """A bare leaf of that size with hinges at heights above its lower end [in]."""
    zero = _dim("0")
    own = tuple(
        Hinge(f"upper.door.hinge_{n}", _dim(given(up).value / given("1").value
              + given(at).value / given("1").value), _dim(at), "", "")
        for n, at in enumerate(hinges, start=1)
    )  # fmt: skip
    return Door(
        "upper.door", "door", "slab", zero, zero, zero, _dim(width), _dim(height), zero,
        (), "", "main", "left", own, zero, zero, zero,
    )  # fmt: skip


def with_leaf(front: Front, **changes: Any) -> Room:
    """A plain upper with that leaf alone."""
    return changed(room_of(shelves=0, **changes), fronts=(front,))


def only_case(room: Room) -> Case:
    """The case of a room of one."""
    return room.cases[0]


def beside_wall(wall: str, **changes: Any) -> Room:
    """An upper of 33 between a wall and the open."""
    run = RunSpec("row", "Row", ("upper",), (given(wall),), "wall", "open")
    return build(job(case_spec(front=SLAB, **changes), runs=(run,)))


def side_by_side(*, swing: str = "1.5", between: str = "1/16") -> Room:
    """Two uppers of one door each, hinged at the seam, with a reveal and a hinge of their own.

    Parameters
    ----------
    swing
        How far the hinge lets an open door stand out [mm].
    between
        Reveal beside each door [in].
    """
    hands: dict[str, Hand] = {"one": "right", "other": "left"}
    cases = [
        case_spec(key=key, width="18", front=replace(SLAB, hinge=hand))
        for key, hand in hands.items()
    ]
    run = RunSpec("row", "Row", ("one", "other"), (), "open", "open")
    spec = job(*cases, runs=(run,), style=plain_style(reveal=between))
    hinge = replace(spec.hardware.hinge, stand_off=given(swing, "mm"))
    return build(replace(spec, hardware=replace(spec.hardware, hinge=hinge)))


def with_pane(width: str, height: str, glazing: str = "glass", *, thick: str = "1/8") -> Room:
    """An upper behind glass or plastic, with lengths in inches."""
    goods = stock()
    pane = goods["glass"]
    assert isinstance(pane, Glazing)
    goods["glass"] = replace(
        pane, thickness=given(thick),
        material="tempered glass" if glazing == "glass" else "acrylic",
    )  # fmt: skip
    return room_of(width=width, height=height, front=replace(GLASS, leaves=1), goods=goods)


def with_hinge_moved(up: str) -> Room:
    """A base with two roll-outs, the lowest hinge of its left door so much higher [in]."""
    room = room_of(**drawer_base("in", roll_outs=2))
    door, *others = only_case(room).doors
    first, *rest = door.hinges
    raised = replace(first, height=Dim("", (), first.height.value + given(up).value))
    return changed(room, fronts=(replace(door, hinges=(raised, *rest)), *others))


def over_counter(wall_bottom: str) -> Room:
    """A base of 34 1/2 and an upper."""
    cases = (case_spec(key="base", **BASE), case_spec())
    return build(job(*cases, style=plain_style(wall_bottom=wall_bottom)))


def found_in(name: str, room: Room) -> list[Finding]:
    """What one rule finds in a room."""
    return [finding for finding in check(room) if finding.rule == name]
