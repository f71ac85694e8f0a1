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
from casewright.checks.words import by_unit, length
from casewright.dims import Dim
from casewright.findings import Severity
from casewright.room.model import Room

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    most = by_unit(room, "1/2", "12")
    for dim in _read(room):
        off = dim.value - dim.wanted
        if abs(off) > most:
            way = "more" if off > 0 else "less"
            yield Breach(
                dim.path,
                f"{dim.path} was read as {length(room, dim.value)}: {length(room, abs(off))} "
                f"{way} than the plan's {length(room, dim.wanted)}",
                measured=length(room, dim.value),
                limit=length(room, dim.wanted),
                remedies=("read it again", "see whether the cases stand in their order"),
            )


def _read(room: Room) -> Iterator[Dim]:
    """What was read of fillers and trims, each once."""
    dims = [gap for run in room.runs for filler in run.fillers for gap in filler.gaps]
    dims += [d for run in room.runs for trim in run.trims for d in trim.open_lengths]
    yield from {dim.path: dim for dim in dims if dim.built is not None}.values()


RULE = Rule("read as built", Severity.CARE, __doc__ or "", "common practice", _examine)
