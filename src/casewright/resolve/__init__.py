"""What a fact changes, and what can be done about it."""

from casewright.resolve.clashes import Clash
from casewright.resolve.differences import Difference, differences
from casewright.resolve.hold_numbers import HOLD, band_path, hold_numbers
from casewright.resolve.hold_points import HoldPoint, Watched, hold_points, readings_awaited
from casewright.resolve.misfits import Misfit
from casewright.resolve.moves import Remedy, Rung
from casewright.resolve.proposal import Change, Conflict, Kept, Proposal, propose
from casewright.resolve.remedies import remedies
from casewright.resolve.sheet_groups import SheetGroup, assigned, grouped
from casewright.resolve.sources import FactChange
from casewright.resolve.spoiled import Recut, recut
from casewright.resolve.staying import Staying, stay
from casewright.resolve.staying_model import Resize

__all__ = [
    "HOLD",
    "Change",
    "Clash",
    "Conflict",
    "Difference",
    "FactChange",
    "HoldPoint",
    "Kept",
    "Misfit",
    "Proposal",
    "Recut",
    "Remedy",
    "Resize",
    "Rung",
    "SheetGroup",
    "Staying",
    "Watched",
    "assigned",
    "band_path",
    "differences",
    "grouped",
    "hold_numbers",
    "hold_points",
    "propose",
    "readings_awaited",
    "recut",
    "remedies",
    "stay",
]
