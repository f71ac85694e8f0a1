"""Corner templates: panes are rounded at their corners to lie in a routed rebate."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.parts import Part
from casewright.dims import Dim, greatest, tell, trade
from casewright.jigs.model import CornerTemplate
from casewright.jigs.numbers import JigNumbers

__all__ = ["corner_templates"]

_LEGS = Fraction(3)
"""Length of a template's edges, in radii of the corner: room for clamp and bush."""

_ROUTED = (
    "Cut it out of flat {} sheet with its two stops, whose inner faces lie the offset "
    "outside its edges. Lay it on the corner, stops tight against both edges; clamp template, "
    "pane and scrap below together. Guide bush along the template, shallow passes, against the "
    "bit's turn. Plastic only: glass is cut and rounded by whoever sells it. Another bush or bit: "
    "measure both, write guide_offset under [style], make it anew. Goggles, gloves for the edges."
)
_MARKED = (
    "Cut this corner out, lay it on each corner of the pane and mark round it. Glass is cut and "
    "rounded by whoever sells it; plastic is sawn and filed, its edges taken off: gloves and "
    "goggles on."
)


def corner_templates(numbers: JigNumbers) -> Iterator[CornerTemplate]:
    """One for each radius that corners of panes have."""
    found: dict[Fraction, list[tuple[Dim, Part]]] = {}
    for part in numbers.room.parts:
        if part.corner_radius is not None and part.corner_radius.value:
            found.setdefault(part.corner_radius.value, []).append((part.corner_radius, part))
    for number, panes in enumerate(found.values(), start=1):
        name = "corner" if len(found) == 1 else f"corner_{number}"
        yield _template(numbers, name, panes[0][0], tuple(part.path for _, part in panes))


def _template(
    numbers: JigNumbers, name: str, radius: Dim, uses: tuple[str, ...]
) -> CornerTemplate:
    """With the shop's router, where its bush leaves the template a round corner of its own."""
    offset = numbers.style("guide_offset")
    margin = numbers.style("jig_margin")
    shop = numbers.room.spec.shop
    leg = numbers.named(name, "leg", greatest(radius * _LEGS, radius + margin))
    if not shop.has("router") or offset.value >= radius.value:
        return CornerTemplate(
            f"jig.{name}", "Corner of panes", _MARKED, radius, None, radius, leg, uses
        )
    inner = numbers.named(name, "inner", radius - offset)
    thin = trade("template_sheet", numbers.room.spec.unit)
    return CornerTemplate(
        f"jig.{name}", "Corner template", tell(_ROUTED, thin), radius, offset, inner, leg, uses
    )
