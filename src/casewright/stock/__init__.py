"""What can be bought: sheets, boards, banding, panels of glass or plastic."""

from casewright.stock.goods import Board, EdgeBand, Glazing, Sheet, Stock, StockList
from casewright.stock.milling import THINNEST_SOLD, milling_source, strips_in_thickness

__all__ = [
    "THINNEST_SOLD",
    "Board",
    "EdgeBand",
    "Glazing",
    "Sheet",
    "Stock",
    "StockList",
    "milling_source",
    "strips_in_thickness",
]
