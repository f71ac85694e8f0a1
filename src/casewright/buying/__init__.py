"""What to buy: counted on the model, never guessed where the model knows."""

from casewright.buying.build import COLUMNS, buy_list, buy_rows, room_lines
from casewright.buying.line import Aisle, BuyLine, Measure
from casewright.buying.numbers import ROOT as BUY
from casewright.buying.stock_lines import stock_lines
from casewright.buying.trim_spare import TrimSpare, trim_spare

__all__ = [
    "BUY",
    "COLUMNS",
    "Aisle",
    "BuyLine",
    "Measure",
    "TrimSpare",
    "buy_list",
    "buy_rows",
    "room_lines",
    "stock_lines",
    "trim_spare",
]
