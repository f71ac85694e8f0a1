"""Lengths read beside cases that stand, far from what they were planned to be.

A filler is cut to the gap that was read, a trim to the length that was read. Hanging moves a case
by a fraction; where half an inch lies between reading and plan, two figures were swapped, the
tape was hooked on the wrong edge, or a case stands where another one should.

Passes
------
A gap planned as 1 1/2 and read as 1 5/8.

Fails
-----
The same gap read as 2 1/2.

Sources
-------
`common practice`: over 1/2 in, or 12 mm, from the plan it is read again.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import Dim, Origin, tell
from casewright.findings import Limit, Severity
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "read as built"
_MOST = Limit("read_as_built.most", "1/2", "12", "hanging moves a case by less")
_PLAN = Origin("solved", "the plan's, before it was read")


def _examine(room: Room) -> Iterator[Breach]:
    most = _MOST.of(room.spec.unit)
    for dim in _read(room):
        off = dim.value - dim.wanted
        if abs(off) > most:
            way, own = "more" if off > 0 else "less", reckoning(room, _NAME, dim.path)
            plan = own.worked("plan", dim.wanted, _PLAN, *_plan_of(dim))
            read, planned = own.length(dim), own.length(plan)
            by = own.length(dim - plan if off > 0 else plan - dim, "off")
            yield Breach(
                dim.path,
                tell(
                    "{} was read as {}: {} {} than the plan's {}", dim.path, read, by, way, planned
                ),
                measured=read.text,
                limit=planned.text,
                remedies=("read it again", "see whether the cases stand in their order"),
                own=own,
            )


def _plan_of(dim: Dim) -> Iterator[Dim]:
    """What it would follow, had it not been read."""
    yield from (arg for arg in dim.args if isinstance(arg, Dim))


def _read(room: Room) -> Iterator[Dim]:
    """What was read of fillers and trims, each once."""
    dims = [gap for run in room.runs for filler in run.fillers for gap in filler.gaps]
    dims += [d for run in room.runs for trim in run.trims for d in trim.open_lengths]
    yield from {dim.path: dim for dim in dims if dim.built is not None}.values()


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
