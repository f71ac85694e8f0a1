"""Cutting plans for sheets and boards, in integers; knows saws and pieces, but no cabinets.

A `Problem` goes into `solve` (sheets) or `solve_boards` (lengths) and comes out as a `Solution`;
`verify` checks it without the solver; `plan_cuts` puts its cuts into an order of work; `walk`
makes these cuts one after the other and tells what they really give.
"""

from casewright.cutting.boards import board_problem, solve_boards
from casewright.cutting.codec import fingerprint, read_problem, write_problem
from casewright.cutting.engine import Stop, solve
from casewright.cutting.methods import Caution, Limits, Method
from casewright.cutting.problem import (
    Defect,
    Fault,
    Keep,
    PartDemand,
    Problem,
    ProblemError,
    StockItem,
    Trim,
)
from casewright.cutting.sawing import Edge
from casewright.cutting.solution import (
    Bound,
    Direction,
    Leaf,
    Measure,
    Node,
    Placement,
    Reason,
    Rect,
    SettingCard,
    SheetTree,
    Solution,
    Split,
    Status,
    Unplaced,
    Use,
    leaves,
    splits,
)
from casewright.cutting.solution_codec import write_solution
from casewright.cutting.steps import Card, CutPlan, Piece, Sheet, Step, plan_cuts
from casewright.cutting.verifier import verify
from casewright.cutting.violations import Breach, Violation
from casewright.cutting.walker import Misstep, Slip, Walk, walk

__all__ = [
    "Bound", "Breach", "Card", "Caution", "CutPlan", "Defect", "Direction", "Edge", "Fault",
    "Keep", "Leaf", "Limits", "Measure", "Method", "Misstep", "Node", "PartDemand", "Piece",
    "Placement", "Problem", "ProblemError", "Reason", "Rect", "SettingCard", "Sheet", "SheetTree",
    "Slip", "Solution", "Split", "Status", "Step", "StockItem", "Stop", "Trim",
    "Unplaced", "Use", "Violation", "Walk", "board_problem", "fingerprint", "leaves",
    "plan_cuts", "read_problem", "solve", "solve_boards", "splits", "verify", "walk",
    "write_problem", "write_solution",
]  # fmt: skip
