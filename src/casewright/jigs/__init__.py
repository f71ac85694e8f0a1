"""Jigs of the job's own: what is measured once and never again."""

from casewright.jigs.build import jigs
from casewright.jigs.model import (
    CornerTemplate,
    Hole,
    Jigs,
    LineMark,
    MarkingStick,
    Spacer,
    Square,
    Template,
)

__all__ = [
    "CornerTemplate",
    "Hole",
    "Jigs",
    "LineMark",
    "MarkingStick",
    "Spacer",
    "Square",
    "Template",
    "jigs",
]
