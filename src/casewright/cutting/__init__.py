"""Cutting plans for sheets and boards, in integers; knows saws and pieces, but no cabinets.

A `Problem` goes into `solve` (sheets) or `solve_boards` (lengths) and comes out as a `Solution`;
`verify` checks it without the solver; `plan_cuts` puts its cuts into an order of work; `walk`
makes these cuts one after the other and tells what they really give. `replan` plans anew with cut
sheets left as they are.
"""

from casewright.cutting.boards import board_problem, solve_boards
from casewright.cutting.codec import fingerprint, read_problem, write_problem
from casewright.cutting.easing import ease
from casewright.cutting.engine import Progress, Stop, solve
from casewright.cutting.methods import Caution, Limits, Method
from casewright.cutting.problem import (
    Defect,
    Fault,
    Keep,
    Match,
    PartDemand,
    Problem,
    ProblemError,
    StockItem,
    Trim,
)
from casewright.cutting.rates import Load, Rates, WorkModel
from casewright.cutting.replan import Movement, Replan, replan
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
from casewright.cutting.solution_reader import read_solution
from casewright.cutting.steps import Card, CutPlan, Piece, Sheet, Step, plan_cuts
from casewright.cutting.trade import Choice, Trade, break_even, weigh
from casewright.cutting.verifier import verify
from casewright.cutting.violations import Breach, Violation
from casewright.cutting.walker import Misstep, Slip, Walk, walk
from casewright.cutting.work import Work, work_of

__all__ = [
    "Bound", "Breach", "Card", "Caution", "Choice", "CutPlan", "Defect", "Direction", "Edge",
    "Fault", "Keep", "Leaf", "Limits", "Load", "Match", "Measure", "Method", "Misstep",
    "Movement", "Node", "PartDemand", "Piece", "Placement", "Problem", "ProblemError",
    "Progress", "Rates", "Reason", "Rect", "Replan", "SettingCard", "Sheet", "SheetTree",
    "Slip", "Solution", "Split", "Status", "Step", "StockItem", "Stop", "Trade", "Trim",
    "Unplaced", "Use", "Violation", "Walk", "Work", "WorkModel", "board_problem", "break_even",
    "ease", "fingerprint", "leaves", "plan_cuts", "read_problem", "read_solution",
    "replan", "solve", "solve_boards", "splits", "verify", "walk", "weigh", "work_of",
    "write_problem", "write_solution",
]  # fmt: skip
