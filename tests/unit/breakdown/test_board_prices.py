"""Which boards are bought for what they cost, and what their ends lose, worked out by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.builders import APPLIED, INCH, case_spec, job, length

from casewright.breakdown import break_down
from casewright.buying import buy_list
from casewright.cutting.engine import Stop
from casewright.dims import Given, Origin
from casewright.errors import CasewrightError
from casewright.job.load import read_job
from casewright.job.worked import WorkedJob, work_out
from casewright.room.build import build
from casewright.stock import Board

_JOB = """
format = 1
unit = "in"
[stock.plywood]
measured = "0.708"
[stock.thin_plywood]
measured = "0.21"
[stock.board]
width = "1 1/2"
lengths = [96, 120, 144]
{more}
[case.landing]
kind = "bookcase"
width = "31 1/2"
height = 80
depth = "11 3/8"
joint = "dado"
shelves = 5
nosing = "1 1/2"
"""
_PRICES = 'prices = ["5.00", "7.50", "11.00, 3 May, the yard"]'


def _worked(more: str) -> WorkedJob:
    return work_out(read_job(_JOB.format(more=more), "boards.toml"))


@pytest.mark.parametrize(
    ("more", "boards"),
    [
        # Seven nosings of 30 3/32, the kerf 1/8: three come out of 96 (90 17/32) and of 120, four
        # out of 144 (120 3/4). The least length: 144 + 96 = 240, 3 x 96 = 288.
        ("", {"96": 1, "144": 1}),
        # The least money: 11.00 + 5.00 = 16.00, 3 x 5.00 = 15.00.
        (_PRICES, {"96": 3}),
        # Of 96 less 3 at each end 90 are left: two. Of 114 three, of 138 four. The least length:
        # 120 + 144 = 264, 120 + 2 x 96 = 312, 2 x 144 = 288.
        ("trim = 3", {"120": 1, "144": 1}),
        # The least money: 7.50 + 11.00 = 18.50, 7.50 + 2 x 5.00 = 17.50, 3 x 7.50 = 22.50.
        (f"trim = 3\n{_PRICES}", {"96": 2, "120": 1}),
    ],
)
def test_the_cheapest_boards_are_bought(more: str, boards: dict[str, int]) -> None:
    """By hand; the sums stand beside each."""
    worked = _worked(more)
    breakdown = break_down(worked.room)
    [plan] = [plan for plan in breakdown.plans if plan.stock == "board"]
    assert plan.counts == {f"board {size}": count for size, count in boards.items()}
    lines = [line for line in buy_list(worked.room, breakdown) if line.aisle == "boards"]
    notes = {line.note for line in lines}
    if boards == {"96": 2, "120": 1}:
        assert notes == {"5.00; 2 x 5.00 = 10.00", "7.50"}


@pytest.mark.parametrize(
    ("more", "says"),
    [
        ('prices = ["5.00", "7.50"]', "2 prices stand beside 3 lengths"),
        ('prices = ["5.00", "ask", "9"]', "no price can be read here"),
        ('prices = ["5.00", "0.00", "9"]', "no price can be read here"),
        (f'price = "5.00"\n{_PRICES}', "one price, and one for each length"),
        ('lengths = ["12", 96]\ntrim = 6', "all of a board 12"),
    ],
)
def test_prices_and_ends_that_cannot_be(more: str, says: str) -> None:
    """Each is told where it stands."""
    text = _JOB.format(more=more)
    if "lengths" in more:
        text = text.replace("lengths = [96, 120, 144]\n", "")
    with pytest.raises(CasewrightError, match=says):
        read_job(text, "boards.toml")


def test_strips_are_milled_out_of_what_is_left_between_the_ends() -> None:
    """A shaker door's strips, 3/16 thick, take blanks as long as a board less both ends."""
    trim = Given(2 * INCH, Origin("chosen", "test"))
    spec = job(case_spec(joint="dado", height="51", front=APPLIED))
    stock = {
        key: replace(goods, trim=trim) if isinstance(goods, Board) else goods
        for key, goods in spec.stock.items()
    }
    breakdown = break_down(build(replace(spec, stock=stock)), stop=Stop(2_000))
    pieces = [piece for plan in breakdown.wanted for piece in plan.pieces.values()]
    blanks = [piece.length for piece in pieces if piece.kind == "strip blank"]
    assert blanks
    assert max(blanks) <= length("92")
    assert not [f for f in breakdown.findings if f.rule == "larger than stock"]
