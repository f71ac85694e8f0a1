"""Spoiled pieces cut again: out of the least of the offcuts on hand, else out of the stock."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.parts import Part
from casewright.room.model import Room
from casewright.stock import Offcut

__all__ = ["Recut", "recut", "smallest_holding"]


@dataclass(frozen=True, slots=True)
class Recut:
    """A spoiled piece, and what it is cut from.

    Parameters
    ----------
    part
        As it is to be cut now.
    offcut
        None: none on hand holds it, and it goes onto the stock still to be cut.
    sheets
        How many more sheets the pieces of this stock that no offcut holds take together, beside
        what is still to be cut [-]; None where that is not known, or it has an offcut.
    """

    part: Part
    offcut: Offcut | None
    sheets: int | None = None


def smallest_holding(
    offcuts: Sequence[Offcut], stock: str, length: Fraction, width: Fraction, *, turns: bool
) -> Offcut | None:
    """The offcut of the least area that a piece comes out of, or None; the first of equal ones."""
    fit = [o for o in offcuts if o.stock == stock and o.holds(length, width, turns=turns)]
    return min(fit, key=lambda offcut: offcut.area, default=None)


def recut(room: Room, lost: Sequence[Part], offcuts: Sequence[Offcut]) -> tuple[Recut, ...]:
    """Where each spoiled piece is cut from, so that as many as can be come out of offcuts.

    Of ways to cut them out, the one that uses up the least area of offcuts. Nothing that is cut
    and no other piece is moved for it.

    Parameters
    ----------
    lost
        Pieces to be cut again.
    offcuts
        Those on hand, of any stock.
    """
    if not lost:
        return ()
    from casewright.resolve.out_of_offcuts import out_of_offcuts  # the solver takes long to load
    from casewright.resolve.sheets_left import more_sheets

    found: dict[str, Offcut] = {}
    for stock in dict.fromkeys(part.stock for part in lost):
        own = [part for part in lost if part.stock == stock]
        found.update(out_of_offcuts(room, own, [o for o in offcuts if o.stock == stock]))
    others: dict[str, list[Part]] = {}
    for part in lost:
        if part.path not in found:
            others.setdefault(part.stock, []).append(part)
    sheets = {stock: more_sheets(room, stock, parts) for stock, parts in others.items()}
    return tuple(
        Recut(part, found.get(part.path), None if part.path in found else sheets[part.stock])
        for part in lost
    )
