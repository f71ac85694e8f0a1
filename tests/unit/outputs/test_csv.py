"""Tables for spreadsheets."""

from __future__ import annotations

import csv
import io
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.dims import Measure
from casewright.outputs.csv import csv_bytes

INCH = Fraction("25.4")


def _read(content: bytes) -> list[list[str]]:
    return list(csv.reader(io.StringIO(content.decode("utf-8"), newline="")))


def test_lines_and_quotes_are_those_of_the_standard() -> None:
    """RFC 4180, 2: CRLF, quotes round what holds a comma, a quote or a line break."""
    made = csv_bytes(("mark", "note"), [(1, 'side, "left"'), (2, "two\nlines"), (3, "plain")])
    assert made == (b'mark,note\r\n1,"side, ""left"""\r\n2,"two\nlines"\r\n3,plain\r\n')


_WORDS = st.text(st.characters(exclude_characters="\0", codec="utf-8"), max_size=20)
_CALM = _WORDS.filter(lambda t: not t.lstrip(" \u00a0\ufeff").startswith(tuple("=+-@\t\r\n|%")))


@given(st.lists(st.tuples(_CALM, _CALM), max_size=5))
def test_what_is_written_is_read_back(rows: list[tuple[str, str]]) -> None:
    """Commas, quotes and line breaks in words survive."""
    assert _read(csv_bytes(("a", "b"), rows)) == [["a", "b"], *(list(row) for row in rows)]


@pytest.mark.parametrize(
    "attack",
    [
        "=1+1",
        "+cmd",
        "-cmd|' /C calc'!A0",
        "@SUM(A1)",
        "\t=1",
        "\r=1",
        "  =1",
        "\u00a0=1",
        "%0A=1",
    ],
)
def test_no_cell_is_run_as_a_formula(attack: str) -> None:
    """What a job file says stays words in a spreadsheet."""
    (_, (cell, heading)) = _read(csv_bytes(("a", "b"), [(attack, "x")]))
    assert cell == f"'{attack}"
    assert heading == "x"


@given(_WORDS)
def test_no_word_at_all_begins_like_a_formula(word: str) -> None:
    """The guard holds for any text, headings included."""
    cells = [cell for row in _read(csv_bytes((word,), [(word,)])) for cell in row]
    for cell in cells:
        stripped = cell.lstrip(" \u00a0\ufeff")
        assert not stripped.startswith(("=", "@", "\t", "\r")) or stripped == ""


@pytest.mark.parametrize("number", ["-3", "+4", "-2.5"])
def test_a_plain_number_keeps_its_sign(number: str) -> None:
    """Only words are guarded."""
    assert _read(csv_bytes(("a",), [(number,)]))[1] == [number]


@pytest.mark.parametrize(
    ("length", "text"),
    [
        (Fraction(7, 8) * INCH, "0 7/8"),
        (Fraction(95, 8) * INCH, "11 7/8"),
        (Fraction(37), "37 mm"),
    ],
)
def test_a_length_is_not_taken_for_a_date(length: Fraction, text: str) -> None:
    """7/8 would become the seventh of August."""
    assert _read(csv_bytes(("a",), [(Measure(length, "in"),)]))[1] == [text]


def test_a_row_of_the_wrong_length_is_refused() -> None:
    """Every cell stands under its heading."""
    with pytest.raises(ValueError, match="a row of 1 cells under 2 headings"):
        csv_bytes(("a", "b"), [("x",)])
