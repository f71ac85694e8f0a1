"""Data sheets of hinges, pulls, pins, slides, screws: generic, typed or picked by the person."""

from casewright.hardware.screw_charts import WALL_SCREWS, pocket_screw_length, screw_lengths
from casewright.hardware.sheets import (
    HardwareList,
    HingeSheet,
    PinSheet,
    PullSheet,
    ScrewSheet,
)
from casewright.hardware.slides import LAST_HOLE, SlideSheet, UndermountSheet

__all__ = [
    "LAST_HOLE",
    "WALL_SCREWS",
    "HardwareList",
    "HingeSheet",
    "PinSheet",
    "PullSheet",
    "ScrewSheet",
    "SlideSheet",
    "UndermountSheet",
    "pocket_screw_length",
    "screw_lengths",
]
