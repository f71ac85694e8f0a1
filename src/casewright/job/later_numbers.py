"""Numbers that nothing is built from, entered when one is asked for; not those of the plans."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from casewright.breakdown import Desk
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

__all__ = ["chain_after"]


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


def chain_after(room: Room, path: str) -> Chain:
    """The chain of a room with what the path of a number that it does not have asks for.

    A default that no part took up yet is looked up in the style; marks, shims and screws come
    from the day of hanging, aisles and diagonals from the floor, bands from the hold points;
    templates and sticks from the jigs; what a finding works out from the findings, which are
    looked for again; the figures of the trade are those of all jobs.
    """
    root, _, key = path.partition(".")
    desk, enter = Desk(room), _AFTER.get(root)
    if enter is not None:
        enter(room, desk.chain)
    elif root == "style" and key in room.spec.style.values:
        desk.style(key)
    return desk.chain
