"""Readings that are far off, and what the numbers suggest: all common practice, sizes by hand."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.jobs import read

from casewright.dims import Unit, parse_length
from casewright.job.expectation import doubt
from casewright.room.build import build
from casewright.room.model import Room
from casewright.survey.slips import meant

_JOBS: dict[Unit, str] = {
    "in": """
format = 1
unit = "in"
[stock.plywood]
measured = "0.700"
[case.a]
kind = "base"
width = "24"
toe = "plinth"
""",
    "mm": """
format = 1
unit = "mm"
[stock.plywood]
measured = "18.2"
[case.a]
kind = "base"
width = "600"
toe = "plinth"
""",
}


@cache
def _room(unit: Unit) -> Room:
    return build(read(_JOBS[unit]))


@pytest.mark.parametrize(
    ("unit", "path", "reading", "hint"),
    [
        # 24 in wide, 34 1/2 high, 23 1/4 deep; 0.7 in sides; a kerf of 1/8 in (the usual one).
        ("in", "a.width", "34 1/2", "measured the height, 34 1/2?"),
        ("in", "a.width", "22 5/8", "measured the clear width"),
        ("in", "a.clear_width", "24", "measured the width"),
        ("in", "a.width", "42", "two figures swapped? Then it is 24"),
        ("in", "a.width", "25", "the tape was held at its first inch? Then it is 24"),
        ("in", "a.width", "610", "read in millimetres? Then it is"),
        ("in", "a.width", "61", "read in centimetres? Then it is"),
        ("in", "a.width", "24.7", "measured with one more side_left.thickness, 0.7?"),
        ("in", "a.width", "23.3", "measured without side_left.thickness, 0.7?"),
        ("in", "a.height", "42 1/32", "measured from corner to corner, ~42"),  # 24 and 34 1/2
        (
            "in",
            "a.side_left.length",
            "30 3/8",
            "cut on the other side of the line (the kerf is 1/8",
        ),
        ("in", "a.width", "29 7/16", ""),
        ("mm", "a.width", "23 5/8 in", ""),
        ("mm", "a.width", "23.6", "read in inches? Then it is"),
        ("mm", "a.width", "60", "read in centimetres? Then it is 600"),
        ("mm", "a.width", "610", "the tape was held at its first centimetre? Then it is 600"),
        ("mm", "a.width", "618", "measured with one more"),
        ("mm", "a.width", "653", ""),
    ],
)
def test_a_reading_far_off_is_asked_about_with_what_it_may_be(
    unit: Unit, path: str, reading: str, hint: str
) -> None:
    says = doubt(_room(unit), path, parse_length(reading, unit), Fraction(1, 4))
    assert hint in says
    if not hint:
        assert "?" not in says


@given(st.integers(100, 2999), st.integers(0, 9))
def test_two_figures_swapped_behind_the_point_are_found(whole: int, tenth: int) -> None:
    """0.718 typed as 0.781: the figures after the point too."""
    value = Fraction(whole, 1000) + tenth
    figures = f"{whole % 1000:03}"
    swapped = f"{figures[0]}{figures[2]}{figures[1]}"
    if swapped != figures and not swapped.endswith("0") and not figures.endswith("0"):
        wrong = Fraction(int(swapped), 1000) + whole // 1000 + tenth
        found = meant(wrong, value, Fraction(1, 10_000), "mm")
        assert found is not None
        assert (found.value, found.because) == (value, "two figures swapped")
