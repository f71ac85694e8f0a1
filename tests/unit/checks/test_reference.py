"""The page of the rules."""

from __future__ import annotations

from tests.fences.source_tree import ROOT

from casewright.checks import RULES
from casewright.checks.reference import reference_text
from casewright.sources import source


def test_the_page_is_up_to_date() -> None:
    """After a change: python -m casewright.checks.reference > docs/checks.md."""
    page = (ROOT / "docs" / "checks.md").read_text("utf-8")
    assert page == reference_text(), "python -m casewright.checks.reference > docs/checks.md"


def test_the_page_tells_every_rule_with_its_examples_and_its_source() -> None:
    """In the order in which they are looked at, each publication in full."""
    page = " ".join(reference_text().split())
    places = [page.index(f"## {rule.name.capitalize()} ") for rule in RULES]
    assert places == sorted(places)
    for rule in RULES:
        for told in (rule.explanation, rule.passes, rule.fails, rule.sources):
            assert " ".join(told.split()) in page
        if rule.source != "common practice":
            assert source(rule.source).citation in page
