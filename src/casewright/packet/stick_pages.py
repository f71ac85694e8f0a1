"""Running marks and story sticks on paper: along each wall and up it, full size."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.dims import Chain, Measure, mark_of
from casewright.drawing.story_stick import Stick, StickMark, foot_numbers, stick_plots
from casewright.install.hanging import Hanging, WallHanging
from casewright.outputs.blocks import (
    Block,
    Column,
    Figure,
    Heading,
    Keep,
    Paragraph,
    Row,
    Table,
)
from casewright.outputs.document import Paper, Section, paper_named
from casewright.outputs.inlines import Rich, Strong
from casewright.room.model import Room

__all__ = ["STICKS", "stick_numbers", "stick_section"]

STICKS = "sticks"
"""Anchor of the section."""

_HEADING_MM = 26.0  # what stands over the strips of a page
_HOW = (
    "Everything is marked from one datum, never from the mark before: hook the tape once and call "
    "out every number, or cut out the strips on the next pages and make two story sticks. Print "
    "them at full size, without fitting to the page, and measure the bar first."
)
_LATHS = (
    "Strips without a mark are left out. Cut these out and glue each on a straight lath, its foot "
    "where a tape from the lath's end shows the number over the strip. The lath that goes along "
    "lies on the level line, its 0 at the wall's left end; the one that goes up stands on end, "
    "its level line on the wall's."
)


def stick_section(room: Room, day: Hanging, paper: Paper) -> Section | None:
    """Lists of marks, then two sticks for each wall; None without a wall."""
    walls = tuple(day.walls.values())
    if not walls:
        return None
    blocks: list[Block] = [Paragraph(_HOW)]
    for hang in walls:
        blocks.extend(_lists(room, hang))
    for hang in walls:
        blocks.extend(_wall(room, hang, paper))
    return Section("Marks and story sticks", tuple(blocks), STICKS)


def stick_numbers(room: Room, chain: Chain) -> None:
    """Enter where the feet of strips lie on their sticks."""
    foot_numbers(chain, paper_named(room.spec.paper).height_mm, room.spec.unit)


def _lists(room: Room, hang: WallHanging) -> Iterator[Block]:
    """All marks of a wall, for who marks it from a tape."""
    unit = room.spec.unit
    title = hang.wall.spec.title
    along = tuple(
        Row((Strong(mark_of(m.at, unit)) if m.kind == "case" else mark_of(m.at, unit),
             m.says))
        for m in hang.marks
    )  # fmt: skip
    yield Heading(f"Along {title}", 3)
    yield Table((Column("From its left end", "size"), Column("", share=1)), along, small=True)
    up = []
    for mark in hang.heights:
        cells: list[Rich] = [Strong(mark_of(mark.above_floor, unit))]
        if mark.from_line is None:
            cells.append("")
        elif not mark.from_line.value:
            cells.append("0")
        else:
            line = Measure(abs(mark.from_line.value), unit, mark.from_line.path)
            cells.append((line, " up" if mark.from_line.value > 0 else " down"))
        up.append(Row((*cells, mark.says)))
    columns = (
        Column("Above the highest floor", "size"), Column("From the level line", "right"),
        Column("", share=1),
    )  # fmt: skip
    yield Keep((Heading(f"Up {title}", 3), Table(columns, tuple(up), small=True)))


def _wall(room: Room, hang: WallHanging, paper: Paper) -> Iterator[Block]:
    unit = room.spec.unit
    along = [
        StickMark(mark_of(mark.at, unit), mark.says, bold=mark.kind == "case")
        for mark in hang.marks
    ]
    up = [
        StickMark(mark_of(mark.above_floor, unit), mark.says, bold=True) for mark in hang.heights
    ]
    title = hang.wall.spec.title
    area = (paper.text_width_mm, paper.text_height_mm - _HEADING_MM)
    sticks = [
        Stick(marks, length, name)
        for name, marks in (("along", along), ("up", up))
        if (length := max((mark.measure.value for mark in marks), default=Fraction(0)))
    ]
    for n, plot in enumerate(stick_plots(sticks, unit, area)):
        text = "Goes on from the page before." if n else _LATHS
        yield Keep(
            (
                Heading(f"{title}: {plot.title}", 3),
                Paragraph(text, soft=bool(n)),
                Figure(plot, alternative=f"{title}, full size, {plot.title}"),
            )
        )
