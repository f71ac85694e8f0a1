"""Boards cut to length: published classes of one-dimensional instances, with fixed seeds.

Run with `python benchmarks/boards.py [--each N]`. Uniform and triplet classes: Falkenauer 1996;
the others: Scholl, Klein and Jürgens 1997, sets 1 to 3. A plan is proved when it meets our bound;
the peer is first fit of the longest first.
"""

from __future__ import annotations

import argparse
import random  # noqa: TID251 - seeded by name, count and number
import time
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

from casewright.cutting import PartDemand, StockItem, board_problem, solve_boards, verify

Lengths = tuple[int, list[int]]
"""Length of the boards, and of the pieces."""


def uniform(rng: random.Random, count: int) -> Lengths:
    """Boards of 150, pieces of 20 to 100."""
    return 150, [rng.randint(20, 100) for _ in range(count)]


def triplets(rng: random.Random, count: int) -> Lengths:
    """Boards of 1000, each filled exactly by three pieces, the first of 380 to 490."""
    pieces: list[int] = []
    for _ in range(count // 3):
        first = rng.randint(380, 490)
        second = rng.randint(250, (1000 - first) // 2)
        pieces += [first, second, 1000 - first - second]
    return 1000, pieces


def scattered(rng: random.Random, count: int) -> Lengths:
    """Set 1: boards of 100, 120 or 150, pieces from 1, 20 or 30 to 100."""
    low = rng.choice((1, 20, 30))
    return rng.choice((100, 120, 150)), [rng.randint(low, 100) for _ in range(count)]


def around(rng: random.Random, count: int) -> Lengths:
    """Set 2: boards of 1000, pieces around a third to a ninth of it, 20, 50 or 90 % about."""
    mean, spread = 1000 // rng.choice((3, 5, 7, 9)), rng.choice((20, 50, 90))
    low, high = mean * (100 - spread) // 100, mean * (100 + spread) // 100
    return 1000, [rng.randint(low, high) for _ in range(count)]


def large(rng: random.Random, _: int) -> Lengths:
    """Set 3: boards of 100000, 200 pieces of 20000 to 35000."""
    return 100_000, [rng.randint(20_000, 35_000) for _ in range(200)]


CLASSES: dict[str, tuple[Callable[[random.Random, int], Lengths], tuple[int, ...]]] = {
    "uniform": (uniform, (120, 250, 500)),
    "triplets": (triplets, (60, 120, 249)),
    "set 1": (scattered, (50, 100, 200, 500)),
    "set 2": (around, (50, 100, 200, 500)),
    "set 3": (large, (200,)),
}


@dataclass(slots=True)
class Tally:
    """Sums over the instances of a class."""

    boards: int = 0
    bound: int = 0
    proved: int = 0
    first_fit: int = 0
    seconds: list[float] = field(default_factory=list)


def first_fit(length: int, pieces: list[int]) -> int:
    """Boards when each piece, longest first, goes into the first board with room."""
    rooms: list[int] = []
    for piece in sorted(pieces, reverse=True):
        place = next((n for n, room in enumerate(rooms) if room >= piece), None)
        if place is None:
            rooms.append(length - piece)
        else:
            rooms[place] -= piece
    return len(rooms)


def run(length: int, pieces: list[int], tally: Tally) -> None:
    """Solve one instance and verify the plan."""
    parts = [PartDemand(str(size), size, 10, n) for size, n in sorted(Counter(pieces).items())]
    problem = board_problem("1", 0, [StockItem("board", length, 10)], parts)
    start = time.perf_counter()
    solution = solve_boards(problem)
    tally.seconds.append(time.perf_counter() - start)
    wrong = verify(problem, solution)
    assert not wrong, wrong
    tally.boards += solution.cost
    tally.bound += solution.bound.value
    tally.proved += solution.gap == 0
    tally.first_fit += first_fit(length, pieces)


def rows(each: int) -> Iterator[tuple[str, Tally]]:
    """A tally for each class and number of pieces, and one for all."""
    total = Tally()
    for name, (make, counts) in CLASSES.items():
        for count in counts:
            tally = Tally()
            for number in range(each):
                rng = random.Random(f"{name} {count} {number}")  # noqa: S311 - for sizes only
                run(*make(rng, count), tally)
            yield f"{name}, {count}", tally
            for key in ("boards", "bound", "proved", "first_fit"):
                setattr(total, key, getattr(total, key) + getattr(tally, key))
            total.seconds += tally.seconds
    yield "all", total


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--each", type=int, default=28, help="instances of each class and size")
    options = parser.parse_args()
    print("class           instances  boards   bound  ratio  proved  first fit  mean s  most s")
    for name, tally in rows(options.each):
        print(
            f"{name:<15} {len(tally.seconds):>9} {tally.boards:>7} {tally.bound:>7}"
            f" {tally.boards / tally.bound:>6.4f} {tally.proved / len(tally.seconds):>7.1%}"
            f" {tally.first_fit / tally.boards:>10.4f}"
            f" {sum(tally.seconds) / len(tally.seconds):>7.2f} {max(tally.seconds):>7.2f}"
        )


if __name__ == "__main__":
    main()
