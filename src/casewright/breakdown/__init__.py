"""Parts into cutting problems and back."""

from casewright.breakdown.build import break_down
from casewright.breakdown.counting import SheetCount, count_sheets
from casewright.breakdown.desk import Desk
from casewright.breakdown.each import Each, in_turn
from casewright.breakdown.nudges import Nudge, find_nudges, moved
from casewright.breakdown.pieces import Piece, PieceKind
from casewright.breakdown.plan import Breakdown, JustFit, Milling, PlanKind, StockPlan, Waiting
from casewright.breakdown.saw_steps import (
    CAUTION_WORDS,
    DANGERS,
    EDGE_WORDS,
    FACE_WORDS,
    METHOD_WORDS,
    InHand,
    SawCard,
    SawStep,
    saw_cards,
    saw_steps,
)
from casewright.breakdown.units import UnevenLengthError, WholeUnit, common_unit
from casewright.cutting.settling import PlanDefectError

__all__ = [
    "CAUTION_WORDS",
    "DANGERS",
    "EDGE_WORDS",
    "FACE_WORDS",
    "METHOD_WORDS",
    "Breakdown",
    "Desk",
    "Each",
    "InHand",
    "JustFit",
    "Milling",
    "Nudge",
    "Piece",
    "PieceKind",
    "PlanDefectError",
    "PlanKind",
    "SawCard",
    "SawStep",
    "SheetCount",
    "StockPlan",
    "UnevenLengthError",
    "Waiting",
    "WholeUnit",
    "break_down",
    "common_unit",
    "count_sheets",
    "find_nudges",
    "in_turn",
    "moved",
    "saw_cards",
    "saw_steps",
]
