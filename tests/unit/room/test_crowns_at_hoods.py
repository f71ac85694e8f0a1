"""A crown at a hood between wall cases: into its sides, round it, or on over it."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.builders import length
from tests.jobs import problem, problems, read
from tests.perturbation import moved

from casewright.casework.parts import Part, PlacedAt
from casewright.findings import Severity
from casewright.job.worked import WorkedJob, work_out
from casewright.packet.trim_steps import trim_steps
from casewright.room.model import Run
from casewright.room.trims.beside_proof import beside_failures
from casewright.room.trims.proof import trim_failures

_HOODED = """format = 1
unit = "in"
[appliance.top]
width = 30
cooks = true
clear_above = 30
[appliance.liner]
width = "28 3/8"
height = 10
depth = "11 1/4"
above_cooking = 27
duct = 6
duct_back = 7
[case.a]
kind = "wall"
width = 30
height = 37
[case.b]
kind = "wall"
width = 24
height = 37
[case.h]
kind = "hood"
appliance = "liner"
over = "top"
width = 36
height = {high}
depth = {deep}
[case.c]
kind = "base"
width = 30
[run.low]
cases = ["c", "top"]
[run.up]
cases = ["a", "h", "b"]
[run.up.crown]
moulding = "crown"
drop = "2 7/8"
projection = "2 1/4"
{more}
[stock.crown]
kind = "board"
title = "crown moulding"
thickness = "5/8"
width = "3 5/8"
lengths = [96, 144]
"""


def _hooded(high: int = 42, deep: int = 18, more: str = "") -> WorkedJob:
    return work_out(read(_HOODED.format(high=high, deep=deep, more=more)))


def test_a_crown_dies_into_the_sides_of_a_hood() -> None:
    """Each piece is as long as the cases beside the hood, and p longer where it returns.

    Long point = run + p at each end that returns; an end against something adds none (`CROWN`).
    """
    found = _hooded()
    assert found.failures == ()
    run = next(each for each in found.room.runs if each.spec.key == "up")
    crowns = [each for each in run.trims if each.kind == "crown"]
    assert [each.path for each in crowns] == ["run.up.crown", "run.up.crown_2"]
    for crown, case, end in zip(crowns, ("a", "b"), ("right", "left"), strict=True):
        [piece] = crown.along
        wide = next(each.overall_width.value for each in run.cases if each.key == case)
        assert piece.part.finished.length.value == wide + length("2 1/4")
        assert getattr(piece, end).kind == "square"
    low, high = (each.along[0].part for each in crowns)
    hood = run.starts[1].value
    assert low.placed.x.value + low.finished.length.value == hood
    assert high.placed.x.value == hood + run.cases[1].overall_width.value
    told = [step for crown in crowns for step in trim_steps(found.room, run, crown)]
    assert any("end square" in str(step.text) for step in told)


def test_a_piece_that_stands_off_the_hood_is_caught() -> None:
    """Every trim of the run moved a sixteenth toward the hood, or away from it."""
    run = next(each for each in _hooded().room.runs if each.spec.key == "up")
    for number, each in enumerate(run.trims):
        for by in (length("1/16"), -length("1/16")):
            pieces = tuple(
                replace(p, part=replace(p.part, placed=replace(p.part.placed,
                                                               x=moved(p.part.placed.x, by))))
                for p in each.pieces
            )  # fmt: skip
            trims = (*run.trims[:number], replace(each, pieces=pieces), *run.trims[number + 1 :])
            assert list(trim_failures(replace(run, trims=trims))), (each.path, by)


@pytest.mark.parametrize(
    ("high", "deep", "ways"),
    [
        (42, 13, ('h 2" deeper',)),
        (40, 18, ('h 2" higher', 'h 7/8" lower: the crown goes round it')),
        (37, 11, ('h 1" deeper',)),
    ],
)
def test_a_hood_that_a_crown_can_neither_end_at_nor_go_round_stops_with_what_is_lacking(
    high: int, deep: int, ways: tuple[str, ...]
) -> None:
    """The ceiling is at 96 in, wall cases hang at 54: 42 in to it, 39 1/8 to the crown's foot.

    Cases beside it are 12 deep, their doors 3/4 and the crown 2 1/4 out.
    """
    [told] = [f for f in _hooded(high, deep).findings if f.rule == "crown at a hood"]
    assert told.severity is Severity.STOP
    assert told.remedies == (*ways, "no crown on up")


def test_what_was_read_beside_a_hood_is_cut_to() -> None:
    """A length for each stretch from the left; more of them than there are is refused."""
    found = _hooded(more='as_built = ["29 7/8", "24 1/8"]')
    run = next(each for each in found.room.runs if each.spec.key == "up")
    pieces = [each.along[0].part for each in run.trims if each.kind == "crown"]
    more = length("2 1/4")
    read = [length("29 7/8") + more, length("24 1/8") + more]
    assert [part.finished.length.value for part in pieces] == read
    [told] = problems(_HOODED.format(high=42, deep=18, more="as_built = [29, 36, 24]"))
    assert "2 stretches" in str(told)


def _run(found: WorkedJob) -> Run:
    return next(each for each in found.room.runs if each.spec.key == "up")


_METRIC = {
    '"28 3/8"': "720", '"11 1/4"': "285", '"2 7/8"': "73", '"2 1/4"': "57", '"5/8"': "16",
    '"3 5/8"': "92", "[96, 144]": "[2400, 3600]", "= 36\n": "= 900\n", "= 37\n": "= 900\n",
    "= 30\n": "= 760\n", "= 24\n": "= 600\n", "= 18\n": "= 450\n", "= 10\n": "= 250\n",
    "= 27\n": "= 700\n", "= 6\n": "= 150\n", "= 7\n": "= 180\n", '"in"': '"mm"',
}  # fmt: skip


@pytest.mark.parametrize("unit", ["in", "mm"])
@pytest.mark.parametrize("inside", ["coped", "mitred"])
def test_a_crown_goes_round_a_hood_that_ends_below_its_foot(unit: str, inside: str) -> None:
    """p longer at each corner of the hood; returns from one face to the other, and p (`CROWN`).

    Long point = run + p at each corner that it turns; the crowns beside it end at its sides.
    """
    text = _HOODED.format(high=37, deep=18, more=f'inside = "{inside}"')
    for inch, metric in _METRIC.items() if unit == "mm" else ():
        text = text.replace(inch, metric)
    found = work_out(read(text))
    assert found.failures == ()
    assert not any(each.rule == "crown at a hood" for each in found.findings)
    run, out = _run(found), length("2 1/4") if unit == "in" else Fraction(57)
    left, hood, right = (each for each in run.trims if each.kind == "crown")
    assert hood.path == "run.up.crown_at_h"
    wide = run.cases[1].overall_width.value
    assert hood.along[0].part.finished.length.value == wide + 2 * out
    faces = [each.along[0].part.placed.z.value for each in (left, hood, right)]
    returns = [each for each in hood.pieces if each.rear is not None]
    step = faces[1] - faces[0]
    assert faces[0] == faces[2]
    assert [each.part.finished.length.value for each in returns] == [step + out] * 2
    kind = "cope" if inside == "coped" else "inside mitre"
    assert (left.along[-1].right.kind, right.along[0].left.kind) == (kind, kind)
    for trim, case in ((left, run.cases[0]), (right, run.cases[2])):
        assert trim.along[0].part.finished.length.value == case.overall_width.value + out
    told = " ".join(str(step.text) for step in trim_steps(found.room, run, left))
    assert "end square" not in told


def _off(part: Part, along: str) -> Part:
    placed = part.placed
    x, y, z = (
        moved(at, length("1/16") if name == along else Fraction(0))
        for name, at in zip("xyz", (placed.x, placed.y, placed.z), strict=True)
    )
    return replace(part, placed=PlacedAt(x, y, z, placed.orientation))


def test_a_piece_round_a_hood_that_is_off_is_caught() -> None:
    """Every trim of the run a sixteenth along the wall, up or out."""
    room = _hooded(37, more="[run.up.light_rail]").room
    run = next(each for each in room.runs if each.spec.key == "up")
    for number, each in enumerate(run.trims):
        for axis in "xyz":
            pieces = tuple(replace(p, part=_off(p.part, axis)) for p in each.pieces)
            trims = (*run.trims[:number], replace(each, pieces=pieces), *run.trims[number + 1 :])
            off = replace(run, trims=trims)
            runs = tuple(off if other is run else other for other in room.runs)
            caught = [*trim_failures(off), *beside_failures(replace(room, runs=runs))]
            assert caught, (each.path, axis)


def test_a_crown_goes_on_over_a_hood_in_line_with_the_cases_beside_it() -> None:
    """As deep and as high as they: one piece, without a joint that the board does not ask for."""
    run = _run(_hooded(37, 12))
    [crown] = [each for each in run.trims if each.kind == "crown"]
    [piece] = crown.along
    assert piece.part.finished.length.value == run.cases_end.value + 2 * length("2 1/4")


def test_what_was_read_round_a_hood_is_cut_to() -> None:
    """Its front between two corners, its returns from face to face; of no other case."""
    at = 'as_built = "35 15/16"\nleft_return = "6 1/16"\nright_corner = 89.5'
    found = _hooded(37, more=f"[run.up.crown.at.h]\n{at}")
    hood = next(each for each in _run(found).trims if each.path == "run.up.crown_at_h")
    left = next(each for each in hood.pieces if each.part.path.endswith("left_return"))
    assert left.part.finished.length.value == length("8 5/16")
    cut = hood.along[-1].right
    assert (cut.corner, cut.is_read, hood.along[0].left.is_read) == (895, True, False)
    asked = [each.how for each in found.questions if "run.up.crown_at_h" in each.path]
    assert asked == ['under [run.up.crown.at.h] write right_return = "..."']
    [told] = problems(_HOODED.format(high=37, deep=18, more="[run.up.crown.at.b]"))
    assert "no hood b" in str(told)


def test_a_light_rail_turns_back_on_either_side_of_a_hood() -> None:
    """Nothing covers its ends there: two rails, each mitred and returned at both of its ends."""
    rail = "[run.up.light_rail]\nas_built = [30, 24]\nat.h = {{ left_return = 12 }}"
    found = _hooded(37, more=rail.format())
    assert found.failures == ()
    run = _run(found)
    rails = [each for each in run.trims if each.kind == "light rail"]
    assert [each.path for each in rails] == ["run.up.light_rail", "run.up.light_rail_2"]
    for each, case in zip(rails, (run.cases[0], run.cases[2]), strict=True):
        [along] = each.along
        assert along.part.finished.length.value == case.overall_width.value
        assert (along.left.kind, along.right.kind) == ("outside mitre",) * 2
        assert len(each.pieces) == 3
    asked = [each.path for each in found.questions if "light_rail" in each.path]
    assert asked == [
        "run.up.light_rail.return_left", "run.up.light_rail_at_h.return_right",
        "run.up.light_rail.return_right",
    ]  # fmt: skip
    one = _HOODED.format(high=37, deep=18, more="[run.up.light_rail]\nas_built = 30")
    assert "2 stretches" in str(problems(one)[0])


def test_a_hood_alone_reaches_up_to_no_crown() -> None:
    """It has no height that a crown could set, and is not told to have one of its own."""
    text = _HOODED.format(high=42, deep=18, more="sets_height = true")
    told = problem(text.replace('cases = ["a", "h", "b"]', 'cases = ["h"]'))
    assert "a hood is as high as" in told.what


def _in_order(order: list[str], high: int, deep: int) -> WorkedJob:
    """The same with a second hood, 16 in deep, in some order."""
    text = _HOODED.format(high=high, deep=deep, more="[run.up.light_rail]" if "a" in order else "")
    liner = text[text.index("[appliance.liner]") : text.index("[case.a]")]
    hood = text[text.index("[case.h]") : text.index("[case.c]")].replace('"liner"', '"other"')
    hood = hood.replace("[case.h]", "[case.k]").replace(f"depth = {deep}", "depth = 16")
    text = text.replace("[case.a]", liner.replace(".liner", ".other") + "[case.a]", 1)
    text = text.replace("[case.c]", hood + "[case.c]")
    keys = ", ".join(f'"{key}"' for key in order)
    return work_out(read(text.replace('cases = ["a", "h", "b"]', f"cases = [{keys}]")))


@pytest.mark.parametrize("order", [["h", "a"], ["a", "h", "k", "b"], ["k", "h"], ["h"]])
@pytest.mark.parametrize(("high", "deep"), [(37, 18), (37, 16), (30, 12), (42, 18), (40, 18)])
def test_hoods_anywhere_in_a_run_go_together_or_stop(
    order: list[str], high: int, deep: int
) -> None:
    """At its end, beside one another, alone: what does not meet is a finding, never a defect."""
    assert _in_order(order, high, deep).failures == ()
