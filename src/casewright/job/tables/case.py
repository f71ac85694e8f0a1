"""A case and its doors."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field

from casewright.casework.specs import DoorKind, Hand, LidKind, ToeKind
from casewright.job.lengths import Between, Length
from casewright.job.tables.boxes import BoxesTable, DoorPartsTable
from casewright.job.tables.place import PlaceTable
from casewright.job.tables.rows import DrawersTable, Row
from casewright.job.tables.style import StyleTable
from casewright.job.tables.table import Key, Line

__all__ = ["CaseTable", "FrontKind", "FrontTable"]

FrontKind = Literal[DoorKind, "none"]


class FrontTable(DoorPartsTable):
    """The doors of one opening."""

    construction: FrontKind | None = None
    """Slab, strips on a slab, a half-lapped frame with glass, a frame and panel, a mitred frame
    with a panel, or none. Default: as in [doors]."""

    mid_rail: Annotated[Length, Between("6", "96", "150", "2400")] | None = None
    """Height of the middle of a rail that parts the panel of a frame and panel in two, above the
    door's lower end. Default: one panel."""

    leaves: Literal[1, 2] | None = None
    """Doors side by side. Default: one, or two where one would be wider than the style's
    widest_single_door."""


def _front(value: Any) -> Any:
    return {"construction": value} if isinstance(value, str) else value


_Front = Annotated[
    FrontTable | None, BeforeValidator(_front, json_schema_input_type=FrontKind | FrontTable)
]


def _finished(value: Any) -> Any:
    if value == "both":
        return ["left", "right"]
    return [value] if isinstance(value, str) else value


class CaseTable(BoxesTable):
    """One case. Its key is its permanent name; give another title to call it otherwise."""

    kind: Literal["wall", "base", "tall", "bookcase", "surround", "hood"]
    """What it is: hung on the wall, standing under a counter, tall (a pantry, or round an
    appliance: from the floor, with a top), a bookcase from the floor, a surround: a deep box over
    a refrigerator, between panels that reach the floor, or a hood: a box hung over what is cooked
    on, round a liner."""

    title: Line | None = None
    """What people call it. Default: the key, with spaces for _."""

    width: Annotated[Length, Between("4", "96", "100", "2400")] | None = None
    """Outside width. Left out in a run with readings of its wall: an equal share."""

    height: Annotated[Length, Between("4", "108", "100", "2750")] | None = None
    """Outside height, toe included. Default: the style's wall_height, base_height,
    tall_height, bookcase_height or surround_height. Of a hood: of its top above the undersides of
    wall cases, so that it ends with those beside it; its own underside follows from the sheets.
    Default: wall_height."""

    depth: Annotated[Length, Between("3", "48", "75", "1200")] | None = None
    """Outside depth, back included, doors excluded. Default: the style's wall_depth, base_depth,
    tall_depth, bookcase_depth, surround_depth or hood_depth."""

    toe: ToeKind | None = None
    """Toe space of a base or tall case: notched into the sides, a separate plinth, or none.
    Neighbours of a run share a plinth of one height and setback, as far as a sheet is long.
    Default: notch."""

    appliance: Key | None = None
    """The refrigerator that a surround stands round, by its key in [appliance]: width of such a
    case is the clear width between its panels, or between the stiles of its face frame. Or the
    liner of a hood."""

    over: Key | None = None
    """What is cooked on below a hood, by its key in [appliance]."""

    face_sheet: Key | None = None
    """Sheet that the face panel of a hood is cut from. Default: fibreboard."""

    register_opening: (
        Annotated[
            list[Annotated[Length, Between("1", "36", "25", "900")]],
            Field(min_length=2, max_length=2),
        ]
        | None
    ) = None
    """Opening through its toe board for the air of a register behind it: width and height, by
    the register's sheet. Default: none."""

    shelves: Annotated[int, Field(ge=0, le=20)] | None = None
    """Adjustable shelves; in a bookcase fixed ones, evenly spread. Default: 2 in a wall case, 1
    in a base case, 3 in a tall one, 5 in a bookcase."""

    upper_shelves: Annotated[int, Field(ge=0, le=20)] | None = None
    """Adjustable shelves above the divider. Default: 1 in a tall case, else none."""

    fixed_shelves: list[Annotated[Length, Between("1", "108", "25", "2750")]] = Field(
        default_factory=list
    )
    """Heights of the top faces of fixed shelves above the case's bottom edge."""

    divider: Annotated[Length, Between("4", "104", "100", "2650")] | None = None
    """Height of the middle of a fixed divider above the case's bottom edge: two openings, one
    pair of sides."""

    finished: Annotated[
        list[Hand],
        BeforeValidator(
            _finished, json_schema_input_type=Literal["left", "right", "both"] | list[Hand]
        ),
    ] = Field(default_factory=list)
    """Ends that show in the room; end says what is put on them."""

    skirt: Annotated[Length, Between("1", "6", "25", "150")] | None = None
    """How far the sides reach below the bottom; a strip closes it in front."""

    crown: Annotated[Length, Between("1/2", "8", "10", "200")] | None = None
    """How far a crown laps down over the front. Fronts begin a gap below it; the stretcher that
    its foot is nailed to is at least as wide as lap and gap."""

    nosing: Annotated[Length, Between("1", "4", "25", "100")] | None = None
    """Height of a strip under the front edge of each fixed shelf of a bookcase, or of a case that
    is open shelves from top to bottom."""

    front: _Front = None
    """Doors of the main opening: a construction, "none", or a table. Default: as in [doors]; a
    bookcase has none."""

    upper_front: _Front = None
    """Doors above the divider. Default: as in front."""

    drawers: Annotated[int, Field(ge=1, le=10)] | None = None
    """Drawers one over the other, in a base or tall case without doors. Their fronts are of one
    height, the topmost as high as top_drawer says."""

    top_drawer: Annotated[Length, Between("2", "40", "50", "1000")] | None = None
    """Height of the topmost drawer's front. Without drawers: one drawer over the doors."""

    rows: Annotated[list[Row], Field(min_length=1, max_length=12)] | None = None
    """What the face of a base or tall case is parted into, from the top down, each with the height
    of its fronts, in a face frame of its opening: ["drawer 6", "doors"]. Rows without a height
    share what is left."""

    rails: bool | None = None
    """Whether a rail between the sides parts each row from the next. Default: false; between inset
    fronts there always is one."""

    drawer: DrawersTable | None = None
    """How the drawers of this case are built. Default: as in [drawers]."""

    roll_outs: Annotated[int, Field(ge=1, le=8)] | None = None
    """Drawers behind the doors of a base or tall case, on pads that keep them clear of the open
    doors; behind each of two doors that a mullion parts, at either side of a partition. Default:
    none."""

    sink: bool | None = None
    """Whether a bowl hangs in a base case: no top, its back open with two rails, a false front
    over the doors. Default: false."""

    bowl: (
        Annotated[
            list[Annotated[Length, Between("6", "60", "150", "1500")]],
            Field(min_length=2, max_length=2),
        ]
        | None
    ) = None
    """How large the bowl of a sink base is below the counter, by its sheet: across, and from front
    to back, clips included. Default: not known; in a diagonal corner that is asked for."""

    blind: Hand | None = None
    """Side of a base case that goes blind into an inside corner, behind the fronts of the run
    round it: the case stands blind_pull_off from the corner wall, a panel and a filler (or a stile
    of its face frame) close it as far as those fronts and their pulls reach, and one door the
    rest, without a frame one drawer over it where top_drawer says so. Default: none."""

    corner_depth: Annotated[Length, Between("8", "36", "200", "920")] | None = None
    """Depth of the cases of that run. Default: the style's base_depth."""

    diagonal: Hand | None = None
    """End of its run whose inside corner a wall or base case fills, with a door across it at 45
    degrees, or a pair where front says leaves = 2: width is then its leg along either wall, depth
    that of its return sides, as deep as the neighbours', behind a face frame that over the frames.
    The run round the corner begins after it. Default: none."""

    bottom: Literal["between", "under"] | None = None
    """Whether the bottom of a diagonal corner lies between its return sides, or under them.
    Default: between."""

    lid: LidKind | None = None
    """Makes a base case a window seat: "hinged", a chest with a lid; or "fixed", a board over
    drawers, doors or an open face. Its height follows from the style's seat_height and
    seat_cushion, unless written: then that of the box, toe included. Default: none."""

    lid_sheet: Key | None = None
    """Sheet that the lid is cut from. Default: the sheet of the box."""

    mullion: bool | None = None
    """Whether an upright of the face frame stands between the two doors of each pair. Default:
    false."""

    scribe: Annotated[
        list[Hand],
        BeforeValidator(
            _finished, json_schema_input_type=Literal["left", "right", "both"] | list[Hand]
        ),
    ] = Field(default_factory=list)
    """Sides at a wall: the face frame's stile there is wider by the style's face_scribe, to be
    scribed to it."""

    style: StyleTable | None = None
    """Style values for this case alone."""

    place: PlaceTable | None = None
    """Where it stands in the room, if it is in no run."""
