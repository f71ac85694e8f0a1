"""Before anything is bought: the plan of the room, and marks to tape the cases onto it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import suppress
from dataclasses import replace

from casewright.dims import Dim, Measure, Unit, measure_of
from casewright.drawing import ScaleError, largest
from casewright.drawing.room_plan import plan_scene
from casewright.install.hanging import Hanging, WallHanging
from casewright.outputs.blocks import Block, Column, Figure, Heading, Keep, Paragraph, Row, Table
from casewright.outputs.document import Paper, Section
from casewright.outputs.inlines import Link, PageNumber, Rich, Strong
from casewright.packet.free_pages import free_tape
from casewright.packet.stick_pages import STICKS
from casewright.room.model import Room
from casewright.survey.words import size_of

__all__ = ["TAPE", "tape_section"]

TAPE = "tape"
"""Anchor of the section."""

_TALL_MM = 200.0
_HOW = (
    "Before a sheet is bought, let everybody who will live with it stand in the room and see it: "
    "masking tape on the floor along the front of each case that stands, on the wall round each "
    "that hangs. Hook the tape measure at the wall's left end and set every mark in one go, "
    "without moving it; heights are above the highest floor. Open the doors in the air, walk past "
    "one another, reach for the highest shelf. Then change what has to change, and print again."
)
_COLUMNS = (
    Column("Case or appliance", share=1.6), Column("From the wall's left end", "size"),
    Column("to", "size"), Column("From the floor", "size"), Column("to", "size"),
    Column("Out from the wall", "size"),
)  # fmt: skip


_TO_A_MARK: Mapping[Unit, int] = {"in": 16, "mm": 1}
"""Parts of one unit that masking tape is set to [-]: the marks of a tape."""


def tape_section(room: Room, day: Hanging, paper: Paper) -> Section | None:
    """Plan of the room, a table for each wall and for what stands free; None without any."""
    if not day.walls and not room.free:
        return None
    blocks: list[Block] = []
    with suppress(ScaleError):
        plot = largest(plan_scene(room, room.spec.unit), paper.text_width_mm, _TALL_MM,
                       room.spec.unit, fine=True)  # fmt: skip
        blocks.append(Figure(plot, alternative=f"{room.spec.name}, plan"))
    blocks.append(Paragraph(_HOW))
    for hang in day.walls.values():
        blocks.extend(_wall(room, hang))
    blocks.extend(free_tape(room))
    sticks = ("The same marks at full size, to cut out and glue on a lath: ",
              Link("story sticks", STICKS), " p. ", PageNumber(STICKS), ".")  # fmt: skip
    if day.walls:
        blocks.append(Paragraph(sticks, soft=True))
    return Section("Taped out, before anything is bought", tuple(blocks), TAPE)


def _mark(dim: Dim, unit: Unit) -> Measure:
    return replace(measure_of(dim, unit), precision=_TO_A_MARK[unit])


def _wall(room: Room, hang: WallHanging) -> Iterator[Block]:
    unit = room.spec.unit
    rows = [
        Row(
            (
                Link(place.case.spec.title, place.case.key),
                Strong(_mark(place.left, unit)), Strong(_mark(place.right, unit)),
                _mark(place.bottom, unit), _mark(place.top, unit),
                _mark(place.out, unit),
            )
        )
        for place in hang.places
    ]  # fmt: skip
    rows += [
        Row(
            (
                each.title, Strong(_mark(each.left, unit)),
                Strong(_mark(each.right, unit)), "0", _mark(each.top, unit), "",
            )
        )
        for each in hang.appliances
    ]  # fmt: skip
    rows += _to_come(hang, unit)
    title = f"{hang.wall.spec.title}: running marks"
    yield Keep((Heading(title, 3), Table(_COLUMNS, tuple(rows), small=True)))


def _to_come(hang: WallHanging, unit: Unit) -> Iterator[Row]:
    """What will be on the wall but is not there yet, a hood, a neighbour: its marks too."""
    for thing in hang.wall.things:
        if thing.spec.built or thing.left is None or thing.right is None:
            continue
        foot, head = ("" if dim is None else _mark(dim, unit) for dim in (thing.bottom, thing.top))
        stands = hang.wall.at.get(f"fixed.{thing.spec.key}.out")
        out: Rich = "" if stands is None else size_of(stands, unit)
        yield Row(
            (
                thing.spec.title, Strong(_mark(thing.left, unit)),
                Strong(_mark(thing.right, unit)), foot, head, out,
            )
        )  # fmt: skip
