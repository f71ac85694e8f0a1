"""Drawers: slides, boxes, their fronts; and false fronts where no drawer is."""

from casewright.casework.drawers.drawers import add_drawers, hang_drawers
from casewright.casework.drawers.panels import hang_false_fronts
from casewright.casework.drawers.slides import DrawerPlan, plan_slides

__all__ = ["DrawerPlan", "add_drawers", "hang_drawers", "hang_false_fronts", "plan_slides"]
