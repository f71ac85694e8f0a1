"""Where a number that is asked about stands: with the model, the style, or the cutting plans."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from casewright.breakdown import Desk, break_down
from casewright.checks import check
from casewright.dims import Chain
from casewright.findings import FOUND, entered
from casewright.install.hanging import hanging
from casewright.install.numbers import ROOT
from casewright.jigs import jigs
from casewright.jigs.numbers import ROOT as JIG
from casewright.resolve import HOLD, hold_numbers
from casewright.room.floor_across import FLOOR
from casewright.room.floor_numbers import floor_numbers
from casewright.room.model import Room

__all__ = ["chain_with", "hangs_on_plans"]

_PLANNED = ("plan", "stock", "shop")


def _findings(room: Room, chain: Chain) -> None:
    """Enter what findings work out."""
    for finding in (*room.findings, *check(room)):
        entered(finding.numbers, chain.nodes)


_AFTER: Mapping[str, Callable[[Room, Chain], object]] = {
    ROOT: hanging,
    FLOOR: floor_numbers,
    HOLD: hold_numbers,
    JIG: jigs,
    FOUND: _findings,
}
"""What enters the numbers that nothing is built from, each under a name of its own."""


def hangs_on_plans(room: Room, path: str) -> bool:
    """Whether the cutting plans must be made before the number is known."""
    return path not in room.chain.nodes and path.partition(".")[0] in _PLANNED


def chain_with(room: Room, path: str) -> Chain:
    """The chain that a number stands on, if there is one of that path.

    The model knows what its parts are made from. A default that no part took up yet is looked
    up in the style; sheets, boards and settings of the saw come from the cutting plans, which
    are made only when one of them is asked for; marks, shims and screws come from the day of
    hanging, aisles and diagonals from the floor, bands from the hold points; templates and sticks
    from the jigs; what a finding works out from the findings, which are looked for again.
    """
    if hangs_on_plans(room, path):
        return break_down(room).chain
    root, _, key = path.partition(".")
    enter = _AFTER.get(root)
    if enter is not None:
        desk = Desk(room)
        enter(room, desk.chain)
        return desk.chain
    if path not in room.chain.nodes and root == "style" and key in room.spec.style.values:
        desk = Desk(room)
        desk.style(key)
        return desk.chain
    return room.chain
