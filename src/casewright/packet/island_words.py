"""What the card of an island says first."""

from __future__ import annotations

from casewright.casework.cases import Case
from casewright.dims import measure_of
from casewright.outputs.inlines import Inline, Link, PageNumber, Rich, Strong
from casewright.packet.weight_words import island_weighs
from casewright.packet.words import sizes
from casewright.room.model import Island, Room

__all__ = ["island_of", "island_summary"]


def island_of(room: Room, case: Case) -> Island:
    """The island whose panels and cleats a case is."""
    return next(island for island in room.islands if island.key == case.key)


def island_summary(room: Room, case: Case) -> Rich:
    """Its body, its counter as figures to order by, its boxes, its weight, its power."""
    island, unit, nodes = island_of(room, case), room.spec.unit, room.chain.nodes
    counter = [nodes[f"{case.key}.counter_{name}"] for name in ("length", "depth")]
    words: list[Inline] = [
        "Island, its body ", *sizes(case.width, case.depth, case.height, unit=unit, strong=True),
        " (length × depth × height, doors apart). Its counter is ",
        *sizes(*counter, unit=unit, strong=True), " (length × depth): ",
        measure_of(nodes["style.island_side_overhang"], unit), " beyond each end, ",
        measure_of(nodes["style.island_front_overhang"], unit), " before the doors",
    ]  # fmt: skip
    if island.spec.back:
        words.append(" of both sides.")
    else:
        seat = nodes["style.island_seat_overhang"]
        words += [", ", Strong(measure_of(seat, unit)), " over knees behind its finished back."]
    words.append(" Order it by what was built. Boxes: ")
    for number, each in enumerate(c for run in room.runs_of(island) for c in run.cases):
        words += [", " if number else "", Link(each.spec.title, each.key)]
    power = " Power comes up from the floor, laid by the licensed trade before the boxes stand."
    words += [".", island_weighs(room, island), power]
    words += [" ", Link("Part cards", f"parts:{case.key}"), ", page ",
              PageNumber(f"parts:{case.key}"), "."]  # fmt: skip
    return tuple(words)
