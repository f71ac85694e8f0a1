"""Laws of `cut --problem` and `verify`: whatever stands in the files, an answer or an error."""

from __future__ import annotations

import contextlib
import copy
import io
import json
import tempfile
from pathlib import Path
from typing import Any

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.cut_files import part, problem
from tests.cutting_problems import board_problems, problems

from casewright.cli.main import main
from casewright.cutting import write_problem

_FEW = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
_MANY = settings(_FEW, max_examples=100)

_PROBLEM = problem(
    part("side", 876, 590, 2, group="case"), part("shelf", 835, 295, 3, rotate=True),
    stages=3,
    stock=[
        {"id": "ply", "l": 2440, "w": 1220, "count": None, "price": 5, "trim": {"left": 5},
         "defects": [{"x": 100, "y": 100, "l": 20, "w": 20}]},
        {"id": "offcut", "l": 900, "w": 600, "count": 1, "price": 0, "trim": 0, "defects": []},
    ],
    shop={
        "limits": {"rip_capacity": 700, "crosscut_capacity": 640, "narrowest_rip": 50},
        "load": {"full": 2_000_000}, "rates": {"hour": 30, "reach": 1, "reach_length": 100},
    },
)  # fmt: skip

_ODD = st.one_of(
    st.none(), st.booleans(), st.integers(-5, 3_000), st.sampled_from([10**9, 10**9 + 1, 10**30]),
    st.floats(), st.text(max_size=3), st.just([]), st.just({}), st.just([[[[]]]]),
)  # fmt: skip


def _ran(*arguments: object) -> tuple[int, str, str]:
    """Exit code, output, errors."""
    out, err = io.StringIO(), io.StringIO()
    code: object = None
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        try:
            main([str(argument) for argument in arguments])
        except SystemExit as left:
            code = left.code
    assert isinstance(code, int)
    return code, out.getvalue(), err.getvalue()


def _places(value: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    found = [path] if path else []
    if isinstance(value, dict):
        return found + [p for key in value for p in _places(value[key], (*path, key))]
    if isinstance(value, list):
        return found + [p for n, one in enumerate(value) for p in _places(one, (*path, n))]
    return found


def _changed(data: st.DataObject, document: Any) -> Any:
    """One value changed, taken away or doubled, anywhere."""
    changed = copy.deepcopy(document)
    *way, last = data.draw(st.sampled_from(_places(changed)))
    place: Any = changed
    for step in way:
        place = place[step]
    match data.draw(st.sampled_from(("change", "change", "drop", "double"))):
        case "drop":
            del place[last]
        case "double" if isinstance(place, list):
            place.append(copy.deepcopy(place[last]))
        case _:
            place[last] = data.draw(_ODD)
    return changed


def _written(folder: str, name: str, data: Any) -> Path:
    file = Path(folder) / name
    file.write_text(json.dumps(data), "utf-8")
    return file


@_FEW
@given(st.one_of(problems(), board_problems()), st.sampled_from(["2", "3", "free"]))
def test_every_problem_gets_a_plan_that_the_verifier_accepts(asked: Any, stages: str) -> None:
    """Exit code 0 when all is placed, 1 when something is left over; the text is told as well."""
    with tempfile.TemporaryDirectory() as folder:
        file = _written(folder, "problem.json", write_problem(asked))
        options = ("--problem", file, "--work", 200, "--stages", stages)
        code, out, _ = _ran("cut", *options, "--json")
        document = json.loads(out)
        assert code == (1 if document["unplaced"] else 0)
        plan = _written(folder, "plan.json", document)
        assert _ran("verify", file, plan, "--stages", stages)[:1] == (0,)
        assert _ran("cut", *options)[0] == code


@_MANY
@given(st.data())
def test_a_changed_problem_file_gets_a_plan_or_a_message(data: st.DataObject) -> None:
    """Never a traceback, never a defect; an error names the file, and says what would be right."""
    with tempfile.TemporaryDirectory() as folder:
        file = _written(folder, "problem.json", _changed(data, _PROBLEM))
        code, out, err = _ran("cut", "--problem", file, "--work", 100, "--json")
        document = json.loads(out)
        assert code in (0, 1, 2), err
        if code == 2:
            assert err.startswith("problem.json")
            assert all(error["what"] and error["want"] for error in document["errors"])
        else:
            plan = _written(folder, "plan.json", document)
            assert _ran("verify", file, plan)[0] == 0


@_MANY
@given(st.data())
def test_a_changed_plan_file_is_checked_or_refused(data: st.DataObject) -> None:
    """And may be planned from, or is refused in words."""
    with tempfile.TemporaryDirectory() as folder:
        file = _written(folder, "problem.json", _PROBLEM)
        plan = _written(folder, "plan.json", _changed(data, _PLAN))
        code, out, err = _ran("verify", file, plan)
        assert code in (0, 2), err
        assert out or err.startswith("plan.json")
        again = ("cut", "--problem", file, "--last", plan, "--work", 100)
        cut = data.draw(st.sampled_from([(), ("--cut", "1")]))
        assert _ran(*again, *cut)[0] in (0, 1, 2)


def _plan() -> Any:
    with tempfile.TemporaryDirectory() as folder:
        file = _written(folder, "problem.json", _PROBLEM)
        return json.loads(_ran("cut", "--problem", file, "--work", 100, "--json")[1])


_PLAN = _plan()


@_FEW
@given(st.binary(max_size=40))
def test_any_bytes_are_refused_in_words(content: bytes) -> None:
    """Whatever is named for a problem or a plan."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "problem.json"
        file.write_bytes(content)
        for words in (("cut", "--problem", file), ("verify", file, file)):
            code, out, err = _ran(*words)
            assert (code, out) == (2, "")
            assert err.startswith("problem.json")
