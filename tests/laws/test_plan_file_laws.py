"""Laws of plans as files: what is written can be read and checked, whatever was changed in it."""

from __future__ import annotations

import copy
import json
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.cutting_problems import problems, two_cases

from casewright.cutting import (
    Breach,
    Problem,
    ProblemError,
    Stop,
    plan_cuts,
    read_solution,
    solve,
    verify,
    write_solution,
)

_FEW = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
_PROBLEM = two_cases()
_PLAN = write_solution(_PROBLEM, solve(_PROBLEM, Stop(500)))


@_FEW
@given(problems(), st.booleans())
def test_a_plan_survives_json(problem: Problem, has_steps: bool) -> None:
    """With or without its order of work."""
    solution = solve(problem, Stop(300))
    order = plan_cuts(problem, solution, None) if has_steps else None
    text = json.dumps(write_solution(problem, solution, order))
    assert read_solution(json.loads(text)) == solution


def _places(value: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    found = [path] if path else []
    if isinstance(value, dict):
        return found + [p for key in value for p in _places(value[key], (*path, key))]
    if isinstance(value, list):
        return found + [p for n, one in enumerate(value) for p in _places(one, (*path, n))]
    return found


_ODD = st.one_of(
    st.none(), st.booleans(), st.integers(-5, 5_000), st.floats(), st.text(max_size=3),
    st.just([]), st.just({}),
)  # fmt: skip


@settings(max_examples=300, deadline=None)
@given(st.data())
def test_any_changed_plan_is_read_and_checked_or_refused_in_words(data: st.DataObject) -> None:
    """One value changed, anywhere: a fault with its place, or whatever the verifier says."""
    plan = copy.deepcopy(_PLAN)
    *way, last = data.draw(st.sampled_from(_places(plan)))
    place: Any = plan
    for step in way:
        place = place[step]
    if data.draw(st.booleans()):
        place[last] = data.draw(_ODD)
    else:
        del place[last]
    try:
        solution = read_solution(plan)
    except ProblemError:
        return
    verify(_PROBLEM, solution)


@pytest.mark.parametrize("value", [None, 3, [], "plan", {}, {"placements": 1}])
def test_what_is_no_plan_is_refused(value: object) -> None:
    """In words, with the place."""
    with pytest.raises(ProblemError, match="plan"):
        read_solution(value)


def test_a_part_that_is_moved_by_hand_is_found() -> None:
    """One unit to the right: out of its piece, and off its place in the tree."""
    plan = copy.deepcopy(_PLAN)
    plan["placements"][0]["x"] += 1
    breaches = {violation.breach for violation in verify(_PROBLEM, read_solution(plan))}
    assert Breach.PLACEMENT in breaches
