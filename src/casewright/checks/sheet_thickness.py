"""Readings of a sheet's thickness that its label cannot have.

Sheets are seldom as thick as their label, but a reading far off it is a slip of the pen or
another sheet. Plywood is held against the widest band that standards allow for any of its faces,
fibreboard against its own; half a millimetre is added for the tool and the sheet's own waves.

Passes
------
A sheet sold as 3/4 that measures 0.703.

Fails
-----
The same sheet read as 0.603.

Sources
-------
`ps1` and `hp1` for plywood, `a208.2` for fibreboard; the half millimetre is this house's own.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import Origin, tell
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.sources import FIBREBOARD, PLYWOOD_THICKNESS, Band, plywood_band
from casewright.stock import Sheet

__all__ = ["RULE"]

_NAME = "sheet thickness"

_LEEWAY = Fraction(1, 2)


def _band(sheet: Sheet) -> Band | None:
    label = sheet.thickness.value
    if sheet.material == "plywood":
        bands = [plywood_band(label, face)[0] for face in PLYWOOD_THICKNESS]
        return Band(min(b.low for b in bands) - _LEEWAY, max(b.high for b in bands) + _LEEWAY)
    if sheet.material == "fibreboard":
        within = FIBREBOARD.thickness + _LEEWAY
        return Band(label - within, label + within)
    return None


def _examine(room: Room) -> Iterator[Breach]:
    for key, goods in room.spec.stock.items():
        node = room.chain.nodes.get(f"stock.{key}.thickness")
        band = _band(goods) if isinstance(goods, Sheet) else None
        if node is None or node.built is None or band is None or band.holds(node.built):
            continue
        own = reckoning(room, _NAME, key)
        sold = own.given(f"stock.{key}.sold_thickness", goods.thickness)
        source = "a208.2" if getattr(goods, "material", "") == "fibreboard" else "ps1"
        origin = Origin("cited", "what standards allow, and half a millimetre", source)
        low, high = (
            own.thickness(own.worked(name, size, origin, sold))
            for name, size in (("thinnest", band.low), ("thickest", band.high))
        )
        read = own.thickness(node)
        says = "{} was read as {}; sold as {} it should be between {} and {}"
        yield Breach(
            node.path,
            tell(says, goods.title, read, own.thickness(sold), low, high),
            measured=read.text,
            limit=f"{low.text} to {high.text}",
            remedies=("measure again", "put the right label on the sheet"),
            own=own,
        )


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "ps1", _examine)
