"""A cutting problem as a JSON file: whole numbers in, for the engine alone."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any, NoReturn

from casewright.breakdown import confirm_places
from casewright.cutting.codec import read_problem as problem_of
from casewright.cutting.engine import Stop, solve
from casewright.cutting.problem import Problem as CuttingProblem
from casewright.cutting.problem import ProblemError
from casewright.cutting.solution import Solution
from casewright.errors import CasewrightError, Location, Problem

__all__ = ["CutFileError", "read_problem", "solve_checked"]

_LARGEST_FILE = 20_000_000
_LONGEST_WORD = 40

_SLIPS = (
    ("Expecting value", "a value is missing here", 'write a number, a "text", a list, an object'),
    ("Expecting property name", "a key in double quotes is missing here",
     'write "key": value, and no comma behind the last'),
    ("Expecting ',' delimiter", "a comma or a closing bracket is missing here",
     "put a comma between two entries, and ] or } behind the last"),
    ("Expecting ':' delimiter", "a colon is missing here", 'write "key": value'),
    ("Extra data", "nothing stands behind the object", "write one JSON object alone"),
    ("Unterminated string", "the closing quote is missing", 'close the text with "'),
    ("Invalid control character", "a text ends on its line", 'close the text with "'),
    ("Invalid \\", "a backslash has a meaning of its own", "write two of them"),
)  # fmt: skip


class CutFileError(CasewrightError, ValueError):
    """A file that is no cutting problem, with everything that is wrong in it.

    Parameters
    ----------
    problems
        At least one.
    """

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        super().__init__(problems)
        self._problems = problems

    @property
    def problems(self) -> tuple[Problem, ...]:
        """Each with its place where it has one."""
        return self._problems

    def __str__(self) -> str:
        return "\n".join(str(problem) for problem in self.problems)


def read_problem(path: Path) -> CuttingProblem:
    """The cutting problem in a file.

    Raises
    ------
    CutFileError
        When it cannot be read, is too long, is no JSON, or has keys or values that are wrong.
    """
    found = _parsed(path.name, _content(path))
    try:
        return problem_of(found)
    except ProblemError as error:
        problems = tuple(
            Problem(
                Location(path.name, word=fault.where),
                f"{fault.field} is {fault.found}",
                f"it must be {fault.want}",
            )
            for fault in error.faults
        )
        raise CutFileError(problems) from None


def _content(path: Path) -> bytes:
    try:
        with path.open("rb") as stream:
            content = stream.read(_LARGEST_FILE + 1)
    except IsADirectoryError:
        _refuse(Location(str(path)), "this is a folder", "name the JSON file in it")
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        _refuse(Location(str(path)), reason, "name a JSON file that may be read")
    if len(content) > _LARGEST_FILE:
        what = "the file is over 20 MB, no cutting problem is that long"
        _refuse(Location(path.name), what, "name the problem itself")
    return content


def _parsed(name: str, content: bytes) -> Any:
    want = "write one JSON object with unit, kerf, stock and parts"
    try:
        return json.loads(content)
    except json.JSONDecodeError as error:
        _refuse_form(name, error)
    except RecursionError:
        _refuse(Location(name), "lists stand inside one another too deep", want)
    except ValueError:
        _refuse(Location(name), "this is no JSON text in UTF-8", want)


def _refuse_form(name: str, error: json.JSONDecodeError) -> NoReturn:
    line = error.doc.split("\n")[error.lineno - 1]
    word = line[error.colno - 1 :].strip()[:_LONGEST_WORD]
    if error.doc.strip() and not error.pos:
        what, want = "this is no JSON", "write one JSON object with unit, kerf, stock and parts"
    elif not error.doc[error.pos :].strip():
        what, want = "the file ends too soon", "close every list with ] and every object with }"
    else:
        found = (slip[1:] for slip in _SLIPS if error.msg.startswith(slip[0]))
        what, want = next(found, ("this is no JSON", "write one JSON object"))
    _refuse(Location(name, error.lineno, error.colno, word), what, want)


def _refuse(where: Location, what: str, want: str) -> NoReturn:
    raise CutFileError((Problem(where, what, want),)) from None


def solve_checked(problem: CuttingProblem, stop: Stop | None = None) -> Solution:
    """A plan that has passed the verifier.

    Raises
    ------
    PlanDefectError
        When it does not pass: a defect of the program.
    """
    solution = solve(problem, stop)
    confirm_places(problem, solution)
    return solution
