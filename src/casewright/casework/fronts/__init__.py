"""Fronts: doors with their hinges and pulls, and ends dressed to match them."""

from casewright.casework.fronts.doors import add_fronts, fit_between_rows, hang_fronts
from casewright.casework.fronts.ends import EndFrames, add_finished_ends, end_stock
from casewright.casework.fronts.hinges import HingePlan, HungLeaf, Plate, plan_hinges

__all__ = [
    "EndFrames",
    "HingePlan",
    "HungLeaf",
    "Plate",
    "add_finished_ends",
    "add_fronts",
    "end_stock",
    "fit_between_rows",
    "hang_fronts",
    "plan_hinges",
]
