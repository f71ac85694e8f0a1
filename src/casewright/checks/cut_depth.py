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
from casewright.checks.words import reckoning
from casewright.dims import tell
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.sources import INCH

__all__ = ["RULE"]

_NAME = "cut depth"

_KINDS = ("rabbet", "dado", "groove")
_OVER = INCH / 32


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        for part in case.parts:
            for feature in part.features:
                if isinstance(feature, Cut) and feature.kind in _KINDS:
                    yield from _judge(room, part, feature)


def _judge(room: Room, part: Part, cut: Cut) -> Iterator[Breach]:
    size = part.finished
    board = size.thickness if cut.edge is None else size.width
    deep, thick = cut.depth.value, board.value
    is_shallow = cut.kind == "rabbet" and cut.runs == "l" and deep < thick / 3
    if deep <= thick / 2 + _OVER and not is_shallow:
        return
    own = reckoning(room, _NAME, cut.path)
    told, whole, half = (own.thickness(cut.depth), own.thickness(board),
                         own.thickness(board / 2, "half"))  # fmt: skip
    says = tell(
        "the rabbet in the {} is {} deep, under a third of {}: the back's brads have little to "
        "bite",
        part.title, told, whole,
    )  # fmt: skip
    if not is_shallow:
        says = tell(
            "the {} in the {} is {} deep, over half of {}: {} is left",
            cut.kind, part.title, told, whole, own.thickness(board - cut.depth, "left"),
        )  # fmt: skip
    yield Breach(
        cut.path,
        says,
        measured=told.text,
        limit=own.thickness(board / 3, "third").text if is_shallow else half.text,
        remedies=(tell("a {} {} deep, half the thickness", cut.kind, half),),
        severity=Severity.NOTE if is_shallow else None,
        own=own,
    )


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
