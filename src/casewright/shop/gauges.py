"""What a length is read with in the shop, and how far the reading strays."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from types import MappingProxyType

from casewright.shop.tools import Shop, Tool, ToolKind

__all__ = ["RULE", "gauge_for"]

RULE = Tool("steel rule", Fraction(1, 5), Fraction(2, 5))
"""In every shop, whether it is listed or not: common practice, from memory."""

_REACH: Mapping[ToolKind, Fraction | None] = MappingProxyType({
    "calliper": Fraction(150), "steel rule": Fraction(1000), "tape": None,
})  # fmt: skip
"""Greatest length that it reads at once [mm], None for any: common practice. A rule reads an
opening off a pair of sticks that were slid apart in it."""


def gauge_for(shop: Shop, length: Fraction) -> Tool | None:
    """The tool that reads a length best; None where the shop has none for it.

    Parameters
    ----------
    length
        [mm].
    """
    owned = {RULE.kind: RULE, **shop.tools}
    able = [
        owned[kind]
        for kind, reach in _REACH.items()
        if kind in owned and (reach is None or abs(length) <= reach)
    ]
    return min(able, key=lambda tool: tool.strays("").sigma, default=None)
