"""Panes too large for their thickness.

Glass shops cut 1/8 in, 3 or 4 mm, for small cabinet doors and thicker for larger ones; thinner
glass is not tempered at all. Clear plastic does not break, but is some twenty times less stiff:
a wide thin pane gives under a finger, bows with warmth on one side and slips out of its rebate.

Passes
------
A pane of 1/8 tempered glass, 14 x 36.

Fails
-----
The same glass at 22 x 46; acrylic of 1/8, 22 wide.

Sources
-------
`common practice`: which thickness is for small and which for large doors, as glass shops advise.
The areas and the width of plastic, 150 times its thickness, are this house's own judgement; the
glass shop's word comes first.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.parts import Part
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import Dim, Given, Measure, Origin, tell
from casewright.findings import Limit, Reckoning, Severity
from casewright.room.model import Room
from casewright.sources import FOOT
from casewright.stock import Glazing

__all__ = ["RULE"]

_NAME = "pane size"
_OWN = "common practice"

_USUAL = Limit("pane_size.thinnest", "1/8", "3", "the thinnest glass that is tempered")
_THINNEST = Fraction(28, 10)
"""Thinner glass is not tempered: 3/32 in, 2.5 mm by its name [mm]."""

_AREAS = ((Fraction(45, 10), Fraction(1, 2)), (Fraction(56, 10), Fraction(1)),
          (Fraction(100), Fraction(2)))  # fmt: skip
"""Greatest area of glass thinner than so much: 1/8 in and 4 mm, 3/16 in, thicker [mm, m2]."""

_SLENDER = 150
"""Greatest short side of a pane of plastic, in its thicknesses [-]."""

_SOLD = ((Fraction(1), Fraction(5), '3/16" (5 mm)'), (Fraction(2), Fraction(6), '1/4" (6 mm)'))
"""Thickness of glass that is sold for panes up to so much [m2, mm]."""


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        told: set[str] = set()
        for part in case.parts:
            goods = room.spec.stock.get(part.stock)
            if not isinstance(goods, Glazing) or part.group in told:
                continue
            found = list(_glass(room, part) if goods.material == "tempered glass"
                         else _plastic(room, part))  # fmt: skip
            if found:
                told.add(part.group)
            yield from found


def _glass(room: Room, part: Part) -> Iterator[Breach]:
    thick = part.finished.thickness.value
    if thick < _THINNEST:
        yield _too_thin(room, part)
        return
    area = part.finished.length.value * part.finished.width.value
    most = next(area for bound, area in _AREAS if thick < bound) * 10**6
    if area <= most:
        return
    own = reckoning(room, _NAME, part.path)
    thicker: Measure | None = None
    for bound, millimetres, text in _SOLD:
        if area <= bound * 10**6 and thicker is None:
            note = f"glass that is sold for panes up to {bound} m2"
            sold = Given(millimetres, Origin("cited", note, _OWN))
            thicker = own.said(own.given(f"pane_size.sold_{millimetres}", sold), text, "sold")
    yield _too_large(own, part, (_area(room, area), _area(room, most)), thicker)


def _too_thin(room: Room, part: Part) -> Breach:
    own = reckoning(room, _NAME, part.path)
    thick = own.thickness(part.finished.thickness)
    return Breach(
        part.path,
        tell(
            "{} is {} thick: such thin glass is not tempered, and no other glass is for doors",
            part.title,
            thick,
        ),
        measured=thick.text,
        limit=own.thickness(own.limit(_USUAL)).text,
        remedies=(
            tell(
                "tempered glass of {} or more",
                own.said(own.limit(_USUAL), "1/8 in (3 mm)", "thinnest"),
            ),
        ),
        severity=Severity.STOP,
        own=own,
    )


def _plastic(room: Room, part: Part) -> Iterator[Breach]:
    size = part.finished
    short = min(size.length, size.width, key=lambda dim: dim.value)
    if short.value > _SLENDER * size.thickness.value:
        own = reckoning(room, _NAME, part.path)
        most = own.length(_slender(own) * size.thickness, "widest")
        wide = own.length(short)
        thicker = own.thickness(short / _slender(own), "thicker")
        yield _too_large(own, part, (tell("{} wide", wide), most), thicker)


def _slender(own: Reckoning) -> Dim:
    note = "the short side of a pane of plastic in its thicknesses, this house's judgement"
    return own.given(
        "pane_size.slender", Given(Fraction(_SLENDER), Origin("cited", note, _OWN)), 0
    )


def _too_large(
    own: Reckoning, part: Part, sizes: tuple[str, str | Measure], thicker: Measure | None
) -> Breach:
    measured, limit = sizes
    thick = own.thickness(part.finished.thickness)
    other = (tell("glazing of {} or more", thicker),) if thicker else ()
    return Breach(
        part.path,
        tell(
            "the {} is {}; of {} it should be {} at the most",
            part.title, measured, thick, limit,
        ),
        measured=measured,
        limit=limit if isinstance(limit, str) else limit.text,
        remedies=(
            *other,
            tell("two doors instead of one, or a divider, for panes of {} at the most", limit),
        ),
        own=own,
    )  # fmt: skip


def _area(room: Room, area: Fraction) -> str:
    """An area in the job's unit [from mm2]."""
    if room.spec.unit == "mm":
        return f"{float(area / 10**6):.2f} m2"
    return f"{float(area / FOOT**2):.1f} sq ft"


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
