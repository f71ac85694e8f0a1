"""Exact boxes and placements. Knows no wood."""

from casewright.geometry.box import Box, subtract, volume
from casewright.geometry.placement import AXES, Direction, Orientation, Placement

__all__ = ["AXES", "Box", "Direction", "Orientation", "Placement", "subtract", "volume"]
