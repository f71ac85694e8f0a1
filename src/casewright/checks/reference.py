"""The page of the rules, written from the rules: `python -m casewright.checks.reference`."""

from __future__ import annotations

import sys
from collections.abc import Iterator, Mapping

from casewright.checks import RULES
from casewright.checks.rule import Rule
from casewright.checks.while_building import FOUND_WHILE_BUILDING
from casewright.findings import Severity
from casewright.sources import source

__all__ = ["reference_text"]

_INTRODUCTION = """\
# What is checked

Every time a job is checked or its packet is made, these rules look at it. What they find is told
with the place, what was measured, the limit, and what would help, best first. A rule says what
was checked and nothing more: where it finds nothing, that is no word that something is safe.
Makers' sheets and manuals, and the code of the place, come before anything here.

This page is written from the rules themselves. Each of their examples is run as a test. What is
[found while building](#found-while-building) stands at the end.
"""

_WEIGHT: Mapping[Severity, str] = {
    Severity.STOP: "stop: do not cut the parts it names",
    Severity.CARE: "care: look before going on",
    Severity.NOTE: "note: good to know",
}
"""What a finding asks for, by its severity."""


def reference_text() -> str:
    """The page in Markdown: every rule in the order of `RULES`, with its examples."""
    parts = [_INTRODUCTION, "\n".join(_contents())]
    parts += ["\n".join(_section(rule)) for rule in RULES]
    parts.append("\n".join(_built()))
    return "\n".join(parts)


def _built() -> Iterator[str]:
    yield "## Found while building"
    yield ""
    yield "Some things are found where a part is made or a cut is planned. They are told like the"
    yield "rest, with numbers and with what would help."
    yield ""
    yield "| finding | about | passes | fails | source |"
    yield "|---|---|---|---|---|"
    for each in FOUND_WHILE_BUILDING:
        yield f"| {' | '.join(each)} |"
    yield ""


def _contents() -> Iterator[str]:
    yield "| rule | about | a finding means |"
    yield "|---|---|---|"
    for rule in RULES:
        link = f"[{rule.name}](#{rule.name.replace(' ', '-')})"
        yield f"| {link} | {rule.title.rstrip('.')} | {rule.severity.value} |"
    yield ""


def _section(rule: Rule) -> Iterator[str]:
    yield f"## {rule.name.capitalize()}"
    yield ""
    yield f"**{rule.title}** Unless it says otherwise, a finding means\n{_WEIGHT[rule.severity]}."
    yield ""
    yield rule.explanation
    yield ""
    yield f"- Passes: {_one_line(rule.passes)}"
    yield f"- Fails: {_one_line(rule.fails)}"
    yield f"- Sources: {_sources(rule)}"
    yield ""


def _sources(rule: Rule) -> str:
    """What the rule says of its figures, with the publication in full where there is one."""
    cited = source(rule.source)
    told = _one_line(rule.sources)
    return told if cited.key == "common practice" else f"{told} ({cited.citation})"


def _one_line(text: str) -> str:
    return " ".join(text.split())


if __name__ == "__main__":
    sys.stdout.write(reference_text())
