"""Tools the shop owns: their reach and how true they cut."""

from casewright.shop.tools import Shop, SurveyTool, Tool, ToolKind

__all__ = ["Shop", "SurveyTool", "Tool", "ToolKind"]
