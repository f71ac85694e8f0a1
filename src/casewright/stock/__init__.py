"""What can be bought: sheets, boards, banding, panels of glass or plastic."""

from casewright.stock.goods import Board, EdgeBand, Glazing, Sheet, Stock, StockList

__all__ = ["Board", "EdgeBand", "Glazing", "Sheet", "Stock", "StockList"]
