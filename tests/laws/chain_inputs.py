"""Origins, ranges and deviations that tests of the chain share."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import strategies as st

from casewright.dims import Cause, Origin

CHOSEN = Origin("chosen", "test")
TAPE = Origin("measured", "tape")
SAW = Origin("made", "table saw")
MM = st.fractions(min_value=1, max_value=3000, max_denominator=64)
SMALL = st.fractions(min_value=-3, max_value=3, max_denominator=64)


def own(key: str, limit: Fraction | int) -> tuple[Cause, ...]:
    """One deviation of that greatest size, a third of it as its standard deviation."""
    return (Cause(key, Fraction(limit) / 3, Fraction(limit)),)
