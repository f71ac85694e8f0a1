"""Parts into plans and back: nothing lost, nothing wrong, and who waits for what."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import (
    APPLIED,
    GLASS,
    INCH,
    SLAB,
    Unit,
    case_spec,
    given,
    job,
    length,
    plain_style,
    stock,
)

from casewright.breakdown import Breakdown, Desk, StockPlan
from casewright.breakdown import break_down as full_break_down
from casewright.breakdown.pieces import Piece
from casewright.breakdown.solving import Layout, Offered, lay_out
from casewright.cutting.engine import Stop
from casewright.cutting.solution import leaves
from casewright.dims import Dim, Given, Origin
from casewright.facts import Fact
from casewright.findings import Severity
from casewright.room.build import build
from casewright.room.model import Room
from casewright.shop import Tool, ToolKind
from casewright.stock import Board, Glazing, Sheet


def _measured(room_stock: tuple[str, ...], unit: Unit = "in") -> dict[str, Fact]:
    """Readings that answer every question about thickness."""
    return {
        f"stock.{key}.thickness": Fact(
            Origin("measured", "calliper"), built=stock(unit)[key].thickness.value
        )
        for key in room_stock
    }


SHORT = Stop(2000)


def break_down(room: Room) -> Breakdown:
    """The breakdown with little work spent on each plan."""
    return full_break_down(room, stop=SHORT)


ALL = ("ply18", "ply6", "mdf", "board", "strip", "glass")


def _room(*cases: dict[str, Any], unit: Unit = "in", measured: bool = True) -> Room:
    specs = [
        case_spec(unit, **{"key": f"case{n}", **changes}) for n, changes in enumerate(cases, 1)
    ]
    return build(job(*specs, unit=unit), _measured(ALL, unit) if measured else {})


DOORS: dict[str, Any] = {
    "joint": "dado", "height": "51", "divider": "36", "front": APPLIED, "upper_front": GLASS,
}  # fmt: skip
LIPPED: dict[str, Any] = {
    "kind": "base", "toe": "notch", "height": "34 1/2", "depth": "23 1/4", "edge": "lip",
    "front": SLAB,
}  # fmt: skip
METRIC: dict[str, Any] = {"front": APPLIED, "edge": "band"}


@pytest.fixture(scope="module", params=["doors", "lipped", "metric", "two"])
def room(request: pytest.FixtureRequest) -> Room:
    """Rooms of different kinds, everything measured."""
    return {
        "doors": lambda: _room(DOORS),
        "lipped": lambda: _room(LIPPED),
        "metric": lambda: _room(METRIC, unit="mm"),
        "two": lambda: _room({}, {"back": "applied", "width": "24"}),
    }[request.param]()


def _pieces(breakdown: Breakdown, kind: str) -> list[Piece]:
    return [piece for plan in breakdown.plans for piece in plan.pieces.values()
            if piece.kind == kind]  # fmt: skip


def test_every_part_of_wood_is_cut_exactly_once(room: Room) -> None:
    """No part is lost on the way to the saw, none is cut twice; panes are ordered."""
    placed = [
        placement.part
        for plan in break_down(room).plans
        for placement in plan.solution.placements
        if plan.pieces[placement.part].kind == "part"
    ]
    wooden = {p.path for p in room.parts if not isinstance(room.spec.stock[p.stock], Glazing)}
    assert len(placed) == len(set(placed))
    assert set(placed) == wooden


def test_pieces_come_back_with_the_size_of_their_blanks(room: Room) -> None:
    """A placed part measures its blank; a strip is longer by its rough end."""
    parts = {part.path: part for part in room.parts}
    end = room.spec.style["strip_end"].value
    for plan in break_down(room).plans:
        for placement in plan.solution.placements:
            piece = plan.pieces[placement.part]
            if piece.kind != "part":
                continue
            long, wide = placement.rect.length, placement.rect.width
            if placement.turned:
                long, wide = wide, long
            blank = parts[piece.id].blank
            rough = end if piece.rough else Fraction(0)
            assert plan.length(long) == blank.length.value + rough
            assert plan.length(wide) == blank.width.value


def test_grain_is_kept(room: Room) -> None:
    """Only parts that may lie across the grain ever do."""
    for plan in break_down(room).plans:
        for placement in plan.solution.placements:
            assert not placement.turned or plan.pieces[placement.part].turns


def test_area_of_every_sheet_is_accounted_for(room: Room) -> None:
    """Parts, offcuts and waste never cover more than the sheet; the blade takes the rest."""
    for plan in break_down(room).plans:
        items = {item.id: item for item in plan.problem.stock}
        for tree in plan.solution.tree:
            item = items[tree.stock]
            covered = sum(leaf.rect.area for leaf in leaves(tree.root))
            assert covered <= item.length * item.width
            parts = sum(leaf.rect.area for leaf in leaves(tree.root) if leaf.use == "part")
            assert parts == sum(place.rect.area for _, place in plan.on_sheet(tree))


def test_match_groups_reach_the_problem() -> None:
    """Sides of a case are asked for in one setting."""
    [plan] = [p for p in break_down(_room({})).plans if p.stock == "ply18"]
    groups = {part.id: part.group for part in plan.problem.parts}
    assert groups["case1.side_left"] == groups["case1.side_right"] == "case1 sides"


def test_no_sheet_thickness_no_cut_sheet() -> None:
    """Parts that wait for a reading are kept off the plans and still counted for buying."""
    room = _room({}, measured=False)
    breakdown = break_down(room)
    waiting = {entry.part for entry in breakdown.waiting}
    assert "case1.bottom" in waiting
    on_plans = {piece for plan in breakdown.plans for piece in plan.pieces}
    assert not waiting & on_plans
    wanted = {piece for plan in breakdown.wanted for piece in plan.pieces}
    assert {part.path for part in room.parts} <= wanted
    assert all(entry.questions for entry in breakdown.waiting)


def test_a_stock_nothing_of_which_waits_is_bought_for_the_plan_it_is_cut_by() -> None:
    """What waits for one sheet's thickness changes nothing about another sheet."""
    room = _room({}, measured=False)
    case = room.cases[0]
    parts = tuple(
        replace(part, waits_for=("stock.ply18.thickness",) if part.stock == "ply18" else ())
        for part in case.parts
    )
    breakdown = break_down(replace(room, cases=(replace(case, parts=parts),)))
    cut = {plan.stock: plan for plan in breakdown.plans}
    wanted = {plan.stock: plan for plan in breakdown.wanted}
    assert "ply18" not in cut
    assert wanted["ply18"].count > 0
    assert all(wanted[stock].solution is plan.solution for stock, plan in cut.items())


def test_what_is_cut_already_is_not_cut_again() -> None:
    """A part that is cut is off the plans and off the buy list."""
    room = _room({})
    case = room.cases[0]
    parts = tuple(
        replace(part, state="cut") if part.path == "case1.back" else part for part in case.parts
    )
    done = break_down(replace(room, cases=(replace(case, parts=parts),)))
    assert "ply6" not in {plan.stock for plan in done.wanted}


def _strips(width: str, count: int, *, sheet: str = "48", kerf: str = "1/8") -> Layout:
    """Full-length rips of one width on 96 in sheets, without a limit on sheets."""
    room = _room({})
    saw = room.spec.shop.tools["table saw"]
    tools: dict[ToolKind, Tool] = {"table saw": replace(saw, kerf=given(kerf))}
    spec = replace(room.spec, shop=replace(room.spec.shop, tools=tools))
    long, across, wide = (Dim("", (), length(text)) for text in ("96", sheet, width))
    pieces = [Piece(str(n), "part", "rip", "", long, wide) for n in range(count)]
    offered = [Offered("sheet", long, across)]
    goods = room.spec.stock["ply18"]
    assert isinstance(goods, Sheet)
    return lay_out(Desk(replace(room, spec=spec)), goods, offered, pieces)


def test_four_strips_of_a_foot_less_an_eighth_from_a_sheet() -> None:
    """48 in give four strips of 11 7/8 with a 1/8 kerf (common practice)."""
    assert len(_strips("11 7/8", 4).solution.tree) == 1
    assert len(_strips("11 7/8", 5).solution.tree) == 2


def test_only_three_strips_of_a_full_foot() -> None:
    """But only three of 12: the blade takes 1/8 between them (common practice)."""
    assert len(_strips("12", 3).solution.tree) == 1
    assert len(_strips("12", 4).solution.tree) == 2


def test_kerf_decides() -> None:
    """With a thinner blade four strips of 11 7/8 leave something over."""
    solved = _strips("11 7/8", 4, kerf="3/32")
    top = max(place.rect.y1 for place in solved.solution.placements)
    assert solved.unit.length(top) == length("47 25/32")


_TAPE = Origin("measured", "tape")


def _tight(size: tuple[str, str] | None = None, *, kerf: str = "") -> Breakdown:
    """A case as high as the sheet is long: its sides leave nothing to spare."""
    goods = stock()
    sheet = goods["ply18"]
    assert isinstance(sheet, Sheet)
    if size is not None:
        goods["ply18"] = replace(
            sheet,
            measured_length=Given(length(size[0]), _TAPE),
            measured_width=Given(length(size[1]), _TAPE),
        )
    case = case_spec(height="96", width="24", shelves=0, back="inset")
    spec = job(case, goods=goods)
    if kerf:
        read = Given(length(kerf), _TAPE)
        tools = {kind: replace(tool, kerf=read) for kind, tool in spec.shop.tools.items()}
        spec = replace(spec, shop=replace(spec.shop, tools=tools))
    return break_down(build(spec, _measured(ALL)))


def test_a_plan_that_just_fits_asks_for_the_sheet_in_hand() -> None:
    """Sheets may be 1/16 in under their label: the parts wait for sheet and kerf."""
    breakdown = _tight()
    [plan] = breakdown.plans
    assert {fit.side for fit in plan.just_fit} >= {"length"}
    assert all(fit.spare < INCH / 16 for fit in plan.just_fit)
    [question] = breakdown.questions
    assert question.path == "stock.ply18.size"
    assert "kerf" in question.needs
    assert {"upper.side_left", "upper.side_right"} <= set(question.waiting)


def test_a_measured_sheet_and_kerf_are_not_asked_for_again() -> None:
    """Once both were entered as measured the plan stands."""
    assert not _tight(("96", "48"), kerf="1/8").questions


def test_of_sheet_and_kerf_the_one_not_read_yet_is_asked_for() -> None:
    """The question says what is left to measure, and where it is written."""
    [question] = _tight(("96", "48")).questions
    assert question.needs == (
        "measure the kerf of the table saw and the circular saw on a test cut"
    )
    assert "measured_size" not in question.how
    [question] = _tight(kerf="1/8").questions
    assert "kerf" not in question.needs
    assert 'measured_size = ["...", "..."]' in question.how


def test_a_sheet_that_measures_short_turns_the_question_into_a_finding() -> None:
    """A side as long as the label does not come out of a sheet a sixteenth under it."""
    breakdown = _tight(("95 15/16", "48"), kerf="1/8")
    assert not breakdown.questions
    assert {finding.rule for finding in breakdown.findings} == {"larger than stock"}
    assert {finding.path for finding in breakdown.findings} >= {"upper.side_left"}


def test_a_part_larger_than_the_sheet_stops_the_work() -> None:
    """It is reported with its size, never dropped."""
    found = break_down(_room({"width": "120"})).findings
    assert found
    assert {finding.severity for finding in found} == {Severity.STOP}
    assert {"case1.bottom", "case1.back"} <= {finding.path for finding in found}


def test_set_ups_get_a_test_piece_each() -> None:
    """One for the dado (23/32 and 0.005 in), the end rabbet and the back's rabbet, named so."""
    titles = sorted(
        piece.title for piece in _pieces(break_down(_room({"joint": "dado", "divider": "20"})),
                                         "test piece")
    )  # fmt: skip
    assert titles == [
        "test piece for the dado ~0.724 wide, 1/4 deep",
        "test piece for the pockets",
        "test piece for the rabbet 23/32 wide, 1/4 deep",
        "test piece for the rabbet 7/32 wide, 3/8 deep",
    ]


def test_a_sheet_is_never_bought_for_scraps_alone() -> None:
    """Where test pieces would cost another sheet they are left to the offcuts."""
    goods = stock()
    sheet = goods["ply18"]
    assert isinstance(sheet, Sheet)
    style = plain_style(test_piece_length="90", test_piece_width="40")
    room = build(job(case_spec(), goods=goods, style=style), _measured(ALL))
    [plan] = [p for p in break_down(room).plans if p.stock == "ply18"]
    assert plan.from_offcuts
    assert not {piece.id for piece in plan.from_offcuts} & set(plan.pieces)


def test_thin_strips_come_out_of_thicker_boards() -> None:
    """Two strips 3/16 thick from each rip of a 3/4 board; their rips are on the board's plan."""
    breakdown = break_down(_room(DOORS))
    [strips] = [plan for plan in breakdown.plans if plan.kind == "strips"]
    assert strips.milling is not None
    assert strips.milling.yields == 2
    assert strips.milling.source == "board"
    blanks = _pieces(breakdown, "strip blank")
    assert len(blanks) == sum(-(-count // 2) for count in strips.counts.values())
    assert {blank.width for blank in blanks} == {length("2 1/2")}


def test_spare_strips_are_cut_with_the_others() -> None:
    """One for eight and at least one: eight strips of a pair of doors get one spare."""
    breakdown = break_down(_room(DOORS))
    spares = _pieces(breakdown, "spare")
    strips = [p for p in _pieces(breakdown, "part") if p.rough]
    assert len(strips) == 8
    assert len(spares) == 1
    assert spares[0].length == max(strip.length for strip in strips)


def test_lips_are_ripped_from_solid_wood() -> None:
    """Each lipped edge gets a strip as thick as the lip, a little long."""
    room = _room(LIPPED)
    lips = {piece.id: piece for piece in _pieces(break_down(room), "lip")}
    edges = [(part, edge) for part in room.parts for edge in part.edges if edge.kind == "lip"]
    assert len(lips) == len(edges)
    bottom = next(part for part in room.parts if part.role == "bottom")
    lip = lips[f"{bottom.path}.lip_w0"]
    assert lip.width == length("1/4")
    assert lip.length == bottom.finished.length.value + length("1")


def test_lips_need_a_board_thick_enough() -> None:
    """Without one the parts are asked about; nothing is invented."""
    goods = {key: item for key, item in stock().items() if key not in ("board",)}
    strip = goods["strip"]
    assert isinstance(strip, Board)
    spec = job(case_spec(edge="lip", strip_stock="strip"), goods=goods)
    questions = break_down(build(spec, _measured(("ply18", "ply6")))).questions
    assert [question.path for question in questions] == ["stock.board_for_lips"]


def test_lengths_of_board_are_chosen_for_least_wood() -> None:
    """Two lengths at the yard: a short part comes from the short one."""
    goods = stock()
    board = goods["board"]
    assert isinstance(board, Board)
    goods["board"] = replace(board, lengths=(given("96"), given("48")))
    case = case_spec(kind="bookcase", height="60", depth="12", width="30", shelves=1,
                     nosing="1 1/2")  # fmt: skip
    plans = break_down(build(job(case, goods=goods), _measured(ALL))).plans
    [plan] = [p for p in plans if p.stock == "board"]
    assert dict(plan.counts) == {"board 48": 1}


def test_same_room_same_plans() -> None:
    """The plan is a function of the room alone."""

    def placed(plans: tuple[StockPlan, ...]) -> list[object]:
        return [plan.solution.placements for plan in plans]

    assert placed(break_down(_room(DOORS)).plans) == placed(break_down(_room(DOORS)).plans)
