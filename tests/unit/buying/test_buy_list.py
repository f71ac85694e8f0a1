"""The buy list covers what the model uses, in whole packs, and says why."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import (
    APPLIED,
    GLASS,
    SLAB,
    Unit,
    case_spec,
    drawer_base,
    given,
    job,
    length,
    one_case,
    stock,
)

from casewright.breakdown import break_down
from casewright.buying import COLUMNS, BuyLine, buy_list, buy_rows
from casewright.buying.edges import band_length
from casewright.buying.wall import joining_screw_length, ledger_length
from casewright.casework.features import Bores
from casewright.cutting.engine import Stop
from casewright.dims import Origin
from casewright.facts import Fact
from casewright.room.build import build
from casewright.room.model import Room
from casewright.room.specs import RunSpec
from casewright.stock import Emission, Sheet

UPPER: dict[str, Any] = {"key": "up", "front": SLAB}
STACK: dict[str, Any] = {
    "key": "stack", "joint": "dado", "height": "51", "divider": "36", "front": APPLIED,
    "upper_front": GLASS, "edge": "band",
}  # fmt: skip
BASE: dict[str, Any] = {
    "key": "base", "kind": "base", "toe": "notch", "height": "34 1/2", "depth": "23 1/4",
    "edge": "band", "front": SLAB,
}  # fmt: skip


def _room(*cases: Mapping[str, Any], unit: Unit = "in", runs: tuple[RunSpec, ...] = ()) -> Room:
    facts = {
        f"stock.{key}.thickness": Fact(Origin("measured", "calliper"), built=item.thickness.value)
        for key, item in stock(unit).items()
        if key != "band"
    }
    return build(job(*(case_spec(unit, **c) for c in cases), unit=unit, runs=runs), facts)


def _list(room: Room) -> tuple[BuyLine, ...]:
    return buy_list(room, break_down(room, stop=Stop(2000)))


def _line(lines: tuple[BuyLine, ...], key: str) -> BuyLine:
    [found] = [line for line in lines if line.key == key]
    return found


@pytest.fixture(scope="module")
def room() -> Room:
    """Two uppers in a run and a base."""
    run = RunSpec("wall", "wall", ("up", "stack"), (), "open", "open")
    return _room(UPPER, STACK, BASE, runs=(run,))


@pytest.fixture(scope="module")
def lines(room: Room) -> tuple[BuyLine, ...]:
    """Its buy list."""
    return _list(room)


def test_packs_hold_need_and_spares(lines: tuple[BuyLine, ...]) -> None:
    """What is bought is enough, and one pack less would not be."""
    for line in lines:
        assert line.count * line.pack >= line.need + line.spare, line.what
        assert (line.count - 1) * line.pack < line.need + line.spare, line.what


def test_every_line_says_why_and_for_what(lines: tuple[BuyLine, ...], room: Room) -> None:
    """The sum in words, and paths that are in the room."""
    known = {part.path for part in room.parts} | {case.key for case in room.cases}
    known |= {joint.path for case in room.cases for joint in case.joints}
    known |= {f.path for case in room.cases for f in case.fronts}
    known |= {f.pull for case in room.cases for f in case.fronts}
    known |= {h.path for case in room.cases for f in case.doors for h in f.hinges}
    for line in lines:
        assert line.why
        assert line.paths
        assert set(line.paths) <= known, line.what


def test_every_stock_of_the_model_is_bought(lines: tuple[BuyLine, ...], room: Room) -> None:
    """Sheets, boards, band and glass; thin strips come out of the board."""
    used = {part.stock for part in room.parts}
    used |= {edge.stock for part in room.parts for edge in part.edges if edge.stock}
    assert used - {"strip"} <= {line.key for line in lines}


def test_one_pocket_screw_for_each_pocket(lines: tuple[BuyLine, ...], room: Room) -> None:
    """Counted on the holes; a tenth to spare, in boxes of 100 (house rule)."""
    holes = sum(
        len(feature.places)
        for part in room.parts
        for feature in part.features
        if isinstance(feature, Bores) and feature.kind == "pocket"
    )
    line = _line(lines, "pocket_screw")
    assert line.need == holes
    assert line.spare == -(-holes // 10)
    assert line.pack == 100


@pytest.mark.parametrize("back", ["rabbeted", "grooved", "applied", "inset"])
@pytest.mark.parametrize("toe", ["notch", "plinth"])
def test_joints_fasten_with_as_many_screws_as_there_are_pockets(back: str, toe: str) -> None:
    """The fastenings of the model agree with its holes."""
    for case in _room({**BASE, "back": back, "toe": toe}).cases:
        held = sum(
            fastening.count
            for joint in case.joints
            for fastening in joint.fastenings
            if fastening.kind == "pocket screw"
        )
        holes = sum(
            len(feature.places)
            for part in case.parts
            for feature in part.features
            if isinstance(feature, Bores) and feature.kind == "pocket"
        )
        assert held == holes


def test_hinges_and_plates_with_one_spare_in_twelve(
    lines: tuple[BuyLine, ...], room: Room
) -> None:
    """As many as the doors of the model hang on (trade rule: 1 in 12 spare)."""
    count = sum(len(front.hinges) for case in room.cases for front in case.doors)
    assert _line(lines, "hinge").need == count
    assert _line(lines, "hinge").count == count + -(-count // 12)
    assert sum(line.need for line in lines if line.key == "hinge_plate") == count


def test_pins_bumpers_and_pulls(lines: tuple[BuyLine, ...], room: Room) -> None:
    """Four pins a shelf, two bumpers a leaf, a pull a door and one to spare (trade rules)."""
    shelves = [part for part in room.parts if part.role == "shelf"]
    leaves = [front for case in room.cases for front in case.fronts]
    assert _line(lines, "pin").need == 4 * len(shelves)
    assert _line(lines, "bumper").count == 2 * len(leaves)
    assert _line(lines, "pull").count == len(leaves) + 1


def test_brads_by_length(lines: tuple[BuyLine, ...], room: Room) -> None:
    """Every brad of every joint is in the box of its length."""
    fastenings = [
        fastening
        for case in room.cases
        for joint in case.joints
        for fastening in joint.fastenings
        if fastening.kind == "brad"
    ]
    bought = sum(line.need for line in lines if line.key == "brad")
    assert bought == sum(fastening.count for fastening in fastenings)
    lengths = {fastening.length.value for fastening in fastenings if fastening.length}
    assert len([line for line in lines if line.key == "brad"]) == len(lengths)


def test_band_of_a_slab_door() -> None:
    """A slab 14 5/8 x 30 3/8 has 90 in of edges; 15 percent and four tails of 4 in are added."""
    need, spare = band_length(length("90"), 4, length("4"))
    assert need == length("90")
    assert need + spare == length("119 1/2")


def test_band_is_the_sum_of_the_banded_edges(lines: tuple[BuyLine, ...], room: Room) -> None:
    """Only edges that are banded; an edge as long as its part is finished."""
    total = Fraction(0)
    for part in room.parts:
        for edge in part.edges:
            if edge.kind == "band":
                size = part.finished
                total += (size.width if edge.edge[0] == "l" else size.length).value
    assert _line(lines, "band").need == total


def test_panes_are_listed_by_size(lines: tuple[BuyLine, ...], room: Room) -> None:
    """Equal panes are one line; glass is tempered and handled with care."""
    panes = [part for part in room.parts if part.role == "pane"]
    line = _line(lines, "glass")
    assert line.count == len(panes) == 2
    assert "tempered" in line.note
    assert "measured" in line.note


def test_plugs_only_for_pockets_that_show() -> None:
    """The underside of an open upper shows; hidden pockets need no plug."""
    plugged = _line(_list(_room({"key": "up"})), "plug")
    bottom = next(p for p in one_case().parts if p.role == "bottom")
    holes = sum(len(f.places) for f in bottom.features if isinstance(f, Bores))
    assert plugged.need >= holes
    keys = {line.key for line in _list(_room({**UPPER, "pockets": "hidden"}))}
    assert "plug" not in keys


def test_wall_screws_by_rows_and_studs() -> None:
    """33 in at 16 in centres: at most three studs, two rows, two screws each, and the ledger."""
    line = _line(_list(_room({"key": "up"})), "wall_screw")
    assert line.need == 2 * 3 * 2 + 3
    assert 'leaves 1"' in line.why
    assert "assumed" in line.why


@pytest.mark.parametrize(
    ("left", "right", "unit", "screw"),
    [("23/32", "23/32", "in", "1 1/4"), ("3/4", "3/4", "in", "1 1/4"),
     ("17.8", "17.8", "mm", "30"), ("18", "15", "mm", "30")],
)  # fmt: skip
def test_joining_screws_stay_inside_two_sides(
    left: str, right: str, unit: Unit, screw: str
) -> None:
    """Twice the side less 1/8 in or 3 mm, down to what is sold (trade rule)."""
    sides = length(left, unit), length(right, unit)
    assert joining_screw_length(*sides, unit) == length(screw, unit)


def test_joining_screws_four_a_seam(lines: tuple[BuyLine, ...]) -> None:
    """Two cases side by side have one seam."""
    assert _line(lines, "joining_screw").need == 4


def test_ledger_is_as_long_as_the_longest_row(room: Room) -> None:
    """Two uppers in one run hang on one ledger."""
    assert ledger_length(room) == sum(
        (c.overall_width.value for c in room.cases if c.spec.kind == "wall"), Fraction(0)
    )


def test_glue_by_the_edge_foot(lines: tuple[BuyLine, ...]) -> None:
    """250 ml for 60 ft of edge (trade rule)."""
    line = _line(lines, "glue")
    feet = Fraction(line.why.split(" ft")[0])
    assert abs(line.need - feet * 250 / 60) < 1
    assert line.pack == 250


def test_sheets_are_counted_on_the_plans(room: Room) -> None:
    """As many sheets as the cutting plan uses, parts that wait included."""
    breakdown = break_down(room, stop=Stop(2000))
    lines = buy_list(room, breakdown)
    for plan in breakdown.wanted:
        if plan.kind == "sheets":
            assert _line(lines, plan.stock).count == plan.count


def test_waiting_parts_are_bought_for() -> None:
    """Nothing is measured yet, so nothing can be cut; everything is on the list."""
    spec = job(case_spec(**UPPER))
    lines = _list(build(spec))
    assert _line(lines, "ply18").count >= 1
    assert "wait" in _line(lines, "ply18").why


def test_no_doors_no_door_hardware() -> None:
    """An open case has nothing hung on it."""
    assert not [line for line in _list(_room({"key": "up"})) if line.aisle == "door hardware"]


def test_prices_are_passed_on_as_typed() -> None:
    """With the date and the source the person gave."""
    goods = stock()
    sheet = goods["ply18"]
    assert isinstance(sheet, Sheet)
    goods["ply18"] = replace(sheet, price="70 a sheet, 3 May, the yard")
    lines = _list(build(job(case_spec(**UPPER), goods=goods)))
    assert _line(lines, "ply18").note == "70 a sheet, 3 May, the yard"


def test_placeholder_hardware_is_marked() -> None:
    """A hinge whose sheet nobody has typed says so on the list."""
    spec = job(case_spec(**UPPER))
    hinge = replace(spec.hardware.hinge, placeholder=True)
    lines = _list(build(replace(spec, hardware=replace(spec.hardware, hinge=hinge))))
    assert "data sheet" in _line(lines, "hinge").note


def test_rows_are_ready_for_a_table(lines: tuple[BuyLine, ...]) -> None:
    """One row a line under the heads, through a CSV writer and back."""
    rows = list(buy_rows(lines))
    assert all(len(row) == len(COLUMNS) for row in rows)
    text = io.StringIO()
    csv.writer(text).writerows(rows)
    assert [tuple(row) for row in csv.reader(io.StringIO(text.getvalue()))] == rows


def test_amounts_are_numbers_that_a_spreadsheet_adds(lines: tuple[BuyLine, ...]) -> None:
    """Never a ratio; within a tenth of what is needed."""
    for line, row in zip(lines, buy_rows(lines), strict=True):
        for asked, column in ((line.need, "need"), (line.spare, "spare")):
            shown = row[COLUMNS.index(column)]
            assert "/" not in shown
            assert abs(Fraction(shown) - asked) <= Fraction(1, 20)
    assert any(line.need.denominator > 1 for line in lines)


def test_metric_lists_speak_millimetres() -> None:
    """No inch mark on a metric list but in names of packs."""
    lines = _list(_room({"key": "up", "front": SLAB}, unit="mm"))
    for line in lines:
        assert '"' not in line.what + line.why, line.what


def test_sizes_on_the_list_are_found_on_a_tape() -> None:
    """A nailer of .719 and 1/4 for the back: .969 (31/32 is .96875); .748 is a thickness."""
    read = {"ply18": "0.719", "ply6": "0.219", "board": "0.748"}
    facts = {
        f"stock.{key}.thickness": Fact(Origin("measured", "calliper"), built=length(text))
        for key, text in read.items()
    }
    lines = _list(build(job(case_spec(**UPPER), case_spec(**STACK)), facts))
    decimals = {
        word for line in lines for word in re.findall(r'[\d.]+\.\d+"', line.what + line.why)
    }
    assert decimals <= {'0.748"'}
    assert '~31/32" of nailer and back' in _line(lines, "wall_screw").why


def test_goods_sold_in_inches_keep_their_size_in_a_metric_job() -> None:
    """A brad of 5/8 in is 15.875 mm, which no shop sells it by."""
    spec = job(case_spec("mm", **UPPER), unit="mm")
    brad = replace(spec.hardware.back_brad, length=given("5/8", "in"))
    lines = _list(build(replace(spec, hardware=replace(spec.hardware, back_brad=brad))))
    assert any('5/8"' in line.what for line in lines)


def test_slides_in_pairs_and_longer_screws_for_the_pulls_of_drawers() -> None:
    """A pair a drawer by its length; two pulls on a wide front; screws through front and box."""
    room = _room(drawer_base("in", "drawer", "drawer", "drawer", width="36"))
    lines = _list(room)
    slides = _line(lines, "slide")
    assert slides.need == slides.count == 3
    assert '20"' in slides.what
    pulls = _line(lines, "pull")
    assert pulls.need == 6
    screws = _line(lines, "pull_screw")
    assert screws.need == 12
    # Front 5/8, box 1/2, and 6 mm into the pull: 34.6 mm, sold by the quarter inch.
    assert screws.what == 'machine screw for pulls, 1 1/4"'
    held = sum(
        fastening.count
        for case in room.cases
        for joint in case.joints
        for fastening in joint.fastenings
        if fastening.kind == "front screw"
    )
    assert _line(lines, "front_screw").need == held == 12


def test_the_label_to_ask_for_stands_beside_the_sheet(room: Room) -> None:
    """A class that is to be asked for; E2 is found by a rule instead."""
    labels: tuple[tuple[Emission, bool], ...] = (("TSCA Title VI", True), ("E2", False))
    for emission, told in labels:
        goods = dict(room.spec.stock)
        sheet = goods["ply18"]
        assert isinstance(sheet, Sheet)
        goods["ply18"] = replace(sheet, emission=emission)
        changed = replace(room, spec=replace(room.spec, stock=goods))
        assert (emission in _line(_list(changed), "ply18").note) == told
