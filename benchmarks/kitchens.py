"""Cutting problems like those of a room: the boxes of bases, uppers and pantries of 3/4 in sheet.

Sizes are in 1/32 in; the widths are drawn with a seed, the constructions are plain: two sides, a
bottom and a top or two stretchers, shelves, a nailer. Nothing here comes from the model of the
casework, so that the engine can be measured without it.
"""

from __future__ import annotations

import random  # noqa: TID251 - seeded by the caller
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace

from casewright.cutting import Keep, Limits, Load, PartDemand, Problem, StockItem, Trim

INCH = 32
WIDTHS = (12, 15, 18, 21, 24, 27, 30, 33, 36)
SQUARE_FOOT = (12 * INCH) ** 2

LIMITS = Limits(
    rip_capacity=30 * INCH,
    crosscut_capacity=25 * INCH,
    straightedge=100 * INCH,
    lift_area=20 * SQUARE_FOOT,
    narrowest_rip=2 * INCH,
    shortest_on_fence=8 * INCH,
    longest_on_sled=60 * INCH,
)
"""A table saw of 30 in, a sled of 25 in; one person handles about 20 kg of 3/4 in plywood."""

LOAD = Load(full=18 * SQUARE_FOOT, half=9 * SQUARE_FOOT)
"""18 and 9 kg of 3/4 in plywood at about 1 kg to the square foot."""

_Size = tuple[int, int, bool, str]


def _base(width: int) -> Iterator[_Size]:
    inner = width * INCH - 48
    yield from [(34 * INCH + 16, 23 * INCH + 8, False, "base side")] * 2
    yield inner, 23 * INCH + 8, False, f"base bottom {width}"
    yield from [(inner, 4 * INCH, True, "")] * 2
    yield inner, 22 * INCH, False, f"base shelf {width}"


def _upper(width: int) -> Iterator[_Size]:
    inner = width * INCH - 48
    yield from [(36 * INCH, 11 * INCH + 28, False, "upper side")] * 2
    yield from [(inner, 11 * INCH + 28, False, f"upper deck {width}")] * 2
    yield from [(inner, 11 * INCH, False, f"upper shelf {width}")] * 2
    yield inner, 3 * INCH, True, ""


def _pantry(width: int) -> Iterator[_Size]:
    inner = width * INCH - 48
    yield from [(84 * INCH, 23 * INCH + 8, False, "pantry side")] * 2
    yield from [(inner, 23 * INCH + 8, False, f"pantry deck {width}")] * 3
    yield from [(inner, 22 * INCH, False, f"pantry shelf {width}")] * 4
    yield inner, 4 * INCH, True, ""


def kitchen(cases: int, seed: int, *, grouped: bool = True) -> Problem:
    """The sheet parts of so many cases: half bases, half uppers, every eighth a pantry."""
    rng = random.Random(seed)  # noqa: S311 - for sizes, not for secrets
    sizes: list[_Size] = []
    for index in range(cases):
        build = _pantry if index % 8 == 7 else (_base, _upper)[index % 2]
        sizes += build(rng.choice(WIDTHS))
    parts = tuple(
        PartDemand(f"p{n}", *size[:2], count, rotate=size[2], group=(grouped and size[3]) or None)
        for n, (size, count) in enumerate(Counter(sizes).items())
    )
    stock = StockItem("sheet", 96 * INCH, 48 * INCH, trim=Trim())
    keep = Keep(24 * INCH, 4 * INCH), Keep(12 * INCH, 12 * INCH)
    return Problem("1/32 in", 4, 3, (stock,), parts, keep)


def offcuts(problem: Problem, seed: int) -> Problem:
    """The same with a dozen offcuts of earlier work, priced by a fifth of their area's price.

    A new sheet costs 3,200 money units, so that prices stay whole.
    """
    rng = random.Random(seed)  # noqa: S311 - for sizes, not for secrets
    sheet = replace(problem.stock[0], price=3_200)
    found = []
    for number in range(12):
        length, width = rng.randint(20 * INCH, 70 * INCH), rng.randint(12 * INCH, 40 * INCH)
        price = 3_200 * length * width // (sheet.length * sheet.width) // 5
        found.append(StockItem(f"offcut{number}", length, width, 1, price, Trim()))
    return replace(problem, stock=(*found, sheet))
