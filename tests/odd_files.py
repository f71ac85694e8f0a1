"""Odd job files: values of another kind at any spot, and what must come of them."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st
from tests.jobs import loaded

from casewright.errors import JobFileError, Problem
from casewright.findings import Severity
from casewright.job.load import LoadedJob
from casewright.job.trial import work_out_job

ODD = st.one_of(
    st.sampled_from(
        ["", "0", "-3", "11 7/8", "1/0", "9999", "1e9", "3 apples", "½", "0.0001", "12 mm", "wal"]
    ),
    st.integers(-5, 10**6),
    st.floats(allow_nan=False, allow_infinity=False, width=16),
    st.booleans(),
    st.just([]),
    st.just({}),
    st.just({"a": {"b": {"c": [1, [2, [3]]]}}}),
    st.text(st.characters(exclude_categories=["Cs", "Cc"]), max_size=12),
)


def spots(value: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """Paths of everything in the data of a file."""
    found = [path] if path else []
    items: list[tuple[Any, Any]] = list(value.items()) if isinstance(value, dict) else []
    if isinstance(value, list):
        items = list(enumerate(value))
    for key, inner in items:
        found += spots(inner, (*path, key))
    return found


def holder_of(data: Any, path: tuple[Any, ...]) -> Any:
    """The table or list that the last step of a path is in."""
    for key in path[:-1]:
        data = data[key]
    return data


def is_told(text: str) -> None:
    """Errors are located; a job that is understood is proved, or says that it must stop."""
    try:
        told = _understood(loaded(text))
    except JobFileError as error:
        told = error.problems
    assert all(p.location.file == "job.toml" and p.what and p.want for p in told)


def _understood(job: LoadedJob) -> tuple[Problem, ...]:
    worked = work_out_job(job)
    stops = any(finding.severity is Severity.STOP for finding in worked.findings)
    assert stops or not worked.failures, worked.failures[:1]
    return ()
