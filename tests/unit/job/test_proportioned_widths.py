"""Widths of a run that are wished for in proportion to each other."""

from __future__ import annotations

import pytest
from tests.jobs import problem, read

from casewright.job.layouts import layouts
from casewright.room.build import build

COMPARED = """\
format = 1
unit = "mm"
[wall.n]
width = 3000
[case.a]
kind = "base"
[case.b]
kind = "base"
[case.c]
kind = "base"
[case.d]
kind = "base"
width = 600
[run.x]
cases = ["a", "b", "d", "c"]
on = "n"
proportions = { a = 3, b = 2, c = 3 }
"""


def test_widths_compare_as_they_are_wished_to() -> None:
    """3000 less 600 and two fillers of 36: 2328, in eighths 291, so 873, 582, 873 (by hand)."""
    [found] = layouts(build(read(COMPARED)))
    best = found.answers[0].layout
    assert best.widths == (873, 582, 600, 873)
    assert (best.left, best.right) == (36, 36)


@pytest.mark.parametrize(
    ("new", "says"),
    [
        ("{ a = 3, d = 2 }", "width of its own"),
        ("{ a = 3, e = 2 }", "write a, b, d or c"),
        ("{ a = 3 }", "one case alone"),
        ("{ a = 3, b = 30 }", "write 9 or less"),
        ("{ a = 3, b = 0 }", "1"),
    ],
)
def test_proportions_that_cannot_be_are_told(new: str, says: str) -> None:
    """Of a given width, of a case elsewhere, of one alone, out of all proportion."""
    found = problem(COMPARED.replace("{ a = 3, b = 2, c = 3 }", new))
    assert says in f"{found.what}; {found.want}"
