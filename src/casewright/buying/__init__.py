"""What to buy: counted on the model, never guessed where the model knows."""

from casewright.buying.build import COLUMNS, buy_list, buy_rows
from casewright.buying.line import Aisle, BuyLine, Measure
from casewright.buying.trim_spare import TrimSpare, trim_spare

__all__ = [
    "COLUMNS",
    "Aisle",
    "BuyLine",
    "Measure",
    "TrimSpare",
    "buy_list",
    "buy_rows",
    "trim_spare",
]
