"""A cutting problem as a JSON file: whole numbers in, for the engine alone."""

from __future__ import annotations

import json
from pathlib import Path

from casewright.cutting.codec import read_problem as problem_of
from casewright.cutting.engine import Stop, solve
from casewright.cutting.problem import Problem, ProblemError
from casewright.cutting.solution import Solution
from casewright.cutting.verifier import verify
from casewright.errors import CasewrightError

__all__ = ["CutFileError", "UnsoundPlanError", "read_problem", "solve_checked"]

_LARGEST_FILE = 20_000_000


class CutFileError(CasewrightError, ValueError):
    """A file that is no cutting problem, with everything that is wrong in it."""

    def __init__(self, name: str, faults: tuple[str, ...]) -> None:
        super().__init__(name, faults)
        self.name = name
        self.faults = faults

    def __str__(self) -> str:
        return "\n".join(f"{self.name}: {fault}" for fault in self.faults)


class UnsoundPlanError(RuntimeError):
    """The verifier refuses a plan of our own: a defect of the program."""


def read_problem(path: Path) -> Problem:
    """The cutting problem in a file.

    Raises
    ------
    CutFileError
        When it cannot be read, is too long, is no JSON, or has keys or values that are wrong.
    """
    try:
        with path.open("rb") as stream:
            content = stream.read(_LARGEST_FILE + 1)
    except OSError as error:
        raise CutFileError(str(path), ((error.strerror or str(error)).lower(),)) from None
    if len(content) > _LARGEST_FILE:
        raise CutFileError(path.name, ("it is over 20 MB, no cutting problem is that long",))
    try:
        found = json.loads(content)
    except (ValueError, RecursionError) as error:
        what = str(error) if isinstance(error, json.JSONDecodeError) else "it is not JSON text"
        raise CutFileError(path.name, (f"{what}; write one JSON object",)) from None
    try:
        return problem_of(found)
    except ProblemError as error:
        raise CutFileError(path.name, tuple(str(fault) for fault in error.faults)) from None


def solve_checked(problem: Problem, stop: Stop | None = None) -> Solution:
    """A plan that has passed the verifier.

    Raises
    ------
    UnsoundPlanError
        When it does not pass: a defect of the program.
    """
    solution = solve(problem, stop)
    violations = verify(problem, solution)
    if violations:
        raise UnsoundPlanError("; ".join(str(violation) for violation in violations))
    return solution
