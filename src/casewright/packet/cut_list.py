"""The cut list: every piece by stock, with the size to cut it to; like pieces on one line."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from casewright.breakdown import Breakdown
from casewright.casework.parts import Part
from casewright.dims import Dim
from casewright.outputs.blocks import Block, Column, Heading, Paragraph, Row, Table
from casewright.outputs.document import Section
from casewright.outputs.inlines import (
    Blank,
    Inline,
    Link,
    PageNumber,
    PageNumbers,
    Rich,
    SignMark,
)
from casewright.packet.alike import card_targets, mark_links, piece_groups, shared_title
from casewright.packet.cut_places import rough_lengths, sheet_places
from casewright.packet.hold_marks import HoldMarks, point_measure, point_name
from casewright.packet.places import place_words
from casewright.packet.words import edge_words, place_titles, sizes, unfold
from casewright.room.model import Room
from casewright.stock import Glazing

__all__ = ["cut_list_section"]

_COLUMNS = (
    Column("Pieces", "centre"), Column("Cut to", share=1.5), Column("What", share=2.5),
    Column("Marks", share=1.8), Column("Edges", share=1.5), Column("Finished", share=1.5),
    Column("Cut from", share=1.15), Column("Card", "right", share=0.5),
)  # fmt: skip
_EDGES = 4
"""Which column tells what is done to the edges."""
_READ_COLUMNS = (
    Column("Waits at", share=1.0), Column("Measure", share=4.0), Column("Planned", share=1.2),
    Column("Read", share=1.6),
)  # fmt: skip
_READ_MM = 25.0  # a blank for a reading [mm]
_NOUNS = {"sheet": "sheets", "board": "boards", "strip": "strips"}


def cut_list_section(room: Room, breakdown: Breakdown, holds: HoldMarks | None = None) -> Section:
    """Every physical piece once.

    Parameters
    ----------
    holds
        What pieces wait for that go by a reading; None: none does.
    """
    holds = holds or HoldMarks(room)
    rough = rough_lengths(breakdown)
    words = (
        "Length first, then width: the size to cut to. Edges that are banded or lipped bring a "
        "piece to its finished size. Grain runs along the length unless a line says otherwise. "
        "Cut nothing that waits for an answer, or at a hold point for its reading."
    )
    if rough:
        words += " Strips are cut long, and sawn to their finished length when they are fitted."
    blocks: list[Block] = [Paragraph(words), *_readings(room, holds)]
    places = sheet_places(breakdown)
    for key in dict.fromkeys(part.stock for part in room.parts):
        parts = [part for part in room.parts if part.stock == key]
        count = f"{len(parts)} piece{'s' if len(parts) != 1 else ''}"
        blocks.append(Heading(f"{room.spec.stock[key].title}: {count}", 2))
        blocks.append(_table(tuple(_rows(room, parts, _Shown(places, rough, holds)))))
    return Section("Cut list", tuple(blocks), "cut-list")


def _readings(room: Room, holds: HoldMarks) -> Iterator[Block]:
    """What the pieces wait for, each once; on their lines stands its number."""
    points = holds.points(*(part.path for part in room.parts))
    if not points:
        return
    rows = tuple(
        Row(
            (
                (SignMark("measure first"), f"\u00a0hold {point.number}"),
                f"{point_name(point)}, {place_words(room, point.path)}",
                point_measure(room, point, point.planned, point.path),
                Blank(_READ_MM),
            )
        )
        for point in points
    )
    yield Heading("Read before what waits is cut", 2)
    yield Table(_READ_COLUMNS, rows, small=True)


def _table(rows: tuple[Row, ...]) -> Table:
    """Without the column of edges where none has anything done to it."""
    if any(row.cells[_EDGES] for row in rows):
        return Table(_COLUMNS, rows, small=True)
    columns = (*_COLUMNS[:_EDGES], *_COLUMNS[_EDGES + 1 :])
    bare = tuple(Row((*row.cells[:_EDGES], *row.cells[_EDGES + 1 :]), row.anchor) for row in rows)
    return Table(columns, bare, small=True)


@dataclass(frozen=True, slots=True)
class _Shown:
    """By path of a piece: the sheet it comes out of, its rough length, what it waits for."""

    places: Mapping[str, tuple[str, str]]
    rough: Mapping[str, Dim]
    holds: HoldMarks


def _rows(room: Room, parts: Sequence[Part], shown: _Shown) -> Iterator[Row]:
    """Widest first, then longest: as the fence is set."""

    def by_size(group: list[Part]) -> tuple[object, ...]:
        return (-group[0].blank.width.value, -group[0].blank.length.value)

    for group in sorted(piece_groups(parts), key=by_size):
        yield _row(room, group, shown)


def _row(room: Room, group: Sequence[Part], shown: _Shown) -> Row:
    first, unit = group[0], room.spec.unit
    long = shown.rough.get(first.path, first.blank.length)
    waits = shown.holds.sign(*(part.path for part in group))
    return Row(
        (
            str(len(group)),
            sizes(long, first.blank.width, unit=unit, strong=True),
            (_what(room, group), "  ", *waits) if waits else _what(room, group),
            mark_links(group, "cut:"),
            _edges(room, group),
            _finished(room, first, is_rough=first.path in shown.rough),
            _from(room, group, shown.places),
            PageNumbers(card_targets(group)),
        )
    )


def _what(room: Room, group: Sequence[Part]) -> str:
    """What they are and whose: 'side; pot store, potting bench'."""
    titles = place_titles(room)
    cases = ", ".join(dict.fromkeys(titles[part.case] for part in group))
    return f"{shared_title([part.title for part in group])}; {cases}"


def _edges(room: Room, group: Sequence[Part]) -> str:
    """What is done to the edges, in short: 'band front'; what is unusual."""
    first = group[0]
    found = list(dict.fromkeys(edge_words(part) for part in group)) if first.edges else []
    words = [each.replace("the ", "").removesuffix(" edge") for each in found]
    if not first.grain and getattr(room.spec.stock[first.stock], "grain", False):
        words.append("grain any way")
    return "; ".join(words)


def _finished(room: Room, part: Part, *, is_rough: bool) -> Rich:
    """The finished size where it is another one."""
    blank, size = part.blank, part.finished
    words = sizes(size.length, size.width, unit=room.spec.unit)
    if is_rough:
        return unfold(words, ", when fitted")
    if (blank.length.value, blank.width.value) == (size.length.value, size.width.value):
        return "as cut"
    return words


def _from(
    room: Room, group: Sequence[Part], places: Mapping[str, tuple[str, str]]
) -> tuple[Inline, ...]:
    """The sheets, boards or strips they come out of, each of which leads there: 'sheets 1, 4'.

    What waits for an answer comes out of none yet, what is ordered to size out of none at all;
    of what is cut, how far it has come.
    """
    if all(part.state != "planned" for part in group):
        return (" and ".join(sorted({part.state for part in group})),)
    if isinstance(room.spec.stock[group[0].stock], Glazing):
        return ("ordered, p. ", PageNumber("buy"))
    if group[0].waits_for:
        return (SignMark("ask"), " waits")
    found = sorted({places[p.path] for p in group if p.path in places}, key=_number)
    if not found:
        return ()
    noun = found[0][0].split()[0]
    words: list[Inline] = [f"{noun if len(found) == 1 else _NOUNS[noun]} "]
    for name, target in found:
        words += [", "] if len(words) > 1 else []
        words.append(Link(name.split()[1].rstrip(","), target))
    return tuple(words)


def _number(place: tuple[str, str]) -> int:
    return int(place[0].split()[1].rstrip(","))
