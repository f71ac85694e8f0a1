"""Sheets that may give off more formaldehyde than a room should take.

Plywood and fibreboard are glued, and the usual glues give off formaldehyde for years, most of it
in the first months, and more in warm and damp rooms. In the USA panels may be sold only under TSCA
Title VI: 0.05 ppm in a test chamber from hardwood plywood, 0.11 from fibreboard, 0.13 from
fibreboard up to 8 mm; CARB 2 has the same figures. Europe's E1 allows about 0.1 ppm, and E2 more,
which several countries do not let be sold. A sheet whose label names E2, or no class at all, is
told of while parts are cut from it. Where the job says nothing, the buy list says what to ask for.
Sawing and sanding are a matter of dust: the cut sheets say so.

Passes
------
Fibreboard with "TSCA Title VI" on its label.

Fails
-----
Fibreboard of class E2.

Sources
-------
`tsca-vi`: 40 CFR 770.10, read in a secondary copy. The European classes are from memory.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.checks.rule import Breach, Rule
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.stock import Sheet

__all__ = ["RULE"]

_LIMITS = (
    "TSCA Title VI: 0.05 ppm from hardwood plywood, 0.11 from fibreboard, 0.13 from thin "
    "fibreboard"
)
_REMEDIES = (
    "a panel whose label your law asks for: TSCA Title VI in the USA, E1 or better elsewhere",
    "seal every face and edge, hidden ones too, and air the room: less comes off then, not none",
)
_SAYS = {
    "E2": "{} is of class E2: it may give off more formaldehyde than E1 or TSCA Title VI allow",
    "none on its label": "the label of {} names no emission class: nobody knows what formaldehyde "
    "it gives off",
}


def _examine(room: Room) -> Iterator[Breach]:
    told = {
        key: goods
        for key, goods in room.spec.stock.items()
        if isinstance(goods, Sheet) and goods.emission in _SAYS
    }
    if not told:
        return
    used = {part.stock for part in room.parts}
    for key, goods in told.items():
        if key in used and goods.emission is not None:
            yield Breach(
                f"stock.{key}",
                _SAYS[goods.emission].format(goods.title),
                measured=goods.emission,
                limit=_LIMITS,
                remedies=_REMEDIES,
            )


RULE = Rule("emission class", Severity.CARE, __doc__ or "", "tsca-vi", _examine)
