"""What to buy: counted on the model, never guessed where the model knows."""

from casewright.buying.build import COLUMNS, buy_list, buy_rows
from casewright.buying.line import Aisle, BuyLine, Measure

__all__ = ["COLUMNS", "Aisle", "BuyLine", "Measure", "buy_list", "buy_rows"]
