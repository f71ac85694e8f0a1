"""The chain of dimensions against the same arithmetic on bare fractions, in one run.

Run with `python benchmarks/chain.py`. Both sides lay out the same row of cases and add up the
same sizes; the chain besides names its numbers, keeps their formulas and looks up facts.
The target is a ratio of 4 at most for 50,000 nodes built and read.
"""

from __future__ import annotations

import gc
import platform
import time
import tracemalloc
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import Cause, Chain, Dim, Origin, slack, total
from casewright.facts import Fact

TARGET = 4
SIZES = (5_000, 50_000, 500_000)
ROUNDS = 5

INCH = Fraction(127, 5)
FACE, THICKNESS, REVEAL, GAP = 36 * INCH, Fraction(178, 10), INCH / 16, INCH / 8
CHOSEN = Origin("chosen", "benchmark")
SAW = Cause("saw", Fraction(1, 10), Fraction(3, 10))
Facts = Mapping[str, Fact]


@dataclass(frozen=True, slots=True)
class Timing:
    """First and best time of several rounds [s]."""

    cold: float
    warm: float


def bare_case(number: int) -> tuple[Fraction, ...]:
    """Sizes of one case, its doors and the play between them, as plain numbers."""
    width = FACE + number
    clear = width - 2 * THICKNESS
    shelf = clear - 2 * REVEAL
    left = (width - 2 * REVEAL - GAP) / 2
    right = (width - 2 * REVEAL - GAP) / 2
    real = THICKNESS + clear + THICKNESS
    play = real - left - right - 2 * REVEAL
    return width, clear, shelf, left, right, real, play


def chained_case(chain: Chain, number: int) -> tuple[Dim, ...]:
    """The same case on the chain: sizes named, parts made, the play between real things."""
    place = chain.place(f"case_{number}")
    width = place.enter("width", FACE + number, CHOSEN)
    thickness = place.enter("thickness", THICKNESS, CHOSEN)
    reveal = place.enter("reveal", REVEAL, CHOSEN)
    gap = place.enter("gap", GAP, CHOSEN)
    clear = place.made("bottom", width - 2 * thickness, (SAW,))
    shelf = place.made("shelf", clear - 2 * reveal, (SAW,))
    left = place.made("left", (width - 2 * reveal - gap) / 2, (SAW,))
    right = place.made("right", (width - 2 * reveal - gap) / 2, (SAW,))
    real = place.follows("real", total(thickness, clear, thickness))
    play = place.let("play", real - left - right - 2 * reveal)
    return width, clear, shelf, left, right, real, play


def timed(work: Callable[[], object]) -> Timing:
    """How long the work takes."""
    seconds = []
    for _ in range(ROUNDS):
        gc.collect()
        start = time.perf_counter()
        work()
        seconds.append(time.perf_counter() - start)
    return Timing(seconds[0], min(seconds))


def nodes_per_case() -> int:
    """Dims made for one case, steps inside formulas included."""
    found: set[int] = set()
    todo = list(chained_case(Chain(), 0))
    while todo:
        node = todo.pop()
        if id(node) not in found:
            found.add(id(node))
            todo.extend(arg for arg in node.args if isinstance(arg, Dim))
    return len(found)


def read_bare(cases: int) -> Fraction:
    """Lay out the row and add up what is read."""
    return sum((size for n in range(cases) for size in bare_case(n)), Fraction(0))


def read_chain(cases: int, facts: Facts) -> Fraction:
    """The same on the chain."""
    chain = Chain(facts)
    return sum((dim.value for n in range(cases) for dim in chained_case(chain, n)), Fraction(0))


def facts_for(cases: int) -> Facts:
    """Every bottom cut to its number, so that no value changes."""
    origin = Origin("made", "table saw")
    return {f"case_{n}.bottom": Fact(origin, cut=FACE + n - 2 * THICKNESS) for n in range(cases)}


def bytes_per_node(cases: int, nodes: int) -> float:
    """Memory that a node of the chain holds [bytes]."""
    tracemalloc.start()
    chain = Chain()
    for number in range(cases):
        chained_case(chain, number)
    held, _ = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    return held / nodes


def slack_time(cases: int) -> Timing:
    """Slack of every case's play, the chain being there."""
    chain = Chain()
    plays = [chained_case(chain, number)[-1] for number in range(cases)]
    return timed(lambda: [slack(play) for play in plays])


def report(size: int, per_case: int) -> None:
    """Print the rows for one size of chain."""
    cases = size // per_case
    facts = facts_for(cases)
    if read_bare(cases) != read_chain(cases, facts):
        msg = "the chain and the bare arithmetic disagree"
        raise SystemExit(msg)
    bare = timed(lambda: read_bare(cases))
    rows = (
        ("built and read", timed(lambda: read_chain(cases, {}))),
        ("with a fact in every case", timed(lambda: read_chain(cases, facts))),
        ("slack of every case", slack_time(cases)),
    )
    print(f"{size:>8,}  {'bare fractions':<26}{bare.cold:>8.3f}{bare.warm:>8.3f}{1:>7.2f}")
    for what, took in rows:
        ratio = took.warm / bare.warm
        print(f"{size:>8,}  {what:<26}{took.cold:>8.3f}{took.warm:>8.3f}{ratio:>7.2f}")


def main() -> None:
    """Print the table."""
    per_case = nodes_per_case()
    print(f"Python {platform.python_version()}, {platform.machine()}; {per_case} nodes a case")
    print(f"{'nodes':>8}  {'what':<26}{'cold s':>8}{'warm s':>8}{'ratio':>7}")
    for size in SIZES:
        report(size, per_case)
    cases = SIZES[1] // per_case
    print(f"{bytes_per_node(cases, cases * per_case):.0f} bytes a node; target: built and read,")
    print(f"{SIZES[1]:,} nodes, at most {TARGET} times the bare arithmetic")


if __name__ == "__main__":
    main()
