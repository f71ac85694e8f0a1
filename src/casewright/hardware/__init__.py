"""Data sheets of hinges, pulls, pins and fasteners: generic, typed or picked by the person."""

from casewright.hardware.sheets import (
    HardwareList,
    HingeSheet,
    PinSheet,
    PullSheet,
    ScrewSheet,
)

__all__ = ["HardwareList", "HingeSheet", "PinSheet", "PullSheet", "ScrewSheet"]
