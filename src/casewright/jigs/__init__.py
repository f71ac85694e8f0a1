"""Jigs of the job's own: what is measured once and never again."""

from casewright.jigs.build import jigs
from casewright.jigs.model import Hole, Jigs, LineMark, MarkingStick, Spacer, Square, Template

__all__ = ["Hole", "Jigs", "LineMark", "MarkingStick", "Spacer", "Square", "Template", "jigs"]
