"""Edge band that is wide enough to be trimmed flush on both sides.

Band is ironed on with a little over on each side and trimmed off. Band no wider than the edge
leaves a bare line on one side or the other.

Passes
------
Band 22 mm wide on edges of 23/32.

Fails
-----
Band 16 mm wide on the same edges.

Sources
-------
`common practice`: at least a millimetre over.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.parts import Part
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import length, thickness
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.stock import EdgeBand

__all__ = ["RULE"]

_OVER = Fraction(1)


def _examine(room: Room) -> Iterator[Breach]:
    narrow: dict[str, list[Part]] = {}
    for part in room.parts:
        for key in dict.fromkeys(e.stock for e in part.edges if e.kind == "band"):
            band = room.spec.stock[key]
            thick = part.finished.thickness.value
            if isinstance(band, EdgeBand) and band.width.value < thick + _OVER:
                narrow.setdefault(key, []).append(part)
    for key, parts in narrow.items():
        band = room.spec.stock[key]
        if isinstance(band, EdgeBand):
            thickest = max(part.finished.thickness.value for part in parts)
            wide = length(room, band.width.value)
            yield Breach(
                parts[0].path,
                f"{band.title} is {wide} wide, on edges up to {thickness(room, thickest)} thick: "
                "it cannot be trimmed flush on both sides",
                measured=wide,
                limit=thickness(room, thickest + _OVER),
                remedies=(f"band {thickness(room, thickest + _OVER)} wide or more",),
            )


RULE = Rule("band width", Severity.CARE, __doc__ or "", "common practice", _examine)
