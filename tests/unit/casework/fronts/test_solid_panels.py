"""Panels of solid wood: boards glued edge to edge, with room to swell and to shrink.

Movement by equation 13-2 and table 13-5 of the Wood Handbook (FPL-GTR-282): flat-sawn
yellow-poplar changes by 0.00289 of its width for each percent of moisture, red oak by 0.00369.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Literal

import pytest
from hypothesis import given as drawn
from hypothesis import settings
from hypothesis import strategies as st
from tests.builders import PANEL, Unit, case_spec, given, hardware, house, length
from tests.builders import job as job_of
from tests.builders import plain_style as style_of
from tests.builders import stock as goods_of

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.casework.proof import prove
from casewright.casework.replay import replay
from casewright.dims import Given, Origin
from casewright.errors import JobFileError
from casewright.findings import Severity
from casewright.job.load import read_job
from casewright.room.build import build
from casewright.stock import Board, Moisture, Stock

SOLID = replace(PANEL, panel="thin_board")
UNITS = pytest.mark.parametrize("unit", ["in", "mm"])


def _goods(
    unit: Unit = "in", species: str = "yellow-poplar", sawn: Literal["flat", "quarter"] = "flat"
) -> dict[str, Stock]:
    goods = goods_of(unit)
    board = goods["board"]
    assert isinstance(board, Board)
    thin = given("1/4" if unit == "in" else "6", unit)
    goods["thin_board"] = replace(
        board, key="thin_board", thickness=thin, species=species, sawn=sawn
    )
    return goods


def _moisture(made: str, low: int = 30, high: int = 60) -> Moisture:
    return Moisture.of(low, high, Given(Fraction(made), Origin("measured", "meter")))


def _built(
    unit: Unit = "in", made: str = "8", goods: dict[str, Stock] | None = None, width: str = "",
    **style: str,
) -> tuple[House, Case]:  # fmt: skip
    plan = house(unit, goods=goods or _goods(unit), style=style_of(unit, **style))
    plan.moisture = _moisture(made)
    wide = width or ("16 1/2" if unit == "in" else "425")
    return plan, build_case(plan, case_spec(unit, width=wide, front=SOLID, shelves=0))


def test_a_room_makes_wood_as_moist_as_the_tables_say() -> None:
    """30 % and 60 % of relative humidity at 70 °F: 6.2 % and 11.0 % of moisture (table 4-2)."""
    moisture = _moisture("8")
    assert (moisture.dry.value, moisture.damp.value) == (Fraction("6.2"), Fraction(11))


def test_the_air_beside_a_panel_follows_from_width_wood_and_moisture() -> None:
    """Grooves 12 3/16 apart, poplar made at 8 % for 11 %: it swells by 12.1875 x 0.00289 x 3.

    That is 0.1057 in: half of it each side, beyond the 1/32 that stay when it has swollen.
    """
    plan, case = _built(cut_step="0")
    swell = Fraction("12.1875") * Fraction("0.00289") * 3
    nodes = plan.chain.nodes
    assert nodes["upper.door.panel_room.swell"].value == length(swell)
    assert nodes["upper.door.panel_room.air_side"].value == length(Fraction(1, 32) + swell / 2)
    width = sum((p.finished.width.value for p in case.parts if p.role == "panel"), Fraction(0))
    assert width == length(Fraction("12.1875") - Fraction(1, 16) - swell)


@pytest.mark.parametrize(
    ("species", "sawn", "made", "share"),
    [
        ("northern red oak", "flat", "8", "0.01107"),  # 0.00369 x 3
        ("northern red oak", "quarter", "8", "0.00474"),  # 0.00158 x 3
        ("yellow-poplar", "flat", "6", "0.01445"),  # 0.00289 x 5
        ("", "flat", "8", "0.01107"),  # not named: as the one that moves most
    ],
)
def test_other_wood_gets_other_air(
    species: str, sawn: Literal["flat", "quarter"], made: str, share: str
) -> None:
    """Oak needs more than poplar, quarter-sawn boards less, dry boards more."""
    plan, _ = _built(made=made, goods=_goods(species=species, sawn=sawn), cut_step="0")
    swell = plan.chain.nodes["upper.door.panel_room.swell"].value
    assert swell == length(Fraction("12.1875") * Fraction(share))


def test_boards_damper_than_the_room_need_no_room_to_swell() -> None:
    """Made at 12 % for a room of at most 11 %: the usual air, and more shrinking."""
    plan, case = _built(made="12")
    assert "upper.door.panel_room.swell" not in plan.chain.nodes
    assert prove(case, hardware=hardware()).failures == ()


@UNITS
def test_it_is_glued_up_from_boards_and_goes_together(unit: Unit) -> None:
    """As many equal boards as the width takes, their seams glued, grain upright."""
    _, case = _built(unit)
    boards = [part for part in case.parts if part.role == "panel"]
    assert len(boards) == 3  # 12 in of panel out of boards 5 1/2 wide, jointed on both edges
    assert all(board.grain for board in boards)
    seams = [joint for joint in case.joints if ".seam_" in joint.path]
    assert [joint.fastenings[0].kind for joint in seams] == ["glue", "glue"]
    assert prove(case, hardware=hardware(unit)).failures == ()
    assert replay(case).failures == ()
    words = [step.words for step in case.assembly if step.part.endswith("rail_bottom")]
    assert "spot of glue in the middle" in words[0]


def test_a_panel_that_would_come_out_of_its_grooves_is_stopped() -> None:
    """A wide oak panel made damp, in grooves 3/16 deep, shrinks out of them: what would help."""
    goods = _goods(species="northern red oak")
    _, case = _built(made="14", goods=goods, width="21", tongue="5/32")
    found = [f for f in case.findings if f.rule == "panel out of its groove"]
    assert [f.severity for f in found] == [Severity.STOP]
    assert any("quarter-sawn" in remedy for remedy in found[0].remedies)
    _, sound = _built(made="11", goods=goods, width="21")
    assert [f for f in sound.findings if f.rule == "panel out of its groove"] == []


def test_a_panel_too_thick_for_its_frame_is_stopped() -> None:
    """1/2 in of panel in a frame of 3/4 leaves 1/8 beside the groove."""
    goods = _goods()
    thick = goods["thin_board"]
    assert isinstance(thick, Board)
    goods["thin_board"] = replace(thick, thickness=given("1/2"))
    _, case = _built(goods=goods)
    assert "panel and frame" in [f.rule for f in case.findings]


def test_what_nobody_said_of_the_wood_is_asked() -> None:
    """Which wood, and how moist: the boards wait for both; a sheet waits for neither."""
    spec = job_of(case_spec(width="16 1/2", front=SOLID, shelves=0), goods=_goods(species=""))
    room = build(spec)
    asked = {question.path: question for question in room.questions}
    for path in ("wood.made", "stock.thin_board.movement"):
        assert {part.rpartition(".")[2] for part in asked[path].waiting} >= {"panel_1", "panel_2"}
        assert asked[path].how
    plain = build(job_of(case_spec(width="16 1/2", front=PANEL, shelves=0)))
    assert not {"wood.made", "stock.board.movement"} & {q.path for q in plain.questions}
    known = build(replace(spec, stock=_goods(), moisture=_moisture("8")))
    assert not {"wood.made", "stock.thin_board.movement"} & {q.path for q in known.questions}


def test_a_panel_that_swells_more_than_its_grooves_hold_is_stopped() -> None:
    """Bone dry oak for a wet room, found by trying sizes: told, and still in its grooves."""
    plan = house(goods=_goods(species="northern red oak"))
    plan.moisture = _moisture("5", 45, 90)
    case = build_case(plan, case_spec(width="16 29/32", front=replace(SOLID, leaves=1), shelves=0))
    stops = [f.says for f in case.findings if f.severity is Severity.STOP]
    assert any("cannot leave it that and hold it" in says for says in stops)
    assert prove(case, hardware=hardware()).failures == ()


@settings(max_examples=40, deadline=None)
@drawn(
    width=st.integers(10 * 32, 21 * 32),
    made=st.integers(50, 140),
    low=st.integers(15, 45),
    more=st.integers(5, 45),
    species=st.sampled_from(("yellow-poplar", "northern red oak", "eastern white pine", "")),
)
def test_a_panel_never_presses_and_never_comes_out(
    width: int, made: int, low: int, more: int, species: str
) -> None:
    """Whatever wood, room and meter say: between its limits in every month, or a stop."""
    plan = house(goods=_goods(species=species))
    plan.moisture = _moisture(str(Fraction(made, 10)), low, low + more)
    case = build_case(
        plan, case_spec(width=str(Fraction(width, 32)), front=replace(SOLID, leaves=1), shelves=0)
    )
    stopped = [f for f in case.findings if f.severity is Severity.STOP]
    boards = [part for part in case.parts if part.role == "panel"]
    fit = plan.chain.fits["upper.door.panel_room.side_play_fit"]
    assert stopped or fit.holds
    rate = plan.chain.nodes["stock.thin_board.movement"].value
    wide = sum((b.finished.width.value for b in boards), Fraction(0))
    grown = wide * rate * (plan.moisture.damp.value - plan.moisture.made.value)
    assert stopped or fit.gap.value >= grown
    assert prove(case, hardware=hardware()).failures == ()


def test_thin_boards_are_milled_from_boards_of_the_same_wood() -> None:
    """Poplar for panels does not come out of maple for frames; unnamed boards may be either."""
    goods = _goods()
    board = goods["board"]
    assert isinstance(board, Board)
    named = goods | {"board": replace(board, species="red maple", title="maple boards")}
    told = [
        next(p.milled_from for p in _built(goods=each)[1].parts if p.role == "panel")
        for each in (goods, named)
    ]
    assert told[0].startswith("board:")
    assert told[1].startswith("thicker boards:")


def test_wide_thin_boards_want_more_than_a_table_saw() -> None:
    """5 1/2 in on edge is over the 3 in that a 10 in blade stands above its table."""
    (finding,) = [f for f in _built()[1].findings if f.rule == "wide resaw"]
    assert finding.severity is Severity.CARE
    narrow = _goods()
    board = narrow["thin_board"]
    assert isinstance(board, Board)
    narrow["thin_board"] = replace(board, width=given("2 1/2"))
    assert [f for f in _built(goods=narrow)[1].findings if f.rule == "wide resaw"] == []


@pytest.mark.parametrize(
    ("words", "density"),
    [
        ('species = "yellow-poplar"', "470.4"),  # 0.42 x 1000 x 1.12, equation 4-9
        ('species = "northern red oak"\ndensity = 700', "700"),
        ("", "550"),
    ],
)
def test_boards_weigh_what_their_wood_weighs(words: str, density: str) -> None:
    """By the Wood Handbook's specific gravity at 12 % of moisture, unless the job says more."""
    text = (
        'format = 1\nunit = "in"\n[stock.board]\nmeasured = "0.75"\n'
        f'{words}\n[case.jam]\nkind = "wall"\nwidth = 20\n'
    )
    board = read_job(text, "jam.toml").stock["board"]
    assert isinstance(board, Board)
    assert board.density == Fraction(density)


@pytest.mark.parametrize("written", ["nan", "inf", '"8"', "true", "3", "25", "1e400"])
def test_what_is_no_moisture_is_refused_with_what_would_be_right(written: str) -> None:
    """A word, a truth, a reading no meter gives indoors."""
    text = (
        f'format = 1\nunit = "in"\n[wood]\nmoisture = {written}\n[case.jam]\nkind = "wall"\n'
        "width = 20\n"
    )
    with pytest.raises(JobFileError) as refused:
        read_job(text, "jam.toml")
    (problem,) = refused.value.problems
    assert problem.location.line == 4
    assert "write" in problem.want
