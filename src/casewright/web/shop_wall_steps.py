"""Steps of the sheet at the wall, one card each, and one for each filler."""

from __future__ import annotations

import re
from collections.abc import Iterator

from casewright.install.hanging import Hanging
from casewright.outputs.blocks import Block, CheckList, Heading, Step
from casewright.outputs.inlines import Link, Rich
from casewright.packet.free_pages import setting_anchor
from casewright.packet.hanging_pages import sheet_anchor
from casewright.packet.trim_pages import TRIMS
from casewright.packet.wall_page import wall_section
from casewright.room.fillers import GAP_HEIGHTS
from casewright.room.model import Filler, Room, Run
from casewright.web.shop_lines import caution_line, line_of, size_text
from casewright.web.shop_marks import first_marks
from casewright.web.shop_notes import done_tick, part_tick
from casewright.web.shop_readings import Readable
from casewright.web.shop_schema import Bit, Line, ShopCard, ShopTick

__all__ = ["WallSteps"]

_CLOSED = re.compile(r"[:,]\s*([.;])")
"""What is left before a full stop where a reference was left out."""


class WallSteps:
    """Steps of the sheet at the wall as cards: what it refers to is a card, or left out."""

    def __init__(self, room: Room, day: Hanging) -> None:
        self.room = room
        self.told = tuple(_told(wall_section(room, day).blocks))
        self.titles = tuple(dict.fromkeys(title for title, _, _ in self.told))
        lifts = {lift.case.key for hang in day.walls.values() for lift in hang.lifts}
        self.led = {sheet_anchor(key): first_marks(key) for key in day.walls}
        self.led |= {case.key: f"hang.{'lift' if case.key in lifts else 'place'}.{case.key}"
                     for case in room.boxes}  # fmt: skip
        self.gone = {TRIMS, *(setting_anchor(stand) for stand in room.free)}
        self.readable = Readable(room)

    def cards(self, *titles: str) -> Iterator[ShopCard]:
        """Those under some headings, in their order."""
        for title, number, step in self.told:
            if title in titles:
                yield from self._cards(title, number, step)

    def _cards(self, title: str, number: int, step: Step) -> Iterator[ShopCard]:
        """A step, and after it each filler that it tells of, one at a time."""
        words = _CLOSED.sub(r"\1", size_text(self._line(step.text)))
        lead, _, rest = words.partition(". ")
        fillers = tuple(self._fillers(step))
        about = {note for *_, notes in fillers for note in notes}
        notes = tuple(map(self._line, (note for note in step.notes if note not in about)))
        warns = tuple(caution_line(size_text(line_of(each))) for each in step.cautions)
        yield ShopCard(
            id=f"hang.step.{number}", station="hang", over=title, title="At the wall",
            lead=lead.rstrip(".:"), lines=(((rest,),) if rest else ()) + notes, warns=warns,
            ticks=tuple(self._trims(step)) or (
                done_tick(self._called(words), (words, *map(size_text, notes))),
            ),
        )  # fmt: skip
        for run, filler, own in fillers:
            yield self._filler(run, filler, self._line(own[0]), warns)

    def _called(self, words: str) -> str:
        """Its first clause."""
        return re.split(r"[.:;,] ", words.rstrip(".:"), maxsplit=1)[0]

    def _fillers(self, step: Step) -> Iterator[tuple[Run, Filler, tuple[Rich, ...]]]:
        """Fillers that a step tells of, each with its lines: what it is cut to, and its gaps."""
        for run in self.room.runs:
            for filler in run.fillers:
                begin = f"{filler.part.mark}, {filler.part.title}: "
                for n, note in enumerate(step.notes):
                    if size_text(line_of(note)).startswith(begin):
                        yield run, filler, step.notes[n : n + 2]

    def _filler(self, run: Run, filler: Filler, words: Line, warns: tuple[Line, ...]) -> ShopCard:
        part, lip = filler.part, filler.lip
        own = (part.path, *(() if lip is None else (lip.path,)))
        named = zip(GAP_HEIGHTS, filler.gaps, strict=True)
        found = (self.readable.reading(gap, f"gap, {name}") for name, gap in named)
        return ShopCard(
            id=f"hang.filler.{part.path}", station="hang", over=run.spec.title,
            title="Fit the fillers", lead=f"{part.mark}: scribe the {part.title}", lines=(words,),
            warns=warns, readings=tuple(each for each in found if each is not None), parts=own,
            ticks=(part_tick("hung", part.path, f"{part.mark} {part.title} on", own),),
        )  # fmt: skip

    def _line(self, text: Rich) -> Line:
        """Of a printed page, what it refers to led to or left out."""
        found: list[str | Bit] = []
        for bit in line_of(text):
            if isinstance(bit, Bit) and bit.kind == "part":
                if bit.to in self.gone:
                    continue
                to = self.led.get(bit.to)
                found.append(bit if to is None else Bit(kind="card", text=bit.text, to=to))
            else:
                found.append(bit)
        return tuple(found)

    def _trims(self, step: Step) -> Iterator[ShopTick]:
        """Each trim where trims are put on."""
        if not _leads_to(step.text, TRIMS):
            return
        for run in self.room.runs:
            lips = {filler.lip.path for filler in run.fillers if filler.lip is not None}
            fillers = {filler.part.path for filler in run.fillers}
            for part in run.own_parts:
                if part.path not in fillers | lips:
                    words = f"{part.mark} {part.title} on"
                    yield part_tick("hung", part.path, words, (part.path,))


def _told(blocks: tuple[Block, ...]) -> Iterator[tuple[str, int, Step]]:
    title, number = "", 0
    for block in blocks:
        if isinstance(block, Heading):
            title = block.text
        elif isinstance(block, CheckList):
            for step in block.steps:
                number += 1
                yield title, number, step


def _leads_to(text: Rich, target: str) -> bool:
    if isinstance(text, tuple):
        return any(_leads_to(each, target) for each in text)
    return isinstance(text, Link) and text.target == target
