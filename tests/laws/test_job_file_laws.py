"""No text whatever makes the job file's reader fail otherwise than by a located message."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.jobs import EXAMPLE_NAMES, FIVE_LINES, example, read

from casewright.errors import JobFileError
from casewright.job.positions import scan
from casewright.job.text import decode
from casewright.job.worked import work_out

TEXTS = [FIVE_LINES, *(example(name) for name in EXAMPLE_NAMES)]
# Problems of the file as a whole: there is no place to name.
WHOLE = ("format is missing", "unit is missing", "the job has no case")
ABSURD = [
    "-3", "0", "0.01", "1e9", "1e999999999", '"x"', '""', "true", "[]", "{}", "nan", "-inf",
    "1979-05-27", "11 7/8", '"1/0"', '"0 mm"', '"999 m"', '"3 in"', '["a", 1]', "[[[[1]]]]",
    "[" * 99, '"\\u0000"', "'''a\nb'''", "0x1F", '"\u202e"', "9" * 5000, '"wall"', '"slab"',
]  # fmt: skip


def _told(text: str) -> None:
    """Read a text; every problem has a place, a cure, and one line for each."""
    try:
        read(text)
    except JobFileError as error:
        lines = text.split("\n")
        for problem in error.problems:
            where = problem.location
            assert problem.want
            assert problem.what
            assert where.line or problem.what in WHOLE
            assert 0 <= where.line <= len(lines)
            if where.line:
                assert 1 <= where.column <= len(lines[where.line - 1]) + 1


@st.composite
def damaged(draw: st.DrawFn) -> str:
    """A sound file with up to three lines spoiled."""
    lines = draw(st.sampled_from(TEXTS)).split("\n")
    for _ in range(draw(st.integers(1, 3))):
        number = draw(st.integers(0, len(lines) - 1))
        line = lines[number]
        key, equals, _ = line.partition("=")
        match draw(st.integers(0, 5)):
            case 0:
                lines[number] = ""
            case 1 if equals:
                lines[number] = f"{key}= {draw(st.sampled_from(ABSURD))}"
            case 2:
                lines.insert(number, draw(st.sampled_from(lines)))
            case 3:
                place = draw(st.integers(0, len(line)))
                mark = draw(st.sampled_from([*"\"'[]{}=#,.\\\t\r\0 7é", "\U0001f528"]))
                lines[number] = line[:place] + mark + line[place + 1 :]
            case 4:
                lines[number] = line[: draw(st.integers(0, len(line)))]
            case _:
                lines[number] = line.replace(key.strip(), f"{key.strip()}q", 1) if equals else line
    return "\n".join(lines)


@settings(max_examples=300, deadline=None)
@given(damaged())
def test_a_damaged_file_is_told_where(text: str) -> None:
    """Deleted keys, wrong units, absurd sizes, wrong kinds, names twice, broken marks."""
    _told(text)


@settings(max_examples=200, deadline=None)
@given(st.text(max_size=80))
def test_any_text_is_told_where(text: str) -> None:
    """Even what never was a job file."""
    _told(text)


@given(st.binary(max_size=60))
def test_any_bytes_are_text_or_told(content: bytes) -> None:
    """Bytes that are no UTF-8 are located."""
    try:
        text = decode(content, "kitchen.toml").text
    except JobFileError as error:
        lines = [problem.location.line for problem in error.problems]
        assert min(lines) >= 1
    else:
        assert text.encode() in content


@given(st.text(alphabet="[]{}=\"'.,#a \n", max_size=60))
def test_the_scanner_follows_or_stops(text: str) -> None:
    """It never fails, and every place lies inside the text."""
    found = scan(text)
    for span in (*found.values.values(), *found.keys.values()):
        assert 0 <= span.start <= span.end <= len(text)


@pytest.mark.slow
@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(damaged())
def test_what_is_accepted_can_be_built_and_proved(text: str) -> None:
    """Whatever the reader lets through gives parts that go together, or findings."""
    try:
        spec = read(text)
    except JobFileError:
        return
    assert work_out(spec).failures == ()
