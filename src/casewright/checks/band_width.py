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

from casewright.casework.parts import Part
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import tell
from casewright.findings import Limit, Severity
from casewright.room.model import Room
from casewright.stock import EdgeBand

__all__ = ["RULE"]

_OVER = Limit("band_width.over", "", "1", "what band has over on its edge, 1 mm")


def _examine(room: Room) -> Iterator[Breach]:
    narrow: dict[str, list[Part]] = {}
    for part in room.parts:
        for key in dict.fromkeys(e.stock for e in part.edges if e.kind == "band"):
            band = room.spec.stock[key]
            thick = part.finished.thickness.value
            if isinstance(band, EdgeBand) and band.width.value < thick + _OVER.of(room.spec.unit):
                narrow.setdefault(key, []).append(part)
    for key, parts in narrow.items():
        band = room.spec.stock[key]
        if isinstance(band, EdgeBand):
            own = reckoning(room, "band width", key)
            thickest = max((p.finished.thickness for p in parts), key=lambda dim: dim.value)
            wide = own.length(own.given(f"stock.{key}.width", band.width))
            least = own.thickness(thickest + own.limit(_OVER), "least")
            yield Breach(
                parts[0].path,
                tell(
                    "{} is {} wide, on edges up to {} thick: it cannot be trimmed flush on both "
                    "sides",
                    band.title, wide, own.thickness(thickest),
                ),
                measured=wide.text,
                limit=least.text,
                remedies=(tell("band {} wide or more", least),),
                own=own,
            )  # fmt: skip


RULE = Rule("band width", Severity.CARE, __doc__ or "", "common practice", _examine)
