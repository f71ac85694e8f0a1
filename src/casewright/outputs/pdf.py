"""Documents as PDF: the same document always gives the same bytes.

A document is laid out in parts, in processes that give their memory back, and joined. A part that
prints numbers of pages yet unknown is laid out again when all pages are counted.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping
from concurrent.futures import FIRST_COMPLETED, Future, ThreadPoolExecutor, wait
from functools import partial
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


def _owners(document: Document) -> dict[str, int]:
    """By anchor the number of the section that holds it, from 0."""
    return {
        anchor: number
        for number, section in enumerate(document.sections)
        for anchor in (section_anchors(document)[number], *anchors(section))
    }


class _Printing:
    """The parts of a document, and what is printed of them so far."""

    def __init__(self, document: Document) -> None:
        self.document = document
        self.head = head_text(document)
        contents = section_anchors(document)
        references = [page_references(section, contents) for section in document.sections]
        owners = _owners(document)
        leading = [{owners[anchor] for anchor in each} for each in references]
        self.parts = parts_of(section_texts(document), leading)
        self.alone = len(self.parts) == 1 and not self.parts[0].is_long
        self.references = [
            sorted(set().union(*(references[number] for number in part.numbers)))
            for part in self.parts
        ]
        self.before = [
            [anchor for anchor in each if owners[anchor] < part.first]
            for part, each in zip(self.parts, self.references, strict=True)
        ]
        self.press = Press()
        self.printed: list[list[Typeset]] = [[] for _ in self.parts]
        self.shown: list[list[str]] = [[] for _ in self.parts]

    def settle(self) -> None:
        """Print every part, and again those that printed a number wrong.

        A part begins as soon as the numbers of earlier pages that it prints are known, so that
        most is printed once.
        """
        running: dict[Future[list[Typeset]], int] = {}
        with ThreadPoolExecutor(len(self.parts)) as pool:
            while True:
                places = self._places()
                for i in self._due(places):
                    if i not in running.values():
                        running[pool.submit(self._task(i, places))] = i
                if not running:
                    return
                for done in wait(running, return_when=FIRST_COMPLETED).done:
                    self.printed[running.pop(done)] = done.result()

    def _due(self, places: Mapping[str, Place]) -> Iterator[int]:
        """Parts that can be printed, and those that can be put right."""
        for i, shown in enumerate(self.shown):
            asks = self.references[i] if shown else self.before[i]
            is_known = places.keys() >= set(asks)
            if is_known and not (shown and shown[-1] == self._numbers(i, places)):
                yield i

    def _task(self, i: int, places: Mapping[str, Place]) -> Callable[[], list[Typeset]]:
        """What prints a part; where numbers are missing it only learns where all comes to lie."""
        part, known = self.parts[i], self._numbers(i, places)
        if len(self.shown[i]) > _ROUNDS:
            msg = "page numbers do not settle"
            raise PrintError(msg)
        self.shown[i].append(known)
        only_places = not places.keys() >= set(self.references[i])
        if self.alone:
            inputs = part_inputs(self.head, part, known)
            return lambda: [typeset("shop.typ", inputs, only_places=only_places)]
        return partial(self.press.part, self.head, part, known, only_places=only_places)

    def _numbers(self, i: int, places: Mapping[str, Place]) -> str:
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
