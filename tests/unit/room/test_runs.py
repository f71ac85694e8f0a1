"""Runs: shares, fillers, and what a reading changes."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given as examples
from hypothesis import strategies as st
from tests.builders import INCH, case_spec, given, job, plain_style

from casewright.dims import Origin, slack
from casewright.facts import Fact
from casewright.findings import Severity
from casewright.room.build import build
from casewright.room.model import Room
from casewright.room.specs import JobSpec, RunSpec


def _job(*walls: str, count: int = 3, filler: str = "1 5/8") -> JobSpec:
    keys = tuple(f"upper_{n}" for n in range(1, count + 1))
    run = RunSpec("sink_wall", "Sink wall", keys, tuple(given(w) for w in walls), "wall", "wall")
    cases = [case_spec(key=key, width=None, shelves=0) for key in keys]
    return job(*cases, runs=(run,), style=plain_style(filler=filler))


def _inches(room: Room, path: str) -> Fraction:
    return room.chain.nodes[path].value / INCH


def test_equal_cases_share_the_least_of_three_wall_readings() -> None:
    """102 1/4 is the least of three readings: three cases of 33 and two fillers of 1 5/8."""
    room = build(_job("102 3/8", "102 1/4", "102 1/2"))
    assert _inches(room, "run.sink_wall.wall") == Fraction(409, 4)
    assert [case.width.value / INCH for case in room.cases] == [33, 33, 33]
    assert _inches(room, "run.sink_wall.filler_space") == Fraction(13, 8)


def test_frames_on_finished_ends_take_their_place_from_the_shares() -> None:
    """A wall at the left, a dressed end of 3/4 at the right (by hand).

    67 7/8 less a filler of 1 5/8 and 3/4 leaves 65 1/2: two cases of 32 3/4.
    """
    run = RunSpec("wall", "Wall", ("a", "b"), (given("67 7/8"),), "wall", "open")
    cases = [
        case_spec(key="a", width=None, shelves=0),
        case_spec(key="b", width=None, shelves=0, finished=("right",)),
    ]
    room = build(job(*cases, runs=(run,), style=plain_style(filler="1 5/8")))
    assert [case.width.value / INCH for case in room.cases] == [Fraction(131, 4)] * 2
    assert room.cases[1].overall_width.value / INCH == Fraction(131, 4) + Fraction(3, 4)
    assert _inches(room, "run.wall.filler_space") == Fraction(13, 8)


def test_a_filler_is_cut_for_the_widest_gap_and_scribed_to_the_others() -> None:
    """Gaps of 1 7/8, 2 1/16 and 1 3/4 with 1/4 to scribe: cut 2 5/16 (worked by hand).

    Cases as wide as the least reading leaves; 5/16 of lean to scribe off.
    """
    run = RunSpec(
        "wall", "Wall", ("upper",),
        tuple(given(33 + Fraction(gap)) for gap in ("15/8", "33/16", "7/4")), "wall", "open",
    )  # fmt: skip
    case = case_spec(key="upper", width="33", shelves=0)
    room = build(job(case, runs=(run,), style=plain_style(scribe="1/4")))
    [filler] = room.runs[0].fillers
    assert filler.width.value / INCH == Fraction(7, 4)
    assert filler.part.blank.width.value / INCH == Fraction(37, 16)
    assert _inches(room, "run.wall.wall_spread") == Fraction(5, 16)


@examples(
    st.integers(60 * 64, 160 * 64), st.integers(1, 5), st.sampled_from(["1", "1 5/8", "7/8"])
)
def test_a_run_between_two_walls_closes_exactly(wall: int, count: int, filler: str) -> None:
    """Fillers and cases sum to the wall, whatever rounding left over."""
    room = build(_job(f"{Fraction(wall, 64)}", count=count, filler=filler))
    run = room.runs[0]
    fillers = sum((f.width.value for f in run.fillers), Fraction(0))
    cases = sum((c.overall_width.value for c in run.cases), Fraction(0))
    assert fillers + cases == Fraction(wall, 64) * INCH
    assert run.length.value == Fraction(wall, 64) * INCH
    assert all(c.width.value == run.cases[0].width.value for c in run.cases)


def test_a_filler_is_cut_wide_enough_to_scribe() -> None:
    """The piece is the space plus the scribe allowance, never less (common practice)."""
    room = build(_job("102 5/32"))
    for filler in room.runs[0].fillers:
        spare = filler.part.finished.width.value - filler.width.value
        assert Fraction(1, 4) * INCH <= spare < Fraction(9, 32) * INCH


def test_four_boxes_move_by_eight_times_the_error_of_their_thickness() -> None:
    """A batch error of 0.5 mm in eight sides lengthens a run of four boxes by 4.0 mm.

    Source: worked stack-up of the trade (systematic terms add), common practice.
    """
    room = build(_job("140", count=4))
    terms = slack(room.chain.nodes["run.sink_wall.cases_width"]).terms
    batch = next(t for t in terms if t.cause.key == "stock.ply18.thickness")
    assert batch.slope == 8
    thick = Fact(Origin("measured", "calliper"), built=room.spec.stock["ply18"].thickness.value)
    known = build(_job("140", count=4), {"stock.ply18.thickness": thick})
    keys = {t.cause.key for t in slack(known.chain.nodes["run.sink_wall.cases_width"]).terms}
    assert "stock.ply18.thickness" not in keys


def test_a_box_that_came_out_narrow_goes_into_the_fillers() -> None:
    """A case read 1/16 narrow leaves its run 1/16 longer at the fillers, and no more."""
    spec = _job("102 1/4")
    fact = Fact(Origin("measured", "tape"), built=Fraction(33) * INCH - INCH / 16)
    room = build(spec, {"upper_2.width": fact})
    assert _inches(room, "run.sink_wall.filler_space") == Fraction(13, 8) + Fraction(1, 32)
    assert room.chain.nodes["upper_2.width"].wanted == 33 * INCH
    assert room.designed.nodes["run.sink_wall.filler_space"].value == Fraction(13, 8) * INCH


def test_cases_too_wide_for_their_wall_are_a_finding() -> None:
    """A run longer than its wall stops with the reason; nothing crashes."""
    keys = ("a", "b")
    run = RunSpec("wall", "Wall", keys, (given("60"),), "wall", "wall")
    room = build(job(case_spec(key="a"), case_spec(key="b"), runs=(run,)))
    found = [f for f in room.findings if f.rule == "run too long"]
    assert [f.severity for f in found] == [Severity.STOP]


def test_a_fact_for_a_path_that_is_gone_is_a_finding() -> None:
    """A reading is never dropped silently."""
    fact = Fact(Origin("measured", "tape"), built=Fraction(800))
    room = build(job(case_spec()), {"uppr.width": fact})
    assert [f.path for f in room.findings if f.rule == "lost reading"] == ["uppr.width"]


def test_a_reading_of_a_sheet_that_no_case_uses_is_not_lost() -> None:
    """Stock may be measured before anything is made of it."""
    fact = Fact(Origin("measured", "calliper"), built=Fraction(20))
    room = build(job(case_spec()), {"stock.board.thickness": fact})
    assert not [f for f in room.findings if f.rule == "lost reading"]


def test_parts_that_rest_on_an_unmeasured_sheet_wait_for_it() -> None:
    """The label's thickness is a question, and the parts cut to it wait; sides do not."""
    room = build(job(case_spec()))
    waiting = {q.path: q.waiting for q in room.questions}
    assert "upper.bottom" in waiting["stock.ply18.thickness"]
    assert "upper.side_left" not in waiting["stock.ply18.thickness"]
    thick = Fact(Origin("measured", "calliper"), built=Fraction(18))
    thin = Fact(Origin("measured", "calliper"), built=Fraction(6))
    room = build(job(case_spec()), {"stock.ply18.thickness": thick, "stock.ply6.thickness": thin})
    assert room.questions == ()
