"""Data sheets of hinges, pulls, pins and fasteners: generic, typed or picked by the person."""

from casewright.hardware.screw_charts import WALL_SCREWS, pocket_screw_length
from casewright.hardware.sheets import (
    HardwareList,
    HingeSheet,
    PinSheet,
    PullSheet,
    ScrewSheet,
)

__all__ = [
    "WALL_SCREWS",
    "HardwareList",
    "HingeSheet",
    "PinSheet",
    "PullSheet",
    "ScrewSheet",
    "pocket_screw_length",
]
