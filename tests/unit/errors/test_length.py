"""How a length that cannot be read is told."""

from __future__ import annotations

import pickle

import pytest

from casewright.errors import CasewrightError, LengthError


def test_the_caret_stands_under_the_character() -> None:
    """The sentence comes first, then the text, then a caret below what is wrong."""
    error = LengthError("11 7", 3, "two numbers side by side", "write 11 7/8")
    assert str(error) == "two numbers side by side; write 11 7/8\n  11 7\n     ^"


def test_the_caret_may_stand_behind_the_text() -> None:
    """What is missing at the end is pointed at there."""
    assert str(LengthError("3'", 2, "what", "want")).splitlines()[-1] == "    ^"


@pytest.mark.parametrize("stray", ["\n", "\t", "\r", "\x00", "\x1b", "\u202e", "\u2028"])
def test_a_character_that_would_bend_the_line_is_shown_as_a_box(stray: str) -> None:
    """Line ends, tabs, escapes and direction marks cannot tear the picture apart."""
    shown = str(LengthError(f"36{stray}1", 3, "what", "want"))
    assert shown.split("\n") == ["what; want", "  36\N{WHITE SQUARE}1", "     ^"]


@pytest.mark.parametrize(("wide", "columns"), [("\u5c3a", 2), ("e\u0301", 1), ("\u00bd", 1)])
def test_the_caret_counts_columns_not_characters(wide: str, columns: int) -> None:
    """Characters of double width and accents that take no width do not shift the caret."""
    caret = str(LengthError(f"{wide}?", len(wide), "what", "want")).splitlines()[-1]
    assert caret == "  " + " " * columns + "^"


def test_a_length_error_is_in_the_tree_and_survives_a_copy() -> None:
    """It is one of ours and Python's own, and a worker process may hand it over whole."""
    error = LengthError("36x", 2, "what", "want")
    copy = pickle.loads(pickle.dumps(error))  # noqa: S301 - our own bytes
    assert isinstance(copy, CasewrightError)
    assert isinstance(copy, ValueError)
    assert str(copy) == str(error)
