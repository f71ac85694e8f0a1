"""Exact boxes and placements. Knows no wood."""

from casewright.geometry.box import Box, Number, subtract, volume
from casewright.geometry.placement import AXES, Direction, Orientation, Placement

__all__ = ["AXES", "Box", "Direction", "Number", "Orientation", "Placement", "subtract", "volume"]
