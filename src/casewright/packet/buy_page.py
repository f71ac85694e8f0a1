"""The buy list, aisle by aisle, each line with the sum behind it."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.buying import BuyLine
from casewright.outputs.blocks import Block, Column, Paragraph, Row, Table
from casewright.outputs.document import Section
from casewright.outputs.inlines import Rich, Strong, Tick

__all__ = ["buy_section"]

_COLUMNS = (
    Column("", "centre"), Column("Buy", "right"), Column("Unit", share=1.5),
    Column("What", share=4.0), Column("Why so many", share=4.2),
)  # fmt: skip


def buy_section(lines: tuple[BuyLine, ...]) -> Section:
    """One trip to the yard and one to the hardware shop."""
    blocks: list[Block] = [
        Paragraph(
            "Every screw, pin and hinge counted here is one that a step of this packet uses, with "
            "the spares named beside it. Buy sheets of one batch."
        ),
        Table(_COLUMNS, tuple(_rows(lines)), small=True),
    ]
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
    return (Strong(line.what), f"; {line.note}") if line.note else Strong(line.what)
