"""Numbers that nothing is built from, entered when one is asked for; not those of the plans."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from casewright.breakdown import Desk, break_down
from casewright.buying import BUY, room_lines, stock_lines
from casewright.casework.lifted import LIFT
from casewright.casework.proof import PROOF
from casewright.checks import check
from casewright.dims import TRADE, Chain, enter_trade
from casewright.drawing.story_stick import STICK
from casewright.drawing.template_strips import piece_numbers
from casewright.facts import Fact
from casewright.findings import FOUND, entered
from casewright.install.hanging import hanging
from casewright.install.numbers import ROOT
from casewright.jigs import jigs
from casewright.jigs.numbers import ROOT as JIG
from casewright.job.answer_numbers import answer_numbers
from casewright.job.layout_numbers import LAYOUT
from casewright.job.nudges import SAVES, plan_job
from casewright.job.worked import proof_numbers, work_out
from casewright.packet.stick_pages import stick_numbers
from casewright.packet.survey_pages import form_numbers
from casewright.resolve import HOLD, hold_numbers
from casewright.room.floor_across import FLOOR
from casewright.room.floor_numbers import floor_numbers
from casewright.room.lift_numbers import lift_numbers
from casewright.room.model import Room
from casewright.survey.form import FORM

__all__ = ["chain_after", "planned_chain"]


def _findings(room: Room, chain: Chain) -> None:
    """Enter what findings work out."""
    for finding in (*room.findings, *check(room)):
        entered(finding.numbers, chain.nodes)


def _trade(room: Room, chain: Chain) -> None:
    """Enter the round figures of the trade."""
    enter_trade(chain, room.spec.unit)


def _bought(room: Room, chain: Chain) -> None:
    """Enter what the buy list works out, but for what is counted on the cutting plans."""
    for line in room_lines(room, hanging(room, chain).screws_at_studs):
        entered(line.numbers, chain.nodes)


def planned_chain(room: Room, path: str) -> Chain:
    """The chain of a room with what its cutting plans bring, and what is bought by them.

    Parameters
    ----------
    path
        What is asked for: other depths are tried only for the number of one.
    """
    if path.startswith(f"{SAVES}."):
        facts = {p: fact for p, fact in room.chain.facts.items() if isinstance(fact, Fact)}
        breakdown = plan_job(work_out(room.spec, facts))
    else:
        breakdown = break_down(room)
    for line in stock_lines(room, breakdown):
        entered(line.numbers, breakdown.chain.nodes)
    for finding in breakdown.findings:
        entered(finding.numbers, breakdown.chain.nodes)
    return breakdown.chain


def _jigs(room: Room, chain: Chain) -> None:
    """Enter those of the jigs, and where the pieces of a long template begin."""
    for template in jigs(room, chain).templates:
        piece_numbers(template, chain, room.spec.unit)


_AFTER: Mapping[str, Callable[[Room, Chain], object]] = {
    BUY: _bought,
    ROOT: hanging,
    STICK: stick_numbers,
    FLOOR: floor_numbers,
    HOLD: hold_numbers,
    JIG: _jigs,
    LIFT: lift_numbers,
    FORM: form_numbers,
    FOUND: _findings,
    PROOF: proof_numbers,
    TRADE: _trade,
}
"""What enters the numbers that nothing is built from, each under a name of its own."""


def chain_after(room: Room, path: str) -> Chain:
    """The chain of a room with what the path of a number that it does not have asks for.

    A default that no part took up yet is looked up in the style; marks, shims and screws come
    from the day of hanging, aisles and diagonals from the floor, bands from the hold points;
    templates and sticks from the jigs; what a finding works out from the findings, which are
    looked for again, and the proof likewise; sums from the buy list; weights from what is lifted;
    what an answer of the layout would be from the answers; the figures of the trade are those of
    all jobs.
    """
    root, _, key = path.partition(".")
    desk, enter = Desk(room), _AFTER.get(root)
    if enter is not None:
        enter(room, desk.chain)
    elif root == LAYOUT:
        entered(answer_numbers(room, path), desk.chain.nodes)
    elif root == "style" and key in room.spec.style.values:
        desk.style(key)
    return desk.chain
