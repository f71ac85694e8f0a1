"""Accepted heights that a new reading of floor or ceiling has overtaken.

Heights that were laid out and accepted stay as they are: what a later reading takes or gives goes
into the frieze under a crown that reaches the ceiling. Where the frieze has nothing left to give,
the crown stops the work; where it has grown past 6 in (150 mm) the cases would look lost under it,
and the heights want laying out anew.

Passes
------
Heights accepted under a ceiling that was read 1/2 in lower since: the frieze is 1/2 in less.

Fails
-----
The same under a ceiling that turned out 8 in higher.

Sources
-------
`common practice`: a frieze of 6 in, 150 mm, at most.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import tell
from casewright.findings import Limit, Severity
from casewright.room.anew import HEIGHTS_ANEW
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "heights close"
_MOST = Limit("heights_close.most", "6", "150", "highest frieze that looks right")


def _examine(room: Room) -> Iterator[Breach]:
    if room.spec.style["wall_height"].origin.kind != "solved":
        return
    most = _MOST.of(room.spec.unit)
    for run in room.runs:
        crown = run.spec.trims.crown
        frieze = room.chain.nodes.get(f"run.{run.spec.key}.crown.frieze")
        if crown is None or not crown.to_ceiling or frieze is None:
            continue
        if frieze.value > most:
            own = reckoning(room, _NAME, run.spec.key)
            high, limit = own.length(frieze), own.length(own.limit(_MOST))
            yield Breach(
                f"run.{run.spec.key}.crown",
                tell(
                    "the frieze of {} has grown to {} since its heights were accepted; {} at "
                    "most look right",
                    run.spec.title, high, limit,
                ),
                measured=high.text,
                limit=limit.text,
                remedies=(HEIGHTS_ANEW,),
                own=own,
            )  # fmt: skip


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
