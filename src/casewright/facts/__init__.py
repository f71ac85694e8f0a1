"""Frozen facts by path: what was measured or cut, with no store behind it."""

from casewright.facts.fact import NO_FACTS, Fact, Facts, merged

__all__ = ["NO_FACTS", "Fact", "Facts", "merged"]
