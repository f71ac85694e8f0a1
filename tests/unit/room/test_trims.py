"""Trims: planned with the run, asked for until it stands, cut to what was read."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.builders import Unit, length
from tests.jobs import problems, read

from casewright.breakdown import break_down
from casewright.casework.parts import Part
from casewright.cutting.engine import Stop
from casewright.dims import Dim, Origin, slack
from casewright.facts import Fact
from casewright.findings import Severity
from casewright.job.worked import WorkedJob, work_out
from casewright.room.model import Run
from casewright.room.on_walls import cases_on_walls
from casewright.room.proof import prove_run
from casewright.room.simulation import chance_outside
from casewright.room.trims.model import Trim, TrimPiece

UPPERS = """format = 1
unit = "in"
[stock.crown]
kind = "board"
thickness = "11/16"
width = "3 5/8"
lengths = [96, 144]
[wall.w]
width = [100, "100 1/4", "100 1/8"]
stations = [{ along = 10, down = 40, up = 56 }, { along = 90, down = "40 3/8", up = "55 5/8" }]
studs = [16, 32, 48, 64, 80]
[case.a]
kind = "wall"
[case.b]
kind = "wall"
[run.up]
cases = ["a", "b"]
on = "w"
left = "open"
light_rail = true
scribe_moulding = { ends = "left" }
[run.up.crown]
moulding = "crown"
drop = "2 7/8"
projection = "2 1/4"
sets_height = true
"""
LOW = """format = 1
unit = "in"
[case.a]
kind = "base"
[case.b]
kind = "base"
[run.low]
cases = ["a", "b"]
wall = ["60", "60 1/8"]
toe_skin = true
"""


def worked(text: str) -> WorkedJob:
    """The job of a text; nothing fails in it."""
    found = work_out(read(text))
    assert found.failures == ()
    return found


def trim(found: WorkedJob, kind: str) -> Trim:
    """The one trim of that kind."""
    (one,) = (each for run in found.room.runs for each in run.trims if each.kind == kind)
    return one


def sizes(one: Trim) -> list[Fraction]:
    """Lengths of its pieces [mm]."""
    return [part.finished.length.value for part in one.parts]


@pytest.mark.parametrize(
    ("unit", "sizes_of", "height", "air", "top"),
    [
        ("in", ("96", "3/8", "54", "3 5/8", "7/8"), "37 1/8", "4 1/2", "91 1/8"),
        ("mm", ("2440", "10", "1374", "92", "22"), "942", "114", "2316"),
    ],
)
def test_uppers_reach_from_the_counter_to_the_crown(
    unit: Unit, sizes_of: tuple[str, ...], height: str, air: str, top: str
) -> None:
    """Ceiling less its dip, crown, frieze, counter and gap. Source: TALLCROWN, both units."""
    ceiling, low, bottom, drop, frieze = sizes_of
    up = (length(ceiling, unit) - length(low, unit)) / (length("1", unit))
    text = (
        f'format = 1\nunit = "{unit}"\n[style]\nwall_bottom = "{bottom}"\n'
        f'[stock.crown]\nkind = "board"\nthickness = "{"3/4" if unit == "in" else "18"}"\n'
        f'width = "{"5" if unit == "in" else "120"}"\n'
        f'lengths = ["{"96" if unit == "in" else "2400"}"]\n'
        f'[wall.w]\nwidth = "{"40" if unit == "in" else "1000"}"\n'
        f'stations = [{{ along = 0, whole = "{ceiling}" }}, {{ along = 1, whole = "{up}" }}]\n'
        '[case.a]\nkind = "wall"\n[run.r]\ncases = ["a"]\non = "w"\n'
        f'[run.r.crown]\nmoulding = "crown"\ndrop = "{drop}"\nprojection = "{drop}"\n'
        f'frieze = "{frieze}"\nsets_height = true\n'
    )
    found = worked(text)
    [case] = found.room.cases
    nodes = found.room.chain.nodes
    assert case.height.value == length(height, unit)
    assert nodes["run.r.crown.frieze"].value == length(frieze, unit)
    over = nodes["run.r.crown.frieze"].value + nodes["run.r.crown.drop"].value
    assert over == length(air, unit)
    [place] = cases_on_walls(found.room)
    assert place.top == length(top, unit)
    assert case.spec.height.value == case.height.value


def test_long_points_of_a_crown_with_two_returns() -> None:
    """A run of 2440 with two returns of 76: 2592; 330 and 19 and 76: 425.

    Source: worked example of the trade (crown).
    """
    text = (
        'format = 1\nunit = "mm"\n[style]\nwall_depth = 330\n[stock.fibreboard]\nthickness = 19\n'
        '[stock.crown]\nkind = "board"\nthickness = 18\nwidth = 110\nlengths = [3000]\n'
        '[case.a]\nkind = "wall"\nwidth = 1220\n[case.b]\nkind = "wall"\nwidth = 1220\n'
        '[run.r]\ncases = ["a", "b"]\n'
        '[run.r.crown]\nmoulding = "crown"\ndrop = 76\nprojection = 76\nas_built = 2440\n'
    )
    found = worked(text)
    assert sizes(trim(found, "crown")) == [425, 2592, 425]
    one = trim(found, "crown")
    assert one.spring is not None
    assert one.spring.tenths == 450
    cuts = [cut for piece in one.pieces for cut in (piece.left, piece.right) if cut.setting]
    assert [cut.setting.mitre for cut in cuts if cut.setting] == [353] * 4


def test_a_trim_is_a_question_until_the_run_stands_then_a_number() -> None:
    """Kept off the cut plans, bought all the same; the reading releases it."""
    found = worked(LOW)
    asked = [q for q in found.questions if q.path == "run.low.toe_skin.along"]
    assert [q.waiting for q in asked] == [("run.low.toe_skin.piece",)]
    cut = break_down(found.room, stop=Stop(nodes=200))
    assert not any(p for plan in cut.plans for p in plan.pieces if "toe_skin" in p)
    assert any(p for plan in cut.wanted for p in plan.pieces if "toe_skin" in p)
    done = worked(LOW.replace("toe_skin = true", 'toe_skin = { as_built = "59 7/8" }'))
    assert not [q for q in done.questions if "toe_skin" in q.path]
    # Sprung in between two walls: 1/16 more than was read (common practice).
    assert sizes(trim(done, "toe skin")) == [length("59 15/16")]


def test_a_reading_of_one_end_leaves_the_others_open() -> None:
    """The front of the crown was read, its return not: only that waits."""
    found = worked(UPPERS.replace("sets_height", 'as_built = "87 3/8"\nsets_height'))
    waiting = {q.path: q.waiting for q in found.questions}
    assert "run.up.crown.along" not in waiting
    assert waiting["run.up.crown.return_left"] == ("run.up.crown.left_return",)


def _parts(run: Run) -> Iterator[tuple[Trim, int, Part]]:
    for one in run.trims:
        for number, piece in enumerate(one.pieces):
            yield one, number, piece.part


def _off(dim: Dim) -> Dim:
    return Dim("", (), dim.value + length("1/16"))


def _changed(run: Run, one: Trim, number: int, part: Part) -> Run:
    pieces = list(one.pieces)
    pieces[number] = TrimPiece(part, pieces[number].left, pieces[number].right)
    other = replace(one, pieces=tuple(pieces))
    return replace(run, trims=tuple(other if each is one else each for each in run.trims))


def _says(run: Run) -> tuple[str, ...]:
    found = prove_run(run, spacing=length("24"), grid=length("1/32"))
    return tuple(failure.says for failure in found.failures)


@pytest.mark.parametrize("text", [UPPERS, LOW], ids=["uppers", "base"])
def test_what_is_off_by_a_sixteenth_is_caught(text: str) -> None:
    """Every piece moved along each axis, or cut longer; a scribe moulding is trimmed in place."""
    for run in worked(text).room.runs:
        for one, number, part in _parts(run):
            longer = replace(part.finished, length=_off(part.finished.length))
            told = _says(_changed(run, one, number, replace(part, finished=longer)))
            assert bool(told) == (one.kind != "scribe moulding"), part.path
            for axis in ("x", "y", "z"):
                moved: dict[str, Any] = {axis: _off(getattr(part.placed, axis))}
                wrong = replace(part, placed=replace(part.placed, **moved))
                told = _says(_changed(run, one, number, wrong))
                assert told, (part.path, axis)


@settings(max_examples=10, deadline=None)
@given(
    st.integers(40 * 16, 190 * 16), st.booleans(), st.booleans(),
    st.sampled_from(["1/2", "23/32", "3/4"]),
)  # fmt: skip
def test_the_pieces_of_every_trim_sum_to_the_run(
    wide: int, left: bool, right: bool, thick: str
) -> None:
    """Less laps and what goes round corners, whatever its length, its ends and its board."""
    ends = "".join(
        f'{side} = "{"open" if free else "wall"}"\n'
        for side, free in (("left", left), ("right", right))
    )
    text = UPPERS.replace('width = [100, "100 1/4", "100 1/8"]', f'width = "{wide}/16"')
    text = text.replace("along = 90", "along = 20").replace(", 48, 64, 80]", "]")
    text = text.replace('left = "open"\n', ends)
    text = text.replace('scribe_moulding = { ends = "left" }\n', "")
    text = text.replace("[stock.crown]", f'[stock.plywood]\nthickness = "{thick}"\n[stock.crown]')
    found = worked(text)
    [run] = found.room.runs
    for one in run.trims:
        front = [p for p in one.pieces if p.part.placed.orientation.length.axis == 0]
        laps = sum(p.part.finished.thickness.value for p in front if p.right.kind == "scarf")
        over = sum(
            found.room.chain.nodes["run.up.crown.projection"].value
            for cut in (front[0].left, front[-1].right)
            if one.kind == "crown" and cut.turns
        )
        longest = length("144" if one.kind in ("crown", "light rail") else "96")
        assert max(sizes(one)) <= longest, one.path
        whole = sum(p.part.finished.length.value for p in front)
        assert whole - laps - over == one.open_lengths[0].value, one.path
        returns = len(one.pieces) - len(front)
        assert returns == (left + right if one.kind != "frieze" else 0)


def test_what_cannot_be_fitted_is_told_where_it_stands() -> None:
    """A skin on wall cases, a crown over cases of two heights, stock that is not there."""
    told = problems(
        'format = 1\nunit = "in"\n[case.a]\nkind = "wall"\nwidth = 20\nheight = 30\n'
        '[case.b]\nkind = "wall"\nwidth = 20\nheight = 32\n'
        '[run.r]\ncases = ["a", "b"]\ntoe_skin = true\n'
        'scribe_moulding = { ends = "left" }\nleft_gap = [1, 1, 1]\n'
        '[run.r.crown]\nmoulding = "cornice"\ndrop = 3\nprojection = 2\n'
    )
    says = " ".join(each.what for each in told)
    for words in ("takes no toe skin", "differ in height", "no stock cornice", "it is open"):
        assert words in says, says


def test_a_crown_that_goes_lower_than_the_ceiling_leaves_stops() -> None:
    """Cases 40 high from 54 under 95 5/8 leave 1 5/8; with the least that helps."""
    text = UPPERS.replace("sets_height = true", "")
    text = text.replace('kind = "wall"\n', 'kind = "wall"\nheight = 40\n')
    found = work_out(read(text)).findings
    (stop,) = (f for f in found if f.rule == "crown too high")
    assert stop.severity is Severity.STOP
    assert stop.remedies[0] == 'make the cases 1 1/4" lower'


def test_that_a_crown_finds_room_is_forecast() -> None:
    """With the ceiling read by tape and cases that stray, a frieze of 7/8 is hardly used up."""
    room = worked(UPPERS).room
    fit = room.chain.fits["run.up.crown.frieze_left"]
    forecast = slack(fit.gap)
    assert {term.cause.key for term in forecast.terms} & {
        "survey.wall.w.station_2.up", "survey.wall.w.station_1.down",
    }  # fmt: skip
    assert chance_outside(fit.gap, fit.low, fit.high) < 0.001


CORNER = """format = 1
unit = "in"
[stock.crown]
kind = "board"
thickness = "11/16"
width = "3 5/8"
lengths = [144]
[stock.plywood]
thickness = "{thick}"
[wall.a]
width = 60
[wall.b]
width = 60
[corner.c]
walls = ["a", "b"]
triangle = {{ left = 36, right = 48, across = "{across}/16" }}
[case.into]
kind = "wall"
height = 30
width = "{wide}"
front = "none"
[case.out]
kind = "wall"
height = 30
width = 20
[run.into]
cases = ["into"]
on = "{first}"
{far} = "open"
[run.out]
cases = ["out"]
on = "{second}"
{near} = "corner"
{other} = "open"
[run.into.crown]
moulding = "crown"
drop = "{drop}"
projection = "2 1/4"
inside = "{inside}"
[run.out.crown]
moulding = "crown"
drop = "{drop}"
projection = "2 1/4"
inside = "{inside}"
"""


@settings(max_examples=8, deadline=None)
@given(
    st.booleans(), st.integers(59 * 16, 61 * 16), st.sampled_from(["coped", "mitred"]),
    st.sampled_from(["1/2", "23/32", "3/4"]), st.sampled_from(["2 7/8", "2", "3 1/2"]),
)  # fmt: skip
def test_crowns_meet_in_a_corner_at_either_hand(
    mirrored: bool, across: int, inside: str, thick: str, drop: str
) -> None:
    """One goes through and the other is coped, or both are mitred; both end at one line.

    The faces that they run along end where they cross: each as far from the corner of the room
    as the other stands out from its wall (plane geometry, a square corner).
    """
    far, near = ("right", "left") if mirrored else ("left", "right")
    text = CORNER.format(
        first="b" if mirrored else "a", second="a" if mirrored else "b", far=far,
        near="right" if mirrored else "left", other=near if not mirrored else "left",
        across=across, inside=inside, thick=thick, drop=drop, wide="59 1/2",
    )  # fmt: skip
    found = worked(text)
    runs = {run.spec.key: run for run in found.room.runs}
    crowns = {key: next(t for t in run.trims if t.kind == "crown") for key, run in runs.items()}
    planes = {key: found.room.chain.nodes[f"run.{key}.crown.plane"].value for key in runs}
    for key, other in (("into", "out"), ("out", "into")):
        start = crowns[key].start
        assert start is not None
        at_left = (key == "out") != mirrored
        edge = start.value if at_left else (
            runs[key].length.value - start.value - crowns[key].open_lengths[0].value
        )  # fmt: skip
        assert edge == planes[other]
    cuts = {key: [c for p in t.pieces for c in (p.left, p.right)] for key, t in crowns.items()}
    kinds = {key: {cut.kind for cut in each} for key, each in cuts.items()}
    if inside == "coped":
        assert "cope" in kinds["out"]
        assert kinds["into"] == {"square", "outside mitre"}
    else:
        assert all("inside mitre" in each for each in kinds.values())
    [angle] = {
        cut.corner for each in cuts.values() for cut in each
        if cut.kind in ("cope", "inside mitre")
    }  # fmt: skip
    assert angle is not None
    cosine = (36**2 + 48**2 - (across / 16) ** 2) / (2 * 36 * 48)
    assert abs(angle / 10 - math.degrees(math.acos(cosine))) <= 0.0501


def test_a_piece_cut_too_short_for_what_was_read_is_told() -> None:
    """Sawn a quarter short: named with what is lacking; sawn long it is only trimmed."""
    text = LOW.replace("toe_skin = true", 'toe_skin = { as_built = "59 7/8" }')
    path = "run.low.toe_skin.piece"
    for cut, lacks in (("59 11/16", True), ("60", False)):
        fact = Fact(Origin("measured", "tape"), cut=length(cut))
        found = work_out(read(text), {f"{path}.length": fact}).findings
        short = [f for f in found if f.rule == "fit band" and f.path == f"{path}.left_to_trim"]
        assert bool(short) == lacks, cut


def test_corners_ask_for_a_mitre_saw() -> None:
    """A shop without one is told what would do; with one, or without a corner, nothing is said."""
    tools = '"table saw", "mitre saw", "pocket-hole jig", "pin jig", "hinge jig"'
    owned = f"[shop]\ntools = [{tools}]\n"
    for text, told in (
        (UPPERS, True),
        (UPPERS.replace("[wall.w]", owned + "[wall.w]"), False),
        (UPPERS.replace('left = "open"\n', "").replace(
            'scribe_moulding = { ends = "left" }\n', ""), False),
    ):  # fmt: skip
        rules = {f.rule for f in work_out(read(text)).findings}
        assert ("no mitre saw" in rules) == told
