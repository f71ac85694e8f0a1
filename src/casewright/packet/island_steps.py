"""Islands on the page of the wall: in the middle of the room, held by the floor."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.cautions import CAUTIONS
from casewright.dims import Told, as_said, joined, measure_of, tell
from casewright.outputs.blocks import Step
from casewright.outputs.inlines import Inline, Link, PageNumber, Rich, Strong
from casewright.packet.free_pages import setting_anchor
from casewright.room.model import Island, Room

__all__ = ["island_steps"]


def island_steps(room: Room) -> Iterator[Step]:
    """Power first, then cleats, ladders, boxes, panels; the counter last."""
    for island in room.islands:
        yield from _steps(room, island)


def _steps(room: Room, island: Island) -> Iterator[Step]:
    case, unit = room.case_of(island), room.spec.unit
    link = Link(case.spec.title, case.key)
    stand = next((each for each in room.free if each.key == island.key), None)
    power = (
        " The licensed trade brings power up inside it, and whatever else comes from the floor, "
        f"before anything stands.{_water(island, room)}"
    )
    then: tuple[Inline, ...] = (", with the way round it that its place in the room asks for.",)
    if stand is not None:
        anchor = setting_anchor(stand)
        then = (", by the corners on its own sheet, ", Link("setting", anchor), " p. ",
                PageNumber(anchor), ".")  # fmt: skip
    wide, deep = (Strong(measure_of(dim, unit)) for dim in (case.width, case.depth))
    yield Step(
        ("Mark the outline of ", link, " on the floor, ", wide, " × ", deep, *then, power),
        (), (CAUTIONS["island_floor"],),
    )  # fmt: skip
    yield Step(
        "Screw the cleats to the floor, set the ladders over them, shim them to one level from "
        "the highest point, and drive the screws through their end sleepers into the cleats.",
        (), (CAUTIONS["island_tips"],),
    )  # fmt: skip
    yield Step(
        "Set the boxes on the ladders, those of one side first; join neighbours through their "
        "sides, and the rows back to back or with the finished back; then the end panels.",
        tuple(_screws(room, island)), (CAUTIONS["clamp_screws"],),
    )  # fmt: skip
    yield Step(
        "The counter comes last, by those who made it: measure it on the boxes as they stand, and "
        "hold its overhangs against its own sheet."
    )


def _screws(room: Room, island: Island) -> Iterator[Rich]:
    """Which screws go through what into what; the same through several boards told once."""
    titles = {part.path: part for part in room.parts}
    cases = {case.key: case.spec.title for case in room.cases}
    found: dict[tuple[Told, str, str], list[str]] = {}
    for screws in island.screws:
        into = titles[screws.into]
        if into.role == "floor cleat":
            continue
        size = as_said(screws.length, room.spec.unit)
        board = titles[screws.through]
        kin = (tell("{} of {}", screws.count, size), board.title, into.title)
        found.setdefault(kin, []).append(cases[board.case])
    for (how, title, ends_in), owners in found.items():
        yield joined("", (
            how, f" through the {title} of {' and of '.join(owners)} into the {ends_in}"
        ))  # fmt: skip


def _water(island: Island, room: Room) -> str:
    """What the appliances of an island want from the floor."""
    names = [each.spec.title for run in room.runs_of(island) for each in run.appliances]
    if not names:
        return ""
    return f" So do water, drain, gas and air for {' and '.join(names)}, by their makers' sheets."
