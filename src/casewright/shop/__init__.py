"""Tools the shop owns: their reach, how true they cut and read, and how they are set."""

from casewright.shop.coach import Axis, Lean, Setting, TestCut, leans, move_words
from casewright.shop.gauges import gauge_for
from casewright.shop.learning import LEAST_PAIRS, Learned, learned, learned_twice
from casewright.shop.mending import Mending
from casewright.shop.saws import USUAL_KERF, saw_kerf, saw_kerfs
from casewright.shop.tools import Shop, SurveyTool, Tool, ToolKind

__all__ = [
    "LEAST_PAIRS", "USUAL_KERF", "Axis", "Lean", "Learned", "Mending", "Setting", "Shop",
    "SurveyTool", "TestCut", "Tool", "ToolKind", "gauge_for", "leans", "learned",
    "learned_twice", "move_words", "saw_kerf", "saw_kerfs",
]  # fmt: skip
