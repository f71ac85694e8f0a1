"""Thin strips are not sold dressed: they are resawn out of thicker boards."""

from __future__ import annotations

from fractions import Fraction

from casewright.stock.goods import Board, StockList

__all__ = ["THINNEST_SOLD", "milling_source", "strips_in_thickness"]

THINNEST_SOLD = Fraction(12)
"""A board thinner than this is resawn or planed down [mm] (common practice)."""


def milling_source(strip: Board, stock: StockList, waste: Fraction) -> Board | None:
    """The board that strips of a thin stock are milled from.

    Parameters
    ----------
    strip
        The thin stock.
    waste
        Lost to jointing and planing for each strip [mm].

    Returns
    -------
    The thinnest board that is thick enough and, where both are named, of the same wood; None where
    none is, or when the stock is sold as thin as it is asked for.
    """
    if strip.thickness.value >= THINNEST_SOLD:
        return None
    least = max(strip.thickness.value + waste, THINNEST_SOLD)
    boards = [
        board
        for board in stock.values()
        if isinstance(board, Board)
        and not board.moulded
        and board.thickness.value >= least
        and _may_be(board.species, strip.species)
    ]
    return min(boards, key=lambda board: (board.thickness.value, board.key), default=None)


def _may_be(one: str, other: str) -> bool:
    return not one or not other or one == other


def strips_in_thickness(
    board: Fraction, strip: Fraction, *, waste: Fraction, kerf: Fraction
) -> int:
    """How many strips a board yields by resawing.

    Parameters
    ----------
    board, strip
        Thickness of the board and of one finished strip [mm].
    waste
        Lost to jointing and planing for each strip [mm].
    kerf
        Lost between two strips [mm].

    Returns
    -------
    Number of strips [-].

    Examples
    --------
    Strips 3/16 in thick out of a board 3/4 thick, in sixteenths of an inch:

    >>> strips_in_thickness(Fraction(12), Fraction(3), waste=Fraction(2), kerf=Fraction(2))
    2
    """
    return int((board + kerf) // (strip + waste + kerf))
