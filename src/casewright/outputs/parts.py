"""Parts of a document that are printed apart, and how many pages go into one process."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import dataclass

from casewright.outputs.apart import apart, apart_by_steps
from casewright.outputs.runs import typeset_run
from casewright.outputs.section_text import SectionText, printing_text
from casewright.outputs.typesetter import Template, Typeset, typeset

__all__ = ["LIMIT", "Part", "Press", "part_inputs", "parts_of", "print_page_numbers"]

LIMIT = 240_000
"""Most weight that one process is given, unless it is a single block: some 22 pages, 100 MB."""

_AT_ONCE = 2  # processes: each needs memory, and more cores would help little

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


class Press:
    """Prints in other processes, few of them at a time however much is asked for at once."""

    def __init__(self) -> None:
        self._processes = ThreadPoolExecutor(_AT_ONCE)

    def part(
        self, head: str, part: Part, numbers: str, *, only_places: bool = False
    ) -> list[Typeset]:
        """A part as one or more runs of pages.

        Parameters
        ----------
        head
            What all sections of the document share.
        numbers
            Page numbers by anchor, as JSON text.
        only_places
            Do not write the pages.
        """
        if part.is_long:
            return self._long(head, part.sections[0], numbers)
        inputs = part_inputs(head, part, numbers)
        made = self._processes.submit(apart, typeset, "shop.typ", inputs, only_places=only_places)
        return [made.result()]

    def _long(self, head: str, section: SectionText, numbers: str) -> list[Typeset]:
        """A long section, run by run: each ends where a page would end anyway.

        The next begins as soon as that place is known, while the one before is being written.
        """
        runs: list[Future[Typeset]] = []
        start = 0
        while start < len(section.blocks):
            end: Future[int] = Future()
            runs.append(self._processes.submit(self._run, head, section, start, numbers, end))
            start = end.result()
        return [run.result() for run in runs]

    def _run(
        self, head: str, section: SectionText, start: int, numbers: str, end: Future[int]
    ) -> Typeset:
        """One run; where it ends is told before it is written."""
        try:
            for run in apart_by_steps(typeset_run, head, section, start, numbers, LIMIT):
                if run.made is not None:
                    return run.made
                end.set_result(run.end)
        except Exception as error:
            if not end.done():
                end.set_exception(error)
            raise
        raise AssertionError


def part_inputs(head: str, part: Part, numbers: str) -> Mapping[str, str]:
    """What the typesetter is given for a part that is not long."""
    data = printing_text(head, (section.whole for section in part.sections))
    return {"data": data, "numbers": numbers}


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
