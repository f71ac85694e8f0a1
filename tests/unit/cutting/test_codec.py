"""Problems and plans as JSON."""

from __future__ import annotations

import copy
import json
from contextlib import suppress
from typing import Any

import jsonschema
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.cutting_problems import SMALL_SHOP, two_cases

from casewright.cutting import (
    Defect,
    Keep,
    Problem,
    ProblemError,
    Stop,
    Trim,
    fingerprint,
    plan_cuts,
    read_problem,
    solve,
    write_problem,
    write_solution,
)

DOCUMENT: dict[str, Any] = {
    "unit": "1/32 in",
    "kerf": 4,
    "stages": 3,
    "stock": [
        {
            "id": "ply", "l": 3072, "w": 1536, "count": None, "price": 70,
            "trim": {"left": 4, "bottom": 8},
            "defects": [{"x": 0, "y": 9, "l": 64, "w": 32}],
        }
    ],
    "parts": [{"id": "side", "l": 1104, "w": 744, "count": 2, "rotate": True, "group": "a"}],
    "keep": [{"long": 768, "short": 128}],
}  # fmt: skip


def test_every_field_is_read() -> None:
    """Each value of the document stands where it belongs."""
    problem = read_problem(DOCUMENT)
    item, side = problem.stock[0], problem.parts[0]
    assert (problem.unit, problem.kerf, problem.stages) == ("1/32 in", 4, 3)
    assert (item.id, item.length, item.width, item.count) == ("ply", 3072, 1536, None)
    assert (item.price, item.trim) == (70, Trim(left=4, bottom=8))
    assert item.defects == (Defect(0, 9, 64, 32),)
    assert (side.id, side.length, side.width, side.count) == ("side", 1104, 744, 2)
    assert (side.rotate, side.group) == (True, "a")
    assert problem.keep == (Keep(768, 128),)


def test_what_may_be_left_out_has_a_plain_meaning() -> None:
    """Any number of sheets, no trim, no defects, one of each part, grain kept."""
    problem = read_problem(
        {
            "unit": "mm",
            "kerf": 3,
            "stages": "free",
            "stock": [{"id": "s", "l": 900, "w": 400, "trim": 5}],
            "parts": [{"id": "p", "l": 90, "w": 40}],
        }
    )
    assert problem.stages is None
    assert problem.stock[0].count is None
    assert problem.stock[0].trim == Trim(5, 5, 5, 5)
    assert (problem.parts[0].count, problem.parts[0].rotate) == (1, False)


def test_stages_in_words_are_told_what_they_may_be() -> None:
    with pytest.raises(ProblemError) as caught:
        read_problem({**DOCUMENT, "stages": "two"})
    assert [fault.want for fault in caught.value.faults] == ['2, 3, more, or "free"']


@pytest.mark.parametrize(
    ("place", "value", "where", "field"),
    [
        (("kerf",), "4", "problem", "kerf"),
        (("kerf",), 1.5, "problem", "kerf"),
        (("kerf",), True, "problem", "kerf"),
        (("unit",), None, "problem", "unit"),
        (("stages",), "three", "problem", "stages"),
        (("stock",), {}, "problem", "stock"),
        (("parts", 0), 7, "parts[0]", "entry"),
        (("parts", 0, "l"), None, "parts[0]", "l"),
        (("parts", 0, "rotate"), "yes", "parts[0]", "rotate"),
        (("parts", 0, "group"), 3, "parts[0]", "group"),
        (("parts", 0, "lenght"), 3, "parts[0]", "lenght"),
        (("stock", 0, "trim"), "2", "stock[0]", "trim"),
        (("stock", 0, "trim", "upper"), 2, "stock[0].trim", "upper"),
        (("stock", 0, "defects", 0, "x"), [], "stock[0].defects[0]", "x"),
        (("keep", 0, "long"), "a", "keep[0]", "long"),
    ],
)
def test_a_wrong_value_is_named_with_its_place(
    place: tuple[str | int, ...], value: object, where: str, field: str
) -> None:
    """The message leads to the very word in the file."""
    document = copy.deepcopy(DOCUMENT)
    target: Any = document
    for step in place[:-1]:
        target = target[step]
    target[place[-1]] = value
    with pytest.raises(ProblemError) as caught:
        read_problem(document)
    assert [(fault.where, fault.field) for fault in caught.value.faults] == [(where, field)]


_JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False) | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=8), inner),
    max_leaves=8,
)


@given(st.dictionaries(st.sampled_from([*DOCUMENT, "other"]), _JSON) | _JSON)
def test_any_json_is_a_problem_or_a_list_of_faults(change: object) -> None:
    """Nothing a file may hold ends in another error."""
    document = DOCUMENT | change if isinstance(change, dict) else change
    with suppress(ProblemError):
        assert isinstance(read_problem(document), Problem)


def test_the_fingerprint_tells_problems_apart() -> None:
    """Equal problems share it; any changed value changes it."""
    problem = read_problem(DOCUMENT)
    assert fingerprint(problem) == fingerprint(read_problem(write_problem(problem)))
    assert fingerprint(problem) != fingerprint(read_problem(DOCUMENT | {"kerf": 5}))


_WHOLE = {"type": "integer"}
_PLAN = {
    "type": "object",
    "required": ["schema", "fingerprint", "placements", "tree", "cards", "bound", "status",
                 "unplaced"],
    "properties": {
        "placements": {
            "items": {
                "required": ["part", "copy", "sheet", "stock", "x", "y", "l", "w", "turned"],
                "properties": dict.fromkeys(("copy", "sheet", "x", "y", "l", "w"), _WHOLE),
            }
        },
        "tree": {"items": {"required": ["sheet", "stock", "root"]}},
        "bound": {"required": ["value", "scope"], "properties": {"value": _WHOLE}},
        "status": {"enum": ["proved", "bounded", "short of stock"]},
    },
}  # fmt: skip


def test_a_plan_is_written_in_the_promised_shape() -> None:
    """The names that others rely on, in whole numbers; ready to be dumped."""
    problem = two_cases()
    solution = solve(problem, Stop(500))
    plan = plan_cuts(problem, solution, SMALL_SHOP)
    document = json.loads(json.dumps(write_solution(problem, solution, plan)))
    jsonschema.validate(document, _PLAN)
    assert document["schema"] == "casewright/cut/1"
    assert len(document["placements"]) == sum(part.count for part in problem.parts)
    assert len(document["steps"]) == len(plan.steps)
    assert [card["setting"] for card in document["cards"]] == [c.setting for c in plan.cards]


def test_without_an_order_of_work_the_cards_count_pieces() -> None:
    """Each setting says how many pieces it gives, and from which sheets."""
    problem = two_cases()
    solution = solve(problem, Stop(500))
    cards = write_solution(problem, solution)["cards"]
    assert [card["pieces"] for card in cards] == [card.pieces for card in solution.cards]
