"""What can be bought: sheets, boards, banding, panels of glass or plastic."""

from casewright.stock.goods import (
    EMISSION_LABELS,
    Board,
    EdgeBand,
    Emission,
    Glazing,
    Sheet,
    Stock,
    StockList,
)
from casewright.stock.milling import THINNEST_SOLD, milling_source, strips_in_thickness
from casewright.stock.moisture import Moisture, usual_moisture
from casewright.stock.offcut import Offcut
from casewright.stock.price import AMOUNT, hundredths

__all__ = [
    "AMOUNT",
    "EMISSION_LABELS",
    "THINNEST_SOLD",
    "Board",
    "EdgeBand",
    "Emission",
    "Glazing",
    "Moisture",
    "Offcut",
    "Sheet",
    "Stock",
    "StockList",
    "hundredths",
    "milling_source",
    "strips_in_thickness",
    "usual_moisture",
]
