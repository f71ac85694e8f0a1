"""Titles as a person writes them."""

from __future__ import annotations

import re

from tests.jobs import example, read

from casewright.job.worked import work_out


def test_braces_in_titles_stay_as_they_are_written() -> None:
    """Sentences have places for their lengths; what a person wrote is none."""
    text = example("gallery_tall")
    odd = re.sub(r'^title = "(.*)"$', r'title = "{} \1 {0}"', text, flags=re.MULTILINE)
    assert odd.count("{}") > 5
    usual, found = (
        {(each.rule, each.path): each.says for each in work_out(read(each)).findings}
        for each in (text, odd)
    )
    assert found.keys() == usual.keys()
    assert any("{} " in says for says in found.values())
    assert all(re.sub(r"\{\} | \{0\}", "", says) == usual[key] for key, says in found.items())
