"""`layout`: what the free widths of each run could be, and accepting an answer."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

from casewright.cli.commands import tell_rescue
from casewright.cli.exits import BAD_INPUT, CLEAN, OPEN
from casewright.cli.printing import print_lines
from casewright.cli.progress import working
from casewright.job.layouts import RunLayout, accepted, layouts
from casewright.job.load import load_job
from casewright.job.recorded import Use, read_record
from casewright.job.saving import save
from casewright.layout.conflicts import LayoutConflict
from casewright.room.build import build

__all__ = ["run_layout"]


def run_layout(job: Path, run: str | None, accept: int | None, use: Use | None = None) -> int:
    """`layout`: up to five answers a run; `--accept N`: one of them written into the file."""
    loaded, recorded = load_job(job), read_record(job, use)
    tell_rescue(recorded.rescue)
    with working("filling the walls"):
        found = list(layouts(build(loaded.spec, recorded.facts)))
    if run is not None:
        found = [each for each in found if each.key == run]
    if not found:
        print("No run closes against a wall and has a case whose width is left open.")
        return CLEAN
    if accept is None:
        print_lines(line for each in found for line in _lines(each))
        return OPEN if any(not each.answers for each in found) else CLEAN
    if len(found) > 1:
        names = ", ".join(each.key for each in found)
        print(f"Say of which run: --run with one of {names}.", file=sys.stderr)
        return BAD_INPUT
    if not 1 <= accept <= len(found[0].answers):
        print(f"There are {len(found[0].answers)} answers, no {accept}.", file=sys.stderr)
        return BAD_INPUT
    save(loaded, accepted(loaded.file.text, found[0], accept))
    print(f"Answer {accept} is written into {job}.")
    return CLEAN


def _lines(run: RunLayout) -> Iterator[str]:
    yield f"{run.title}:"
    for number, answer in enumerate(run.answers, start=1):
        layout = answer.layout
        widths = zip(run.cases, layout.widths, strict=True)
        sizes = ", ".join(f"{key} {run.text(width)}" for key, width in widths)
        yield f"  {number}  {sizes}"
        yield f"     {'; '.join(answer.trade)}"
    if len(run.answers) == 1 and run.answers[0].layout.is_proved:
        yield "     no answer of another kind"
    for conflict in run.conflicts:
        yield f"  STOP  {_conflict(run, conflict)}"
        for relief in conflict.reliefs:
            what = {"wall": "the wall", "place": relief.key}.get(relief.of, f"the {relief.of}")
            way = "longer" if (relief.of == "wall") == (relief.steps > 0) else "narrower"
            way = "wider" if relief.of != "wall" and relief.steps < 0 else way
            way = "shorter" if relief.of == "wall" and relief.steps < 0 else way
            yield f"        - {what} {run.text(abs(relief.steps))} {way}"


def _conflict(run: RunLayout, conflict: LayoutConflict) -> str:
    room = run.text(conflict.end - conflict.start)
    if conflict.short > 0:
        least = run.text(conflict.end - conflict.start + conflict.short)
        return f"at least {least} is needed, {room} is there: {run.text(conflict.short)} short"
    most = run.text(conflict.end - conflict.start + conflict.short)
    return f"at most {most} can be filled, {room} is there: {run.text(-conflict.short)} left over"
