"""Pocket screws of the right length for the board they are bored in.

The jig lets the screw out at mid-thickness, slanted. A screw made for thicker stock comes out
of the far face of a piece as thin as the first; one made for thinner stock hardly reaches the
second piece.

Passes
------
Boards of 23/32 joined with 1 1/4 screws.

Fails
-----
The same boards joined with 1 1/2 screws.

Sources
-------
`common practice`: lengths of screws by thickness as jig makers' charts give them, from memory;
the chart of the jig in hand governs.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.parts import Part
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import Dim, Origin, tell
from casewright.findings import Severity
from casewright.hardware import pocket_screw_length
from casewright.room.model import Room
from casewright.sources import INCH

__all__ = ["RULE"]

_NAME = "pocket screw length"

_CHARTS = "common practice"
_LEEWAY = INCH / 16
"""A metric screw of 32 mm counts as 1 1/4 in, one of 25 mm as an inch."""


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        parts = {part.path: part for part in case.parts}
        seen: set[str] = set()
        for joint in case.joints:
            for fastening in joint.fastenings:
                if fastening.kind != "pocket screw" or fastening.length is None:
                    continue
                bored = parts[fastening.through[0]]
                if bored.path in seen:
                    continue
                seen.add(bored.path)
                right = pocket_screw_length(bored.finished.thickness.value, room.spec.unit)
                used = fastening.length.value
                if right is None or abs(used - right) <= _LEEWAY:
                    continue
                yield _breach(room, bored, fastening.length, right)


def _breach(room: Room, bored: Part, used: Dim, right: Fraction) -> Breach:
    own, thick = reckoning(room, _NAME, bored.path), bored.finished.thickness
    origin = Origin("solved", "by its thickness, as charts of jig makers give it", _CHARTS)
    screw, fits = own.length(used), own.length(own.worked("fits", right, origin, thick))
    far = used.value > right
    ends = "may come out of the far face" if far else "hardly reaches the next piece"
    return Breach(
        bored.path,
        tell("a {} pocket screw in a board {} thick {}", screw, own.thickness(thick), ends),
        measured=screw.text,
        limit=fits.text,
        remedies=(tell("pocket screws of {}", fits),),
        own=own,
    )


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
