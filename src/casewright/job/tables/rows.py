"""Rows of a face as they are written, and how drawers are built."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, Literal, TypeAlias

from pydantic import PlainValidator, WithJsonSchema
from pydantic_core.core_schema import ValidationInfo

from casewright.casework.specs import DrawerJoint, RowKind, SlideKind
from casewright.dims import parse_length
from casewright.errors import LengthError
from casewright.job.lengths import unit_of
from casewright.job.refusal import refuse
from casewright.job.tables.table import Key, Table

__all__ = ["DrawersTable", "Row", "WrittenRow"]

_KINDS: tuple[RowKind, ...] = ("doors", "drawer", "false front", "open", "appliance")
_SAY = 'write "drawer 7", "drawer", "doors", "false front 7", "open 12" or "appliance oven"'


@dataclass(frozen=True, slots=True)
class WrittenRow:
    """A row as written.

    Parameters
    ----------
    kind
        What it is.
    height
        Of its fronts [mm], where one is given.
    appliance
        Key of the appliance that it holds, if any.
    """

    kind: RowKind
    height: Fraction | None
    appliance: str = ""


def _row(value: object, info: ValidationInfo) -> WrittenRow:
    if not isinstance(value, str):
        refuse("this is no row", _SAY)
    text = value.strip()
    kind = next((each for each in _KINDS if f"{text} ".startswith(f"{each} ")), None)
    if kind is None:
        refuse("this is no row", _SAY)
    if kind == "appliance":
        return WrittenRow(kind, None, _appliance(text))
    if text == kind:
        return WrittenRow(kind, None)
    return WrittenRow(kind, _height(value, value.index(kind) + len(kind) + 1, info))


def _appliance(text: str) -> str:
    key = text.removeprefix("appliance").strip()
    if not key or not key.replace("_", "").replace("-", "").isalnum():
        refuse("no appliance is named here", 'write "appliance oven", and [appliance.oven]')
    return key


def _height(text: str, start: int, info: ValidationInfo) -> Fraction:
    try:
        height = parse_length(text[start:], unit_of(info))
    except LengthError as error:
        refuse(error.what, error.want, position=start + error.position)
    if not 25 <= height <= 2750:
        like = "7 or 7 1/2" if unit_of(info) == "in" else "180"
        want = f"write a height such as {like}"
        refuse("no front is that high", want, kind="size", position=start)
    return height


Row: TypeAlias = Annotated[
    WrittenRow,
    PlainValidator(_row),
    WithJsonSchema({
        "type": "string",
        "examples": ["drawer 7", "drawer", "doors", "false front 7", "open 12", "appliance oven"],
    }),
]  # fmt: skip
"""What a row is, then the height of its front if it has one of its own: 'drawer 7'."""


class DrawersTable(Table):
    """How drawers are built, unless a case says otherwise."""

    joint: DrawerJoint | None = None
    """How front and back of a drawer's box meet its sides. Default: rabbet."""

    slides: SlideKind | None = None
    """Beside the box, or concealed under it. Default: side-mount."""

    sheet: Key | None = None
    """Sheet that the boxes are cut from. Default: drawer_plywood."""

    bottom: Key | None = None
    """Sheet of their bottoms. Default: thin_plywood."""

    front: Literal["slab", "applied frame"] | None = None
    """How their fronts are built; one too low for a frame is a slab. Default: as the doors, if
    they are one of these, else slab."""

    pull: bool | None = None
    """Whether holes for pulls are bored: one in the middle, two on a front wider than the style's
    two_pulls. Default: true."""
