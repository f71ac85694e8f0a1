"""What is found in several places, said once."""

from __future__ import annotations

from collections.abc import Iterable

from casewright.findings.finding import Finding, Question

__all__ = ["findings_together", "questions_together"]


def findings_together(findings: Iterable[Finding]) -> tuple[tuple[Finding, ...], ...]:
    """Findings of one rule that the same would help, each group where its first one stood."""
    found: dict[tuple[object, ...], list[Finding]] = {}
    for each in findings:
        found.setdefault((each.rule, each.severity, each.remedies), []).append(each)
    return tuple(tuple(group) for group in found.values())


def questions_together(questions: Iterable[Question]) -> tuple[tuple[Question, ...], ...]:
    """Questions that are asked for the same reason, each group where its first one stood."""
    found: dict[str, list[Question]] = {}
    for each in questions:
        found.setdefault(each.because, []).append(each)
    return tuple(tuple(group) for group in found.values())
