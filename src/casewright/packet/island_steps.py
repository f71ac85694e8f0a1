"""Islands on the page of the wall: in the middle of the room, held by the floor."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.cautions import CAUTIONS
from casewright.dims import shop_text
from casewright.drawing import measure_of
from casewright.outputs.blocks import Step
from casewright.outputs.inlines import Inline, Link, PageNumber, Strong
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
        "before anything stands."
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
        "sides, and the rows back to back or with the finished back; then the end panels. "
        f"{_screws(room, island)}",
    )
    yield Step(
        "The counter comes last, by those who made it: measure it on the boxes as they stand, and "
        "hold its overhangs against its own sheet."
    )


def _screws(room: Room, island: Island) -> str:
    found: dict[str, int] = {}
    for screws in island.screws:
        text = shop_text(screws.length.value, room.spec.unit, with_unit=True)
        found[text] = found.get(text, 0) + screws.count
    return "Screws: " + ", ".join(f"{n} of {text}" for text, n in sorted(found.items())) + "."
