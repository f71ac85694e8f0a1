"""What stands free in the plan of the room: boxes, counter, doors, aisles with their numbers."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from casewright.casework.cases import Case, Door, Front
from casewright.dims import Measure
from casewright.dims.units import Unit
from casewright.drawing.dimension import Aligned
from casewright.drawing.leaf_swing import leaf_swing
from casewright.drawing.marks import Tag
from casewright.drawing.pens import NEIGHBOUR, THIN, VISIBLE
from casewright.drawing.plan_names import wrapped, written
from casewright.drawing.shapes import Element, Point, Polyline
from casewright.room.aisles import aisles
from casewright.room.floor_numbers import aisle_path
from casewright.room.footprints import rectangle
from casewright.room.free_stand import FreeStand
from casewright.room.island_places import island_boxes, middle_plane
from casewright.room.model import Island, Room
from casewright.room.wall_stands import WallFrame, wall_frames

__all__ = ["free_elements"]

_AISLE = 2.0  # height of an aisle's number


def free_elements(room: Room, unit: Unit) -> Iterator[Element]:
    """Islands and loose cases where they stand, then every aisle round them."""
    frames = wall_frames(room.survey)
    for stand in room.free:
        yield from _stand(room, stand, frames[stand.wall])
    for aisle in aisles(room):
        if aisle.clear > 0:
            one, other = (_float(end) for end in aisle.ends)
            measure = Measure(aisle.clear, unit, aisle_path(room, aisle))
            yield Aligned(one, other, measure, height=_AISLE)


def _float(spot: tuple[Fraction, Fraction]) -> Point:
    return float(spot[0]), float(spot[1])


def _outline(
    stand: FreeStand,
    frame: WallFrame,
    span: tuple[Fraction, Fraction],
    deep: tuple[Fraction, Fraction],
) -> tuple[Point, ...]:
    """Corners of what lies between two places along its front and two from rear to front."""
    (left, right), (rear, front) = span, deep
    corners = ((left, rear), (right, rear), (right, front), (left, front))
    return tuple(_float(frame.at(*stand.at(x, z))) for x, z in corners)


def _stand(room: Room, stand: FreeStand, frame: WallFrame) -> Iterator[Element]:
    left, right, near, far = (edge.value for edge in stand.counter)
    edge = rectangle(frame, (left, right), (near, far))
    yield Polyline(tuple(map(_float, edge)), NEIGHBOUR, closed=True, tag=Tag(title="counter"))
    case = next(case for case in room.cases if case.key == stand.key)
    zero = Fraction(0)
    island = next((each for each in room.islands if each.key == stand.key), None)
    wide = case.width if island is not None else case.overall_width
    deep = case.depth if island is not None else case.face_plane
    body = _outline(stand, frame, (zero, wide.value), (zero, deep.value))
    tag = Tag(target=stand.key, path=stand.key, title=stand.title)
    yield Polyline(body, VISIBLE, closed=True, tag=tag)
    if island is not None:
        yield from _boxes(room, island, stand, frame)
    else:
        yield from _doors(case, stand, frame, (zero, zero, False))
        yield from _name(body, stand.title, tag)


_Row = tuple[Fraction, Fraction, bool]
"""Left end of a box along the island, the plane its rear lies in, whether it looks back."""


def _boxes(room: Room, island: Island, stand: FreeStand, frame: WallFrame) -> Iterator[Element]:
    body, runs = room.case_of(island), room.runs_of(island)
    cases: Mapping[str, Case] = {case.key: case for run in runs for case in run.cases}
    behind = {case.key for run in runs[1:] for case in run.cases}
    middle = middle_plane(body, runs)
    for key, box in island_boxes(body, runs):
        x, z = (Fraction(box.x0), Fraction(box.x1)), (Fraction(box.z0), Fraction(box.z1))
        tag = Tag(target=key, path=key, title=cases[key].spec.title)
        around = _outline(stand, frame, x, z)
        yield Polyline(around, THIN, closed=True, tag=tag)
        turned = key in behind
        yield from _doors(cases[key], stand, frame, (x[1] if turned else x[0], middle, turned))
        yield from _name(around, cases[key].spec.title, tag)


def _doors(case: Case, stand: FreeStand, frame: WallFrame, row: _Row) -> Iterator[Element]:
    """Leaves opened to a right angle, and the way of their free edges."""
    at, plane, turned = row
    sign = -1 if turned else 1
    for front in case.wall_fronts:
        if isinstance(front, Door):
            x = case.left_frame.value + front.x.value
            hinge, free = _edges(front, x)
            z = front.z.value + front.thickness.value
            places = ((hinge, z), (hinge, z + front.width.value), (free, z))
            axis, opened, shut = (
                _float(frame.at(*stand.at(at + sign * u, plane + sign * v))) for u, v in places
            )
            yield from leaf_swing(axis, opened, shut, float(front.width.value))


def _edges(front: Front, x: Fraction) -> tuple[Fraction, Fraction]:
    left, right = x, x + front.width.value
    return (
        (left, right) if isinstance(front, Door) and front.hinge_side == "left" else (right, left)
    )


def _name(around: tuple[Point, ...], title: str, tag: Tag) -> Iterator[Element]:
    xs, ys = [float(x) for x, _ in around], [float(y) for _, y in around]
    lines = wrapped(title, max(xs) - min(xs), max(ys) - min(ys))
    yield from written(lines, (sum(xs) / len(xs), sum(ys) / len(ys)), tag)
