"""Sheets for public two-dimensional bin packing instances, against the best known and our bound.

Run with `python benchmarks/cutting.py [--instances N] [--seconds S] [--nodes N] [--library]`. Each
search ends after so many seconds of the processor, or after so many places tried; the seconds told
are of the processor too, so that others at work on the machine do not count. The instances are
those of Berkey and Wang 1987 (classes 1 to 6) and of Martello and Vigo 1998 (classes 7 to 10),
read from `../shared/benchmarks` beside the repository; they are not part of it. Best known:
three-stage guillotine cutting, grain fixed (O) or parts free to turn (R). With `--library` each is
also packed by the general-purpose library rectpack (to be installed beside), with all its 108
guillotine settings that do not merge what is left; the best of them counts.
"""

from __future__ import annotations

import argparse
import csv
import json
import time
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import partialmethod
from pathlib import Path
from typing import Any

from casewright.cutting import PartDemand, Problem, Status, StockItem, Stop, solve, verify

DATA = Path(__file__).resolve().parents[2] / "shared" / "benchmarks"
INSTANCES = DATA / "two_dimensional_bins.jsonl"
BEST_KNOWN = DATA / "two_dimensional_bins_best_known.csv"
COLUMNS = {"R": "bk_3stage_R_G", "O": "bk_3stage_O_G"}


@dataclass(slots=True)
class Tally:
    """Sums over some instances."""

    instances: int = 0
    bins: int = 0
    best: int = 0
    bound: int = 0
    proved: int = 0
    seconds: list[float] = field(default_factory=list)
    library: int = 0
    worse: int = 0

    def add(self, other: Tally) -> None:
        """Add the sums of others."""
        self.instances += other.instances
        self.bins += other.bins
        self.best += other.best
        self.bound += other.bound
        self.proved += other.proved
        self.library += other.library
        self.worse += other.worse
        self.seconds += other.seconds


def problem_of(row: dict[str, Any], *, rotate: bool) -> Problem:
    """An instance as a cutting problem in three stages without a kerf."""
    parts = tuple(
        PartDemand(f"p{n}", length, width, count, rotate)
        for n, (length, width, count) in enumerate(row["items"])
    )
    return Problem("1", 0, 3, (StockItem("bin", row["W"], row["H"]),), parts)


def run(row: dict[str, Any], best: int, options: argparse.Namespace, *, rotate: bool) -> Tally:
    """One instance, solved and verified."""
    problem = problem_of(row, rotate=rotate)
    start = time.process_time()
    end = start + options.seconds
    solution = solve(problem, Stop(options.nodes, lambda: time.process_time() > end))
    seconds = time.process_time() - start
    violations = verify(problem, solution)
    assert not violations, (row["name"], violations)
    proved = solution.status is Status.PROVED
    return Tally(1, solution.cost, best, solution.bound.value, proved, [seconds])


def library_bins(row: dict[str, Any], *, rotate: bool) -> int:
    """Fewest bins of the packing library over its guillotine settings."""
    import rectpack  # only where it is asked for

    sorts = [
        getattr(rectpack, f"SORT_{n}") for n in ("AREA", "PERI", "DIFF", "SSIDE", "LSIDE", "RATIO")
    ]
    kinds = [getattr(rectpack, name) for name in dir(rectpack) if name.startswith("Guillotine")]
    best: int | None = None
    for kind in kinds:
        apart = type(
            kind.__name__, (kind,), {"__init__": partialmethod(kind.__init__, merge=False)}
        )
        for sort in sorts:
            packer = rectpack.newPacker(
                rectpack.PackingMode.Offline, rectpack.PackingBin.BBF, apart, sort, rotate
            )
            for length, width, count in row["items"]:
                for _ in range(count):
                    packer.add_rect(length, width)
            packer.add_bin(row["W"], row["H"], count=float("inf"))
            packer.pack()
            best = len(packer) if best is None else min(best, len(packer))
    assert best is not None
    return best


def lines(sums: dict[str, Tally]) -> Iterator[str]:
    """The table."""
    yield (
        "class    instances   bins  best known  ratio   bound  ratio  proved  mean s  most s"
        "  library  worse"
    )
    for name, tally in sums.items():
        mean = sum(tally.seconds) / tally.instances
        peer = f"{tally.library:>8} {tally.worse:>6}" if tally.library else "       -      -"
        yield (
            f"{name:<8} {tally.instances:>9} {tally.bins:>6} {tally.best:>11}"
            f" {tally.bins / tally.best:>6.4f} {tally.bound:>7}"
            f" {tally.bins / tally.bound:>6.4f} {tally.proved / tally.instances:>6.0%}"
            f" {mean:>7.2f} {max(tally.seconds):>7.2f} {peer}"
        )


def main() -> None:
    """Print one table for each kind of grain."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--instances", type=int, default=None, help="solve only so many, spread")
    parser.add_argument("--seconds", type=float, default=5, help="time for each instance")
    parser.add_argument("--nodes", type=int, default=5_000_000, help="work for each instance")
    parser.add_argument("--grain", choices=sorted(COLUMNS), help="free to turn (R) or fixed (O)")
    parser.add_argument("--library", action="store_true", help="compare with rectpack")
    options = parser.parse_args()
    if not INSTANCES.exists():
        print(f"The public instances are absent: {INSTANCES.parent.name}/{INSTANCES.name}")
        return
    rows = [json.loads(line) for line in INSTANCES.read_text("utf-8").splitlines()]
    count = len(rows) if options.instances is None else min(len(rows), options.instances)
    rows = [rows[n * len(rows) // count] for n in range(count)]
    with BEST_KNOWN.open(encoding="utf-8") as file:
        known = {row["name"]: row for row in csv.DictReader(file)}
    for grain, column in COLUMNS.items():
        if options.grain not in (None, grain):
            continue
        sums: dict[str, Tally] = defaultdict(Tally)
        for row in rows:
            best = int(known[row["name"]][column])
            tally = run(row, best, options, rotate=grain == "R")
            if options.library:
                tally.library = library_bins(row, rotate=grain == "R")
                tally.worse = int(tally.bins > tally.library)
            sums[f"{grain} {row['cls']}"].add(tally)
        total = Tally()
        for tally in sums.values():
            total.add(tally)
        print("\n".join(lines({**sums, f"{grain} all": total})), end="\n\n")


if __name__ == "__main__":
    main()
