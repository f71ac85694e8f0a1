"""The buy list, aisle by aisle, each line with the sum behind it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from casewright.buying import BuyLine
from casewright.dims import Unit, tell, trade
from casewright.outputs.blocks import Block, Caution, Column, Paragraph, Row, Table
from casewright.outputs.document import Section
from casewright.outputs.inlines import Rich, Strong, Tick

__all__ = ["buy_section"]

_COLUMNS = (
    Column("", "centre"), Column("Buy", "right"), Column("Unit", share=1.5),
    Column("What", share=4.0), Column("Why so many", share=4.2),
)  # fmt: skip

_EMISSION = (
    "Plywood and fibreboard are glued, and many glues give off formaldehyde into the room. Ask "
    "for the panel's emission label: in the USA TSCA Title VI (at most 0.05 ppm from hardwood "
    "plywood, 0.11 from fibreboard, 0.13 from fibreboard up to {}), elsewhere the class that "
    "local law asks for. Keep the label with the packet, and air the room."
)
"""Limits of 40 CFR 770.10, read in a secondary copy."""


def buy_section(lines: tuple[BuyLine, ...], unit: Unit) -> Section:
    """One trip to the yard and one to the hardware shop.

    Parameters
    ----------
    unit
        Unit of the job.
    """
    blocks: list[Block] = [
        Paragraph(
            "Every screw, pin and hinge counted here is one that a step of this packet uses, with "
            "the spares named beside it. Buy sheets of one batch."
        ),
        Table(_COLUMNS, tuple(_rows(lines)), small=True),
    ]
    if any(line.aisle == "sheets" for line in lines):
        thin = replace(trade("thin_fibreboard", unit), said="8 mm")
        blocks.insert(1, Caution(tell(_EMISSION, thin), "Glue in sheets"))
    return Section("Buy", tuple(blocks), "buy")


def _rows(lines: tuple[BuyLine, ...]) -> Iterator[Row]:
    aisle = ""
    for line in lines:
        if line.aisle != aisle:
            aisle = line.aisle
            yield Row((aisle.capitalize(),))
        yield Row((Tick(), Strong(str(line.count)), line.unit, _what(line), line.why))


def _what(line: BuyLine) -> Rich:
    """What to ask for, and what to look for."""
    return (Strong(line.what), "; ", line.note) if line.note else Strong(line.what)
