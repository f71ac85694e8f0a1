"""Room for an appliance, in a run or in a tall case, and the panel on its front."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field

from casewright.casework.specs import EdgeKind, Hand
from casewright.job.lengths import Between, Length, Weight
from casewright.job.tables.table import Key, Line, OneOrMore, Table

__all__ = ["AppliancePanelTable", "ApplianceTable", "PanelKind", "SecondPanelTable"]

PanelKind = Literal["slab", "applied frame"]
_High = Annotated[Length, Between("4", "96", "100", "2400")]
_Thick = Annotated[Length, Between("1/4", "2", "6", "50")]


class AppliancePanelTable(Table):
    """The panel on an appliance's front: how it is built, what the appliance's sheet says of it.

    Whatever limit is missing is asked for.
    """

    construction: PanelKind | None = None
    """One slab, or a slab with strips on it: the brackets want one flat back. Default: as the
    doors, a slab where those are neither."""

    slab: Key | None = None
    """Sheet that it is cut from. Default: as the doors' slab."""

    strip: Key | None = None
    """Thin strips of an applied frame. Default: as the doors'."""

    edge: EdgeKind | None = None
    """What is done to its edges. Default: as the doors'."""

    pull: bool | None = None
    """Whether holes for a pull are bored. Default: true."""

    hinge: Hand | None = None
    """Side that its door swings on, by its sheet. The pull then stands upright beside the other
    edge, no higher than the style's pull_reach above the floor; else it lies across, panel_pull
    below the top. Default: of two doors side by side the outer one; asked for where a pull that
    lies across would be out of reach."""

    free_below: Annotated[Length, Between("1", "24", "25", "600")] | None = None
    """Height above the floor that its sheet keeps free of the panel: a vent, a grille, the kick.
    Default: nothing beyond the line that the doors beside it begin at."""

    least_height: _High | None = None
    """Least height of a panel, by its sheet. Default: no limit."""

    most_height: _High | None = None
    """Greatest height of a panel, by its sheet."""

    most_width: _High | None = None
    """Greatest width of a panel, by its sheet."""

    least_thickness: _Thick | None = None
    """Least thickness of a panel, by its sheet. Default: no limit."""

    most_thickness: _Thick | None = None
    """Greatest thickness of a panel, by its sheet."""

    most_weight: Weight | None = None
    """Greatest weight of a panel, by its sheet."""

    no_limit: Annotated[
        list[Literal["height", "width", "thickness", "weight"]], Field(max_length=4)
    ] = Field(default_factory=list)
    """What its sheet sets no greatest limit to."""

    screw_rows: (
        Annotated[
            list[Annotated[Length, Between("1/2", "96", "12", "2400")]],
            Field(min_length=1, max_length=6),
        ]
        | None
    ) = None
    """How far below its upper edge the screws of the brackets sit, two in each row."""

    screws_apart: Annotated[Length, Between("2", "48", "50", "1200")] | None = None
    """Between the two screws of a row, which sit alike from both sides."""

    screw_depth: Annotated[Length, Between("1/4", "1 1/2", "6", "40")] | None = None
    """How deep the screws go into the panel."""


class SecondPanelTable(AppliancePanelTable):
    """The panel on the second door of an appliance: to the right of the first, or below it."""

    place: Literal["right", "below"]
    """Where its door is: to the right of the other, or below it."""

    line: Annotated[Length, Between("3", "96", "75", "2400")] | None = None
    """Where the two doors part, by the sheet: middle of the gap between the panels above the
    floor, or from the left end of the opening. While it is missing it is asked for, and the
    panels wait."""

    apart: Annotated[Length, Between("1/16", "4", "1.5", "100")] | None = None
    """Gap between the two panels, by the sheet. While it is missing it is asked for."""


def _panel(value: Any) -> Any:
    return {"construction": value} if isinstance(value, str) else value


_Panel = Annotated[
    AppliancePanelTable | None,
    BeforeValidator(_panel, json_schema_input_type=PanelKind | AppliancePanelTable),
]


class ApplianceTable(Table):
    """Room for an appliance: between the cases of a run, or in a row of a tall case."""

    title: Line | None = None
    """What people call it. Default: the key, with spaces for _."""

    width: Annotated[Length, Between("6", "72", "150", "1900")] | None = None
    """Width that the appliance's own sheet asks for, not that of the appliance. While it is
    missing it is asked for, and what is sized by it waits."""

    height: Annotated[Length, Between("6", "108", "150", "2800")] | None = None
    """How high the appliance stands, for the drawings. Default: as high as a base case. In a row
    of a tall case: clear height of the opening that its sheet asks for; while it is missing it is
    asked for, and the case waits."""

    depth: Annotated[Length, Between("6", "48", "150", "1200")] | None = None
    """In a row of a tall case: clear depth of the opening that its sheet asks for. In a run: how
    far it stands out from the wall. Default there: as far as the cases beside it."""

    cooks: bool | None = None
    """Whether it is cooked on: a cooktop, a range. Default: false."""

    washes: bool | None = None
    """Whether it is a dishwasher: `check` then looks at how far it stands from the sink, and from
    a corner. Default: false."""

    cools: bool | None = None
    """Whether it is a refrigerator: with a sink and what is cooked on, `check` then looks at the
    ways between the three, and at how much counter there is. Default: false."""

    opens: Annotated[Length, Between("6", "48", "150", "1200")] | None = None
    """How far its door, opened, stands out before it, by its sheet. Where an island stands across
    it is reckoned with."""

    clear_above: Annotated[Length, Between("18", "60", "450", "1500")] | None = None
    """Of what is cooked on: the least height that its own sheet wants free above it, up to wood.
    While it is missing it is asked for."""

    above_cooking: Annotated[Length, Between("18", "60", "450", "1500")] | None = None
    """Of the liner of a hood: the least height that its own sheet wants between it and what is
    cooked on. While it is missing it is asked for."""

    duct: (
        Annotated[
            list[Annotated[Length, Between("2", "16", "50", "400")]],
            Field(min_length=1, max_length=2),
            OneOrMore(Length),
        ]
        | None
    ) = None
    """Of the liner of a hood: diameter of its duct, or width and depth of one that is not round.
    While it is missing it is asked for."""

    duct_back: Annotated[Length, Between("1", "36", "25", "900")] | None = None
    """Of the liner of a hood: from the wall to the middle of its duct."""

    panel: _Panel = None
    """A panel on its front, in line with the doors beside it: a construction, or a table with what
    its sheet says. Of an appliance in a run of base or tall cases. Default: none."""

    second_panel: SecondPanelTable | None = None
    """The panel on its second door, where it has two; `panel` is then that of the left or the
    upper one. Default: none."""
