"""Data sheets of hardware in hand."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from casewright.job.lengths import Between, Length, Weight
from casewright.job.tables.table import Line, Table

__all__ = [
    "HardwareTable",
    "HingeTable",
    "PinTable",
    "PullTable",
    "ScrewTable",
    "SlideTable",
    "UndermountTable",
]

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

    half_crank: _Small | None = None
    """How much less the cranked arm for doors over half an edge gives than the straight one.
    Default: 9.5 mm."""

    inset_crank: _Small | None = None
    """The same of the arm for inset doors. Default: 18 mm."""

    stand_off: Annotated[Length, Between("0", "1", "0", "25")] | None = None
    """How far a door as thick as these, opened to a right angle, stands out past its closed edge:
    the least reveal or gap that the sheet gives."""


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


_Part = Annotated[Length, Between("0", "4", "0", "100")]
_Along = Annotated[Length, Between("0", "36", "0", "900")]


class SlideTable(Table):
    """Slides beside the drawers.

    With air, lengths, line and holes from the sheet in the box, they no longer count as a
    placeholder.
    """

    title: Line | None = None
    """What to ask for."""

    air: Annotated[Length, Between("1/8", "3", "3", "75")] | None = None
    """Side-mounted: air between the drawer's box and the case, at each side. Undermount: width
    of the opening less the inside width of the box."""

    play: Annotated[Length, Between("0", "1/4", "0", "6")] | None = None
    """How much more air than that, in all, the slides still take."""

    lengths: (
        Annotated[
            list[Annotated[Length, Between("6", "48", "150", "1200")]],
            Field(min_length=1, max_length=20),
        ]
        | None
    ) = None
    """Lengths to be had; the drawer's box is as long as its slides."""

    front: _Part | None = None
    """Front ends of the slides behind the front of the case."""

    behind: _Part | None = None
    """Least room behind the drawer's box."""

    below: _Part | None = None
    """Least room under the sides of the drawer's box."""

    line: Annotated[Length, Between("0", "6", "0", "150")] | None = None
    """Screw holes in the case's side above the lower edge of the drawer's sides."""

    holes: Annotated[list[_Along], Field(min_length=2, max_length=12)] | None = None
    """Those holes behind the front end of the slide; holes beyond its length are left out."""

    box_holes: Annotated[list[_Along], Field(max_length=12)] | None = None
    """Holes in the drawer's own sides on the same line, behind the slide's front end. Default:
    none are bored, the members are screwed on along a line."""

    hole: Annotated[Length, Between("1/16", "1/2", "1.5", "12")] | None = None
    """Diameter of the pilot holes."""

    depth: Annotated[Length, Between("1/8", "3/4", "3", "19")] | None = None
    """Depth of the pilot holes, at most two thirds of the board."""

    load: Weight | None = None
    """What a pair carries by its sheet, the drawer included. Left out, a usual one is reckoned
    with where a drawer may be too heavy."""


class UndermountTable(SlideTable):
    """Concealed slides under the drawers.

    With air, lengths, line, holes, recess, the notch and the hook from the sheet in the box, they
    no longer count as a placeholder.
    """

    thickest: Annotated[Length, Between("3/8", "1", "9", "25")] | None = None
    """Thickest side of a drawer's box that they take."""

    recess: Annotated[Length, Between("1/4", "1", "6", "25")] | None = None
    """Underside of the bottom above the lower edge of the drawer's sides."""

    notch_width: Annotated[Length, Between("1/4", "4", "6", "100")] | None = None
    """Rear notches in the drawer's back, from the inside of its sides."""

    notch_height: Annotated[Length, Between("1/4", "1", "6", "25")] | None = None
    """Rear notches from the back's lower edge."""

    hook: _Hole | None = None
    """Diameter of the holes in the back for the hooks."""

    hook_depth: Annotated[Length, Between("1/8", "3/4", "3", "19")] | None = None
    """Depth of those holes."""

    hook_in: _Part | None = None
    """Those holes from the inside of the drawer's sides."""

    hook_up: _Part | None = None
    """Those holes above the lower edge of the drawer's sides."""


class ScrewTable(Table):
    """A kind of screw or brad."""

    title: Line | None = None
    """What to ask for."""

    length: Annotated[Length, Between("1/4", "6", "6", "150")] | None = None
    """Length. Left out, pocket screws and those of drawers follow the thickness of their boards,
    and wall screws the depth to the stud."""

    diameter: Annotated[Length, Between("1/64", "1/2", "0.5", "12")] | None = None
    """Diameter of the shank."""


class HardwareTable(Table):
    """Data sheets of the hardware in hand; what is left out keeps the usual numbers."""

    hinge: HingeTable = Field(default_factory=HingeTable)
    """Hinges of all doors."""

    pull: PullTable = Field(default_factory=PullTable)
    """Pulls of all doors."""

    pin: PinTable = Field(default_factory=PinTable)
    """Shelf pins."""

    pocket_screw: ScrewTable = Field(default_factory=ScrewTable)
    """Screws in pocket holes."""

    wall_screw: ScrewTable = Field(default_factory=ScrewTable)
    """Screws through the nailers into the studs."""

    brad: ScrewTable = Field(default_factory=ScrewTable)
    """Brads that hold boards while the glue dries."""

    back_brad: ScrewTable = Field(default_factory=ScrewTable)
    """Brads of thin backs and strips."""

    front_screw: ScrewTable = Field(default_factory=ScrewTable)
    """Screws that hold a drawer's front from inside its box, and a false front."""

    drawer_screw: ScrewTable = Field(default_factory=ScrewTable)
    """Screws in the butt joints of drawers' boxes."""

    slide: SlideTable = Field(default_factory=SlideTable)
    """Slides beside the drawers."""

    undermount: UndermountTable = Field(default_factory=UndermountTable)
    """Concealed slides under the drawers."""
