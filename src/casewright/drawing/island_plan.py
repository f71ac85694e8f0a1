"""An island from above: boxes, end panels, cleats on the floor, its counter in broken lines."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.dims import Measure, measure_of
from casewright.drawing.case_solids import case_solids
from casewright.drawing.dimension import Dimensions, Span
from casewright.drawing.marks import Tag
from casewright.drawing.notes import Text
from casewright.drawing.pens import NEIGHBOUR, THIN, VISIBLE, Ink
from casewright.drawing.running import Running, Stop
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, rectangle
from casewright.room.floor_numbers import seam_path
from casewright.room.island_places import island_boxes, island_openings, middle_plane
from casewright.room.model import Island, Room

__all__ = ["island_scene"]

_NAME = 2.5


def island_scene(room: Room, island: Island) -> Scene:
    """Plan of an island, its front below: every number from the outside of its left end."""
    return Scene(tuple(_elements(room, island)), f"{island.spec.title}: from above")


def _elements(room: Room, island: Island) -> Iterator[Element]:
    case = room.case_of(island)
    deep = case.depth.value
    titles = {each.key: each.spec.title for each in room.cases}
    yield from _counter(room, island)
    for key, box in island_boxes(case, room.runs_of(island)):
        low, high = (Fraction(box.x0), deep - box.z1), (Fraction(box.x1), deep - box.z0)
        tag = Tag(path=key, title=titles[key], target=key)
        yield rectangle(low, high, THIN, fill=Ink.PAPER, tag=tag)
        middle = ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2)
        yield Text(middle, titles[key], _NAME, tag=tag)
    for each, box in island_openings(case, room.runs_of(island)):
        low, high = (Fraction(box.x0), deep - box.z1), (Fraction(box.x1), deep - box.z0)
        tag = Tag(path=each.width.path, title=each.spec.title)
        yield rectangle(low, high, NEIGHBOUR, tag=tag)
        yield Text(
            ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2), each.spec.title, _NAME, tag=tag
        )
    for solid in case_solids(case, fronts=True):
        box, part = solid.box, solid.part
        fill = Ink.SHADE if part.role == "floor cleat" else Ink.TINT
        yield rectangle(
            (box.x0, deep - box.z1), (box.x1, deep - box.z0), VISIBLE, fill=fill,
            tag=Tag(path=part.path, title=part.title, target=part.path),
        )  # fmt: skip
    yield from _dimensions(room, island)


def _edges(room: Room, island: Island) -> tuple[Fraction, Fraction, Fraction, Fraction]:
    """Left, right, front and rear edge of the counter: x, and y of the plan [mm]."""
    nodes, case = room.chain.nodes, room.case_of(island)
    long, deep = (nodes[f"{island.key}.counter_{name}"].value for name in ("length", "depth"))
    over = (long - case.width.value) / 2
    front = -nodes[f"{island.key}.front_doors"].value
    front -= room.spec.style["island_front_overhang"].value
    return -over, case.width.value + over, front, front + deep


def _counter(room: Room, island: Island) -> Iterator[Element]:
    left, right, front, rear = _edges(room, island)
    yield rectangle((left, front), (right, rear), NEIGHBOUR, tag=Tag(title="counter"))


def _dimensions(room: Room, island: Island) -> Iterator[Element]:
    case, runs, unit = room.case_of(island), room.runs_of(island), room.spec.unit
    nodes, deep = room.chain.nodes, case.depth.value
    left, right, front, rear = _edges(room, island)
    seams = [
        (Fraction(box.x0), seam_path(island.key, key))
        for key, box in island_boxes(case, runs)
        if any(key == each.key for each in runs[0].cases)
    ]
    stops = [Stop(x, Measure(x, unit, path)) for x, path in seams]
    stops.append(Stop(case.width.value, measure_of(case.width, unit), emphasis=True))
    yield Running("below", front, Fraction(0), tuple(stops))
    long = measure_of(nodes[f"{island.key}.counter_length"], unit)
    yield Dimensions("above", rear, (Span(left, right, long),))
    middle = deep - middle_plane(case, runs)
    rows = [Span(Fraction(0), middle, Measure(middle, unit, f"{island.key}.front_depth"))]
    rows.append(Span(middle, deep, Measure(deep - middle, unit, f"{island.key}.back_depth")))
    yield Dimensions(
        "right", right,
        (*rows, Span(Fraction(0), deep, measure_of(case.depth, unit), emphasis=True),
         Span(front, rear, measure_of(nodes[f"{island.key}.counter_depth"], unit))),
    )  # fmt: skip
