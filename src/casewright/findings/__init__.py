"""Findings and questions: what is risky, and what is missing, as data."""

from casewright.findings.finding import Finding, Question, Severity
from casewright.findings.grouping import findings_together, questions_together

__all__ = ["Finding", "Question", "Severity", "findings_together", "questions_together"]
