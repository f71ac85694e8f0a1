"""Tools the shop owns: their reach and how true they cut."""

from casewright.shop.tools import Shop, Tool, ToolKind

__all__ = ["Shop", "Tool", "ToolKind"]
