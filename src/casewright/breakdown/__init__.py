"""Parts into cutting problems and back."""

from casewright.breakdown.build import break_down
from casewright.breakdown.pieces import Piece, PieceKind
from casewright.breakdown.plan import Breakdown, JustFit, Milling, PlanKind, StockPlan, Waiting
from casewright.breakdown.solving import PlanDefectError, saw_kerf
from casewright.breakdown.units import UnevenLengthError, WholeUnit, common_unit

__all__ = [
    "Breakdown",
    "JustFit",
    "Milling",
    "Piece",
    "PieceKind",
    "PlanDefectError",
    "PlanKind",
    "StockPlan",
    "UnevenLengthError",
    "Waiting",
    "WholeUnit",
    "break_down",
    "common_unit",
    "saw_kerf",
]
