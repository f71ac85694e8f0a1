"""Drawers: slides, boxes, their fronts; and false fronts where no drawer is."""

from casewright.casework.drawers.drawers import add_drawers, hang_drawers, hang_roll_outs
from casewright.casework.drawers.panels import hang_false_fronts
from casewright.casework.drawers.roll_outs import add_pads
from casewright.casework.drawers.slides import DrawerPlan, plan_slides, slide_length

__all__ = [
    "DrawerPlan",
    "add_drawers",
    "add_pads",
    "hang_drawers",
    "hang_false_fronts",
    "hang_roll_outs",
    "plan_slides",
    "slide_length",
]
