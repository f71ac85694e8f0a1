"""Data sheets as values."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import Given, Origin
from casewright.hardware.slides import SlideSheet, UndermountSheet

__all__ = ["HardwareList", "HingeSheet", "PinSheet", "PullSheet", "ScrewSheet"]


# Of the usual European hinges with an arm of 0, 9.5 and 18 mm; from memory.
_USUAL = Origin("cited", "crank of the usual arm", "common practice")
_HALF_CRANK, _INSET_CRANK = Given(Fraction(19, 2), _USUAL), Given(Fraction(18), _USUAL)


@dataclass(frozen=True, slots=True)
class HingeSheet:
    """A concealed cup hinge.

    overlay = constant - crank + bore_distance - plate_height.

    Parameters
    ----------
    constant
        Overlay of the arm at bore distance 0 on a plate of height 0 [mm].
    bore_low, bore_high
        Distances allowed from the door's edge to the near edge of the cup [mm].
    plate_heights
        Plates to be had [mm], lowest first.
    cup_diameter, cup_depth
        [mm].
    plate_line
        Plate holes back from the case's front edge [mm].
    plate_pitch
        Between the two plate holes [mm].
    plate_hole
        Diameter of the plate holes [mm].
    side_play
        What the side screw gives either way [mm].
    stand_off
        How far a door opened to a right angle stands out past its closed edge [mm].
    half_crank, inset_crank
        How much less the cranked arms for doors that lie over half an edge, and for inset doors,
        give than the straight one [mm].
    placeholder
        True when nobody has typed the sheet of the hinge in hand: asked for before boring.
    """

    key: str
    title: str
    constant: Given
    bore_low: Given
    bore_high: Given
    plate_heights: tuple[Given, ...]
    cup_diameter: Given
    cup_depth: Given
    plate_line: Given
    plate_pitch: Given
    plate_hole: Given
    side_play: Given
    stand_off: Given
    half_crank: Given = _HALF_CRANK
    inset_crank: Given = _INSET_CRANK
    placeholder: bool = True


@dataclass(frozen=True, slots=True)
class PullSheet:
    """A knob (centres 0) or a bar pull.

    Parameters
    ----------
    centres
        Between its screws [mm]; 0 for a knob.
    hole
        Diameter [mm].
    projection
        Out of the front [mm].
    """

    key: str
    title: str
    centres: Given
    hole: Given
    projection: Given
    placeholder: bool = True


@dataclass(frozen=True, slots=True)
class PinSheet:
    """Shelf pins: hole diameter, depth and pitch [mm]."""

    key: str
    title: str
    hole: Given
    depth: Given
    pitch: Given


@dataclass(frozen=True, slots=True)
class ScrewSheet:
    """A fastener by kind and length [mm].

    Parameters
    ----------
    placeholder
        True when nobody has typed its length: then it follows what it holds, where it can.
    """

    key: str
    title: str
    length: Given
    diameter: Fraction
    placeholder: bool = False


@dataclass(frozen=True, slots=True)
class HardwareList:
    """The data sheets a job uses."""

    hinge: HingeSheet
    pull: PullSheet
    pin: PinSheet
    pocket_screw: ScrewSheet
    wall_screw: ScrewSheet
    brad: ScrewSheet
    back_brad: ScrewSheet
    front_screw: ScrewSheet
    drawer_screw: ScrewSheet
    slide: SlideSheet
    undermount: UndermountSheet
