"""Other ways to cut public two-dimensional instances: two stages, any number, defects, offcuts.

Run with `python benchmarks/variants.py [--instances N] [--seconds S] [--nodes N]`. The instances
are those of `cutting.py`, spread over all classes. Two-stage plans stand beside the best known in
three stages, free ones beside the best known of any packing; of these it is told how many are cut
in more than four stages, and how deep the deepest goes. Where there are offcuts, six of them,
each once and at a fifth of the price of their area, or two sheets with a defect of a tenth by a
tenth of them and at half price, money is counted, a whole sheet costing 1,000. Seconds are of the
processor.
"""

from __future__ import annotations

import argparse
import csv
import json
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Any

from cutting import BEST_KNOWN, INSTANCES, problem_of

from casewright.cutting import (
    Defect,
    Node,
    Problem,
    Solution,
    Split,
    Status,
    StockItem,
    Stop,
    solve,
    verify,
)

_MANY = 5
"""Four stages and a trim: plans whose cuts change direction oftener are counted as deep."""

_OFFCUTS = ((2, 1), (1, 2), (2, 2), (3, 1), (1, 3), (3, 2))
"""By how much the length and the width of a sheet are divided."""


def _two(problem: Problem) -> Problem:
    return replace(problem, stages=2)


def _free(problem: Problem) -> Problem:
    return replace(problem, stages=None)


def _defects(problem: Problem) -> Problem:
    """The defect lies where most parts can still be cut: right of a third, above a half."""
    sheet = replace(problem.stock[0], price=1_000)
    size = max(1, sheet.length // 10), max(1, sheet.width // 10)
    spot = Defect(sheet.length // 3, sheet.width // 2, *size)
    return replace(
        problem, stock=(replace(sheet, id="knotty", count=2, price=500, defects=(spot,)), sheet)
    )


def _free_defects(problem: Problem) -> Problem:
    return _free(_defects(problem))


def _offcuts(problem: Problem) -> Problem:
    sheet = replace(problem.stock[0], price=1_000)
    stock = [
        StockItem(f"offcut{n}", sheet.length // a, sheet.width // b, 1, 200 // (a * b))
        for n, (a, b) in enumerate(_OFFCUTS)
    ]
    return replace(problem, stock=(*stock, sheet))


@dataclass(frozen=True, slots=True)
class Variant:
    """What is changed of an instance, and the best known number that it stands beside."""

    name: str
    change: Callable[[Problem], Problem]
    beside: str


VARIANTS = (
    Variant("two stages", _two, "bk_3stage_{}_G"),
    Variant("free", _free, "bk_2BP_{}_F"),
    Variant("defects", _defects, ""),
    Variant("free, defects", _free_defects, ""),
    Variant("offcuts", _offcuts, ""),
)


def timed(problem: Problem, options: argparse.Namespace) -> tuple[float, Solution]:
    """Seconds of the processor, and the plan."""
    start = time.process_time()
    stop = Stop(options.nodes, lambda: time.process_time() > start + options.seconds)
    solution = solve(problem, stop)
    return time.process_time() - start, solution


def depth(node: Node) -> int:
    """How often the cuts to a piece change direction, plus one; a last trim counts too."""
    if not isinstance(node, Split):
        return 0
    return 1 + max(
        depth(piece)
        for piece in node.pieces
        if isinstance(piece, Split) or piece.use == "part"
    )  # fmt: skip


def lines(
    rows: list[dict[str, Any]], known: dict[str, dict[str, str]], options: argparse.Namespace
) -> Iterator[str]:
    """The table."""
    yield (
        "variant          instances    cost   bound  ratio  proved  beside  ratio  mean s  most s"
        "  deep  deepest"
    )
    for variant in VARIANTS:
        for grain in "RO":
            cost = bound = proved = beside = 0
            depths: list[int] = []
            seconds: list[float] = []
            for row in rows:
                problem = variant.change(problem_of(row, rotate=grain == "R"))
                spent, solution = timed(problem, options)
                seconds.append(spent)
                assert not verify(problem, solution), row["name"]
                assert not solution.unplaced, row["name"]
                cost, bound = cost + solution.cost, bound + solution.bound.value
                proved += solution.status is Status.PROVED
                depths.append(max(depth(tree.root) for tree in solution.tree))
                if variant.beside:
                    beside += int(known[row["name"]][variant.beside.format(grain)])
            peer = f"{beside:>7} {cost / beside:>6.4f}" if beside else "      -      -"
            yield (
                f"{variant.name + ' ' + grain:<16} {len(rows):>9} {cost:>7} {bound:>7}"
                f" {cost / bound:>6.4f} {proved / len(rows):>7.0%} {peer}"
                f" {sum(seconds) / len(rows):>7.2f} {max(seconds):>7.2f}"
                f" {sum(n > _MANY for n in depths):>5} {max(depths):>7}"
            )


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--instances", type=int, default=25, help="how many, spread")
    parser.add_argument("--seconds", type=float, default=5, help="time for each instance")
    parser.add_argument("--nodes", type=int, default=1_000_000, help="work for each instance")
    options = parser.parse_args()
    if not INSTANCES.exists():
        print(f"The public instances are absent: {INSTANCES.parent.name}/{INSTANCES.name}")
        return
    rows = [json.loads(line) for line in INSTANCES.read_text("utf-8").splitlines()]
    count = min(len(rows), options.instances)
    rows = [rows[n * len(rows) // count] for n in range(count)]
    with BEST_KNOWN.open(encoding="utf-8") as file:
        known = {row["name"]: row for row in csv.DictReader(file)}
    for line in lines(rows, known, options):
        print(line, flush=True)


if __name__ == "__main__":
    main()
