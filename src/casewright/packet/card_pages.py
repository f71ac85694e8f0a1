"""Cards on their pages: what a page has to spare goes to its drawings."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace

from casewright.drawing import Plot
from casewright.outputs.blocks import Block, Figure, Keep
from casewright.packet.part_figures import GroupFigures

__all__ = ["Card", "filled"]


_AT_TOP = 7.0  # room that headings have above them, but not at the top of a page [mm]
_AT_LEAST = 4.0  # of it, above the heading of any card [mm]
_LOW = 38.0  # about how high the lowest drawings are [mm]
_TALL = tuple(range(45, 145, 10))  # heights that small drawings are tried at [mm]


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
    """The same cards in the same order, drawn so that they need few pages and fill them.

    Cards of two pages are drawn smaller where one then holds them; else they are drawn larger
    where a page has room left.

    Parameters
    ----------
    page_mm, width_mm
        Room on a page [mm].
    """
    return [
        card
        for page in _joined(list(_pages(cards, page_mm)), page_mm, width_mm)
        for card in _larger(page, page_mm, width_mm)
    ]


def _pages(cards: Sequence[Card], page_mm: float) -> Iterator[list[Card]]:
    """Cards that stand on one page; one whose table runs on stands alone."""
    page: list[Card] = []
    for card in cards:
        full = sum(each.height for each in page) + card.height > page_mm + _AT_LEAST
        if page and (full or not card.table_kept or not page[-1].table_kept):
            yield page
            page = []
        page.append(card)
    if page:
        yield page


def _joined(pages: Sequence[list[Card]], page_mm: float, width_mm: float) -> Iterator[list[Card]]:
    """Two pages as one where their cards fit it when they are drawn smaller."""
    before: list[Card] = []
    for page in pages:
        both = _smaller([*before, *page], page_mm, width_mm) if before else None
        if before and both is None:
            yield before
        before = both or page
    if before:
        yield before


def _smaller(cards: list[Card], page_mm: float, width_mm: float) -> list[Card] | None:
    """Cards drawn so that they fit a page, the largest drawings reduced first; else None."""
    spare = page_mm + _AT_LEAST - sum(card.besides for card in cards)
    if not all(card.table_kept for card in cards) or spare < _LOW * len(cards):
        return None
    found = list(cards)
    for number in sorted(range(len(found)), key=lambda each: -found[each].drawn.area.height):
        others = sum(card.drawn.area.height for card in found) - found[number].drawn.area.height
        if others + found[number].drawn.area.height <= spare:
            break
        most = spare - _LOW * (len(found) - 1)
        rooms = [spare - others, *(tall for tall in _TALL if tall < most), most]
        drawn = found[number].figures.within(width_mm, rooms)
        if drawn is None:
            return None
        found[number] = replace(found[number], drawn=drawn)
    return found if sum(card.drawn.area.height for card in found) <= spare else None


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
