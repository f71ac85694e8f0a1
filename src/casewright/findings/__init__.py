"""Findings and questions: what is risky, and what is missing, as data."""

from casewright.findings.finding import Finding, Question, Severity
from casewright.findings.grouping import findings_together, questions_together
from casewright.findings.reckoning import FOUND, Limit, Reckoning, entered, round_figure

__all__ = [
    "FOUND", "Finding", "Limit", "Question", "Reckoning", "Severity", "entered",
    "findings_together", "questions_together", "round_figure",
]  # fmt: skip
