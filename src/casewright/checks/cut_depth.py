"""Rabbets, dadoes and grooves no deeper than half their board, nor shallower than a third.

A rabbet for a 1/4 back in a 3/4 side is cut half the side's thickness deep; a dado a third to
half. Deeper, the lip left over breaks out; a rabbet for a back shallower than a third gives its
brads too little to bite. A groove in an edge is held against the width. Sheets run under their
label, so 1/32 in over half is let pass. Rebates for glass and laps follow rules of their own.

Passes
------
A rabbet 3/8 deep in a side of 23/32.

Fails
-----
A rabbet 1/2 deep in the same side.

Sources
-------
`common practice`.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.features import Cut
from casewright.casework.parts import Part
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import thickness
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.sources import INCH

__all__ = ["RULE"]

_KINDS = ("rabbet", "dado", "groove")
_OVER = INCH / 32


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        for part in case.parts:
            for feature in part.features:
                if isinstance(feature, Cut) and feature.kind in _KINDS:
                    yield from _judge(room, part, feature)


def _judge(room: Room, part: Part, cut: Cut) -> Iterator[Breach]:
    size, deep = part.finished, cut.depth.value
    thick = size.thickness.value if cut.edge is None else size.width.value
    if deep > thick / 2 + _OVER:
        yield Breach(
            cut.path,
            f"the {cut.kind} in the {part.title} is {thickness(room, deep)} deep, over half of "
            f"{thickness(room, thick)}: {thickness(room, thick - deep)} is left",
            measured=thickness(room, deep),
            limit=thickness(room, thick / 2),
            remedies=(f"a {cut.kind} {thickness(room, thick / 2)} deep, half the thickness",),
        )
    elif cut.kind == "rabbet" and cut.runs == "l" and deep < thick / 3:
        yield Breach(
            cut.path,
            f"the rabbet in the {part.title} is {thickness(room, deep)} deep, under a third of "
            f"{thickness(room, thick)}: the back's brads have little to bite",
            measured=thickness(room, deep),
            limit=thickness(room, thick / 3),
            remedies=(f"a rabbet {thickness(room, thick / 2)} deep, half the thickness",),
            severity=Severity.NOTE,
        )


RULE = Rule("cut depth", Severity.CARE, __doc__ or "", "common practice", _examine)
