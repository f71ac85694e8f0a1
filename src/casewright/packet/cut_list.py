"""The cut list: every piece by stock and case, with the size to cut it to."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.parts import Part
from casewright.outputs.blocks import Block, Column, Heading, Paragraph, Row, Table
from casewright.outputs.document import Section
from casewright.outputs.inlines import Link, PageNumber
from casewright.packet.words import sizes
from casewright.room.model import Room

__all__ = ["cut_list_section"]

_COLUMNS = (
    Column("Mark", "centre"), Column("Part", share=2.2), Column("Cut to", "left", share=2.2),
    Column("Finished", share=2.2), Column("Grain"), Column("Card", "right"),
)  # fmt: skip


def cut_list_section(room: Room) -> Section:
    """Every physical piece once."""
    blocks: list[Block] = [
        Paragraph(
            "Length first, then width. Cut to the size in the third column; edges that are banded "
            "or lipped bring a piece to its finished size. Cut nothing that is marked to wait."
        )
    ]
    by_stock: dict[str, list[Part]] = {}
    for part in room.parts:
        by_stock.setdefault(part.stock, []).append(part)
    for key, parts in by_stock.items():
        blocks.append(Heading(f"{room.spec.stock[key].title}: {len(parts)} pieces", 2))
        blocks.append(Table(_COLUMNS, tuple(_rows(room, parts)), small=True))
    return Section("Cut list", tuple(blocks), "cut-list")


def _rows(room: Room, parts: list[Part]) -> Iterator[Row]:
    unit = room.spec.unit
    titles = {case.key: case.spec.title for case in room.cases}
    titles |= {f"run.{run.spec.key}": run.spec.title for run in room.runs}
    case = ""
    for part in parts:
        if part.case != case:
            case = part.case
            yield Row((titles[case],))
        wait = " (waits)" if part.waits_for else ""
        yield Row(
            (
                part.mark,
                Link(f"{part.title}{wait}", part.path),
                sizes(part.blank.length, part.blank.width, unit=unit, strong=True),
                sizes(part.finished.length, part.finished.width, unit=unit),
                "along" if part.grain else "any",
                PageNumber(part.path),
            ),
            f"cut:{part.path}",
        )
