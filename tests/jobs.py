"""Texts of job files for tests, and what reading them brings."""

from __future__ import annotations

from pathlib import Path

import pytest

from casewright.errors import JobFileError, Problem
from casewright.job.load import LoadedJob, read_job
from casewright.job.text import FileText
from casewright.room.specs import JobSpec

EXAMPLES = Path(__file__).parent.parent / "examples"
HEAD = 'format = 1\nunit = "in"\n'
UPPER = '[case.upper]\nkind = "wall"\nwidth = "33"\n'
AROUND_A_CORNER = f"""{HEAD}[wall.north]
width = "72"
[wall.east]
width = "72"
[corner.far]
walls = ["north", "east"]
[case.one]
kind = "wall"
width = 30
[case.corner]
kind = "wall"
width = 24
diagonal = "right"
[case.round]
kind = "wall"
width = 30
[run.north]
cases = ["one", "corner"]
on = "north"
[run.east]
cases = ["round"]
on = "east"
left = "corner"
"""
"""A run on either side of a diagonal corner."""
FIVE_LINES = HEAD + UPPER


def example(name: str) -> str:
    """Text of an example job."""
    return (EXAMPLES / f"{name}.toml").read_text("utf-8")


EXAMPLE_NAMES = tuple(sorted(path.stem for path in EXAMPLES.glob("*.toml")))


def read(text: str) -> JobSpec:
    """The job a text asks for."""
    return read_job(text, "kitchen.toml")


def loaded(text: str, name: str = "job.toml") -> LoadedJob:
    """The job a text asks for, as if read from a file."""
    return LoadedJob(Path(name), FileText(name, text, ""), read_job(text, name))


def problems(text: str) -> tuple[Problem, ...]:
    """Everything that is wrong with a text."""
    with pytest.raises(JobFileError) as caught:
        read(text)
    return caught.value.problems


def problem(text: str) -> Problem:
    """The one thing that is wrong with a text."""
    found = problems(text)
    assert len(found) == 1, "\n".join(str(each) for each in found)
    return found[0]
