"""What the blades of the saws take away."""

from __future__ import annotations

from fractions import Fraction

from casewright.dims import Given, Origin
from casewright.shop.tools import Shop, ToolKind

__all__ = ["USUAL_KERF", "saw_kerf", "saw_kerfs"]

_SAWS: tuple[ToolKind, ...] = ("table saw", "circular saw", "mitre saw")

USUAL_KERF = Given(Fraction(16, 5), Origin("chosen", "usual kerf of a carbide blade"))


def saw_kerfs(shop: Shop) -> dict[ToolKind, Given]:
    """The kerf of each saw that the shop owns, as far as it is known [mm]."""
    tools = ((kind, shop.tools.get(kind)) for kind in _SAWS)
    return {kind: tool.kerf for kind, tool in tools if tool and tool.kerf}


def saw_kerf(shop: Shop) -> Fraction:
    """The widest kerf of the saws the shop owns [mm]."""
    return max((kerf.value for kerf in saw_kerfs(shop).values()), default=USUAL_KERF.value)
