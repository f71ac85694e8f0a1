"""A cutting problem as a JSON file: whole numbers in, for the engine alone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields, replace
from pathlib import Path
from typing import Any, Literal, TypeVar

from casewright.cutting.codec import read_problem as problem_of
from casewright.cutting.json_reader import JsonReader
from casewright.cutting.methods import Limits
from casewright.cutting.problem import LARGEST, Fault, Problem, ProblemError
from casewright.cutting.rates import Load, Rates, WorkModel
from casewright.job.json_file import faults_error, read_json

__all__ = ["CutTask", "Stages", "read_problem"]

Stages = Literal["2", "3", "free"]
"""How many cutting directions a plan may take, as asked for on the command line."""

_Group = TypeVar("_Group", Limits, Load, Rates)

_HOLDS = "unit, kerf, stock and parts"


@dataclass(frozen=True, slots=True)
class CutTask:
    """What a problem file asks for.

    Parameters
    ----------
    problem
        What to cut from what.
    model
        What work at the saw is reckoned by.
    has_shop
        Whether the file says what the shop can do; otherwise nothing is out of reach.
    """

    problem: Problem
    model: WorkModel
    has_shop: bool = False

    @property
    def is_lengths(self) -> bool:
        """Whether it is about lengths alone: boards and parts of one width, none turned."""
        widths = {item.width for item in self.problem.stock}
        widths |= {item.usable_width for item in self.problem.stock}
        widths |= {part.width for part in self.problem.parts}
        parts = {part.id: part for part in self.problem.parts}
        widths |= {match.size(parts, 0)[1] for match in self.problem.matches}
        is_turned = any(part.rotate for part in parts.values())
        return bool(parts) and len(widths) == 1 and not is_turned


def read_problem(path: Path, stages: Stages | None = None) -> CutTask:
    """The cutting problem in a file.

    Parameters
    ----------
    path
        The file; '-' for standard input.
    stages
        Takes the place of the file's own.

    Raises
    ------
    CutFileError
        When it cannot be read, is too long, is no JSON, or has keys or values that are wrong.
    """
    data = read_json(path, _HOLDS)
    try:
        return _task(data, stages)
    except ProblemError as error:
        raise faults_error(path, error.faults) from None


def _task(data: object, stages: Stages | None) -> CutTask:
    faults: list[Fault] = []
    model = WorkModel()
    has_shop = isinstance(data, Mapping) and "shop" in data
    if isinstance(data, Mapping) and has_shop:
        model, faults = _model(data["shop"])
    try:
        problem = problem_of(data, also=("shop",))
    except ProblemError as error:
        raise ProblemError([*error.faults, *faults]) from None
    if faults:
        raise ProblemError(faults)
    if stages is not None:
        problem = replace(problem, stages=None if stages == "free" else int(stages))
    return CutTask(problem, model, has_shop)


def _model(data: object) -> tuple[WorkModel, list[Fault]]:
    """What work is reckoned by, and what is wrong with it."""
    if not isinstance(data, Mapping):
        want = "an object with limits, load or rates"
        return WorkModel(), [Fault("problem", "shop", type(data).__name__, want)]
    reader = JsonReader()
    reader.known(data, "shop", ("limits", "load", "rates"))
    groups = (
        _group(reader, data, "limits", Limits()),
        _group(reader, data, "rates", Rates()),
        _group(reader, data, "load", Load()),
    )
    return WorkModel(*groups), reader.faults


def _group(reader: JsonReader, data: Mapping[str, Any], name: str, usual: _Group) -> _Group:
    """Values by their names; what is left out is as usual."""
    row, where = data.get(name, {}), f"shop.{name}"
    if not isinstance(row, Mapping):
        reader.fault("shop", name, row, "an object")
        return usual
    known = tuple(field.name for field in fields(usual))
    reader.known(row, where, known)
    given: dict[str, int] = {}
    for key in known:
        if row.get(key) is not None:
            given[key] = reader.whole(row, where, key, None)
            low = 1 if key == "reach_length" else 0
            if not low <= given[key] <= LARGEST**2:
                reader.fault(where, key, row[key], f"a whole number from {low}")
    return replace(usual, **given)
