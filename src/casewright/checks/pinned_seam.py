"""Pinned seams that do not stand where they are pinned.

A run may pin the left side of a case or of an appliance to a place on the wall. Fillers and widths
that were accepted before, or a run that was not laid out yet, may have it elsewhere: then it wants
laying out anew. One step of the shop's grid, 1/16 in or 1 mm, is let pass.

Passes
------
A sink pinned at 52 in, in a run that was laid out so.

Fails
-----
The same sink pinned at 54 in afterwards.

Sources
-------
`common practice`: the grid.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.anew import run_anew
from casewright.room.model import Room

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    for run in room.runs:
        starts = {case.key: start for case, start in zip(run.cases, run.starts, strict=True)}
        starts |= {each.spec.key: each.start for each in run.appliances}
        for key, pinned in run.spec.seams:
            at = run.begins.value + starts[key].value
            off = abs(at - pinned.value)
            if off > by_unit(room, "1/16", "1"):
                side = "right" if at > pinned.value else "left"
                yield Breach(
                    f"run.{run.spec.key}.start_{key}",
                    f"the left side of {key} stands {length(room, at)} from the wall's left end, "
                    f"{length(room, off)} {side} of where it is pinned",
                    measured=length(room, at),
                    limit=length(room, pinned.value),
                    remedies=(
                        run_anew(run.spec.key),
                        "take the pin out",
                    ),
                )


RULE = Rule("pinned seam", Severity.CARE, __doc__ or "", "common practice", _examine)
