"""Lengths that the buy list tells lead to numbers of the chain."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.builders import GLASS, SLAB, Unit, case_spec, job, length
from tests.jobs import HEAD, read

from casewright.breakdown.nudges import DepthGroup, Nudge
from casewright.buying import BuyLine, room_lines
from casewright.dims import Dim, Measure, parts_of
from casewright.findings import entered
from casewright.job import nudges
from casewright.job.numbers import chain_with
from casewright.job.reasons import reasons
from casewright.job.worked import work_out
from casewright.room.build import build
from casewright.room.model import Room
from casewright.room.specs import RunSpec


@pytest.fixture(scope="module", params=["in", "mm"])
def room(request: pytest.FixtureRequest) -> Room:
    """Two uppers in a run."""
    unit: Unit = request.param
    cases = (
        case_spec(unit, key="up", front=SLAB, edge="band"),
        case_spec(unit, key="glazed", front=GLASS),
    )
    return build(
        job(
            *cases,
            unit=unit,
            runs=(RunSpec("wall", "wall", ("up", "glazed"), (), "open", "open"),),
        )
    )


def _told(line: BuyLine) -> list[Measure]:
    words = (line.what, line.unit, line.why, line.note)
    return [part for each in words for part in parts_of(each) if isinstance(part, Measure)]


def _of(room: Room, key: str) -> tuple[BuyLine, dict[str, Dim]]:
    """A line, and the numbers of the room with those of the line."""
    line = next(line for line in room_lines(room) if line.key == key)
    nodes = dict(room.chain.nodes)
    entered(line.numbers, nodes)
    return line, nodes


def test_every_length_of_the_list_is_a_number_of_that_value(room: Room) -> None:
    """Whatever a line tells stands among its numbers, or among those of the room."""
    told = 0
    for line in room_lines(room):
        nodes = dict(room.chain.nodes)
        entered(line.numbers, nodes)
        for measure in _told(line):
            assert nodes[measure.path].value == measure.value, (line.what, measure.text)
            told += 1
    assert told > 20


def test_a_joining_screw_follows_from_the_two_sides(room: Room) -> None:
    """Both thicknesses less 1/8 in or 3 mm, down to what is sold (common practice)."""
    line, nodes = _of(room, "joining_screw")
    (screw,) = _told(line)
    why = reasons(room, screw.path)
    known = {node.path: node for node in why}
    assert known["buy.joining_screw.short"].wanted == length(
        "1/8" if room.spec.unit == "in" else "3", room.spec.unit
    )
    assert known["buy.joining_screw.short"].origin is not None
    assert {"up.side_right.thickness", "glazed.side_left.thickness"} <= set(known)
    assert nodes[screw.path].value == screw.value


def test_the_bite_of_a_wall_screw_is_what_is_left_of_it(room: Room) -> None:
    """The last length of its sum is the first one less those between."""
    line, _ = _of(room, "wall_screw")
    *_, screw, passed, shim, board, bite = _told(line)
    assert bite.value == screw.value - passed.value - shim.value - board.value
    assert {shim.path, board.path} == {"style.wall_shim", "style.wallboard"}
    assert chain_with(room, bite.path).nodes[bite.path].value == bite.value


def test_the_glue_is_reckoned_from_the_edges_of_every_case(room: Room) -> None:
    """The sum leads to a sum for each case, and on to the parts."""
    line, nodes = _of(room, "glue")
    whole, _ = _told(line)
    each = [nodes[f"buy.glue.edges.{case.key}"].value for case in room.cases]
    assert whole.value == sum(each, Fraction(0))
    assert abs(line.need - whole.value * 250 / (60 * Fraction("304.8"))) < Fraction(1, 100)


def test_a_depth_that_saves_says_that_it_was_tried(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whatever the search finds: the note's depth is solved, beside the one that was typed."""
    room = work_out(read(f'{HEAD}[case.a]\nkind = "bookcase"\nwidth = 24\ndepth = 12\n')).room
    found = Nudge(
        DepthGroup("bookcase", ("a",), length("12")), length("11 3/4"), {"plywood": (2, 1)}
    )
    monkeypatch.setattr(nudges, "find_nudges", lambda *_, **__: [found])
    why = reasons(room, "plan.saves.a.depth")
    assert why[0].origin is not None
    assert why[0].origin.kind == "solved"
    assert why[0].wanted == length("11 3/4")
    assert why[0].args == ("a.wanted_depth",)
