"""The room as measured: walls, what is on them, corners, the way in."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, GetCoreSchemaHandler
from pydantic_core import CoreSchema, PydanticCustomError, core_schema
from pydantic_core.core_schema import ValidationInfo

from casewright.job.lengths import Between, Length
from casewright.job.tables.table import Key, Line, OneOrMore, Table
from casewright.shop import SurveyTool
from casewright.survey.specs import Depth, FixedKind, PassageKind, PlumbOf, Swing

__all__ = [
    "BaseboardTable", "CornerTable", "FixedTable", "HollowTable", "PassageTable", "PlumbTable",
    "ReadingTable", "StationTable", "StudTable", "TopTable", "TriangleTable", "WallTable",
    "WidthTable",
]  # fmt: skip


class ReadingTable(Table):
    """A reading with its tool. Just the length will do: it counts as read with a tape."""

    read: Length
    """The length, as the tool showed it."""

    tool: SurveyTool | None = None
    """What it was read with. Default: a tape."""

    within: Annotated[Length, Between("0", "2", "0", "50")] | None = None
    """How far it may be off at most. Default: as its tool strays, in [shop.tool]."""

    sure: bool = False
    """Read once more and found right, however odd it looks beside the others."""


@dataclass(frozen=True, slots=True)
class _ReadingBetween(Between):
    """Range of what was read."""

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        """Check the range after the reading is understood."""
        return core_schema.with_info_after_validator_function(self._read, handler(source))

    def _read(self, table: ReadingTable, info: ValidationInfo) -> ReadingTable:
        try:
            self.check(table.read, info)
        except PydanticCustomError as error:
            context = {**(error.context or {}), "inside": ("read",)}
            raise PydanticCustomError(error.type, error.message_template, context) from None
        return table


def _as_reading(value: Any) -> Any:
    return value if isinstance(value, dict) else {"read": value}


_Wrapped = BeforeValidator(_as_reading, json_schema_input_type=Length | ReadingTable)
_Long = Annotated[ReadingTable, _Wrapped, _ReadingBetween("6", "600", "150", "15000")]
_Along = Annotated[ReadingTable, _Wrapped, _ReadingBetween("0", "600", "0", "15000")]
_High = Annotated[ReadingTable, _Wrapped, _ReadingBetween("0", "240", "0", "6000")]
_Place = Annotated[Length, Between("0", "600", "0", "15000")]


class WidthTable(ReadingTable):
    """A reading of a wall's width."""

    height: Annotated[Length, Between("0", "240", "0", "6000")] | None = None
    """Where it was read: above the floor."""

    depth: Depth = "back"
    """Along the wall itself, or where the fronts of the cases will be."""


_Width = Annotated[
    WidthTable,
    BeforeValidator(_as_reading, json_schema_input_type=Length | WidthTable),
    _ReadingBetween("6", "600", "150", "15000"),
]


class StationTable(Table):
    """Floor and ceiling at one place along a wall, read from a level line."""

    along: _Place
    """From the wall's left end."""

    down: _High | None = None
    """From the level line down to the floor. One line goes round the whole room."""

    up: _High | None = None
    """From the level line up to the ceiling."""

    whole: _High | None = None
    """From floor to ceiling in one; a check on the other two."""

    depth: Depth = "back"
    """At the wall, or where the fronts of the cases will be."""


class PlumbTable(Table):
    """How far a wall leans."""

    of: PlumbOf
    """The wall at the left end, the one at the right end, or this wall's own face."""

    over: Annotated[Length, Between("12", "120", "300", "3000")]
    """Height it was read over."""

    off: Annotated[ReadingTable, _Wrapped, _ReadingBetween("0", "4", "0", "100")]
    """How far its upper end is off plumb."""

    leans: Literal["in", "out"]
    """Into the room at the top, or away from it."""


class StudTable(ReadingTable):
    """A stud that was found."""

    probed: bool = False
    """Hit with a thin nail, not only heard."""


class BaseboardTable(Table):
    """The board along the foot of the wall."""

    height: Annotated[Length, Between("1", "16", "20", "400")]
    """Above the floor."""

    thickness: Annotated[Length, Between("1/8", "3", "3", "75")]
    """Out from the wall."""


class HollowTable(Table):
    """How far the wall lies behind a straight edge laid along it, at one place."""

    along: _Place
    """From the wall's left end; best at a stud."""

    height: Annotated[Length, Between("0", "240", "0", "6000")]
    """Of the straight edge above the floor: where nailers will be."""

    off: Annotated[ReadingTable, _Wrapped, _ReadingBetween("0", "2", "0", "50")]
    """From the straight edge back to the wall; 0 where it touches."""


class TopTable(Table):
    """Height of a counter, or of what else stands there, at one place."""

    along: _Place
    """From the wall's left end."""

    down: _High
    """From the level line down to the top."""


class FixedTable(Table):
    """What is on the wall already, or will be, and stays."""

    kind: FixedKind
    """What it is."""

    title: Line | None = None
    """What people call it. Default: the key, with spaces for _."""

    left: _Along | None = None
    """From the wall's left end, or from the thing named in after, to its left edge; of a window
    or door to the edge of the casing."""

    width: _Along | None = None
    """From edge to edge, casing included."""

    right: _Along | None = None
    """From its right edge to the wall's right end."""

    centre: _Along | None = None
    """From the wall's left end to its middle: outlets, switches, pipes."""

    bottom: _High | None = None
    """Lower edge above the floor."""

    height: _High | None = None
    """From lower to upper edge."""

    top: _High | None = None
    """Upper edge above the floor."""

    out: Annotated[Length, Between("0", "60", "0", "1500")] | None = None
    """How far it stands out from the wall."""

    swing: Swing | None = None
    """Of a door that opens into the room: the side of its hinges, seen from the room."""

    after: Key | None = None
    """What its left edge was read from, by its name on this wall. Default: the wall's left
    end."""

    built: bool = True
    """false for a neighbour that will stand there but does not yet."""

    tops: Annotated[list[TopTable], Field(max_length=40)] = Field(default_factory=list)
    """Heights of its top along the wall."""


_StudEntry = Annotated[
    StudTable,
    BeforeValidator(_as_reading, json_schema_input_type=Length | StudTable),
    _ReadingBetween("0", "600", "0", "15000"),
]


class WallTable(Table):
    """A wall as measured, from its left end to its right end as one stands before it."""

    title: Line | None = None
    """What people call it. Default: the key, with spaces for _."""

    width: Annotated[list[_Width], Field(max_length=30), OneOrMore(_Width)] = Field(
        default_factory=list
    )
    """Readings of the width between its ends: low, middle and high, at the back and at the
    front. The least that counts for what stands there governs."""

    stations: Annotated[list[StationTable], Field(max_length=60)] = Field(default_factory=list)
    """Heights of floor and ceiling along the wall. The highest floor and the lowest ceiling
    govern."""

    plumb: Annotated[list[PlumbTable], Field(max_length=20)] = Field(default_factory=list)
    """How far it and its neighbours lean."""

    studs: Annotated[list[_StudEntry], Field(max_length=80)] = Field(default_factory=list)
    """Middles of the studs that were found, from the wall's left end."""

    hollows: Annotated[list[HollowTable], Field(max_length=120)] = Field(default_factory=list)
    """How flat it is where cases will be screwed to it, along a straight edge at one height."""

    baseboard: BaseboardTable | None = None
    """The board along its foot."""

    fixed: dict[Key, FixedTable] = Field(default_factory=dict)
    """What is on it and stays, each under a name of its own."""


class TriangleTable(Table):
    """Marks along two walls from their corner, and the distance between the marks."""

    left: Annotated[ReadingTable, _Wrapped, _ReadingBetween("6", "240", "150", "6000")]
    """From the corner along the wall at the left."""

    right: Annotated[ReadingTable, _Wrapped, _ReadingBetween("6", "240", "150", "6000")]
    """From the corner along the wall at the right."""

    across: Annotated[ReadingTable, _Wrapped, _ReadingBetween("6", "400", "150", "10000")]
    """From mark to mark."""


class CornerTable(Table):
    """Where two walls meet."""

    walls: Annotated[list[Key], Field(min_length=2, max_length=2)]
    """The walls at the left and at the right of the corner, as one faces it."""

    title: Line | None = None
    """What people call it. Default: the key, with spaces for _."""

    triangle: TriangleTable | None = None
    """Three, four and five, or what else was laid out."""

    diagonal: Annotated[
        ReadingTable | None, _Wrapped, _ReadingBetween("6", "900", "150", "22000")
    ] = None
    """From the far end of the one wall to the far end of the other."""

    outside: bool = False
    """true where the corner stands out into the room."""


class PassageTable(Table):
    """A place that everything must come through on its way into the room."""

    kind: PassageKind
    """What it is."""

    title: Line | None = None
    """What people call it. Default: the key, with spaces for _."""

    width: Annotated[ReadingTable, _Wrapped, _ReadingBetween("12", "240", "300", "6000")]
    """Clear width, at the narrowest: with the door open, between casings."""

    height: Annotated[ReadingTable, _Wrapped, _ReadingBetween("24", "240", "600", "6000")]
    """Clear height, at the lowest."""

    landing: Annotated[
        ReadingTable | None, _Wrapped, _ReadingBetween("12", "240", "300", "6000")
    ] = None
    """Of a stair's turn: clear length to turn in."""
