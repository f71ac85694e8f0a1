"""Offcuts that the record knows are cut before new sheets; by hand."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from tests.builders import INCH
from tests.jobs import read

from casewright.breakdown import break_down
from casewright.buying import buy_list
from casewright.cutting.engine import Stop
from casewright.room.build import build
from casewright.room.model import Room
from casewright.stock import Offcut

THREE_BASES = """
format = 1
unit = "in"
[stock.plywood]
measured = "0.720"
[case.left]
kind = "base"
width = 24
front = "none"
[case.middle]
kind = "base"
width = 24
front = "none"
[case.right]
kind = "base"
width = 24
front = "none"
"""
WORK = Stop(nodes=2_000)


def _room(*offcuts: tuple[str, int, int]) -> Room:
    kept = tuple(
        Offcut(f"offcut.{n}", stock, Fraction(long * INCH), Fraction(wide * INCH))
        for n, (stock, long, wide) in enumerate(offcuts)
    )
    return replace(build(read(THREE_BASES)), offcuts=kept)


def _sheets(room: Room) -> dict[str, tuple[int, tuple[str, ...]]]:
    plans = break_down(room, stop=WORK).wanted
    return {plan.stock: (plan.count, plan.offcuts) for plan in plans}


def test_a_large_offcut_saves_a_sheet() -> None:
    """Bottoms, stretchers and shelves come out of 49 x 40; 24 sides on two sheets of 96 x 48."""
    assert _sheets(_room())["plywood"] == (3, ())
    assert _sheets(_room(("plywood", 49, 40)))["plywood"] == (2, ("offcut.0",))


def test_an_offcut_of_another_stock_or_too_small_is_left_alone() -> None:
    without = _sheets(_room())
    assert _sheets(_room(("thin_plywood", 4, 3), ("plywood", 3, 2))) == without


def test_what_is_bought_is_what_no_offcut_gives() -> None:
    """Three backs of 30 1/2 x 23 5/16 out of three offcuts: no sheet is bought for them."""
    room = _room(*(("thin_plywood", 31, 24) for _ in range(3)))
    breakdown = break_down(room, stop=WORK)
    assert _sheets(room)["thin_plywood"] == (0, ("offcut.0", "offcut.1", "offcut.2"))
    assert not [line for line in buy_list(room, breakdown) if line.key == "thin_plywood"]
    [plan] = [plan for plan in breakdown.wanted if plan.stock == "thin_plywood"]
    assert len(set(plan.offcuts)) == len(plan.offcuts)


BOARDS = """
format = 1
unit = "in"
[boxes]
joint = "pocket screws"
[stock.plywood]
measured = "0.720"
[stock.thin_plywood]
measured = "0.205"
[stock.board]
measured = "0.75"
[case.upper]
kind = "wall"
width = 30
height = 30
front = "none"
face = "face frame"
"""


def _boards(*offcuts: tuple[str, int, int]) -> Room:
    kept = tuple(
        Offcut(f"offcut.{n}", stock, Fraction(long * INCH), Fraction(wide * INCH))
        for n, (stock, long, wide) in enumerate(offcuts)
    )
    return replace(build(read(BOARDS)), offcuts=kept)


def test_a_leftover_of_a_board_is_cut_before_a_new_one() -> None:
    """Stiles of 30 and rails of 27 out of 5 1/2 wide; the leftovers take them all."""
    new = break_down(_boards(), stop=WORK)
    [plan] = [plan for plan in new.wanted if plan.stock == "board"]
    assert (plan.count, plan.offcuts) == (1, ())
    room = _boards(("board", 70, 5), ("board", 34, 2), ("board", 32, 4))
    breakdown = break_down(room, stop=WORK)
    [plan] = [plan for plan in breakdown.wanted if plan.stock == "board"]
    assert plan.count == 0
    assert plan.offcuts
    assert not [line for line in buy_list(room, breakdown) if line.key == "board"]


def test_what_a_leftover_does_not_give_is_bought_in_the_length_that_it_takes() -> None:
    """Each length that can be bought keeps its price beside a leftover: the shortest is taken."""
    room = _boards(("board", 32, 2))
    breakdown = break_down(room, stop=WORK)
    [plan] = [plan for plan in breakdown.wanted if plan.stock == "board"]
    [line] = [line for line in buy_list(room, breakdown) if line.key == "board"]
    assert plan.count == line.count == 1
    assert '96" long' in line.what
