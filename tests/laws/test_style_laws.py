"""Whatever style and sizes ask for: a located message or a finding, never a failed proof."""

from __future__ import annotations

import tomllib
from typing import Any

import pytest
import tomlkit
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.jobs import EXAMPLE_NAMES, example, loaded

from casewright.dims import parse_length
from casewright.errors import JobFileError
from casewright.job.tables.style import style_range
from casewright.job.trial import work_out_job
from casewright.style import STYLE_KEYS, StyleKey

_ABSURD = ("0", "-1", "1/128", "0.0000001", "9999", "100000000 mm", "1/3", "3.1415926")


def _styled(name: str, values: dict[str, str], case: str = "") -> str:
    data: dict[str, Any] = tomllib.loads(example(name))
    table = data["case"][case] if case else data
    table.setdefault("style", {}).update(values)
    return tomlkit.dumps(data)


def _is_told(text: str) -> None:
    """The proof holds, or the message points at a style value or at a line that hangs on one."""
    try:
        worked = work_out_job(loaded(text))
    except JobFileError as error:
        for problem in error.problems:
            assert problem.location.line, str(problem)
            assert problem.location.word, str(problem)
            assert problem.what, str(problem)
            assert problem.want, str(problem)
    else:
        assert not worked.failures, worked.failures[0]


def _sizes(key: StyleKey, unit: str) -> list[str]:
    """The ends of what a key may be, two sizes between them, and absurd ones."""
    bounds = style_range(key)
    low, high = bounds.bounds("in" if unit == "in" else "mm")
    between = [low + (high - low) / 7, (low + high) / 2]
    ends = (bounds.low, bounds.high) if unit == "in" else (bounds.low_mm, bounds.high_mm)
    return [*ends, *(f"{float(size):.7f} mm" for size in between), *_ABSURD]


@settings(max_examples=50, deadline=None)
@given(st.sampled_from(EXAMPLE_NAMES), st.sampled_from(STYLE_KEYS), st.data())
def test_any_size_of_one_key(name: str, key: StyleKey, data: st.DataObject) -> None:
    """Each key of the style at its ends, between them, and far outside."""
    sizes = _sizes(key, str(tomllib.loads(example(name))["unit"]))
    _is_told(_styled(name, {key.name: data.draw(st.sampled_from(sizes))}))


@settings(max_examples=20, deadline=None)
@given(st.sampled_from(EXAMPLE_NAMES), st.data())
def test_several_keys_at_once(name: str, data: st.DataObject) -> None:
    """Values that are each in range may still be at odds, in the house style or in one case."""
    unit = str(tomllib.loads(example(name))["unit"])
    keys = data.draw(st.lists(st.sampled_from(STYLE_KEYS), min_size=1, max_size=4, unique=True))
    values = {key.name: data.draw(st.sampled_from(_sizes(key, unit)[:4])) for key in keys}
    cases = list(tomllib.loads(example(name))["case"])
    _is_told(_styled(name, values, data.draw(st.sampled_from(["", *cases]))))


@settings(max_examples=40, deadline=None)
@given(
    st.sampled_from(["in", "mm"]),
    st.sampled_from(["wall", "base", "bookcase"]),
    st.sampled_from(["notch", "plinth"]),
    st.tuples(st.integers(3000, 12000), st.integers(5500, 21000), st.integers(2800, 6000)),
    st.integers(100, 400),
)
def test_sizes_between_the_marks(
    unit: str, kind: str, toe: str, tenths: tuple[int, int, int], skirt: int
) -> None:
    """Tenths of a millimetre in a job in inches, or in millimetres."""
    own = {"base": f'toe = "{toe}"\n', "wall": f'skirt = "{skirt / 10} mm"\n'}.get(kind, "")
    sizes = zip(("width", "height", "depth"), tenths, strict=True)
    lines = "".join(f'{name} = "{size / 10} mm"\n' for name, size in sizes)
    _is_told(f'format = 1\nunit = "{unit}"\n[case.odd]\nkind = "{kind}"\n{own}{lines}')


def test_what_would_be_right_holds() -> None:
    """The size that the message offers is one that the proof holds with."""
    text = _styled("bookcase", {"driver_room": "4"})
    with pytest.raises(JobFileError) as caught:
        work_out_job(loaded(text))
    (problem,) = caught.value.problems
    assert problem.location.word == '"4"'
    offered = problem.want.split('"')[1]
    assert parse_length("1/2", "in") < parse_length(offered, "in") < parse_length("4", "in")
    assert not work_out_job(loaded(_styled("bookcase", {"driver_room": offered}))).failures


def test_only_the_value_at_fault_is_named() -> None:
    """Others that the file sets beside it are left alone."""
    values = {"gap": "3/32", "driver_room": "4", "reveal": "1/8"}
    with pytest.raises(JobFileError) as caught:
        work_out_job(loaded(_styled("bookcase", values)))
    assert [problem.location.word for problem in caught.value.problems] == ['"4"']
