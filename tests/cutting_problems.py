"""Cutting problems for tests: short builders, and random problems of every kind."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import strategies as st

from casewright.cutting import (
    Defect,
    Keep,
    Limits,
    Match,
    PartDemand,
    Problem,
    StockItem,
    Trim,
    board_problem,
)
from casewright.cutting.problem import MatchWay

IN = 32
"""Counts of 1/32 in to an inch."""

SHEET = StockItem("ply", 96 * IN, 48 * IN)
KERF = IN // 8


def inches(text: str) -> int:
    """'11 7/8' in thirty-seconds."""
    total = 0
    for word in text.split():
        over, _, under = word.partition("/")
        total += int(over) * IN // int(under or 1)
    return total


def part(
    name: str, length: str, width: str, count: int = 1, *, rotate: bool = False
) -> PartDemand:
    """A part in inches."""
    return PartDemand(name, inches(length), inches(width), count, rotate)


def sheet_problem(*parts: PartDemand, stages: int | None = 3, sheet: StockItem = SHEET) -> Problem:
    """Parts from sheets, a blade of 1/8 in, in thirty-seconds of an inch."""
    keep = (Keep(24 * IN, 4 * IN), Keep(12 * IN, 12 * IN))
    return Problem("1/32 in", KERF, stages, (sheet,), parts, keep)


def two_cases() -> Problem:
    """A wall case and a base case, sides, bottoms, shelves, stretchers and doors."""
    return sheet_problem(
        part("base side", "34 1/2", "23 1/4", 2),
        part("base bottom", "34 1/2", "23 1/4"),
        part("wall side", "40", "11 7/8", 2),
        part("wall bottom", "33", "11 7/8", 2),
        part("shelf", "32 7/8", "11", 3),
        part("stretcher", "34 1/2", "4", 3),
        part("door", "29 1/2", "16 3/4", 3),
        part("toe board", "36", "3 7/8", rotate=True),
        part("test piece", "12", "6", 2, rotate=True),
    )


SMALL_SHOP = Limits(
    rip_capacity=24 * IN,
    crosscut_capacity=25 * IN,
    straightedge=98 * IN,
    lift_area=2880 * IN * IN,
    narrowest_rip=2 * IN,
    shortest_on_fence=10 * IN,
    longest_on_sled=60 * IN,
)


@st.composite
def _stock(draw: st.DrawFn, name: str) -> StockItem:
    length, width = draw(st.integers(20, 100)), draw(st.integers(20, 60))
    edges = [draw(st.sampled_from([0, 0, 0, 1, 2, 5])) for _ in range(4)]
    spots = [
        Defect(draw(st.integers(0, length - 6)), draw(st.integers(0, width - 6)), *sides)
        for sides in draw(st.lists(st.tuples(st.integers(1, 6), st.integers(1, 6)), max_size=2))
    ]
    count = draw(st.sampled_from([None, None, 0, 1, 2, 4]))
    price = draw(st.sampled_from([0, 1, 3]))
    return StockItem(name, length, width, count, price, Trim(*edges), tuple(spots))


@st.composite
def problems(draw: st.DrawFn) -> Problem:
    """Sheets and parts: trims, defects, counts, prices, grain, groups, matches, any kerf."""
    kerf = draw(st.sampled_from([0, 1, 3, 4]))
    stock = tuple(draw(_stock(f"s{n}")) for n in range(draw(st.integers(1, 2))))
    parts = tuple(
        PartDemand(
            f"p{n}",
            draw(st.integers(kerf + 1, 60)),
            draw(st.integers(kerf + 1, 40)),
            draw(st.integers(1, 4)),
            draw(st.booleans()),
            draw(st.sampled_from([None, "set"])),
        )
        for n in range(draw(st.integers(0, 7)))
    )
    stages = draw(st.sampled_from([2, 3, 4, None]))
    fixed = [part.id for part in parts if not part.rotate]
    matches = draw(_matches(fixed)) if draw(st.booleans()) else ()
    return Problem("mm", kerf, stages, stock, parts, (Keep(20, 5),), matches)


@st.composite
def _matches(draw: st.DrawFn, parts: list[str]) -> tuple[Match, ...]:
    """One or two matches of some of these parts, perhaps one within the other."""
    both: list[MatchWay] = ["across", "along"]
    ways = st.sampled_from(both)
    first, second = parts[:2], parts[2 : draw(st.integers(2, 4))]
    if len(first) < 2:
        return ()
    one = Match("one", draw(ways), tuple(first))
    if not second:
        return (one,)
    if draw(st.booleans()):
        return (Match("both", draw(ways), (replace(one, id=""), *second)),)
    return one, Match("two", draw(ways), tuple(second))


@st.composite
def board_problems(draw: st.DrawFn) -> Problem:
    """Boards and a few lengths, so few that every way can be tried."""
    kerf = draw(st.sampled_from([0, 1, 3]))
    stock = [
        StockItem(
            f"s{n}", draw(st.integers(20, 60)), 9, draw(st.sampled_from([None, None, 1, 2, 3])),
            draw(st.sampled_from([0, 2, 3, 5])), Trim(*draw(st.sampled_from([(0, 0), (2, 1)]))),
        )
        for n in range(draw(st.integers(1, 3)))
    ]  # fmt: skip
    lengths = draw(st.lists(st.integers(4, 30), max_size=7))
    parts = [PartDemand(f"p{n}", length, 9) for n, length in enumerate(lengths)]
    return board_problem("mm", kerf, stock, parts)


@st.composite
def shops(draw: st.DrawFn) -> Limits:
    """Limits of all kinds, in the sizes of `problems`."""
    reach = st.sampled_from([None, 0, 15, 30])
    small = st.sampled_from([0, 5, 12])
    return Limits(
        rip_capacity=draw(reach),
        crosscut_capacity=draw(reach),
        straightedge=draw(reach),
        lift_area=draw(st.sampled_from([None, 300, 1000])),
        narrowest_rip=draw(small),
        shortest_on_fence=draw(small),
        longest_on_sled=draw(reach),
    )
