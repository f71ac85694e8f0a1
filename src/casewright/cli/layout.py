"""`layout`: what the free widths of each run could be, and accepting an answer."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

from casewright.cli.commands import tell_rescue
from casewright.cli.exits import BAD_INPUT, CLEAN, OPEN
from casewright.cli.height_texts import height_lines
from casewright.cli.printing import print_json, print_lines
from casewright.cli.progress import working
from casewright.dims import shop_text
from casewright.job.height_choices import accepted_heights
from casewright.job.heights import RoomHeights, room_heights
from casewright.job.layout_json import layout_json
from casewright.job.layouts import RunLayout, accepted, layouts
from casewright.job.load import LoadedJob, load_job
from casewright.job.recorded import Use, read_record
from casewright.job.saving import save
from casewright.layout.conflicts import Relief
from casewright.room.build import build

__all__ = ["run_layout"]

_NONE = "No run closes against a wall and has a case whose width is left open."
_NO_HEIGHTS = (
    "No heights to lay out: that takes base cases, wall cases in a run, and a level line read "
    "down to the floor and up to the ceiling."
)


def run_layout(
    job: Path,
    only: tuple[str | None, bool],
    accept: int | None,
    use: Use | None = None,
    *,
    as_json: bool,
) -> int:
    """`layout`: up to five answers a run; `--accept N`: one of them written into the file.

    Parameters
    ----------
    only
        Key of the run that is asked for, if one is; whether the heights alone are.
    """
    run, only_heights = only
    loaded, recorded = load_job(job), read_record(job, use)
    tell_rescue(recorded.rescue)
    with working("filling the walls"):
        room = build(loaded.spec, recorded.facts)
        found = [] if only_heights else list(layouts(room))
        heights = room_heights(room) if run is None else None
    if run is not None:
        found = [each for each in found if each.key == run]
    if accept is not None:
        if only_heights:
            return _accept_heights(loaded, heights, accept)
        return _accept(loaded, found, accept)
    if as_json:
        print_json(layout_json(loaded.spec, found, heights))
    elif not found and heights is None:
        print(_NO_HEIGHTS if only_heights else _NONE)
    else:
        print_lines(line for each in found for line in _lines(each))
        print_lines(height_lines(heights) if heights is not None else ())
    closed = [bool(each.answers) for each in found]
    closed += [bool(heights.answers)] if heights is not None else []
    return CLEAN if all(closed) else OPEN


def _accept(loaded: LoadedJob, found: list[RunLayout], number: int) -> int:
    """Write an answer of the only run into the file."""
    problem = ""
    if not found:
        problem = _NONE
    elif len(found) > 1:
        problem = f"Say of which run: --run with one of {', '.join(e.key for e in found)}."
    elif not 1 <= number <= len(found[0].answers):
        problem = f"There are {len(found[0].answers)} answers, no {number}."
    if problem:
        print(problem, file=sys.stderr)
        return BAD_INPUT
    save(loaded, accepted(loaded.file.text, found[0], number))
    print(f"Answer {number} is written into {loaded.path}.")
    return CLEAN


def _accept_heights(loaded: LoadedJob, heights: RoomHeights | None, number: int) -> int:
    """Write an answer for the heights into the file."""
    problem = ""
    if heights is None:
        problem = _NO_HEIGHTS
    elif not 1 <= number <= len(heights.answers):
        problem = f"There are {len(heights.answers)} answers for the heights, no {number}."
    if problem or heights is None:
        print(problem, file=sys.stderr)
        return BAD_INPUT
    save(loaded, accepted_heights(loaded.file.text, heights, number))
    print(f"Answer {number} is written into {loaded.path}.")
    return CLEAN


def _lines(run: RunLayout) -> Iterator[str]:
    yield f"{run.title}:"
    for number, answer in enumerate(run.answers, start=1):
        layout = answer.layout
        widths = zip(layout.task.places, layout.widths, strict=True)
        sizes = ", ".join(f"{place.key} {run.text(width)}" for place, width in widths)
        yield f"  {number}  {sizes}"
        yield f"     {'; '.join(answer.trade)}"
    if len(run.answers) == 1 and run.answers[0].layout.is_proved:
        yield "     no answer of another kind"
    for thing in run.in_it:
        left, right = (shop_text(each, run.unit) for each in (thing.left, thing.right))
        yield f"  STOP  {thing.title} stands in it, from {left} to {right} along the wall"
        yield f'        - a run that ends before it, with before = "{thing.key}", '
        yield f'          and one that begins after it, with after = "{thing.key}"'
    for conflict in run.conflicts:
        yield f"  STOP  {run.conflict_text(conflict)}"
        for relief in conflict.reliefs:
            if relief.of != "wall" or not conflict.before:  # a pin does not move with the wall
                yield f"        - {_relief(run, relief)}"


def _relief(run: RunLayout, relief: Relief) -> str:
    if relief.of == "another":
        return "one more case in the run"
    by, more = run.text(abs(relief.steps)), relief.steps > 0
    if relief.of == "seam":
        return f"the pinned seam of {relief.key} {by} farther to the {'right' if more else 'left'}"
    if relief.of == "wall":
        return f"the wall {by} {'longer' if more else 'shorter'}"
    what = relief.key if relief.of == "place" else f"the {relief.of}"
    return f"{what} {by} {'narrower' if more else 'wider'}"
