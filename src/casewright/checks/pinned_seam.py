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
from casewright.checks.words import reckoning
from casewright.dims import Dim, Given, tell
from casewright.findings import Limit, Severity
from casewright.room.anew import run_anew
from casewright.room.model import Room, Run

__all__ = ["RULE"]

_NAME = "pinned seam"
_GRID = Limit("pinned_seam.grid", "1/16", "1", "one step of the shop's grid is let pass")


def _examine(room: Room) -> Iterator[Breach]:
    for run in room.runs:
        starts = {case.key: start for case, start in zip(run.cases, run.starts, strict=True)}
        starts |= {each.spec.key: each.start for each in run.appliances}
        for key, pinned in run.spec.seams:
            at = run.begins.value + starts[key].value
            if abs(at - pinned.value) > _GRID.of(room.spec.unit):
                yield _elsewhere(room, run, (key, run.begins + starts[key]), pinned)


def _elsewhere(room: Room, run: Run, stands: tuple[str, Dim], pinned: Given) -> Breach:
    key, start = stands
    own = reckoning(room, _NAME, f"run.{run.spec.key}.start_{key}")
    pin = own.given(f"run.{run.spec.key}.seam_{key}", pinned)
    is_right = start.value > pin.value
    at, side = own.length(start, "stands"), "right" if is_right else "left"
    off = own.length(start - pin if is_right else pin - start, "off")
    return Breach(
        f"run.{run.spec.key}.start_{key}",
        tell(
            "the left side of {} stands {} from the wall's left end, {} {} of where it is pinned",
            key, at, off, side,
        ),
        measured=at.text,
        limit=own.length(pin).text,
        remedies=(run_anew(run.spec.key), "take the pin out"),
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
