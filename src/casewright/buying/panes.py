"""Panes to order by size: they are made to measure, so each size is a line."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.buying.line import BuyLine
from casewright.buying.words import counted
from casewright.casework.parts import Part
from casewright.dims import reading_text, shop_text
from casewright.room.model import Room
from casewright.stock import Glazing

__all__ = ["films", "panes"]

_NOTE = "order when the frames are rebated and measured; cut edges slice skin: carry upright"
_LAW = "glass within reach is tempered, as local codes ask"


def _largest_first(
    item: tuple[tuple[str, Fraction, Fraction, Fraction], list[Part]],
) -> tuple[str, Fraction, Fraction]:
    key, long, wide, _ = item[0]
    return key, -long, -wide


def panes(room: Room) -> Iterator[BuyLine]:
    """Glass or plastic by size, largest first."""
    sizes: dict[tuple[str, Fraction, Fraction, Fraction], list[Part]] = {}
    for part in room.parts:
        if isinstance(room.spec.stock[part.stock], Glazing):
            radius = part.corner_radius.value if part.corner_radius else Fraction(0)
            long, wide = part.blank.length.value, part.blank.width.value
            sizes.setdefault((part.stock, long, wide, radius), []).append(part)
    unit = room.spec.unit
    for (key, long, wide, radius), parts in sorted(sizes.items(), key=_largest_first):
        goods = room.spec.stock[key]
        corners = (
            f", corners rounded to {reading_text(radius, unit, with_unit=True)}" if radius else ""
        )
        law = f"; {_LAW}" if isinstance(goods, Glazing) and "glass" in goods.material else ""
        yield BuyLine(
            "glass",
            f"{goods.title}, {reading_text(long, unit)} x {reading_text(wide, unit)} x "
            f"{shop_text(goods.thickness.value, unit)} {unit}{corners}",
            key, "pieces", Fraction(len(parts)), Fraction(0), Fraction(1), len(parts), "each",
            f"{counted(len(parts), 'door')} with panes of this size",
            tuple(part.path for part in parts),
            note=_NOTE + law + (f"; {goods.price}" if goods.price else ""),
        )  # fmt: skip


def films(room: Room) -> Iterator[BuyLine]:
    """Film for panes by size, largest first: a little smaller than they are."""
    unit = room.spec.unit
    sizes: dict[tuple[Fraction, Fraction], list[Part]] = {}
    for part in room.parts:
        if part.film is not None:
            cut = (part.film.length.value, part.film.width.value)
            sizes.setdefault(cut, []).append(part)
    for (high, across), parts in sorted(sizes.items(), reverse=True):
        size = f"{reading_text(high, unit)} x {reading_text(across, unit)} {unit}"
        yield BuyLine(
            "glass", f"window film, to cut {size} from", "film", "pieces", Fraction(len(parts)),
            Fraction(0), Fraction(1), len(parts), "each",
            f"{counted(len(parts), 'pane')} with film of this size",
            tuple(part.path for part in parts),
            note="buy it by the width of the roll, with an inch (25 mm) more all round",
        )  # fmt: skip
