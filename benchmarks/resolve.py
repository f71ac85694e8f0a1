"""What a reading costs to follow up, in a room of 40 cases.

Run with `python benchmarks/resolve.py`. Every row stands beside a full build of the same room,
timed in the same run, and beside the fifth of a second in which an answer feels immediate.
"""

from __future__ import annotations

import platform
from collections.abc import Mapping
from fractions import Fraction
from functools import partial

from room import CASES, job_text, timed

from casewright.dims import Origin
from casewright.facts import Fact
from casewright.job.collector import collector_at_rest
from casewright.job.load import read_job
from casewright.resolve import propose
from casewright.room.build import build
from casewright.room.model import Room
from casewright.room.specs import JobSpec

_TARGET_S = 0.2
_READINGS: Mapping[str, tuple[str, Fraction]] = {
    "width of one box": ("case_7.width", Fraction(3)),
    "thickness of the sheets": ("stock.plywood.thickness", Fraction(-1, 2)),
}


def _followed(spec: JobSpec, before: Room, path: str, off: Fraction) -> int:
    """How many pieces are to be made otherwise."""
    value = before.chain.nodes[path].value + off
    with collector_at_rest():
        facts = {path: Fact(Origin("measured", "tape"), built=value)}
        after = build(spec, facts, designed=before.designed)
        return len(propose(before, after).changes)


def _built(spec: JobSpec) -> Room:
    with collector_at_rest():
        return build(spec)


def main() -> None:
    """Print the table."""
    spec = read_job(job_text(CASES), "room.toml")
    full, before = timed(lambda: _built(spec))
    print(f"Python {platform.python_version()}, {CASES} cases, {len(before.parts)} pieces")
    print(f"{'':34}{'cold s':>8}{'warm s':>8}{'x build':>9}{'x 0.2 s':>9}")
    print(f"{'full build':<34}{full.cold:>8.3f}{full.warm:>8.3f}")
    for what, (path, off) in _READINGS.items():
        took, count = timed(partial(_followed, spec, before, path, off))
        ratios = f"{took.warm / full.warm:>9.2f}{took.warm / _TARGET_S:>9.2f}"
        print(f"{what:<34}{took.cold:>8.3f}{took.warm:>8.3f}{ratios}  {count} pieces otherwise")


if __name__ == "__main__":
    main()
