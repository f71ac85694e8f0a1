"""Cards on their pages: what a page has to spare goes to its drawings."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace

from casewright.drawing import Plot
from casewright.outputs.blocks import Block, Figure, Keep
from casewright.packet.part_figures import GroupFigures

__all__ = ["Card", "filled"]


_AT_TOP = 7.0  # room that headings have above them, but not at the top of a page [mm]


@dataclass(frozen=True, slots=True)
class Card:
    """The card of parts that are alike, before it is set.

    Parameters
    ----------
    head, tail
        What stands above and below the drawing.
    besides
        Height of all but the drawing, with the headings above it, at the most [mm].
    kept, table_kept
        Whether head and drawing stay on one page, and the table with them.
    """

    figures: GroupFigures
    head: tuple[Block, ...]
    drawn: Plot
    tail: tuple[Block, ...]
    besides: float
    kept: bool = field(default=True, kw_only=True)
    table_kept: bool = field(default=False, kw_only=True)

    @property
    def height(self) -> float:
        """Room on the page, at the most [mm]."""
        return self.besides + self.drawn.area.height

    def blocks(self) -> Iterator[Block]:
        """Heading, facts, drawing, table."""
        figure = Figure(self.drawn)
        if self.table_kept:
            yield Keep((*self.head, figure, *self.tail))
        elif self.kept:
            yield Keep((*self.head, figure))
            yield from self.tail
        else:
            yield from (*self.head, figure, *self.tail)


def filled(cards: Sequence[Card], page_mm: float, width_mm: float) -> list[Card]:
    """The same cards on the same pages, drawn larger where a page has room left.

    Parameters
    ----------
    page_mm, width_mm
        Room on a page [mm].
    """
    return [card for page in _pages(cards, page_mm) for card in _larger(page, page_mm, width_mm)]


def _pages(cards: Sequence[Card], page_mm: float) -> Iterator[list[Card]]:
    """Cards that stand on one page; one whose table runs on stands alone."""
    page: list[Card] = []
    for card in cards:
        full = sum(each.height for each in page) + card.height > page_mm
        if page and (full or not card.table_kept or not page[-1].table_kept):
            yield page
            page = []
        page.append(card)
    if page:
        yield page


def _larger(page: list[Card], page_mm: float, width_mm: float) -> Iterator[Card]:
    """The smallest drawing of a page first: it gains the most."""
    found = list(page)
    spare = page_mm + _AT_TOP - sum(card.height for card in page)
    for number in sorted(range(len(found)), key=lambda each: found[each].drawn.area.height):
        card = found[number]
        if spare <= 0 or not card.table_kept:
            continue
        now = card.drawn.area.height
        drawn = card.figures.within(width_mm, (now + spare,))
        if drawn is not None and _scale(drawn) < _scale(card.drawn):
            found[number] = replace(card, drawn=drawn)
            spare -= drawn.area.height - now
    yield from found


def _scale(drawn: Plot) -> float:
    """How much smaller than the thing itself [-]."""
    return float(drawn.scale or 0)
