"""Where a number that is asked about stands: with the model, the style, or the cutting plans."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from casewright.breakdown import Desk, break_down
from casewright.checks import check
from casewright.dims import TRADE, Chain, enter_trade
from casewright.findings import FOUND, entered
from casewright.install.hanging import hanging
from casewright.install.numbers import ROOT
from casewright.jigs import jigs
from casewright.jigs.numbers import ROOT as JIG
from casewright.packet.survey_pages import form_numbers
from casewright.resolve import HOLD, hold_numbers
from casewright.room.floor_across import FLOOR
from casewright.room.floor_numbers import floor_numbers
from casewright.room.model import Room
from casewright.survey.form import FORM

__all__ = ["chain_with", "hangs_on_plans"]

_PLANNED = ("plan", "stock", "shop")


def _findings(room: Room, chain: Chain) -> None:
    """Enter what findings work out."""
    for finding in (*room.findings, *check(room)):
        entered(finding.numbers, chain.nodes)


def _trade(room: Room, chain: Chain) -> None:
    """Enter the round figures of the trade."""
    enter_trade(chain, room.spec.unit)


_AFTER: Mapping[str, Callable[[Room, Chain], object]] = {
    ROOT: hanging,
    FLOOR: floor_numbers,
    HOLD: hold_numbers,
    JIG: jigs,
    FORM: form_numbers,
    FOUND: _findings,
    TRADE: _trade,
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
    from the jigs; what a finding works out from the findings, which are looked for again;
    the figures of the trade are those of all jobs.
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
