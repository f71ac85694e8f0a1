"""Parts of a document that are printed apart, and how many pages go into one process."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from casewright.outputs.apart import apart
from casewright.outputs.section_text import SectionText, printing_text
from casewright.outputs.typesetter import Template, Typeset, typeset

__all__ = ["LIMIT", "Part", "parts_of", "print_page_numbers", "print_part", "typeset_run"]

LIMIT = 300_000
"""Most weight that one process is given, unless it is a single block: some 22 pages, 100 MB."""

_NUMBERS: Template = "page_numbers.typ"


@dataclass(frozen=True, slots=True)
class Part:
    """Sections that follow each other.

    Parameters
    ----------
    first
        Number of the first section, from 0 [-].
    """

    first: int
    sections: tuple[SectionText, ...]

    @property
    def numbers(self) -> range:
        """Numbers of its sections."""
        return range(self.first, self.first + len(self.sections))

    @property
    def weight(self) -> int:
        """What laying it out asks for [characters]."""
        return sum(section.weight for section in self.sections)

    @property
    def is_long(self) -> bool:
        """Whether it is a section that is printed in several runs."""
        return len(self.sections) == 1 and self.weight > LIMIT


def parts_of(sections: Sequence[SectionText], references: Sequence[Collection[int]]) -> list[Part]:
    """One part where it is small, else as few as the limit allows.

    A section above the limit is a part of its own. Where one part would be too much, a section
    that prints page numbers of sections before it is in no part with these, so that it can wait
    until they are counted.

    Parameters
    ----------
    references
        Of each section: the numbers of those whose page numbers it prints, from 0.
    """
    if sum(section.weight for section in sections) <= 2 * LIMIT:
        return [Part(0, tuple(sections))]
    firsts = [0]
    room = LIMIT - sections[0].weight
    for number, section in enumerate(sections[1:], 1):
        room -= section.weight
        if room < 0 or any(firsts[-1] <= other < number for other in references[number]):
            firsts.append(number)
            room = LIMIT - section.weight
    ends = [*firsts[1:], len(sections)]
    return [
        Part(first, tuple(sections[first:end])) for first, end in zip(firsts, ends, strict=True)
    ]


def print_part(
    head: str, part: Part, numbers: str, *, alone: bool = False, only_places: bool = False
) -> list[Typeset]:
    """A part as one or more runs of pages.

    Parameters
    ----------
    head
        What all sections of the document share.
    numbers
        Page numbers by anchor, as JSON text.
    alone
        Whether it is the only part: then it is laid out in this process.
    only_places
        Do not write the pages.
    """
    if part.is_long:
        return _long(head, part.sections[0], numbers)
    data = printing_text(head, (section.whole for section in part.sections))
    inputs = {"data": data, "numbers": numbers}
    if alone:
        return [typeset("shop.typ", inputs, only_places=only_places)]
    return [apart(typeset, "shop.typ", inputs, only_places=only_places)]


def print_page_numbers(data: str, *, alone: bool) -> bytes:
    """Pages with nothing but their numbers.

    Parameters
    ----------
    data
        As for the typesetter.
    """
    inputs = {"data": data}
    made = typeset(_NUMBERS, inputs) if alone else apart(typeset, _NUMBERS, inputs)
    return made.pdf


def _long(head: str, section: SectionText, numbers: str) -> list[Typeset]:
    """A long section, run by run: each ends where a page would end anyway."""
    found: list[Typeset] = []
    start = 0
    while start < len(section.blocks):
        made, start = apart(typeset_run, head, section, start, numbers, LIMIT)
        found.append(made)
    return found


def typeset_run(
    head: str, section: SectionText, start: int, numbers: str, limit: int
) -> tuple[Typeset, int]:
    """As many pages of a section as keep the limit, and with which block the next page begins."""
    last = len(section.blocks)
    end, weight = start + 1, section.weights[start]
    while end < last and (weight := weight + section.weights[end]) <= limit:
        end += 1

    def run(to: int, *, only_places: bool = False) -> Typeset:
        data = printing_text(head, [section.part(start, to)])
        inputs = {"data": data, "numbers": numbers}
        return typeset("shop.typ", inputs, only_places=only_places)

    if end < last and not section.sheets:
        end = _page_turn(run(end, only_places=True), range(start + 1, end)) or last
    return run(end), end


def _page_turn(made: Typeset, blocks: range) -> int:
    """The last block that begins a page right after another one ended; 0 for none.

    Both stay on one page, so that nothing else stands between them.
    """
    kept = made.kept
    turns = (
        block
        for block in reversed(blocks)
        if block in kept and block - 1 in kept and kept[block] > kept[block - 1]
    )
    return next(turns, 0)
