"""What stands free in the room, set out on its floor: corners, cleats, how it is levelled."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.outputs.blocks import Block, Caution, Heading, Keep, Paragraph, Table
from casewright.outputs.document import Section
from casewright.outputs.inlines import Blank
from casewright.packet.free_pages import free_sections
from casewright.room.model import Room
from casewright.web.shop_lines import caution_line, line_of, size_text
from casewright.web.shop_notes import done_tick
from casewright.web.shop_schema import Bit, Line, ShopCard, ShopRow

__all__ = ["floor_cards"]


def floor_cards(room: Room) -> Iterator[ShopCard]:
    """Each table of the sheet that an island is set by, a card for each heading."""
    for section in free_sections(room):
        yield from _cards(section)


def _cards(section: Section) -> Iterator[ShopCard]:
    blocks = list(_flat(section.blocks))
    heads = [n for n, each in enumerate(blocks) if isinstance(each, Heading)]
    for number, (start, end) in enumerate(zip([0, *heads], [*heads, len(blocks)], strict=True), 1):
        own = blocks[start:end]
        lead = next((each.text for each in own if isinstance(each, Heading)), "Its corners")
        rows = tuple(row for each in own if isinstance(each, Table) for row in _rows(each))
        if rows:
            yield ShopCard(
                id=f"hang.{section.anchor}.{number}", station="hang", over=section.title,
                title="On the floor", lead=lead, rows=rows,
                lines=tuple(line_of(each.text) for each in own if isinstance(each, Paragraph)),
                warns=tuple(
                    caution_line(size_text(line_of(each.text)))
                    for each in own
                    if isinstance(each, Caution)
                ),
                ticks=(
                    done_tick(
                        f"{section.title.partition(': ')[2]}, {lead.lower()}",
                        (row.model_dump_json() for row in rows),
                    ),
                ),
            )  # fmt: skip


def _flat(blocks: tuple[Block, ...]) -> Iterator[Block]:
    for block in blocks:
        if isinstance(block, Keep):
            yield from _flat(block.blocks)
        else:
            yield block


def _rows(table: Table) -> Iterator[ShopRow]:
    """What a row is of, its first size large, the others under it, each by its column's head."""
    for number, row in enumerate(table.rows, 1):
        what, *cells = row.cells
        told: list[tuple[str, Line]] = [
            (column.title, line_of(cell))
            for column, cell in zip(table.columns[1:], cells, strict=False)
            if cell != "" and not isinstance(cell, Blank)
        ]
        sized = [each for each in told if any(isinstance(bit, Bit) for bit in each[1])]
        if not sized:
            continue
        lead, big = sized[0]
        others = [each for each in told if each is not sized[0]]
        yield ShopRow(
            label=str(number), what=line_of(f"{table.columns[0].title}: ", what), big=big,
            lead=lead.lower(),
            lines=tuple((f"{title}: ", *size) for title, size in others),
        )  # fmt: skip
