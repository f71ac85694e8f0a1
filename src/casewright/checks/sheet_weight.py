"""Full sheets too heavy for one person to lift to the saw.

A full sheet is lifted from the floor to a saw's table, or pulled off a stack onto a stand. What is
over the shop's own limit the sawing order keeps off the table; over three times the limit of the
lifting equation it is told here too. The equation takes two hands under the sheet's lower edge,
its face close to the body, no handles, no twist, one lift in five minutes, up to 34 in (87 cm).
Carrying a sheet with one hand under it, and wind, are outside of it. Weight is by the label's
thickness and the density of the stock, for planning, never a permission.

Passes
------
Plywood of 1/2 in, 4 x 8 ft.

Fails
-----
Fibreboard of 3/4 in, 4 x 8 ft, 770 kg/m3.

Sources
-------
`niosh-lifting`: the equation; that over an index of 3 nearly everybody is at risk is from memory.
`common practice`: how high a saw's table is; densities by the job's stock.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import Lifts, by_unit, kilograms, reckoning
from casewright.dims import Dim, Given, Origin, joined, tell
from casewright.findings import Reckoning, Severity
from casewright.room.lifting import STRENUOUS, Effort, effort_of
from casewright.room.model import Room
from casewright.stock import Sheet

__all__ = ["RULE", "full_sheet_weight"]

_NAME = "sheet weight"
_CUBIC = 10**9  # cubic millimetres in a cubic metre


def _examine(room: Room) -> Iterator[Breach]:
    used = {part.stock for part in room.parts}
    lifts = [
        (goods, _to_the_saw(room, goods))
        for key, goods in room.spec.stock.items()
        if key in used and isinstance(goods, Sheet)
    ]
    heavy = [(goods, effort) for goods, effort in lifts if effort.is_strenuous]
    if not heavy:
        return
    goods, effort = max(heavy, key=lambda each: each[1].weight)
    others = [each.title for each, _ in heavy if each is not goods]
    own = reckoning(room, _NAME, goods.key)
    weight = own.weight(full_sheet_weight(own, goods))
    says = [
        tell("a full sheet of {} weighs about {}; ", goods.title, weight),
        Lifts(room).words(effort, goods.title, own, _thickness(own, goods)),
        f". Nearly as heavy: {', '.join(others)}" if others else "",
    ]
    yield Breach(
        f"stock.{goods.key}",
        joined("", says),
        measured=weight.text,
        limit="" if effort.limit is None else kilograms(room, effort.limit * STRENUOUS),
        remedies=(
            "a helper or a cart that day, or break it down where it comes off the car",
            "half sheets, where the yard has them",
        ),
        own=own,
    )


def full_sheet_weight(own: Reckoning, goods: Sheet) -> Dim:
    """What a sheet weighs by the label's sizes and its density [kg]."""
    key = f"stock.{goods.key}"
    origin = Origin("cited", f"{goods.density} kg/m3")
    density = own.given(f"{key}.density", Given(Fraction(goods.density) / _CUBIC, origin), -3)
    long = own.given(f"{key}.sold_length", goods.length)
    wide = own.given(f"{key}.sold_width", goods.width)
    return own.let("weight", long * wide * _thickness(own, goods) * density)


def _thickness(own: Reckoning, goods: Sheet) -> Dim:
    return own.given(f"stock.{goods.key}.sold_thickness", goods.thickness)


def _to_the_saw(room: Room, goods: Sheet) -> Effort:
    thick = goods.thickness.value
    weight = goods.length.value * goods.width.value * thick * goods.density / 1_000_000_000
    stops = (Fraction(0), by_unit(room, "34", "870"))
    return effort_of(weight, thick, stops, room.spec.unit)


RULE = Rule(_NAME, Severity.NOTE, __doc__ or "", "niosh-lifting", _examine)
