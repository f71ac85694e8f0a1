"""The examples, from their job files to the proven model, and what their checks cost.

Run with `python benchmarks/galleries.py`. Each row has the time from the file to the proven model
beside the target, and the time of all checks beside that of the build in the same run. Times are
the processor's. The room of 40 cases that the target is for comes first, as a yardstick: other
work on the machine makes all rows longer alike.
"""

from __future__ import annotations

import platform
import tempfile
import time
from collections import defaultdict
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path

from room import CASES, MODEL_TARGET, forget, job_text, prove

from casewright.checks import RULES, check
from casewright.job.collector import collector_at_rest
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
        with collector_at_rest():  # as every command works
            begun = time.process_time()
            work()
            best.append(time.process_time() - begun)
    return min(best)


def _worked(file: Path) -> object:
    return work_out(load_job(file).spec)


def rows(rules: dict[str, float]) -> Iterator[str]:
    """One line for each example; what each rule took is added up."""
    for file in (_room(), *sorted(EXAMPLES.glob("*.toml"))):
        spec = load_job(file).spec
        room = build(spec)
        whole = took(partial(_worked, file))
        built, proved = took(partial(build, spec)), took(partial(prove, room))
        checked = took(partial(check, room))
        _add(rules, room)
        yield (
            f"{file.stem:<22}{len(room.cases):>6}{len(room.parts):>7}{whole:>9.3f}"
            f"{whole / MODEL_TARGET:>9.2f}{built:>8.3f}{proved:>8.3f}{checked:>8.3f}"
            f"{checked / built:>9.2f}"
        )


def _room() -> Path:
    """The room that the target is for, as a yardstick of this machine."""
    file = Path(tempfile.mkdtemp()) / f"room_of_{CASES}.toml"
    file.write_text(job_text(CASES), "utf-8")
    return file


def _add(rules: dict[str, float], room: Room) -> None:
    for rule in RULES:
        begun = time.process_time()
        list(rule.findings(room))
        rules[rule.name] += time.process_time() - begun


def main() -> None:
    """Print both tables."""
    print(f"Python {platform.python_version()}, {platform.machine()}")
    print(f"{'example':<22}{'cases':>6}{'parts':>7}{'model s':>9}{'/ target':>9}{'build':>8}"
          f"{'proof':>8}{'check':>8}{'/ build':>9}")  # fmt: skip
    rules: dict[str, float] = defaultdict(float)
    for row in rows(rules):
        print(row)
    print(f"target: {MODEL_TARGET} s from the file to the proven model of a room of 40 cases")
    whole = sum(rules.values())
    dearest = sorted(rules.items(), key=lambda each: -each[1])[:_DEAREST]
    dear = ", ".join(f"{name} {took / whole:.0%}" for name, took in dearest)
    print(f"of {whole:.3f} s for {len(RULES)} rules over all examples: {dear}")


if __name__ == "__main__":
    main()
