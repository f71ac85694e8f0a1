"""Data sheets of hardware in hand."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from casewright.job.lengths import Between, Length
from casewright.job.tables.table import Line, Table

__all__ = ["HardwareTable", "HingeTable", "PinTable", "PullTable", "ScrewTable"]

_Small = Annotated[Length, Between("0", "1 1/4", "0", "30")]
_Hole = Annotated[Length, Between("1/16", "3/4", "1.5", "20")]


class HingeTable(Table):
    """A concealed cup hinge: overlay = constant + bore distance - plate height.

    With constant, bore_distance and plate_heights from the sheet in the box, it no longer
    counts as a placeholder.
    """

    title: Line | None = None
    """What to ask for."""

    constant: _Small | None = None
    """Overlay of the arm at bore distance 0 on a plate of height 0."""

    bore_distance: Annotated[list[_Small], Field(min_length=2, max_length=2)] | None = None
    """Least and greatest distance from the door's edge to the near edge of the cup."""

    plate_heights: Annotated[list[_Small], Field(min_length=1, max_length=12)] | None = None
    """Heights of the plates to be had."""

    cup_diameter: Annotated[Length, Between("3/4", "2", "20", "50")] | None = None
    """Diameter of the cup."""

    cup_depth: Annotated[Length, Between("1/4", "3/4", "6", "19")] | None = None
    """Depth the cup is bored."""

    plate_line: Annotated[Length, Between("1/2", "4", "12", "100")] | None = None
    """Plate holes back from the case's front edge."""

    plate_pitch: Annotated[Length, Between("1/2", "4", "12", "100")] | None = None
    """Between the two holes of a plate."""

    plate_hole: _Hole | None = None
    """Diameter of the plate holes."""

    side_play: Annotated[Length, Between("0", "1/4", "0", "6")] | None = None
    """What the side screw gives either way."""


class PullTable(Table):
    """A knob or a bar pull. With centres it no longer counts as a placeholder."""

    title: Line | None = None
    """What to ask for."""

    centres: Annotated[Length, Between("0", "36", "0", "900")] | None = None
    """Between its screws; 0 for a knob."""

    hole: _Hole | None = None
    """Diameter of its holes."""

    projection: Annotated[Length, Between("0", "6", "0", "150")] | None = None
    """How far it stands out of the front."""


class PinTable(Table):
    """Shelf pins."""

    title: Line | None = None
    """What to ask for."""

    hole: _Hole | None = None
    """Diameter of the holes."""

    depth: Annotated[Length, Between("1/8", "3/4", "3", "19")] | None = None
    """Depth of the holes."""

    pitch: Annotated[Length, Between("1/2", "12", "12", "300")] | None = None
    """From hole to hole."""


class ScrewTable(Table):
    """A kind of screw or brad."""

    title: Line | None = None
    """What to ask for."""

    length: Annotated[Length, Between("1/4", "6", "6", "150")] | None = None
    """Length. Left out, pocket screws follow the thickness of their boards, and wall screws the
    depth to the stud."""

    diameter: Annotated[Length, Between("1/64", "1/2", "0.5", "12")] | None = None
    """Diameter of the shank."""


class HardwareTable(Table):
    """Data sheets of the hardware in hand; what is left out keeps the usual numbers."""

    hinge: HingeTable = HingeTable()
    """Hinges of all doors."""

    pull: PullTable = PullTable()
    """Pulls of all doors."""

    pin: PinTable = PinTable()
    """Shelf pins."""

    pocket_screw: ScrewTable = ScrewTable()
    """Screws in pocket holes."""

    wall_screw: ScrewTable = ScrewTable()
    """Screws through the nailers into the studs."""

    brad: ScrewTable = ScrewTable()
    """Brads that hold boards while the glue dries."""

    back_brad: ScrewTable = ScrewTable()
    """Brads of thin backs and strips."""
