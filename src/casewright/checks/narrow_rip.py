"""Rips so narrow that the hand would come near the blade.

Under 2 in the hand does not pass between fence and blade: a push block that carries the strip,
a sled, or cutting the strip off the far side of a wider piece takes its place. Follow the saw
maker's instructions.

Passes
------
A nailer 3 1/2 wide.

Fails
-----
A nosing 1 1/2 wide.

Sources
-------
`common practice`: no rip under 2 in with the hand; style 'narrow_rip'.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.parts import Part
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning, style_of
from casewright.dims import Dim, tell
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.stock import Board, Sheet

__all__ = ["RULE"]

_NAME = "narrow rip"


def _examine(room: Room) -> Iterator[Breach]:
    least = room.spec.style["narrow_rip"].value
    narrow: dict[tuple[str, Fraction], list[Part]] = {}
    for part in room.parts:
        goods = room.spec.stock[part.stock]
        width = _rip(part).value
        ripped = isinstance(goods, Sheet) or (
            isinstance(goods, Board) and width != goods.width.value
        )
        if ripped and width < least:
            narrow.setdefault((part.stock, width), []).append(part)
    for parts in narrow.values():
        first = parts[0]
        others = f" and {len(parts) - 1} more of this width" if len(parts) > 1 else ""
        own = reckoning(room, _NAME, first.path)
        wide, under = own.length(_rip(first)), own.length(style_of(room, own, "narrow_rip"))
        yield Breach(
            first.path,
            tell(
                "the {} of {}{}: ripped {} wide, under {}",
                first.title, first.case, others, wide, under,
            ),
            measured=wide.text,
            limit=under.text,
            remedies=(
                "a push block that holds the strip down and carries it past the blade",
                "the strip on the far side of the blade, the wide piece at the fence",
            ),
            own=own,
        )  # fmt: skip


def _rip(part: Part) -> Dim:
    """The lesser size of its blank [mm]."""
    return min(part.blank.width, part.blank.length, key=lambda dim: dim.value)


RULE = Rule(_NAME, Severity.NOTE, __doc__ or "", "common practice", _examine)
