"""Trims of a run: what is fitted to it once it stands."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Any, TypeAlias

from pydantic import BeforeValidator, Field, PlainValidator, WithJsonSchema

from casewright.casework.specs import Hand
from casewright.job.lengths import Between, Length
from casewright.job.refusal import refuse
from casewright.job.tables.table import Key, OneOrMore, Table
from casewright.room.trims.specs import InsideCut

__all__ = ["CrownAtHoodTable", "CrownTable", "LightRail", "LightRailTable", "RailAtHoodTable",
           "ScribeMouldingTable", "ToeSkin", "ToeSkinTable"]  # fmt: skip

_Built = Annotated[Length, Between("3", "600", "75", "15000")]
_Across = Annotated[Length, Between("1/2", "8", "12", "200")]
_SHARPEST, _BLUNTEST = 45, 170


def _angle(value: object) -> Decimal:
    want = f"write a number of degrees from {_SHARPEST} to {_BLUNTEST}, such as 89.5"
    if isinstance(value, bool) or not isinstance(value, int | Decimal):
        refuse("this is no angle", want)
    degrees = Decimal(value)
    if not degrees.is_finite() or not _SHARPEST <= degrees <= _BLUNTEST:
        refuse("no corner of a crown has this angle", want)
    return round(degrees, 3)


_Angle: TypeAlias = Annotated[
    Decimal,
    PlainValidator(_angle),
    WithJsonSchema({"type": "number", "minimum": _SHARPEST, "maximum": _BLUNTEST}),
]
"""Degrees from one face to the other, as a sliding bevel and a protractor show them."""


class ToeSkinTable(Table):
    """Thin sheet over the toe boards of a run of base cases, put on after the floor is laid."""

    sheet: Key | None = None
    """Sheet it is ripped from. Default: thin_plywood."""

    as_built: Annotated[list[_Built], Field(max_length=60), OneOrMore(_Built)] = Field(
        default_factory=list
    )
    """Its length as read along the toe space, once the floor is laid; where appliances stand
    between the cases a list, a length for each stretch from the left. Until then it is asked for,
    and the skin is not cut."""

    left_across: _Built | None = None
    """Length across a diagonal corner at the left end as read along its toe board, from one inside
    corner to the other."""

    right_across: _Built | None = None
    """The same at the right."""


class RailAtHoodTable(Table):
    """Where a light rail turns back to the wall on either side of a hood in its run."""

    left_return: _Built | None = None
    """Length of the return at the left side of the hood as read, from the wall to the front."""

    right_return: _Built | None = None
    """The same at its right side."""


class LightRailTable(Table):
    """A strip on edge under the front of wall cases, mitred back to the wall at open ends."""

    boards: Key | None = None
    """Boards it is ripped from. Default: board."""

    as_built: Annotated[list[_Built], Field(max_length=60), OneOrMore(_Built)] = Field(
        default_factory=list
    )
    """Length of the front as read along the hung cases, outside to outside; where a hood stands
    between the cases a list, a length for each stretch from the left."""

    at: dict[Key, RailAtHoodTable] = Field(default_factory=dict, max_length=60)
    """What was read beside the hoods of the run, each under its case's name."""

    left_return: _Built | None = None
    """Length of the return at the left as read, from the wall to the front."""

    right_return: _Built | None = None
    """The same at the right."""

    left_across: _Built | None = None
    """Length across a diagonal corner at the left end as read along its face, from one inside
    corner to the other."""

    right_across: _Built | None = None
    """The same at the right."""


class ScribeMouldingTable(Table):
    """Thin strips over the joint between the open ends of a run and the wall behind."""

    strips: Key | None = None
    """Stock it is ripped from. Default: strip."""

    ends: Annotated[list[Hand], Field(min_length=1, max_length=2), OneOrMore(Hand)]
    """At which ends."""

    left_height: _Built | None = None
    """Height of the left end as read, once it hangs or stands."""

    right_height: _Built | None = None
    """The same at the right."""


class CrownAtHoodTable(Table):
    """What was read where a crown goes round a hood in its run."""

    as_built: _Built | None = None
    """Length of its front as read along the hood's frieze board, corner to corner."""

    left_return: _Built | None = None
    """Length of the return at the hood's left side as read, from the face of the frieze board of
    the cases beside it to the face of the hood's own."""

    right_return: _Built | None = None
    """The same at its right side."""

    left_corner: _Angle | None = None
    """Angle of the corner at the left as read, in degrees. Default: 90."""

    right_corner: _Angle | None = None
    """The same at the right."""


class CrownTable(Table):
    """A crown moulding over a run, with the backing it is nailed to and a frieze board."""

    moulding: Key
    """The moulding, by its name under [stock.NAME]: kind = "board", with its lengths."""

    drop: _Across
    """How far it reaches down the wall as it stands: hold a piece into a square and read it."""

    projection: _Across
    """How far it reaches out along the ceiling, read likewise. The two give its spring angle."""

    backing: Key | None = None
    """Sheet or boards behind it. Default: plywood."""

    frieze: Annotated[Length, Between("0", "12", "0", "300")] | None = None
    """How far its foot is to stand over the cases. Default: the style's frieze; where the heights
    of the cases are given, what the ceiling leaves."""

    to_ceiling: bool = True
    """Whether it reaches the ceiling. false: it stands free, frieze and crown over the cases."""

    sets_height: bool = False
    """Whether wall cases of this run that name no height reach up to it."""

    inside: InsideCut = "coped"
    """How it meets the crown of another run in an inside corner: the run whose end is "corner"
    is coped against the other, or both are mitred."""

    as_built: Annotated[list[_Built], Field(max_length=60), OneOrMore(_Built)] = Field(
        default_factory=list
    )
    """Length of the front as read along the hung cases, corner to corner; where a hood stands
    between the cases a list, a length for each stretch beside it from the left. Until then it is
    asked for, and no crown is cut."""

    at: dict[Key, CrownAtHoodTable] = Field(default_factory=dict, max_length=60)
    """What was read round the hoods of the run, each under its case's name."""

    left_return: _Built | None = None
    """Length of the return at the left as read, from the wall to the frieze board's face."""

    right_return: _Built | None = None
    """The same at the right."""

    left_across: _Built | None = None
    """Length across a diagonal corner at the left end as read along the frieze board's face."""

    right_across: _Built | None = None
    """The same at the right."""

    left_corner: _Angle | None = None
    """Angle of the corner at the left end as read, in degrees; at a diagonal corner that between
    the front and its face. Default: in an inside corner as under [corner.NAME], at a diagonal
    corner 135, else 90."""

    right_corner: _Angle | None = None
    """The same at the right end."""


def _asked(value: Any) -> Any:
    if value is False:
        refuse("a run without it leaves it out", "take this line out")
    return {} if value is True else value


ToeSkin: TypeAlias = Annotated[
    ToeSkinTable, BeforeValidator(_asked, json_schema_input_type=bool | ToeSkinTable)
]
"""`true`, or a table."""

LightRail: TypeAlias = Annotated[
    LightRailTable, BeforeValidator(_asked, json_schema_input_type=bool | LightRailTable)
]
"""`true`, or a table."""
