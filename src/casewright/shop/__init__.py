"""Tools the shop owns: their reach and how true they cut, read and are set."""

from casewright.shop.gauges import gauge_for
from casewright.shop.learning import LEAST_PAIRS, Learned, learned
from casewright.shop.tools import Shop, SurveyTool, Tool, ToolKind

__all__ = [
    "LEAST_PAIRS", "Learned", "Shop", "SurveyTool", "Tool", "ToolKind", "gauge_for", "learned",
]  # fmt: skip
