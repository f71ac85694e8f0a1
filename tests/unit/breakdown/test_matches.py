"""Fronts through which the grain is to run, from the job file to the cut."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from tests.jobs import HEAD, problem, read

from casewright.breakdown import Breakdown, break_down, saw_steps
from casewright.breakdown.matches import cut_apart
from casewright.buying import buy_list
from casewright.cutting.engine import Stop
from casewright.cutting.problem import Match
from casewright.outputs.blocks import Labels
from casewright.outputs.document import LABELS_LETTER
from casewright.outputs.inlines import rich_text
from casewright.packet.card_words import card_facts
from casewright.packet.labels import labels_section
from casewright.packet.part_groups import PartGroup
from casewright.room.build import build
from casewright.room.matched import matched_slabs
from casewright.room.model import Room

_GOODS = """
[stock.walnut]
kind = "sheet"
title = "walnut plywood"
size = ["96", "48"]
thickness = "3/4"
measured = "23/32"
grain = "{grain}"
density = 590
[stock.plywood]
measured = "23/32"
[stock.thin_plywood]
measured = "7/32"
[doors]
construction = "slab"
slab = "walnut"
"""
_CASES = """
[case.a]
kind = "base"
width = "24"
[case.b]
kind = "base"
width = "18"
[case.c]
kind = "base"
width = "30"
rows = ["drawer 7", "doors"]
[run.wall]
cases = ["a", "b", "c"]
"""


def _room(match: str, grain: str = "length") -> Room:
    spec = read(HEAD + _GOODS.format(grain=grain) + _CASES + match)
    return build(spec, spec.file_facts)


def _broken_down(match: str, grain: str = "length") -> Breakdown:
    return break_down(_room(match, grain), stop=Stop(3_000))


def _matches(broken: Breakdown) -> list[tuple[str, ...]]:
    (plan,) = (plan for plan in broken.plans if plan.stock == "walnut")
    return [match.parts for match in plan.problem.matches]


def test_the_doors_of_a_row_come_out_of_one_piece() -> None:
    """Left to right, each a kerf beside the last; a triangle goes across them first."""
    broken = _broken_down('[match.row]\ncases = ["a", "b"]\n')
    (row,) = _matches(broken)
    assert [path.split(".")[0] for path in row] == ["a", "a", "b"]
    (plan,) = (plan for plan in broken.plans if plan.stock == "walnut")
    lies = {placed.part: placed.rect for placed in plan.solution.placements}
    kerf = plan.problem.kerf
    for before, after in pairwise(row):
        assert (lies[after].x, lies[after].y) == (lies[before].x, lies[before].y1 + kerf)
    (first,) = (step for step in saw_steps(plan) if step.matched)
    assert tuple(piece.id for piece in first.matched) == row


def test_a_drawer_lies_in_line_with_the_doors_below() -> None:
    """One direction of the sheet is up on the face: its doors first, then the drawer's front."""
    broken = _broken_down('[match.face]\ncases = ["c"]\n')
    (face,) = _matches(broken)
    (plan,) = (plan for plan in broken.plans if plan.stock == "walnut")
    lies = {placed.part: placed.rect for placed in plan.solution.placements}
    *doors, drawer = face
    assert "drawer" in drawer
    assert len(doors) == 2
    for door in doors:
        assert lies[drawer].x == lies[door].x1 + plan.problem.kerf


def test_label_and_card_say_that_the_grain_runs_on() -> None:
    spec = read(
        HEAD + _GOODS.format(grain="length") + _CASES + '[match.row]\ncases = ["a", "b"]\n'
    )
    room = build(spec, spec.file_facts)
    slabs = [part for part in room.parts if part.stock == "walnut" and part.case in ("a", "b")]
    breakdown = break_down(room, stop=Stop(3_000))
    (block,) = labels_section(room, breakdown, LABELS_LETTER).blocks
    assert isinstance(block, Labels)
    named = [label.mark for label in block.labels if "; match row" in rich_text(label.aside[0])]
    assert named == [part.mark for part in slabs]
    told = rich_text(card_facts(PartGroup((slabs[0],)), room))
    marks = ", ".join(part.mark for part in slabs)
    assert f"Match row: the grain runs on through {marks}, as the triangle shows." in told


def test_a_front_cut_anew_is_told_not_to_match() -> None:
    """The others are cut already, out of another piece; while none is cut nothing is told."""
    room = _room('[match.row]\ncases = ["a", "b"]\n')
    assert not list(cut_apart(room))
    slabs = matched_slabs(room)["row"]
    cases = tuple(
        replace(
            case,
            parts=tuple(replace(p, state="cut") if p.path in slabs[1:] else p for p in case.parts),
        )
        for case in room.cases
    )
    by_key = {case.key: case for case in cases}
    (told,) = cut_apart(
        replace(room, cases=cases, runs=tuple(r.with_cases(by_key) for r in room.runs))
    )
    assert told.path == slabs[0]


def test_the_buy_list_asks_for_a_face() -> None:
    room = _room('[match.row]\ncases = ["a", "b"]\n')
    (line,) = (each for each in buy_list(room, break_down(room, stop=Stop(3_000)))
               if each.key == "walnut")  # fmt: skip
    assert line.note.startswith("a face whose grain may run on through 3 fronts; ")


def test_where_the_grain_breaks_is_told() -> None:
    """Faces of 24, 18 and 30 in need 72 in, the sheet is 48 wide."""
    broken = _broken_down('[match.row]\ncases = ["a", "b", "c"]\n')
    assert len(_matches(broken)) == 2
    (told,) = (finding for finding in broken.findings if finding.rule == "grain breaks")
    assert "breaks between b and c" in told.says


def test_without_grain_nothing_is_matched() -> None:
    """Which is told, case by case."""
    broken = _broken_down('[match.row]\ncases = ["a", "b"]\n', grain="none")
    assert _matches(broken) == []
    told = [finding for finding in broken.findings if finding.rule == "nothing to match"]
    assert [finding.path for finding in told] == ["a", "b"]


_PANEL = """
[appliance.dishwasher]
width = "24"
[appliance.dishwasher.panel]
slab = "walnut"
{limits}
[case.left]
kind = "base"
width = "11"
[case.right]
kind = "base"
width = "10 3/4"
[run.wall]
cases = ["left", "dishwasher", "right"]
[match.row]
cases = ["left", "dishwasher", "right"]
"""
_LIMITS = """
no_limit = ["height", "width", "thickness", "weight"]
screw_rows = [3, 17]
screws_apart = 16
screw_depth = "1/2"
"""


def _with_panel(limits: str) -> Breakdown:
    spec = read(HEAD + _GOODS.format(grain="length") + _PANEL.format(limits=limits))
    return break_down(build(spec, spec.file_facts), stop=Stop(3_000))


def test_the_panel_of_an_appliance_matches_its_neighbours() -> None:
    (row,) = _matches(_with_panel(_LIMITS))
    assert [path.split(".")[0] for path in row] == ["left", "appliance", "right"]


_TWO = """
[appliance.cold]
width = 36
height = 84
[appliance.cold.panel]
slab = "walnut"
{limits}
[appliance.cold.second_panel]
slab = "walnut"
place = "{place}"
line = {line}
apart = "1/8"
{limits}
[case.left]
kind = "tall"
width = 11
divider = 54
[case.right]
kind = "tall"
width = 11
divider = 54
[run.wall]
cases = ["left", "cold", "right"]
[match.row]
cases = ["cold"{more}]
"""


def _two_panels(place: str, line: int, more: str = "") -> list[Match]:
    text = _TWO.format(limits=_LIMITS, place=place, line=line, more=more)
    spec = read(HEAD + _GOODS.format(grain="length") + text)
    broken = break_down(build(spec, spec.file_facts), stop=Stop(3_000))
    assert not [f for f in broken.findings if f.rule in ("nothing to match", "grain breaks")]
    return [match for plan in broken.plans for match in plan.problem.matches]


def test_the_grain_runs_on_through_both_panels_of_two_doors() -> None:
    """Of two over one another from the lower one up; of two side by side from left to right.

    So hang the fronts of one case: doors side by side, drawers in line above them.
    """
    lower, upper = "appliance.cold.second_panel.front.slab", "appliance.cold.panel.front.slab"
    [match] = _two_panels("below", 34)
    assert (match.way, match.parts) == ("along", (lower, upper))
    [match] = _two_panels("right", 18)
    assert (match.way, match.parts) == ("across", (upper, lower))
    [match] = _two_panels("below", 34, ', "right"')
    assert match.way == "across"
    assert match.parts[:2] == (lower, upper)
    assert all(path.startswith("right.") for path in match.parts[2:])


def test_a_match_is_cut_when_all_of_it_can_be() -> None:
    """While the panel waits for its appliance's sheet its neighbours do: one piece gives all."""
    broken = _with_panel("")
    assert not [plan for plan in broken.plans if plan.stock == "walnut"]
    waits = {entry.part: entry.questions for entry in broken.waiting}
    assert len(waits) == 3
    assert len(set(waits.values())) == 1
    (plan,) = (plan for plan in broken.wanted if plan.stock == "walnut")
    assert [len(match.parts) for match in plan.problem.matches] == [3]


_OAK = """
[stock.oak]
kind = "sheet"
title = "oak plywood"
size = ["96", "48"]
thickness = "3/4"
measured = "23/32"
grain = "length"
"""


def test_fronts_of_other_goods_in_a_match_are_told() -> None:
    cases = _CASES.replace('width = "18"', 'width = "18"\nfront = { slab = "oak" }')
    spec = read(
        HEAD
        + _GOODS.format(grain="length")
        + _OAK
        + cases
        + '[match.row]\ncases = ["a", "b", "c"]\n'
    )
    broken = break_down(build(spec, spec.file_facts), stop=Stop(3_000))
    (told,) = (finding for finding in broken.findings if finding.rule == "nothing to match")
    assert told.path == "b"
    assert "oak plywood" in told.says


@pytest.mark.parametrize(
    ("cases", "says"),
    [('["a", "a"]', "in match row already"), ('["a", "d"]', "there is no case d")],
)
def test_a_match_of_cases_that_cannot_be(cases: str, says: str) -> None:
    text = HEAD + _GOODS.format(grain="length") + _CASES + f"[match.row]\ncases = {cases}\n"
    assert says in str(problem(text))
