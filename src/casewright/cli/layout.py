"""`layout`: what the free widths of each run could be, and accepting an answer."""

from __future__ import annotations

import sys
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import NamedTuple

from casewright.cli.commands import tell_rescue
from casewright.cli.exits import BAD_INPUT, CLEAN, OPEN
from casewright.cli.height_texts import height_lines
from casewright.cli.hindrance_texts import hindrance_lines
from casewright.cli.island_texts import island_lines
from casewright.cli.printing import print_json, print_lines
from casewright.cli.progress import working
from casewright.findings import Finding
from casewright.job.height_choices import accepted_heights
from casewright.job.heights import RoomHeights, room_heights
from casewright.job.hindrances import run_hindrances
from casewright.job.island_layouts import IslandLayout, accepted_island, island_layouts
from casewright.job.layout_json import layout_json
from casewright.job.layouts import RunLayout, accepted, layouts
from casewright.job.load import LoadedJob, load_job
from casewright.job.recorded import Use, read_record
from casewright.job.relayout import outgrown_runs, widths_text
from casewright.job.saving import save
from casewright.room.build import build
from casewright.room.model import Room

__all__ = ["LayoutAsked", "run_layout"]

_NONE = "No run closes against a wall and has a case whose width is left open."
_NOT_THIS = (
    "Nothing is open in run {}: it closes against no wall, or each of its cases has a width of "
    "its own."
)
_NO_ISLAND = (
    "Nothing is open in that island: give it a place with a band for off, or without along, "
    "or leave out widths of its cases and tell its length."
)
_NO_HEIGHTS = (
    "No heights to lay out: that takes base cases, wall cases in a run, and a level line read "
    "down to the floor and up to the ceiling."
)


class LayoutAsked(NamedTuple):
    """What is to be laid out; everything where nothing is named.

    Parameters
    ----------
    run, island
        Key of the only run or the only island.
    heights
        Whether the heights alone are.
    """

    run: str | None = None
    island: str | None = None
    heights: bool = False

    @property
    def is_all(self) -> bool:
        """Whether nothing is named."""
        return self == LayoutAsked()


class _Found(NamedTuple):
    """What can be laid out."""

    runs: list[RunLayout]
    islands: list[IslandLayout]
    heights: RoomHeights | None

    @property
    def closed(self) -> list[bool]:
        """Whether each has an answer."""
        some = [bool(each.answers) for each in self.runs]
        some += [bool(each.answers) for each in self.islands]
        return some + ([bool(self.heights.answers)] if self.heights is not None else [])


def run_layout(
    job: Path, asked: LayoutAsked, accept: int | None, use: Use | None = None, *, as_json: bool
) -> int:
    """`layout`: up to five answers a run; `--accept N`: one of them written into the file."""
    loaded, recorded = load_job(job), read_record(job, use)
    tell_rescue(recorded.rescue)
    unknown = _unknown(loaded, asked)
    if unknown:
        print(unknown, file=sys.stderr)
        return BAD_INPUT
    with working("filling the walls"):
        room = build(loaded.spec, recorded.facts)
        found = _found(room, asked)
    if accept is not None:
        return _accept(loaded, asked, found, accept)
    if as_json:
        print_json(layout_json(loaded.spec, found.runs, found.heights, found.islands))
    elif not found.closed:
        print(_nothing(asked))
    else:
        outgrown = outgrown_runs(room)
        print_lines(line for each in found.runs for line in _lines(each, outgrown))
        print_lines(line for each in found.islands for line in island_lines(each))
        print_lines(height_lines(found.heights) if found.heights is not None else ())
    return CLEAN if all(found.closed) else OPEN


def _found(room: Room, asked: LayoutAsked) -> _Found:
    """What is asked for of what there is."""
    every = asked.is_all
    runs = list(layouts(room)) if every or asked.run else []
    islands = list(island_layouts(room)) if every or asked.island else []
    return _Found(
        [each for each in runs if asked.run in (None, each.key)],
        [each for each in islands if asked.island in (None, each.key)],
        room_heights(room) if every or asked.heights else None,
    )


def _unknown(loaded: LoadedJob, asked: LayoutAsked) -> str:
    """What is named and not in the file, with what is."""
    spec = loaded.spec
    runs, islands = [e.key for e in spec.runs], [e.key for e in spec.islands]
    for word, key, keys in (("run", asked.run, runs), ("island", asked.island, islands)):
        if key is not None and key not in keys:
            known = f"known here: {', '.join(keys)}" if keys else f"the file has no [{word}.NAME]"
            return f"There is no {word} {key} in {loaded.path}; {known}."
    return ""


def _nothing(asked: LayoutAsked) -> str:
    if asked.heights:
        return _NO_HEIGHTS
    if asked.island:
        return _NO_ISLAND
    return _NOT_THIS.format(asked.run) if asked.run else _NONE


def _accept(loaded: LoadedJob, asked: LayoutAsked, found: _Found, number: int) -> int:
    """Write an answer of the only thing that is asked for into the file."""
    runs, islands, heights = found
    if asked.is_all:  # an only run needs no name
        islands, heights = ([], None) if runs else (islands, None)
    answers = [len(run.answers) for run in runs] + [len(each.answers) for each in islands]
    answers += [len(heights.answers)] if heights is not None else []
    names = [f"--run {each.key}" for each in runs] + [f"--island {e.key}" for e in islands]
    problem = ""
    if not answers:
        problem = _nothing(asked)
    elif len(answers) > 1:
        problem = f"Say of which: {', '.join(names)}."
    elif not answers[0]:
        problem = (
            f"No answer fits; without --accept it is told why: casewright layout {loaded.path}"
        )
    elif not 1 <= number <= answers[0]:
        last = f" to {answers[0]}" if answers[0] > 1 else ""
        problem = f"There is no answer {number}; write 1{last} behind --accept."
    if problem:
        print(problem, file=sys.stderr)
        return BAD_INPUT
    text = loaded.file.text
    if runs:
        text = accepted(text, runs[0], number)
    elif islands:
        text = accepted_island(text, islands[0], number)
    elif heights is not None:
        text = accepted_heights(text, heights, number)
    save(loaded, text)
    print(f"Answer {number} is written into {loaded.path}.")
    return CLEAN


def _lines(run: RunLayout, outgrown: Mapping[str, Finding]) -> Iterator[str]:
    yield f"{run.title}:"
    if run.key in outgrown:
        yield f"  as accepted: {outgrown[run.key].says}"
    if run.made:
        yield f"  made already, and as wide as before: {', '.join(run.made)}"
    for number, answer in enumerate(run.answers, start=1):
        yield f"  {number}  {widths_text(run, answer)}"
        yield f"     {'; '.join(answer.trade)}"
    if len(run.answers) == 1 and run.answers[0].layout.is_proved:
        yield "     no answer of another kind"
    if run.answers:
        yield f"     to take {'it' if len(run.answers) == 1 else 'one'}: {_taking(run)}"
    yield from hindrance_lines(run_hindrances(run))


def _taking(run: RunLayout) -> str:
    return f"--run {run.key} --accept {'1' if len(run.answers) == 1 else 'N'}"
