"""Diagonal sink bases: no top, no backs; corner blocks and a rail on edge tie the mouth.

Source of the sizes: plane geometry, worked by hand beside each; where the bowl goes is held
against a general-purpose geometry library (Shapely).
"""

from __future__ import annotations

import math
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import assume, settings
from hypothesis import given as drawn
from hypothesis import strategies as st
from shapely import Polygon, affinity, box, unary_union
from tests.builders import (
    APPLIED,
    INCH,
    PANEL,
    SLAB,
    Unit,
    case_spec,
    given,
    hardware,
    house,
    length,
    plain_style,
    stock,
)

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.proof import prove
from casewright.casework.specs import RowSpec
from casewright.casework.verification import verify
from casewright.drawing.case_solids import clip_of, part_box, seen_from_above
from casewright.errors import JobFileError
from casewright.job.load import read_job
from casewright.job.worked import work_out

FRONT = replace(SLAB, leaves=1)


def sink(unit: Unit, hand: str, *, ply: str | None = None, step: str = "0", **by: Any) -> Case:
    """A base of usual size across a corner, for a bowl."""
    inch = unit == "in"
    front = by.pop("front", FRONT)
    low = replace(SLAB, pull=False, leaves=1, overlay=front.overlay)
    asked = {
        "kind": "base", "toe": "notch", "diagonal": hand, "sink": True, "back": "open",
        "width": "42" if inch else "1060", "depth": "23 1/4" if inch else "580",
        "height": "34 1/2" if inch else "870", "shelves": 0, "front": front,
        "rows": (RowSpec("false front", given("7" if inch else "180", unit), low, low),
                 RowSpec("doors", None, front, front)),
    } | by  # fmt: skip
    made = house(unit, style=plain_style(unit, cut_step=step), goods=stock(unit, ply=ply))
    return build_case(made, case_spec(unit, **asked))


@pytest.mark.parametrize("hand", ["left", "right"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_a_corner_block_reaches_past_its_strip_and_up_to_the_rail(unit: Unit, hand: str) -> None:
    """L = w + t long, 2 L + t - t sqrt(2) wide, clipped L: both alike, one turned over."""
    case, scale = sink(unit, hand), INCH if unit == "in" else Fraction(1)
    wide = 2.5 if unit == "in" else 64
    found = [case.part(f"upper.block_{side}") for side in ("left", "right")]
    thick = float(found[0].finished.thickness.value / scale)
    reach = wide + thick
    for block in found:
        assert float(block.finished.length.value / scale) == pytest.approx(reach, rel=1e-6)
        across = 2 * reach + thick * (1 - math.sqrt(2))
        assert float(block.finished.width.value / scale) == pytest.approx(across, rel=1e-5)
        clip = clip_of(block)
        assert clip is not None
        assert float(clip[0] / scale) == pytest.approx(reach, rel=1e-5)
    sizes = [(b.finished.length.value, b.finished.width.value) for b in found]
    assert sizes[0] == sizes[1]
    assert {part.role for part in case.parts} & {"top", "back"} == set()
    assert verify(case, hardware=hardware(unit)).failures == ()


def test_the_rail_is_flush_above_and_lower_than_its_false_front() -> None:
    """As in a straight sink base; its screws go in below the corner blocks."""
    case = sink("mm", "left")
    rail, block = case.part("upper.front_rail"), case.part("upper.block_left")
    top = rail.placed.y.value + rail.finished.width.value
    assert top == case.height.value
    front = next(front for front in case.fronts if front.opening == "false_front")
    assert rail.finished.width.value <= front.height.value
    highest = max(
        rail.placed.y.value + row.value
        for f in rail.features if f.kind == "front screw" for _, row in f.places
    )  # fmt: skip
    assert highest < top - block.finished.thickness.value


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_behind_an_inset_false_front_rail_and_blocks_stand_back(unit: Unit) -> None:
    """By its thickness and the bumpers, as in a straight sink base; a rail parts it from doors.

    That rail reaches no farther in than the one on edge, where the bowl hangs: common practice.
    """
    case = sink(unit, "right", front=replace(FRONT, overlay="inset"))
    rail, between = case.part("upper.front_rail"), case.part("upper.row_board.1")
    front = next(front for front in case.fronts if front.opening == "false_front")
    bumper = length("1/16" if unit == "in" else "1.5", unit)
    assert front.z.value - rail.placed.z.value - rail.finished.thickness.value == bumper
    assert front.z.value + front.thickness.value == between.placed.z.value == case.leaf_plane.value
    rear = between.placed.z.value - between.finished.width.value
    assert rear == rail.placed.z.value
    assert verify(case, hardware=hardware(unit)).failures == ()


def test_a_block_that_is_not_there_is_told() -> None:
    """A box without a top falls apart without what ties it."""
    case = sink("mm", "right")
    loose = replace(case, parts=tuple(p for p in case.parts if p.role != "corner block"))
    assert any("tied by two blocks" in failure.says for failure in prove(loose).failures)


@pytest.mark.parametrize("diagonal", ['diagonal = "left"', ""])
def test_a_false_front_of_partial_overlay_hides_its_rail(diagonal: str) -> None:
    """As high as the style has it, across a corner and in a straight sink base."""
    text = JOB.format(leg=42, hand="left", more="bowl = [20, 16]")
    text = text.replace('diagonal = "left"', diagonal).replace(
        "{ leaves", '{ overlay = "partial", leaves'
    )
    worked = work_out(read_job(text, "job.toml"))
    assert worked.failures == ()
    front = next(f for f in worked.room.cases[0].fronts if f.opening == "false_front")
    assert front.height.value == length("7")


@settings(max_examples=20, deadline=None)
@drawn(
    unit=st.sampled_from(("in", "mm")),
    hand=st.sampled_from(("left", "right")),
    legs=st.tuples(st.integers(15, 30), st.integers(0, 31), st.integers(16, 26)),
    ply=st.sampled_from(("45/64", "3/4", "5/8", "23/32")),
    front=st.sampled_from((SLAB, APPLIED, PANEL)),
    edge=st.sampled_from(("painted", "band")),
    toe=st.sampled_from(("notch", "plinth", "none")),
    leaves=st.sampled_from((1, 2)),
    overlay=st.sampled_from(("full", "partial", "inset")),
)
def test_any_diagonal_sink_base_proves(
    unit: Unit, hand: str, legs: tuple[int, int, int], ply: str, front: Any, edge: str, toe: str,
    leaves: int, overlay: Any,
) -> None:  # fmt: skip
    """Over its legs, depths and sheets, both hands, on the cutting grid; and it is replayed."""
    per = Fraction(1) if unit == "in" else Fraction(25)
    more, part, deep = legs
    leg = (deep + more + Fraction(part, 32)) * per
    case = sink(
        unit, hand, ply=ply if unit == "in" else "18.2", step="1/32" if unit == "in" else "1/2",
        width=str(leg), depth=str(deep * per), edge=edge, toe=toe,
        front=replace(front, leaves=leaves, overlay=overlay),
    )  # fmt: skip
    assume(not any(finding.severity.value == "stop" for finding in case.findings))
    assert verify(case, hardware=hardware(unit)).failures == ()


JOB = """format = 1
unit = "in"
[case.bowl]
kind = "base"
width = {leg}
diagonal = "{hand}"
sink = true
front = {{ leaves = 2 }}
{more}
"""


def _plan(case: Case) -> Any:
    """What a bowl must keep clear of, from above."""
    shapes: list[Any] = []
    for part in case.parts:
        if part.front or part.role in ("bottom",) or case.mouth is None:
            continue
        if part.turned:
            shapes.append(Polygon(seen_from_above(case.mouth, case.width.value, part)))
            continue
        outer, clip = part_box(part), clip_of(part)
        x0, x1, z0, z1 = (float(v) for v in (outer.x0, outer.x1, outer.z0, outer.z1))
        shape: Any = box(x0, z0, x1, z1)
        if clip is not None:
            leg, x = float(clip[0]), x1 if case.mouth.corner == "left" else x0
            inward = -leg if case.mouth.corner == "left" else leg
            shape = shape.difference(Polygon([(x, z1), (x + inward, z1), (x, z1 - leg)]))
        shapes.append(shape)
    return unary_union(shapes).buffer(-0.05)  # faces that touch are clear


def _bowl(case: Case, wide: float, deep: float, behind: float) -> Any:
    """A rectangle square to the face, so far behind it."""
    assert case.mouth is not None
    middle = float(case.mouth.reach.value) / 2
    lies = box(-deep, -wide / 2, 0, wide / 2)
    turned = affinity.rotate(lies, 45, origin=(0, 0))
    out = middle - behind / math.sqrt(2)
    placed = affinity.translate(turned, out, out)
    if case.mouth.corner == "left":
        return placed
    return affinity.translate(
        affinity.scale(placed, -1, 1, origin=(0, 0)), float(case.width.value)
    )


@settings(max_examples=12, deadline=None)
@drawn(
    hand=st.sampled_from(("left", "right")),
    leg=st.integers(36, 48),
    wide=st.integers(14, 36),
    deep=st.integers(12, 24),
)
def test_a_bowl_that_nothing_is_told_of_hangs_clear(
    hand: str, leg: int, wide: int, deep: int
) -> None:
    """Half an inch all round it, against polygons of a geometry library; nor is more refused."""
    text = JOB.format(leg=leg, hand=hand, more=f"bowl = [{wide}, {deep}]")
    worked = work_out(read_job(text, "job.toml"))
    [case] = worked.room.cases
    stopped = any(f.rule == "bowl room" and f.severity.value == "stop" for f in worked.findings)
    # To a millimetre: a bowl is told at the place that it hangs at.
    off = 1 if stopped else -1
    assert _goes_in(case, (wide + 1) * 25.4 + off, (deep + 1) * 25.4 + off) != stopped


def _goes_in(case: Case, wide: float, deep: float) -> bool:
    """Whether it goes in anywhere behind the face."""
    obstacles = _plan(case)
    return any(not _bowl(case, wide, deep, at / 2).intersects(obstacles) for at in range(900))


def test_the_legs_told_for_a_bowl_are_enough() -> None:
    """Write what is proposed: nothing stops any more."""
    text = JOB.format(leg=42, hand="right", more="bowl = [30, 26]")
    told = next(f for f in work_out(read_job(text, "job.toml")).findings if f.rule == "bowl room")
    assert "45 1/2" in told.remedies[0]
    text = JOB.format(leg='"45 1/2"', hand="right", more="bowl = [30, 26]")
    found = [f for f in work_out(read_job(text, "job.toml")).findings if f.rule == "bowl room"]
    assert [f.severity.value for f in found] in ([], ["care"])


def test_a_bowl_that_is_not_known_is_asked_for_and_parts_wait() -> None:
    """What follows from the legs waits; sides and strips do not."""
    worked = work_out(read_job(JOB.format(leg=42, hand="left", more=""), "job.toml"))
    [asked] = [q for q in worked.questions if q.path == "bowl.bowl"]
    assert {"bowl.bottom", "bowl.front_rail"} <= set(asked.waiting)
    assert "bowl.side_left" not in asked.waiting


@pytest.mark.parametrize(
    ("more", "word"),
    [
        ("shelves = 1", "pipes come up"),
        ("rails = true", "only where they are inset"),
        ('rows = ["drawer 6", "doors"]', "no rows but those of a sink base"),
        ("roll_outs = 2", "roll outs"),
        ("width = 30\n", "leave no room for a pair"),
    ],
)
def test_what_it_cannot_have_is_refused(more: str, word: str) -> None:
    """Each at its line, with what would be right."""
    text = JOB.format(leg=42, hand="left", more=more)
    if more.startswith("width"):
        text = JOB.format(leg=30, hand="left", more="")
    with pytest.raises(JobFileError) as told:
        read_job(text, "job.toml")
    assert word in str(told.value)


def test_a_bowl_hangs_only_in_a_sink_base() -> None:
    """The word means nothing elsewhere."""
    with pytest.raises(JobFileError) as told:
        read_job('format = 1\nunit = "in"\n[case.a]\nkind = "base"\nwidth = 30\nbowl = [20, 16]\n',
                 "job.toml")  # fmt: skip
    assert "sink = true" in str(told.value)
    assert length("1") == INCH


ROOM = """format = 1
unit = "in"
[wall.north]
width = "130"
[wall.east]
width = "130"
[corner.far]
walls = ["north", "east"]
[appliance.dishes]
width = 24
washes = true
[case.one]
kind = "base"
width = 30
[case.bowl]
kind = "base"
width = 44
diagonal = "right"
sink = true
bowl = [22, 16]
front = {{ leaves = 2 }}
[case.between]
kind = "base"
width = {between}
[case.end]
kind = "base"
[run.north]
cases = ["one", "bowl"]
on = "north"
[run.east]
cases = ["between", "dishes", "end"]
on = "east"
left = "corner"
"""


@pytest.mark.parametrize(("between", "told"), [(11, set()), (40, {"dishwasher place"})])
def test_it_stands_beside_its_neighbours_on_both_walls(between: int, told: set[str]) -> None:
    """Counter goes on round the corner, and a dishwasher there stands beside the sink.

    36 in from the sink, and 24 in of counter beside it: `kitchen-planning`.
    """
    worked = work_out(read_job(ROOM.format(between=between), "room.toml"))
    assert worked.failures == ()
    rules = {f.rule for f in worked.findings}
    assert rules & {"dishwasher place", "landing"} == told
