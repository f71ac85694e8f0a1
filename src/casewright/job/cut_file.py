"""A cutting problem as a JSON file: whole numbers in, for the engine alone."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from casewright.cutting.engine import Stop, solve
from casewright.cutting.problem import Defect, PartDemand, Problem, StockItem, Trim
from casewright.cutting.solution import Solution
from casewright.cutting.verifier import verify
from casewright.errors import CasewrightError

__all__ = ["CutFileError", "UnsoundPlanError", "read_problem", "solve_checked"]

_LARGEST_FILE = 20_000_000
_Whole = Annotated[int, Field(ge=0)]


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


class _Document(BaseModel):
    model_config = ConfigDict(extra="forbid", strict=True, frozen=True)


class _Trim(_Document):
    left: _Whole = 0
    right: _Whole = 0
    bottom: _Whole = 0
    top: _Whole = 0


class _Defect(_Document):
    x: _Whole
    y: _Whole
    l: _Whole  # noqa: E741 - the name in the document
    w: _Whole


class _Stock(_Document):
    id: str
    l: _Whole  # noqa: E741 - the name in the document
    w: _Whole
    count: _Whole | None = None
    price: _Whole = 1
    trim: _Trim = _Trim()
    defects: list[_Defect] = Field(default_factory=list)


class _Part(_Document):
    id: str
    l: _Whole  # noqa: E741 - the name in the document
    w: _Whole
    count: Annotated[int, Field(ge=1)] = 1
    rotate: bool = False
    group: str | None = None


class _Problem(_Document):
    schema_: Literal["casewright/problem/1"] | None = Field(default=None, alias="schema")
    unit: str
    kerf: _Whole
    stages: int | None = None
    stock: list[_Stock]
    parts: list[_Part]


def read_problem(path: Path) -> Problem:
    """The cutting problem in a file.

    Raises
    ------
    CutFileError
        When it cannot be read, is too long, is no JSON, or has keys or values that are wrong.
    ProblemError
        When it has no meaning.
    """
    try:
        with path.open("rb") as stream:
            content = stream.read(_LARGEST_FILE + 1)
    except OSError as error:
        raise CutFileError(str(path), ((error.strerror or str(error)).lower(),)) from None
    if len(content) > _LARGEST_FILE:
        raise CutFileError(path.name, ("it is over 20 MB, no cutting problem is that long",))
    try:
        found = _Problem.model_validate(json.loads(content))
    except ValidationError as error:
        raise CutFileError(path.name, tuple(_faults(error))) from None
    except (ValueError, RecursionError) as error:
        what = str(error) if isinstance(error, json.JSONDecodeError) else "it is not JSON text"
        raise CutFileError(path.name, (f"{what}; write one JSON object",)) from None
    return _problem(found)


def _faults(error: ValidationError) -> list[str]:
    return [
        f"{'.'.join(str(step) for step in detail['loc']) or 'the document'}: "
        f"{detail['msg'][:1].lower()}{detail['msg'][1:]}"
        for detail in error.errors(include_url=False)
    ]


def _problem(found: _Problem) -> Problem:
    stock = tuple(
        StockItem(
            item.id, item.l, item.w, item.count, item.price, Trim(**item.trim.model_dump()),
            tuple(Defect(spot.x, spot.y, spot.l, spot.w) for spot in item.defects),
        )
        for item in found.stock
    )  # fmt: skip
    parts = tuple(
        PartDemand(part.id, part.l, part.w, part.count, part.rotate, part.group)
        for part in found.parts
    )
    return Problem(found.unit, found.kerf, found.stages, stock, parts)


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
