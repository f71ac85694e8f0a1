"""Pocket holes left open on a face that shows.

Pockets go into a face that nobody sees, or are plugged and filled. Where the job says 'hidden'
none may be left in a face that shows.

Passes
------
An upper whose bottom has its pockets plugged, or behind a skirt.

Fails
-----
An upper whose bottom is bored from below with pockets = "hidden" and no skirt.

Sources
-------
`common practice`.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.features import Bores, Plane
from casewright.checks.rule import Breach, Rule
from casewright.findings import Severity
from casewright.room.model import Room

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        if case.spec.pockets == "plugged":
            continue
        for part in case.parts:
            count = 0
            for feature in part.features:
                if isinstance(feature, Bores) and feature.kind == "pocket":
                    plane: Plane = "t1" if feature.face == "A" else "t0"
                    count += len(feature.places) if plane in part.shows else 0
            if count:
                yield Breach(
                    part.path,
                    f"{count} pocket holes of the {part.title} stay open on a face that shows",
                    measured=str(count),
                    limit="0",
                    remedies=(
                        'pockets = "plugged"',
                        f"skirt = {'1' if room.spec.unit == 'in' else '25'} or more, of a bottom",
                        'joint = "dado"',
                    ),
                )


RULE = Rule("open pockets", Severity.CARE, __doc__ or "", "common practice", _examine)
