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
from casewright.checks.words import reckoning
from casewright.dims import shop_text, tell
from casewright.findings import Limit, Severity
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "open pockets"
_SKIRT = Limit("pockets.skirt", "1", "25", "a skirt that hides the pockets of a bottom")


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
                own = reckoning(room, _NAME, part.path)
                low = own.limit(_SKIRT)
                skirt = own.said(low, shop_text(low.value, own.unit), "skirt")
                yield Breach(
                    part.path,
                    f"{count} pocket holes of the {part.title} stay open on a face that shows",
                    measured=str(count),
                    limit="0",
                    remedies=(
                        'pockets = "plugged"',
                        tell("skirt = {} or more, of a bottom", skirt),
                        'joint = "dado"',
                    ),
                    own=own,
                )


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
