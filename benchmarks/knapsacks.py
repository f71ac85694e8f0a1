"""The most valuable sheet by the pricing of the bounds, against the optimum of guillotine cutting.

Run with `python benchmarks/knapsacks.py`. The instances gcut1 to gcut12 are those of Beasley 1985,
read from `../shared/benchmarks` beside the repository; each part may be cut as often as one likes.
The optimum for any number of stages is worked out by the recursion of Gilmore and Gomory 1966.
Pricing takes three stages, the first cut along or across the sheet.
"""

from __future__ import annotations

import json
import time
from functools import cache

from cutting import DATA

from casewright.cutting.pricing import Pricing
from casewright.cutting.shapes import Bin, Shape, Task

Item = tuple[int, int, int]
"""Length, width, value."""


def priced(sheet: tuple[int, int], items: list[Item], *, across: bool) -> int:
    """The value of the best sheet in three stages; `across`: the first cut runs the other way."""
    length, width = sheet
    shapes = [
        Shape(*((w, h) if across else (h, w)), (length // h) * (width // w), False)
        for h, w, _ in items
    ]
    bins = (Bin(0, *((width, length) if across else (length, width))),)
    task = Task(bins, tuple(shapes), 0, True)
    return Pricing(task).best([value for *_, value in items])[0][0]


def sums(sizes: list[int], most: int) -> list[int]:
    """Lengths that some sizes add up to, where cuts may lie."""
    found = {0}
    for at in range(1, most + 1):
        if any(at - size in found for size in sizes):
            found.add(at)
    return sorted(found)


def optimum(sheet: tuple[int, int], items: list[Item]) -> int:
    """The most valuable sheet by guillotine cuts in any number of stages."""
    along = sums([item[0] for item in items], sheet[0])
    across = sums([item[1] for item in items], sheet[1])

    @cache
    def best(length: int, width: int) -> int:
        whole = max((v for h, w, v in items if h <= length and w <= width), default=0)
        crosscut = max(
            (best(a, width) + best(length - a, width) for a in along if 0 < a <= length // 2),
            default=0,
        )
        rip = max(
            (best(length, a) + best(length, width - a) for a in across if 0 < a <= width // 2),
            default=0,
        )
        return max(whole, crosscut, rip)

    return best(*sheet)


def main() -> None:
    """Print the table."""
    file = DATA / "guillotine_knapsack.jsonl"
    if not file.exists():
        print(f"The public instances are absent: {file.parent.name}/{file.name}")
        return
    print("instance  parts  optimum  along  across  ratio      s")
    for line in file.read_text("utf-8").splitlines():
        row = json.loads(line)
        name, sheet = row["name"], (row["W"], row["H"])
        if not name.startswith("gcut") or name == "gcut13":
            continue
        items = [(w, h, value) for w, h, _, value in row["items"]]
        start = time.process_time()
        along, across = (priced(sheet, items, across=way) for way in (False, True))
        spent = time.process_time() - start
        known = optimum(sheet, items)
        print(
            f"{name:<8} {len(items):>6} {known:>8} {along:>6} {across:>7}"
            f" {max(along, across) / known:>6.4f} {spent:>6.2f}",
            flush=True,
        )


if __name__ == "__main__":
    main()
