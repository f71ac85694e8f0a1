"""Plan of the room: walls by their corners, what is on them, cases, and where doors swing."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence

from casewright.casework.cases import Door
from casewright.dims import measure_of
from casewright.dims.units import Unit
from casewright.drawing.choice import Choice
from casewright.drawing.free_plan import free_elements
from casewright.drawing.leaf_swing import leaf_swing
from casewright.drawing.marks import Tag
from casewright.drawing.mouth_swing import mouth_swing
from casewright.drawing.mouth_views import above_outline
from casewright.drawing.notes import Text
from casewright.drawing.pens import CUT, HIDDEN, NEIGHBOUR, THIN, VISIBLE, Ink
from casewright.drawing.plan_names import wrapped, written
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Arc, Element, Point, Polyline
from casewright.room.model import Room
from casewright.room.on_walls import CasePlace, cases_on_walls
from casewright.room.wall_stands import WallStand, wall_stands
from casewright.survey.fixed_things import PlacedThing
from casewright.survey.walls import SurveyedWall

__all__ = ["plan_scene"]

_THICK = 110.0  # of any wall [mm of model]
_CLEAR = 250.0  # from the wall's face to a name behind it
_NAME = 2.3

_Span = tuple[float, float]
"""Ends of something, from its wall's left end [mm]."""


def plan_scene(room: Room, unit: Unit) -> Scene:
    """The room from above: every surveyed wall, joined to the next by its corner as read.

    Cases that stand in full lines, those that hang in broken ones, with the swing of their doors
    and of the room's, and how far the doors of appliances come down. Walls that no corner joins
    stand apart.
    """
    stands = wall_stands(room.survey)
    elements: list[Element] = []
    joined = {c.spec.right for c in room.survey.corners.values() if not c.spec.outside}
    for key, stand in stands.items():
        wall = room.survey.walls[key]
        begins = -_THICK if key in joined else 0.0
        elements.extend(_wall(wall, stand, begins, unit))
        for thing in wall.things:
            elements.extend(_thing(thing, stand))
    places = sorted(cases_on_walls(room), key=lambda place: place.bottom)
    for place in places:
        elements.extend(_case(place, stands[place.wall.spec.key]))
    hung = _hung(places)
    elements.extend(_appliances(room, stands, hung))
    elements.extend(_name(place, stands[place.wall.spec.key], hung) for place in places)
    elements.extend(free_elements(room, unit))
    return Scene(tuple(elements), f"{room.spec.name}: plan")


def _outline(
    stand: WallStand, span: tuple[float, float], out: tuple[float, float]
) -> tuple[Point, ...]:
    (left, right), (near, far) = span, out
    return (stand.at(left, near), stand.at(right, near), stand.at(right, far), stand.at(left, far))


def _wall(wall: SurveyedWall, stand: WallStand, begins: float, unit: Unit) -> Iterator[Element]:
    whole = _outline(stand, (begins, stand.length), (-_THICK, 0.0))
    yield Polyline(whole, CUT, closed=True, fill=Ink.SHADE)
    turned = math.degrees(stand.turn)
    upright = turned if -90 < turned <= 90 else turned + 180
    words = (wall.spec.title,)
    content = (*words, ", ", measure_of(wall.width, unit)) if wall.width is not None else words
    at = stand.at(stand.length / 2, -_THICK - _CLEAR)
    tag = Tag(path="" if wall.width is None else wall.width.path)
    yield Text(at, content, _NAME, rotation_deg=upright, weight=600, tag=tag)


def _thing(thing: PlacedThing, stand: WallStand) -> Iterator[Element]:
    """Windows and doors cut the wall; what stands out from it is drawn as deep as it was read."""
    if thing.left is None or thing.right is None:
        return
    left, right = float(thing.left.value), float(thing.right.value)
    kind = thing.spec.kind
    if kind in ("window", "door"):
        opening = _outline(stand, (left, right), (-_THICK, 0.0))
        yield Polyline(opening, THIN, closed=True, fill=Ink.PAPER)
        if kind == "window":
            yield Polyline((stand.at(left, -_THICK / 2), stand.at(right, -_THICK / 2)), THIN)
        elif thing.spec.swing is not None:
            yield from _swing(stand, (left, right), 0.0, thing.spec.swing)
        return
    if left == right:
        yield Arc(stand.at(left, 0.0), 25, VISIBLE, fill=Ink.PAPER)
        return
    out = float(thing.spec.out.value) if thing.spec.out is not None else 25.0
    pen = VISIBLE if thing.spec.built else HIDDEN
    yield Polyline(_outline(stand, (left, right), (0.0, out)), pen, closed=True)


def _swing(
    stand: WallStand, span: tuple[float, float], out: float, hinge: str, *, hung: bool = False
) -> Iterator[Element]:
    """A leaf between two places of its wall, so far out from it."""
    left, right = span
    wide = right - left
    axis, free = (left, right) if hinge == "left" else (right, left)
    yield from leaf_swing(
        stand.at(axis, out), stand.at(axis, out + wide), stand.at(free, out), wide, hung=hung
    )


def _case(place: CasePlace, stand: WallStand) -> Iterator[Element]:
    case, hung = place.case, place.case.spec.is_hung
    left, right = float(place.left), float(place.right)
    depth = float(case.overall_depth.value)
    tag = Tag(target=case.key, path=case.key, title=case.spec.title)
    pen = HIDDEN if hung else VISIBLE
    if case.mouth is not None:
        places = ((float(x), float(z)) for x, z in above_outline(case))
        turned = tuple(stand.at(left + x, z) for x, z in places)
        yield Polyline(turned, pen, closed=True, tag=tag)
        yield from mouth_swing(case, lambda x, z: stand.at(left + x, z))
        return
    yield Polyline(_outline(stand, (left, right), (0.0, depth)), pen, closed=True, tag=tag)
    own = left + float(case.left_frame.value)
    for front in case.fronts:
        if isinstance(front, Door):
            x = own + float(front.x.value)
            span = (x, x + float(front.width.value))
            yield from _swing(stand, span, depth, front.hinge_side, hung=hung)


def _appliances(
    room: Room, stands: Mapping[str, WallStand], hung: Mapping[str, Sequence[_Span]]
) -> Iterator[Element]:
    for run in room.runs:
        wall = room.survey.walls.get(run.spec.on)
        if wall is None:
            continue
        begins, stand = run.begins.value, stands[run.spec.on]
        deepest = max((float(case.depth.value) for case in run.cases), default=600.0)
        for each in run.appliances:
            deep = deepest if each.spec.depth is None else float(each.spec.depth.value)
            left = float(begins + each.start.value)
            span = (left, left + float(each.width.value))
            tag = Tag(path=each.width.path, title=each.spec.title)
            yield Polyline(_outline(stand, span, (0.0, deep)), NEIGHBOUR, closed=True, tag=tag)
            if each.spec.opens is not None:
                opened = (deep, deep + float(each.spec.opens.value))
                yield Polyline(_outline(stand, span, opened), THIN, closed=True, tag=tag)
            covered = _is_covered(span, hung.get(run.spec.on, ()))
            yield _named(stand, each.spec.title, tag, span, deep, covered=covered)


def _hung(places: Iterable[CasePlace]) -> dict[str, list[_Span]]:
    """What hangs on each wall, from left to right ends."""
    hung: dict[str, list[_Span]] = {}
    for place in places:
        if place.case.spec.is_hung:
            span = (float(place.left), float(place.right))
            hung.setdefault(place.wall.spec.key, []).append(span)
    return hung


def _is_covered(span: _Span, hung: Iterable[_Span]) -> bool:
    return any(left < span[1] and span[0] < right for left, right in hung)


def _name(place: CasePlace, stand: WallStand, hung: Mapping[str, Sequence[_Span]]) -> Element:
    case, span = place.case, (float(place.left), float(place.right))
    tag = Tag(target=case.key, path=case.key, title=case.spec.title)
    deep = float(case.depth.value)
    if case.spec.is_hung:
        return _named(stand, case.spec.title, tag, span, deep, soft=True)
    covered = _is_covered(span, hung.get(place.wall.spec.key, ()))
    return _named(stand, case.spec.title, tag, span, deep, covered=covered)


def _named(
    stand: WallStand,
    title: str,
    tag: Tag,
    span: _Span,
    deep: float,
    *,
    covered: bool = False,
    soft: bool = False,
) -> Element:
    """The title in the middle of its place; before what hangs above it; where it hides least."""
    middle, wide = (span[0] + span[1]) / 2, span[1] - span[0]
    free = deep / 2 if covered else deep
    lies_across = abs(math.cos(stand.turn)) > math.sqrt(0.5)
    lines = wrapped(title, *((wide, free) if lies_across else (free, wide)))
    shares = (0.75, 0.5, 0.9) if covered else (0.5, 0.35, 0.65)
    return Choice(
        [
            tuple(written(lines, stand.at(middle, deep * share), tag, soft=soft))
            for share in shares
        ],
        hides_lines=True,
    )
