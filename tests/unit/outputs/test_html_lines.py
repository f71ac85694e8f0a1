"""Lines on a screen: what is said of pages on paper becomes a way there."""

from __future__ import annotations

import pytest

from casewright.outputs.html_lines import line_html
from casewright.outputs.inlines import Link, PageNumber, Rich

THERE = '<span aria-label="there">→</span>'
TRIMS = '<a href="/t">trims</a>'


@pytest.mark.parametrize(
    ("line", "shown"),
    [
        (("Cut ", Link("trims", "t"), " p. ", PageNumber("t"), "."), f"Cut {TRIMS}."),
        ((Link("trims", "t"), ", page ", PageNumber("t"), ", b"), f"{TRIMS}, b"),
        (("bore p. ", PageNumber("t")), f'bore <a href="/t">{THERE}</a>'),
        (("to cap, see ", PageNumber("t")), f'to cap, see <a href="/t">{THERE}</a>'),
        ((PageNumber("t"),), f'<a href="/t">{THERE}</a>'),
        (("bore p. ", PageNumber("nowhere"), "."), "bore ."),
    ],
)
def test_no_page_has_a_number(line: Rich, shown: str) -> None:
    """Its words go, and beside a link that leads there the mark goes too."""
    assert line_html(line, lambda anchor: "/t" if anchor == "t" else "") == shown
