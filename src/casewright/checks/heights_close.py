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
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.anew import HEIGHTS_ANEW
from casewright.room.model import Room

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    if room.spec.style["wall_height"].origin.kind != "solved":
        return
    most = by_unit(room, "6", "150")
    for run in room.runs:
        crown = run.spec.trims.crown
        frieze = room.chain.nodes.get(f"run.{run.spec.key}.crown.frieze")
        if crown is None or not crown.to_ceiling or frieze is None:
            continue
        if frieze.value > most:
            yield Breach(
                f"run.{run.spec.key}.crown",
                f"the frieze of {run.spec.title} has grown to {length(room, frieze.value)} since "
                f"its heights were accepted; {length(room, most)} at most look right",
                measured=length(room, frieze.value),
                limit=length(room, most),
                remedies=(HEIGHTS_ANEW,),
            )


RULE = Rule("heights close", Severity.CARE, __doc__ or "", "common practice", _examine)
