"""Lengths and the chain of dimensions: exact numbers that can say why they are what they are."""

from casewright.dims.causes import Cause
from casewright.dims.chain import Branch, Chain, Fit, Frozen, Place
from casewright.dims.dim import (
    Dim,
    DimensionKindError,
    Given,
    Origin,
    OriginKind,
    greatest,
    least,
    total,
)
from casewright.dims.rounding import Way, round_to
from casewright.dims.slack import Slack, Term, chance_outside, sampled, slack
from casewright.dims.why import Why, explain, formula_text, why

__all__ = [
    "Branch", "Cause", "Chain", "Dim", "DimensionKindError", "Fit", "Frozen", "Given", "Origin",
    "OriginKind", "Place", "Slack", "Term", "Way", "Why", "chance_outside", "explain",
    "formula_text", "greatest", "least", "round_to", "sampled", "slack", "total", "why",
]  # fmt: skip
