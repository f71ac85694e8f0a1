"""Laying out a kitchen of three walls and 20 places: the first answer, and up to five.

Run with `python benchmarks/layout.py`. The targets: the first answer of all three walls in 1 s, up
to five of each in 10 s. The peer, on the wall it can manage, is a search of every width in turn.
"""

from __future__ import annotations

import platform
import time
from itertools import product

from casewright.layout.answers import answers
from casewright.layout.costs import cost_of
from casewright.layout.one_wall import lay_out
from casewright.layout.tasks import EndFiller, Preferences, RunPlace, WallTask

FIRST_S, FIVE_S = 1.0, 10.0
INCH = 16
FILLER = EndFiller(12, 2 * INCH, 24)
USUAL = Preferences.usual(INCH)


def case(key: str, low: int = 9, high: int = 36) -> RunPlace:
    """A case whose width is free [in]."""
    return RunPlace(key, low * INCH, high * INCH)


def opening(key: str, width: int) -> RunPlace:
    """An appliance [in]."""
    return RunPlace(key, width * INCH, width * INCH, opening=True)


def walls() -> dict[str, WallTask]:
    """The kitchen."""
    sink = RunPlace("sink", 36 * INCH, 36 * INCH, centre=2 * (72 * INCH + 5))
    rows = {
        "sink wall": (168, [case("a"), case("b"), sink, opening("dishwasher", 24), case("c"),
                            case("d"), case("e")], FILLER),
        "range wall": (172, [case("f"), case("g"), case("h"), opening("range", 30), case("i"),
                             case("j"), opening("refrigerator", 36)], None),
        "long wall": (141, [case(key) for key in "klmnop"], FILLER),
    }  # fmt: skip
    return {
        name: WallTask(width * INCH + 3, tuple(places), FILLER, right, USUAL)
        for name, (width, places, right) in rows.items()
    }


def by_force(task: WallTask) -> int:
    """Least cost over every width and filler."""
    best = None
    ends = [range(each.low, each.high + 1) if each else range(1) for each in (task.left,)]
    for left, *widths in product(*ends, *(range(p.low, p.high + 1) for p in task.places)):
        right = task.length - left - sum(widths)
        if task.right and task.right.low <= right <= task.right.high:
            cost = cost_of(task, left, widths, right)
            best = cost if best is None else min(best, cost)
    return best or 0


def main() -> None:
    """Print the table."""
    print(f"Python {platform.python_version()}, {platform.machine()}")
    print(f"{'wall':12} {'places':>6} {'first s':>8} {'proved':>6} {'answers':>7} {'all s':>7}")
    first = five = 0.0
    for name, task in walls().items():
        start = time.perf_counter()
        found = lay_out(task)
        middle = time.perf_counter()
        several = answers(task, lambda steps, _: str(steps))
        end = time.perf_counter()
        first, five = first + middle - start, five + end - middle
        proved = "yes" if found is not None and found.is_proved else "no"
        print(f"{name:12} {len(task.places):6} {middle - start:8.3f} {proved:>6} "
              f"{len(several):7} {end - middle:7.3f}")  # fmt: skip
    print(f"first answers {first:.3f} s, {first / FIRST_S:.2f} of the target")
    print(f"up to five    {five:.3f} s, {five / FIVE_S:.2f} of the target")
    small = WallTask(
        51 * INCH, (case("a", 22, 27), case("b", 22, 27)), FILLER, FILLER, USUAL
    )  # fmt: skip
    start = time.perf_counter()
    least = by_force(small)
    middle = time.perf_counter()
    found = lay_out(small)
    end = time.perf_counter()
    same = "the same" if found is not None and found.cost == least else "ANOTHER"
    ratio = (end - middle) / (middle - start)
    print(f"two cases, every width tried: {middle - start:.3f} s, {same} cost; "
          f"the model takes {ratio:.3f} of it")  # fmt: skip


if __name__ == "__main__":
    main()
