"""Trims across a diagonal corner: two corners of 135 degrees, mitred at 22 1/2.

Lengths by plane geometry, worked here with the root of 2 as a float: where two lines off a face
cross, and tan 22 1/2 = sqrt(2) - 1 for what lies behind or before it. Settings of the crown are
those of the printed table (REF-D08, tests/handbook).
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.builders import INCH, Unit, length
from tests.jobs import problems, read

from casewright.buying.wall import wall_goods
from casewright.casework.parts import Part
from casewright.dims import Dim
from casewright.job.worked import WorkedJob, work_out
from casewright.room.model import Room, Run
from casewright.room.proof import prove_run
from casewright.room.trims.bend_proof import bend_failures
from casewright.room.trims.model import Trim, TrimPiece

JOB = """format = 1
unit = "{unit}"
[style]
cut_step = "{step}"
wall_bottom = "{low}"
[stock.plywood]
measured = "{ply}"
[stock.board]
measured = "{ply}"
[stock.fibreboard]
measured = "{door}"
[stock.crown]
kind = "board"
thickness = "{crown}"
width = "{crown_wide}"
lengths = ["{bar}"]
[wall.one]
width = "{wall}"
[wall.two]
width = "{wall}"
[corner.far]
walls = [{walls}]
[case.corner]
kind = "{kind}"
width = "{leg}"
depth = "{deep}"
diagonal = "{hand}"
[case.own]
kind = "{kind}"
depth = "{deep}"
[case.round]
kind = "{kind}"
depth = "{deep}"
[run.own]
cases = [{own}]
on = "one"
{trims_own}
[run.round]
cases = ["round"]
on = "two"
{back} = "corner"
{trims_round}
"""
UPPER = """light_rail = true
[run.{key}.crown]
moulding = "crown"
drop = "{drop}"
projection = "{out}"
to_ceiling = false
"""
WORKED: dict[Unit, dict[str, str]] = {
    "in": {"leg": "24", "deep": "12 1/4", "ply": "3/4", "door": "3/4", "wall": "54",
           "crown": "11/16", "crown_wide": "3 5/8", "bar": "144", "low": "54"},
    "mm": {"leg": "610", "deep": "330", "ply": "19", "door": "19", "wall": "1400",
           "crown": "18", "crown_wide": "92", "bar": "3600", "low": "1370"},
}  # fmt: skip
FINE: dict[Unit, str] = {"in": "1/64", "mm": "0.1"}
TAN = math.sqrt(2) - 1


def text(unit: Unit, hand: str, kind: str = "wall", step: str = "", **by: str) -> str:
    """The job file of a corner with a run on either side of it."""
    at = WORKED[unit] | {"drop": "2 7/8" if unit == "in" else "73",
                         "out": "2 1/4" if unit == "in" else "57"} | by  # fmt: skip
    trims = "toe_skin = true\n" if kind == "base" else UPPER
    left, step = hand == "left", step or FINE[unit]
    return JOB.format(
        unit=unit, hand=hand, kind=kind, step=step, back="right" if left else "left",
        walls='"two", "one"' if left else '"one", "two"',
        own='"corner", "own"' if left else '"own", "corner"',
        trims_own=trims.format(key="own", **at), trims_round=trims.format(key="round", **at),
        **at,
    )  # fmt: skip


def worked(unit: Unit, hand: str, kind: str = "wall", step: str = "", **by: str) -> WorkedJob:
    """The job; nothing fails in it."""
    found = work_out(read(text(unit, hand, kind, step, **by)))
    assert found.failures == ()
    return found


def pieces(found: WorkedJob, kind: str) -> dict[str, TrimPiece]:
    """The piece across, and the one beside it of either run."""
    runs = {run.spec.key: run for run in found.room.runs}
    own, beside = (
        next(trim for trim in runs[key].trims if trim.kind == kind) for key in ("own", "round")
    )
    hand = next(c.mouth.corner for c in found.room.cases if c.mouth is not None)
    near, far = (0, -1) if hand == "left" else (-1, 0)
    return {"across": own.across[0], "own": own.along[near], "round": beside.along[far]}


@pytest.mark.parametrize("hand", ["left", "right"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_long_points_across_an_upper(unit: Unit, hand: str) -> None:
    """Rail flush with the face; frieze on it; crown on that; backing behind it.

    Each is on the grid: what is read, and what it goes past that at either end, are rounded up.
    """
    found = worked(unit, hand)
    scale = float(INCH) if unit == "in" else 1.0
    at = {key: float(length(value, "mm")) for key, value in WORKED[unit].items()}
    face = (at["leg"] - at["deep"]) * math.sqrt(2)
    wanted = {
        "light rail": face + 2 * at["ply"] * TAN,
        "backing": face + 2 * at["ply"] * TAN,
        "frieze": face,
        "crown": face - 2 * at["door"] * TAN,
    }
    for kind, long in wanted.items():
        part = pieces(found, kind)["across"].part
        made = float(part.finished.length.value) / scale
        assert 0 <= made - long + 1e-4 < 3 * float(length(FINE[unit], "mm")), kind


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_long_points_across_a_base(unit: Unit) -> None:
    """The skin lies on a toe board from notch to notch: (A - d + s) sqrt(2), to the grid."""
    by = {"leg": "36", "deep": "23 1/4"} if unit == "in" else {"leg": "900", "deep": "580"}
    found = worked(unit, "right", "base", **by)
    scale = float(INCH) if unit == "in" else 1.0
    back = float(found.room.spec.style["toe_setback"].value) / scale
    long = (float(length(by["leg"], "mm")) - float(length(by["deep"], "mm")) + back) * math.sqrt(2)
    part = pieces(found, "toe skin")["across"].part
    made = float(part.finished.length.value) / scale
    step = float(length(FINE[unit], "mm"))
    assert -2 * step <= made - long < step


def test_each_of_four_ends_is_cut_alike() -> None:
    """Strips at 22.5 without bevel; the crown by the table of its spring."""
    found = worked("in", "left", drop="2 55/64", out="2 15/64")
    for kind, setting in (("light rail", (225, 0)), ("frieze", (225, 0)), ("crown", (143, 176))):
        each = pieces(found, kind)
        hand_own, hand_far = each["own"].left, each["round"].right
        for cut in (each["across"].left, each["across"].right, hand_own, hand_far):
            assert cut.corner == 1350, kind
            assert cut.setting is not None
            assert (cut.setting.mitre, cut.setting.bevel) == setting, kind
            assert not cut.is_read


def test_corners_that_were_read_set_the_saw() -> None:
    """Each joint by its own reading; the piece across has one of either run at its ends."""
    told = text("in", "right").replace(
        "[run.own.crown]", "[run.own.crown]\nright_corner = 134"
    ).replace("[run.round.crown]", "[run.round.crown]\nleft_corner = 136.5")  # fmt: skip
    each = pieces(work_out(read(told)), "crown")
    assert (each["across"].left.corner, each["across"].right.corner) == (1340, 1365)
    assert (each["own"].right.corner, each["round"].left.corner) == (1340, 1365)


def test_the_length_across_is_a_question_until_it_is_read() -> None:
    """Frieze, backing and crown follow one reading; the rail has its own."""
    found = worked("in", "left", step="1/32")
    waiting = {question.path: question.waiting for question in found.questions}
    assert set(waiting["run.own.crown.across_left"]) == {
        "run.own.crown.left_across", "run.own.crown.frieze_board.left_across",
        "run.own.crown.backing.left_across",
    }  # fmt: skip
    told = text("in", "left", step="1/32").replace(
        "[run.own.crown]", '[run.own.crown]\nleft_across = "16 1/16"'
    )
    read_one = work_out(read(told))
    assert "run.own.crown.across_left" not in {question.path for question in read_one.questions}
    part = pieces(read_one, "crown")["across"].part
    assert part.finished.length.value == length("16 1/16")


@settings(max_examples=12, deadline=None)
@given(
    unit=st.sampled_from(("in", "mm")), hand=st.sampled_from(("left", "right")),
    kind=st.sampled_from(("wall", "base")), more=st.integers(14 * 32, 22 * 32),
    deep=st.integers(13, 24), ply=st.sampled_from((("3/4", "19"), ("45/64", "18.2"))),
)  # fmt: skip
def test_trims_close_at_any_corner(
    unit: Unit, hand: str, kind: str, more: int, deep: int, ply: tuple[str, str]
) -> None:
    """Over legs, depths and sheets, both hands, on the cutting grid."""
    per = Fraction(1) if unit == "in" else Fraction(25)
    worked(
        unit, hand, kind, "1/32" if unit == "in" else "1/2",
        leg=str((deep + Fraction(more, 32)) * per), deep=str(deep * per), wall=str(78 * per),
        ply=ply[0 if unit == "in" else 1],
    )  # fmt: skip


def _off(dim: Dim) -> Dim:
    return Dim("", (), dim.value + length("1/16"))


def _wrong(part: Part) -> Iterator[Part]:
    """The piece longer, or moved along each axis."""
    yield replace(part, finished=replace(part.finished, length=_off(part.finished.length)))
    for axis in ("x", "y", "z"):
        moved: dict[str, Any] = {axis: _off(getattr(part.placed, axis))}
        yield replace(part, placed=replace(part.placed, **moved))


def _with(room: Room, run: Run, one: Trim, number: int, part: Part) -> Room:
    changed = list(one.pieces)
    changed[number] = replace(changed[number], part=part)
    trims = tuple(replace(t, pieces=tuple(changed)) if t is one else t for t in run.trims)
    return replace(room, runs=tuple(replace(r, trims=trims) if r is run else r for r in room.runs))


@pytest.mark.parametrize("kind", ["wall", "base"])
def test_what_is_off_by_a_sixteenth_is_caught(kind: str) -> None:
    """Every piece of every trim, its length and its place, by the proof of its run or the bend."""
    by = {"leg": "36", "deep": "23 1/4"} if kind == "base" else {}
    room, grid = worked("in", "right", kind, "1/32", **by).room, length("1/32")
    for run in room.runs:
        for one in run.trims:
            for number, piece in enumerate(one.pieces):
                for part in _wrong(piece.part):
                    wrong = _with(room, run, one, number, part)
                    runs = [prove_run(r, spacing=length("24"), grid=grid) for r in wrong.runs]
                    told = [*bend_failures(wrong, grid), *(f for p in runs for f in p.failures)]
                    assert told, (part.path, part.finished.length.value, part.placed.x.value)


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("light_rail = true\n[run.round", "[run.round", "goes on along run round, which has none"),
        ('["own", "corner"]', '["corner"]', "no case of run own stands beside corner"),
        ('left = "corner"', 'left = "wall"', "no run stands round the corner"),
        ('[case.round]\nkind = "wall"\ndepth = "12 1/4"',
         '[case.round]\nkind = "wall"\ndepth = 13', "differ in depth"),
        ("to_ceiling = false", "to_ceiling = false\nfrieze = 2", "write the same frieze"),
        ('drop = "2 7/8"', "drop = 3", "write the same drop"),
    ],
)  # fmt: skip
def test_trims_that_would_end_at_the_corner_are_refused(old: str, new: str, says: str) -> None:
    """Each told in its line, with what would be right."""
    told = text("in", "right").replace("[case.own]", "[case.own]\nwidth = 20")
    assert old in told
    assert any(says in str(problem) for problem in problems(told.replace(old, new, 1)))


@pytest.mark.parametrize(("kind", "of"), [("base", "toe_skin"), ("wall", "light_rail")])
def test_strips_that_turn_ask_for_a_mitre_saw(kind: str, of: str) -> None:
    """A shop without one is told what would do; one that has it is told nothing."""
    by = {"leg": "36", "deep": "23 1/4"} if kind == "base" else {}
    plain = text("in", "left", kind, **by)
    tools = '[shop]\ntools = ["table saw", "mitre saw", "pocket-hole jig", "pin jig"]\n'
    for told, paths in ((plain, {f"run.own.{of}", f"run.round.{of}"}), (plain + tools, set())):
        found = work_out(read(told)).findings
        assert {f.path for f in found if f.rule == "no mitre saw"} - {
            "run.own.crown", "run.round.crown"
        } == paths  # fmt: skip


def test_screws_join_the_corner_to_both_runs_and_their_plinths() -> None:
    """Four where two sides stand together, across the corner too, and four for each two plinths.

    Source: common practice.
    """
    plain = text("in", "right", "base", leg="36", deep="23 1/4")
    for toe, plinths in (("notch", []), ("plinth", [8])):
        told = plain.replace('kind = "base"', f'kind = "base"\ntoe = "{toe}"')
        lines = list(wall_goods(work_out(read(told)).room))
        assert [line.need for line in lines if line.what.startswith("joining screw")] == [8]
        assert [line.need for line in lines if line.what.startswith("plinth screw")] == plinths


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_what_is_planned_across_a_face_lies_on_the_grid(unit: Unit) -> None:
    """With odd readings, too: roots would leave sizes that no whole step of a cut plan divides."""
    job = text(unit, "left", ply="0.709" if unit == "in" else "18.03")
    room = work_out(read(job)).room
    step = room.spec.style["cut_step"].value
    across = [
        dim
        for run in room.runs
        for trim in run.trims
        for dim in trim.open_lengths
        if "across" in dim.path
    ]
    assert across
    assert all(dim.value % step == 0 for dim in across)
