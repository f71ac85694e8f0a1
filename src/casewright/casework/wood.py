"""Solid wood across the grain: how much a size grows and shrinks from one season to the other."""

from __future__ import annotations

from fractions import Fraction
from typing import Literal

from casewright.casework.house import House
from casewright.casework.plain_numbers import plain_number
from casewright.dims import Dim, Origin
from casewright.sources import MOVEMENT
from casewright.stock import Board, Stock

__all__ = ["MADE", "is_solid", "movement", "movement_of", "season_change"]

MADE = "wood.made"
"""Path of the moisture content on the day the wood is cut."""


def is_solid(house: House, key: str) -> bool:
    """Whether a stock is solid wood, which moves across the grain; sheets hardly do."""
    return isinstance(house.stock[key], Board)


def movement(house: House, key: str) -> Dim:
    """Change of width of a board for each percent of moisture, as a share of it [1/%].

    Of a board whose wood nobody has named the one that moves most is reckoned with.

    Sources
    -------
    `wood-handbook`: table 13-5.
    """
    goods = house.stock[key]
    value = movement_of(goods)
    if value is not None and isinstance(goods, Board):
        note = f"{goods.species}, {goods.sawn}-sawn, for each percent of moisture"
    else:
        value = max(row.tangential for row in MOVEMENT.values())
        note = "the wood that moves most, until this one is named"
    origin = Origin("cited", note, "wood-handbook")
    return plain_number(house, f"stock.{key}.movement", value, 0, origin)


def movement_of(goods: Stock) -> Fraction | None:
    """The same of any stock [1/%]; None of sheets, and of boards whose wood nobody has named."""
    row = MOVEMENT.get(goods.species) if isinstance(goods, Board) else None
    if row is None or not isinstance(goods, Board):
        return None
    return row.tangential if goods.sawn == "flat" else row.radial


def season_change(house: House, size: Dim, key: str, way: Literal["swell", "shrink"]) -> Dim:
    """How much a size across the grain will swell or shrink from the day it is made [mm].

    Parameters
    ----------
    size
        As made [mm].
    key
        Of its stock.
    """
    made = _moisture(house, "made")
    swells = way == "swell"
    more = _moisture(house, "damp") - made if swells else made - _moisture(house, "dry")
    if more.value <= 0:
        return house.zero
    return size * movement(house, key) * more


def _moisture(house: House, name: Literal["made", "dry", "damp"]) -> Dim:
    given = getattr(house.moisture, name)
    value: Fraction = given.value
    return plain_number(house, f"wood.{name}", value, 0, given.origin)
