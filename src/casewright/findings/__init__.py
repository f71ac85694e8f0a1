"""Findings and questions: what is risky, and what is missing, as data."""

from casewright.findings.finding import Finding, Question, Severity

__all__ = ["Finding", "Question", "Severity"]
