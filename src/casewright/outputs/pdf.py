"""Documents as PDF: the same document always gives the same bytes.

A document is laid out in parts, in processes that give their memory back, and joined. A part that
prints numbers of pages yet unknown is laid out again when all pages are counted.
"""

from __future__ import annotations

import json
from collections.abc import Sequence, Set
from concurrent.futures import ThreadPoolExecutor
from itertools import pairwise

from casewright.outputs.document import (
    Document,
    anchors,
    check_links,
    page_references,
    section_anchors,
)
from casewright.outputs.join import join
from casewright.outputs.page_numbers import page_numbers_json
from casewright.outputs.parts import Press, part_inputs, parts_of, print_page_numbers
from casewright.outputs.typesetter import Place, PrintError, Typeset, typeset
from casewright.outputs.typst_data import head_text, section_texts

__all__ = ["pdf_bytes"]

_ROUNDS = 5


def pdf_bytes(document: Document) -> bytes:
    """A document as PDF.

    It holds no date and no name of a machine. Text is text, fonts are embedded, links lead from
    page to page, sections are in the outline, figures have their alternatives in words.

    Raises
    ------
    LinkError
        When something leads nowhere.
    PrintError
        When the typesetter fails or warns of anything, or page numbers do not settle.
    FontError
        When the typeface is missing.
    """
    check_links(document)
    printing = _Printing(document)
    printing.settle()
    return printing.joined()


def _sections_of(document: Document, references: Sequence[Set[str]]) -> list[set[int]]:
    """Numbers of the sections that hold some anchors, from 0."""
    owner = {
        anchor: number
        for number, section in enumerate(document.sections)
        for anchor in (section_anchors(document)[number], *anchors(section))
    }
    return [{owner[anchor] for anchor in each} for each in references]


class _Printing:
    """The parts of a document, and what is printed of them so far."""

    def __init__(self, document: Document) -> None:
        self.document = document
        self.head = head_text(document)
        contents = section_anchors(document)
        references = [page_references(section, contents) for section in document.sections]
        leading = _sections_of(document, references)
        self.parts = parts_of(section_texts(document), leading)
        self.alone = len(self.parts) == 1 and not self.parts[0].is_long
        self.references = [
            sorted(set().union(*(references[number] for number in part.numbers)))
            for part in self.parts
        ]
        self.levels = self._levels(leading)
        self.press = Press()
        self.printed: list[list[Typeset]] = [[] for _ in self.parts]
        self.shown: list[str] = ["" for _ in self.parts]

    def _levels(self, leading: list[set[int]]) -> list[int]:
        """How many times others must be printed before each part [-]."""
        owner = {number: i for i, part in enumerate(self.parts) for number in part.numbers}
        levels: list[int] = []
        for i, part in enumerate(self.parts):
            others = {owner[other] for number in part.numbers for other in leading[number]}
            levels.append(max((levels[each] + 1 for each in others if each < i), default=0))
        return levels

    def settle(self) -> None:
        """Print every part, and again those that printed a number wrong.

        What needs the numbers of earlier pages waits for them, so that most is printed once.
        """
        for turn in range(max(self.levels) + _ROUNDS):
            due = self._due(turn)
            if not due:
                return
            self._print(due)
        msg = "page numbers do not settle"
        raise PrintError(msg)

    def _due(self, turn: int) -> list[int]:
        """Parts whose turn it is, and those that can be put right."""
        places = self._places()
        return [
            i
            for i, level in enumerate(self.levels)
            if level == turn
            or (
                level < turn
                and places.keys() >= set(self.references[i])
                and self.shown[i] != self._numbers(i, places)
            )
        ]

    def _print(self, due: Sequence[int]) -> None:
        places = self._places()
        numbers = {i: self._numbers(i, places) for i in due}

        def print_one(i: int) -> list[Typeset]:
            part, known = self.parts[i], numbers[i]
            only_places = not places.keys() >= set(self.references[i])
            if self.alone:
                inputs = part_inputs(self.head, part, known)
                return [typeset("shop.typ", inputs, only_places=only_places)]
            return self.press.part(self.head, part, known, only_places=only_places)

        with ThreadPoolExecutor(len(due)) as pool:
            for i, runs in zip(due, pool.map(print_one, due), strict=True):
                self.printed[i] = runs
                self.shown[i] = numbers[i]

    def _numbers(self, i: int, places: dict[str, Place]) -> str:
        """Page numbers that a part prints, as far as they are known, as JSON text."""
        known = {anchor: places[anchor].page for anchor in self.references[i] if anchor in places}
        return json.dumps(known, ensure_ascii=False)

    def _places(self) -> dict[str, Place]:
        """Where each anchor lies in the whole, as far as pages are counted without a gap."""
        found: dict[str, Place] = {}
        before = 0
        starts = section_anchors(self.document)
        for part, runs in zip(self.parts, self.printed, strict=True):
            if not runs:
                found[starts[part.first]] = Place(before + 1, 0, 0)  # it begins a page
                break
            for run in runs:
                for anchor, place in run.anchors.items():
                    found.setdefault(anchor, place.after(before))
                before += run.pages
        return found

    def joined(self) -> bytes:
        """All parts as one file, numbered."""
        runs = [run for printed in self.printed for run in printed]
        places = self._places()
        begins = [places[anchor].page for anchor in section_anchors(self.document)]
        ends = [*begins, 1 + sum(run.pages for run in runs)]
        counts = [after - first for first, after in pairwise(ends)]
        data = page_numbers_json(self.document, counts)
        with ThreadPoolExecutor(1) as pool:
            numbers = pool.submit(print_page_numbers, data, alone=self.alone)
            return join(runs, places, numbers.result)
