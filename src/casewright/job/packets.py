"""Making the packet: everything a shop needs, as files by name."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, replace

from casewright.breakdown import Breakdown
from casewright.buying import COLUMNS, BuyLine, buy_list, buy_rows
from casewright.dims import Chain, Measure
from casewright.findings import Finding, Question, entered
from casewright.install.hanging import Hanging, hanging
from casewright.jigs import jigs
from casewright.job.collector import collector_at_rest
from casewright.job.fingerprint import printed_fingerprint
from casewright.job.nudges import pays_apart, plan_apart, plan_job, planned_job
from casewright.job.worked import WorkedJob
from casewright.outputs.apart import meanwhile
from casewright.outputs.csv import Cell, csv_bytes
from casewright.outputs.document import Document
from casewright.outputs.pdf import pdf_bytes
from casewright.packet.packet import PacketContent, draw_cards, packet_document
from casewright.resolve import HoldPoint, hold_points, readings_awaited

__all__ = [
    "DrawnPacket",
    "Purchases",
    "draw_packet",
    "packet_files",
    "plan_purchases",
    "purchases_of",
]

_PART_COLUMNS = (
    "mark", "path", "case", "part", "hand", "stock", "cut length", "cut width",
    "finished length", "finished width", "thickness", "grain", "edges", "waits for", "state",
)  # fmt: skip
_HARDWARE = (
    "door hardware", "drawer hardware", "shelf hardware", "fasteners", "wall", "glass",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Purchases:
    """A worked job with its cuts and what they make necessary to buy.

    Parameters
    ----------
    findings, questions
        Those of the job and those that cutting brought up.
    day
        Of hanging; its numbers stand on the chain of the breakdown.
    """

    worked: WorkedJob
    breakdown: Breakdown
    buying: tuple[BuyLine, ...]
    findings: tuple[Finding, ...]
    questions: tuple[Question, ...]
    day: Hanging

    @property
    def chain(self) -> Chain:
        """The numbers of the job, of its plans, and what the buy list and the plans tell."""
        own = self.breakdown.chain
        chain = replace(own, nodes=dict(own.nodes))
        for line in self.buying:
            entered(line.numbers, chain.nodes)
        for finding in self.breakdown.findings:
            entered(finding.numbers, chain.nodes)
        return chain

    @property
    def is_clean(self) -> bool:
        """Whether nothing was found and nothing is open."""
        return not (self.worked.failures or self.findings or self.questions)


@dataclass(frozen=True, slots=True)
class DrawnPacket:
    """A packet before it is printed.

    Parameters
    ----------
    document
        Its pages.
    points
        The hold points of the room.
    """

    purchases: Purchases
    document: Document
    points: tuple[HoldPoint, ...]


def plan_purchases(worked: WorkedJob) -> Purchases:
    """Break the parts down into cuts and count what must be bought."""
    return purchases_of(worked, plan_job(worked))


def purchases_of(worked: WorkedJob, breakdown: Breakdown) -> Purchases:
    """What must be bought for a job whose cuts are planned already."""
    day = hanging(worked.room, breakdown.chain)
    return Purchases(
        worked,
        breakdown,
        buy_list(worked.room, breakdown, day.screws_at_studs),
        (*worked.findings, *_not_told(worked, breakdown)),
        (*worked.questions, *breakdown.questions),
        day,
    )


def _not_told(worked: WorkedJob, breakdown: Breakdown) -> Iterator[Finding]:
    """What only the cutting found: a part that no sheet takes was told of by the checks."""
    told = {(finding.rule, finding.path) for finding in worked.findings}
    return (each for each in breakdown.findings if (each.rule, each.path) not in told)


def draw_packet(worked: WorkedJob, *, left_only: bool = False, pages: str = "") -> DrawnPacket:
    """Plan the cuts and draw the packet; of a large job its cards while the cuts are planned.

    Parameters
    ----------
    left_only
        Pages only for what is left to do by the marks of the record.
    pages
        Address that the job's pages are served at, for the codes of labels; empty: none.

    Raises
    ------
    ValueError
        When the proof failed: no packet is made from parts that do not go together.
    """
    if worked.failures:
        msg = "no packet is made when the proof of assembly fails"
        raise ValueError(msg)
    with _planned(worked) as plans, collector_at_rest():
        points = hold_points(worked.room)
        cards = draw_cards(worked.room, points, left_only=left_only)
        purchases = plans()
        room = purchases.worked.room
        content = PacketContent(
            room,
            purchases.breakdown,
            purchases.buying,
            purchases.findings,
            purchases.questions,
            printed_fingerprint(room),
            points,
            purchases.day,
            jigs(room, purchases.breakdown.chain),
            left_only=left_only,
            cards=cards,
            pages=pages,
        )
        return DrawnPacket(purchases, packet_document(content), points)


@contextmanager
def _planned(worked: WorkedJob) -> Iterator[Callable[[], Purchases]]:
    """The plans, from another process where that saves more time than its start takes."""
    if not pays_apart(worked):
        yield lambda: plan_purchases(worked)
        return
    with meanwhile(plan_apart, worked) as answer:
        yield lambda: purchases_of(worked, planned_job(worked, answer()))


def packet_files(drawn: DrawnPacket) -> Mapping[str, bytes]:
    """Print the packet's files: packet.pdf, parts.csv, buy.csv, hardware.csv."""
    purchases = drawn.purchases
    hardware = tuple(line for line in purchases.buying if line.aisle in _HARDWARE)
    return {
        "packet.pdf": pdf_bytes(drawn.document),
        "parts.csv": csv_bytes(_PART_COLUMNS, _part_rows(drawn)),
        "buy.csv": csv_bytes(COLUMNS, buy_rows(purchases.buying)),
        "hardware.csv": csv_bytes(COLUMNS, buy_rows(hardware)),
    }


def _part_rows(drawn: DrawnPacket) -> list[tuple[Cell, ...]]:
    room = drawn.purchases.worked.room
    read = readings_awaited(drawn.points)
    unit = room.spec.unit
    rows: list[tuple[Cell, ...]] = []
    for part in room.parts:
        blank, size = part.blank, part.finished
        lengths = (blank.length, blank.width, size.length, size.width, size.thickness)
        rows.append(
            (
                part.mark,
                part.path,
                part.case,
                part.title,
                part.hand or "",
                part.stock,
                *(Measure(dim.value, unit, dim.path) for dim in lengths),
                "length" if part.grain else "any",
                " ".join(f"{edge.kind} {edge.edge}" for edge in part.edges),
                " ".join((*part.waits_for, *read.get(part.path, ()))),
                part.state,
            )
        )
    return rows
