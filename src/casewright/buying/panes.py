"""Panes to order by size: they are made to measure, so each size is a line."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.buying.line import BuyLine
from casewright.buying.numbers import sums
from casewright.buying.words import counted
from casewright.casework.parts import Part
from casewright.dims import Dim, Measure, Told, joined, reading_text, shop_text, tell
from casewright.findings import Limit, Reckoning
from casewright.room.model import Room
from casewright.stock import Glazing

__all__ = ["films", "panes"]

_NOTE = "order when the frames are rebated and measured; cut edges slice skin: carry upright"
_LAW = "glass within reach is tempered, as local codes ask"
_MORE = Limit("film.more", "1", "25", "what film is more than its pane, all round")


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
    for number, ((key, *_), parts) in enumerate(sorted(sizes.items(), key=_largest_first), 1):
        goods, own = room.spec.stock[key], sums(room, "pane", f"{key}_{number}")
        law = f"; {_LAW}" if isinstance(goods, Glazing) and "glass" in goods.material else ""
        yield BuyLine(
            "glass",
            joined("", (f"{goods.title}, ", _size(room, own, parts[0]))),
            key, "pieces", Fraction(len(parts)), Fraction(0), Fraction(1), len(parts), "each",
            f"{counted(len(parts), 'door')} with panes of this size",
            tuple(part.path for part in parts),
            note=_NOTE + law + (f"; {goods.price}" if goods.price else ""), numbers=own.numbers,
        )  # fmt: skip


def _size(room: Room, own: Reckoning, pane: Part) -> Told:
    """'17 x 9 1/2 x 1/8 in, corners rounded to 5/8"'."""
    thick = own.given(f"stock.{pane.stock}.thickness", room.spec.stock[pane.stock].thickness)
    unit, radius = own.unit, pane.corner_radius
    size = tell(
        "{} x {} x {}", _read(own, pane.blank.length), _read(own, pane.blank.width),
        own.said(thick, f"{shop_text(thick.value, unit)} {unit}", "thickness"),
    )  # fmt: skip
    if radius is None or not radius.value:
        return size
    rounded = own.said(radius, reading_text(radius.value, unit, with_unit=True), "radius")
    return size + tell(", corners rounded to {}", rounded)


def _read(own: Reckoning, dim: Dim, after: str = "") -> Measure:
    return own.said(dim, f"{reading_text(dim.value, own.unit)}{after}", "size")


def films(room: Room) -> Iterator[BuyLine]:
    """Film for panes by size, largest first: a little smaller than they are."""
    sizes: dict[tuple[Fraction, Fraction], list[Part]] = {}
    cuts: dict[tuple[Fraction, Fraction], tuple[Dim, Dim]] = {}
    for part in room.parts:
        if part.film is not None:
            cut = (part.film.length.value, part.film.width.value)
            sizes.setdefault(cut, []).append(part)
            cuts.setdefault(cut, (part.film.length, part.film.width))
    for number, (cut, parts) in enumerate(sorted(sizes.items(), reverse=True), start=1):
        own, (high, across) = sums(room, "film", f"size_{number}"), cuts[cut]
        size = tell("{} x {}", _read(own, high), _read(own, across, f" {own.unit}"))
        yield BuyLine(
            "glass", tell("window film, to cut {} from", size), "film", "pieces",
            Fraction(len(parts)), Fraction(0), Fraction(1), len(parts), "each",
            f"{counted(len(parts), 'pane')} with film of this size",
            tuple(part.path for part in parts),
            note=tell(
                "buy it by the width of the roll, with {} more all round",
                own.said(own.limit(_MORE), "an inch (25 mm)", "more"),
            ),
            numbers=own.numbers,
        )  # fmt: skip
