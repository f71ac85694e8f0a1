"""The examples, from their job files to the proven model, and what their checks cost.

Run with `python benchmarks/galleries.py`. Each row has the time from the file to the proven model
beside the target of a room of 40 cases, and the time of all checks beside that of the build in the
same run. Times are the processor's, so that other work on the machine counts little.
"""

from __future__ import annotations

import platform
import time
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path

from room import MODEL_TARGET, forget, prove

from casewright.checks import RULES, check
from casewright.job.load import load_job
from casewright.job.worked import work_out
from casewright.room.build import build
from casewright.room.model import Room

EXAMPLES = Path(__file__).parent.parent / "examples"
ROUNDS = 5
_DEAREST = 6


def took(work: Callable[[], object]) -> float:
    """The least of some rounds, nothing of an earlier one kept [s of the processor]."""
    best = []
    for _ in range(ROUNDS):
        forget()
        begun = time.process_time()
        work()
        best.append(time.process_time() - begun)
    return min(best)


def rows(rules: Counter[str]) -> Iterator[str]:
    """One line for each example; what each rule took is added up."""
    for file in sorted(EXAMPLES.glob("*.toml")):
        spec = load_job(file).spec
        room = build(spec)
        whole = took(lambda file=file: work_out(load_job(file).spec))
        built, proved = took(lambda spec=spec: build(spec)), took(lambda room=room: prove(room))
        checked = took(lambda room=room: check(room))
        _add(rules, room)
        yield (
            f"{file.stem:<22}{len(room.cases):>6}{len(room.parts):>7}{whole:>9.3f}"
            f"{whole / MODEL_TARGET:>9.2f}{built:>8.3f}{proved:>8.3f}{checked:>8.3f}"
            f"{checked / built:>9.2f}"
        )


def _add(rules: Counter[str], room: Room) -> None:
    for rule in RULES:
        begun = time.process_time()
        list(rule.findings(room))
        rules[rule.name] += time.process_time() - begun


def main() -> None:
    """Print both tables."""
    print(f"Python {platform.python_version()}, {platform.machine()}")
    print(f"{'example':<22}{'cases':>6}{'parts':>7}{'model s':>9}{'/ target':>9}{'build':>8}"
          f"{'proof':>8}{'check':>8}{'/ build':>9}")  # fmt: skip
    rules: Counter[str] = Counter()
    for row in rows(rules):
        print(row)
    print(f"target: {MODEL_TARGET} s from the file to the proven model of a room of 40 cases")
    whole = sum(rules.values())
    dear = ", ".join(f"{name} {took / whole:.0%}" for name, took in rules.most_common(_DEAREST))
    print(f"of {whole:.3f} s for {len(RULES)} rules over all examples: {dear}")


if __name__ == "__main__":
    main()
