"""How the problems of a job file are told."""

from __future__ import annotations

import pytest

from casewright.errors import CasewrightError, JobFileError, Location, Problem


@pytest.mark.parametrize(
    ("location", "text"),
    [
        (Location("kitchen.toml", 12, 9, "widht"), "kitchen.toml, line 12, column 9, widht"),
        (Location("kitchen.toml", 12, 9), "kitchen.toml, line 12, column 9"),
        (Location("kitchen.toml", 12), "kitchen.toml, line 12"),
        (Location("kitchen.toml", column=3), "kitchen.toml"),
        (Location("kitchen.toml"), "kitchen.toml"),
    ],
)
def test_a_place_is_told_as_far_as_it_is_known(location: Location, text: str) -> None:
    """File, line, column and word, leaving out what is not known."""
    assert str(location) == text


def test_a_problem_says_where_what_and_what_would_be_right() -> None:
    """One sentence in that order."""
    problem = Problem(Location("a.toml", 2, 1, "widht"), "no such key", "write width")
    assert str(problem) == "a.toml, line 2, column 1, widht: no such key; write width"


def test_all_problems_are_told_in_the_order_of_the_file() -> None:
    """The order in which they were found does not show; line 9 comes before line 10."""
    found = tuple(
        Problem(Location("a.toml", line, column), "what", "want")
        for line, column in [(10, 1), (9, 4), (9, 2)]
    )
    error = JobFileError(found)
    places = [(each.location.line, each.location.column) for each in error.problems]
    assert places == [(9, 2), (9, 4), (10, 1)]
    assert str(error).splitlines() == [str(problem) for problem in error.problems]


def test_a_job_file_error_is_in_the_tree_and_a_value_error() -> None:
    """Callers may catch it as one of ours or as Python's own."""
    error = JobFileError((Problem(Location("a.toml"), "too large", "keep it under 1 MB"),))
    assert isinstance(error, CasewrightError)
    assert isinstance(error, ValueError)


def test_an_error_without_problems_is_refused() -> None:
    """Nothing wrong is not an error."""
    with pytest.raises(ValueError, match="no error"):
        JobFileError(())
