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
from casewright.checks.words import length, thickness
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.sources import FOOT
from casewright.stock import Glazing

__all__ = ["RULE"]

_THINNEST = Fraction(28, 10)
"""Thinner glass is not tempered: 3/32 in, 2.5 mm by its name [mm]."""

_AREAS = ((Fraction(45, 10), Fraction(1, 2)), (Fraction(56, 10), Fraction(1)),
          (Fraction(100), Fraction(2)))  # fmt: skip
"""Greatest area of glass thinner than so much: 1/8 in and 4 mm, 3/16 in, thicker [mm, m2]."""

_SLENDER = 150
"""Greatest short side of a pane of plastic, in its thicknesses [-]."""

_SOLD = ((Fraction(1), '3/16" (5 mm)'), (Fraction(2), '1/4" (6 mm)'))
"""Thickness of glass that is sold for panes up to so much [m2]."""


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
        yield Breach(
            part.path,
            f"{part.title} is {thickness(room, thick)} thick: such thin glass is not tempered, "
            "and no other glass is for doors",
            measured=thickness(room, thick),
            limit=thickness(room, Fraction(3)) if room.spec.unit == "mm" else '1/8"',
            remedies=("tempered glass of 1/8 in (3 mm) or more",),
            severity=Severity.STOP,
        )
        return
    area = part.finished.length.value * part.finished.width.value
    most = next(area for bound, area in _AREAS if thick < bound) * 10**6
    if area > most:
        thicker = next((word for bound, word in _SOLD if area <= bound * 10**6), "")
        yield _too_large(room, part, (_area(room, area), _area(room, most)), thicker)


def _plastic(room: Room, part: Part) -> Iterator[Breach]:
    short = min(part.finished.length.value, part.finished.width.value)
    most = _SLENDER * part.finished.thickness.value
    if short > most:
        thicker = thickness(room, short / _SLENDER)
        sizes = f"{length(room, short)} wide", length(room, most)
        yield _too_large(room, part, sizes, thicker)


def _too_large(room: Room, part: Part, sizes: tuple[str, str], thicker: str) -> Breach:
    measured, limit = sizes
    thick = thickness(room, part.finished.thickness.value)
    other = (f"glazing of {thicker} or more",) if thicker else ()
    return Breach(
        part.path,
        f"the {part.title} is {measured}; of {thick} it should be {limit} at the most",
        measured=measured,
        limit=limit,
        remedies=(
            *other,
            f"two doors instead of one, or a divider, for panes of {limit} at the most",
        ),
    )


def _area(room: Room, area: Fraction) -> str:
    """An area in the job's unit [from mm2]."""
    if room.spec.unit == "mm":
        return f"{float(area / 10**6):.2f} m2"
    return f"{float(area / FOOT**2):.1f} sq ft"


RULE = Rule("pane size", Severity.CARE, __doc__ or "", "common practice", _examine)
