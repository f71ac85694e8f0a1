"""A long section laid out run by run, in the process that prints it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from casewright.outputs.section_text import SectionText, printing_text
from casewright.outputs.typesetter import Typeset, typeset

__all__ = ["Run", "typeset_run"]


class Run(NamedTuple):
    """As many pages of a long section as keep the limit.

    Parameters
    ----------
    end
        With which block the next page begins.
    made
        The pages; None while they are still being written.
    """

    end: int
    made: Typeset | None


def typeset_run(
    head: str, section: SectionText, start: int, numbers: str, limit: int
) -> Iterator[Run]:
    """The pages of a section from a block on: first where they end, then all."""
    last = len(section.blocks)
    end, weight = start + 1, section.weights[start]
    while end < last and (weight := weight + section.weights[end]) <= limit:
        end += 1

    def pages(to: int, *, only_places: bool = False) -> Typeset:
        data = printing_text(head, [section.part(start, to)])
        inputs = {"data": data, "numbers": numbers}
        return typeset("shop.typ", inputs, only_places=only_places)

    if end < last and not section.sheets:
        end = _page_turn(pages(end, only_places=True), range(start + 1, end)) or last
    yield Run(end, None)
    yield Run(end, pages(end))


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
