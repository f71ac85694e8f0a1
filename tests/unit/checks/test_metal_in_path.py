"""Brads where a bit goes: held against every brad and every hole, one by one."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import APPLIED, given
from tests.unit.checks.rooms import changed, found_in, only_case, room_of

from casewright.casework.joints import Joint
from casewright.casework.proof.assembled import Assembled
from casewright.dims import Dim
from casewright.room.model import Room

CLEAR = Fraction(254, 80)  # 1/8 in beside the cutter: as the rule says
HALF = Fraction(3, 5)  # of a brad of 1.2 mm (18 gauge is 0.0475 in: common practice)


def _struck(room: Room) -> bool:
    """Whether any brad of an upright strip stands where a cup or a pull is bored."""
    case = Assembled.of(only_case(room))
    length = case.units.length
    for joint in case.joints:
        for held in joint.fastenings:
            stile = case.solids[joint.one.part]
            if held.kind != "brad" or held.pitch is None or held.edge is None:
                continue
            if stile.part.role != "stile":
                continue
            box = stile.outer
            middle = length(box.x0 + box.x1) / 2
            brads = [
                length(box.y0) + held.edge.value + n * held.pitch.value for n in range(held.count)
            ]
            for row in case.rows.get(held.into, ()):
                for hole in row.holes:
                    x, y, _ = (length(v) for v in case.solids[held.into].point(
                        (hole.length, hole.width, 0)))  # fmt: skip
                    reach = length(hole.radius) + CLEAR + HALF
                    near = [at for at in brads if abs(at - y) < reach]
                    if near and abs(x - middle) < reach:
                        return True
    return False


@pytest.mark.parametrize("height", [18, 20, 22, 23, 25, 28, 33, 39, 44, 46, 47])
def test_told_of_exactly_where_a_brad_meets_a_hole(height: int) -> None:
    """Brads from both ends of a strip, the pull 2 1/2 in up, its holes 96 mm apart."""
    room = room_of(front=APPLIED, height=str(height))
    assert bool(found_in("metal in path", room)) == _struck(room)


def test_the_remedy_is_an_inch() -> None:
    """The same brad an inch lower is clear: common practice."""
    told = found_in("metal in path", room_of(front=APPLIED, height="22"))
    assert {finding.remedies[0] for finding in told} == {'drive that brad 1" lower'}


def test_a_row_moved_off_its_line_is_clear() -> None:
    """Half an inch beside the pull's holes, every brad of the row passes them."""
    room = room_of(front=APPLIED, height="22")
    case = only_case(room)
    moved = tuple(_beside(joint) for joint in case.joints)
    assert found_in("metal in path", changed(room, joints=moved)) == []


def _beside(joint: Joint) -> Joint:
    held = tuple(
        replace(each, line=(each.line[0], Dim("", (), each.line[1].value + given("1/2").value)))
        if each.kind == "brad" and each.line is not None and "stile" in joint.path
        else each
        for each in joint.fastenings
    )
    return replace(joint, fastenings=held)


@pytest.mark.parametrize(("from_edge", "told"), [("5/8", True), ("9/16", False)])
def test_brads_along_an_edge_that_is_trimmed_flush(from_edge: str, told: bool) -> None:
    """Metal 1/8 in and more beside the bit: common practice.

    A strip over an edge of 23/32 is trimmed that far from its outer edge; half a brad is 0.024 in.
    So the middle of the row may lie 23/32 - 1/8 - 0.024 = 0.57 in from the outer edge at most.
    """
    base: dict[str, Any] = {"kind": "base", "toe": "notch", "height": "34 1/2", "depth": "23 1/4"}
    room = room_of(**base, face="strips", face_stock="board")
    moved = tuple(_on_line(joint, from_edge) for joint in only_case(room).joints)
    found = found_in("metal in path", changed(room, joints=moved))
    assert bool(found) == told
    assert all("trimmed flush" in each.says for each in found)


def _on_line(joint: Joint, from_edge: str) -> Joint:
    """Brads of a face strip on another line."""
    held = tuple(
        replace(each, line=(each.line[0], Dim("", (), given(from_edge).value)))
        if each.kind == "brad" and each.line is not None and "face_strips" in joint.path
        else each
        for each in joint.fastenings
    )
    return replace(joint, fastenings=held)
