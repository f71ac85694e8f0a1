"""Plan of the room: walls by their corners, what is on them, cases, and where doors swing."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from casewright.casework.cases import Door
from casewright.dims.units import Unit
from casewright.drawing.choice import Choice
from casewright.drawing.marks import Tag
from casewright.drawing.measure import measure_of
from casewright.drawing.notes import Text
from casewright.drawing.pens import CUT, DIMENSION, HIDDEN, NEIGHBOUR, THIN, VISIBLE, Ink
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Arc, Element, Point, Polyline
from casewright.room.model import Room
from casewright.room.on_walls import CasePlace, cases_on_walls, run_start
from casewright.survey.angles import angle_of
from casewright.survey.fixed_things import PlacedThing
from casewright.survey.survey import Survey
from casewright.survey.walls import SurveyedWall

__all__ = ["plan_scene"]

_USUAL, _THICK, _APART = 3048.0, 110.0, 900.0  # of a wall that was not read, of any [mm of model]
_CLEAR = 250.0  # from the wall's face to a name behind it
_NAME = 2.3
_LINE = 1.5  # from line to line, in heights of lettering


@dataclass(frozen=True, slots=True)
class _Stand:
    """A wall in plan: its left end, its direction, its length [mm of model]."""

    x: float
    y: float
    turn: float
    length: float

    def at(self, along: float, out: float) -> Point:
        """A place so far along the wall and so far out into the room."""
        cos, sin = math.cos(self.turn), math.sin(self.turn)
        return (self.x + along * cos + out * sin, self.y + along * sin - out * cos)

    @property
    def end(self) -> tuple[float, float]:
        """Its right end."""
        cos, sin = math.cos(self.turn), math.sin(self.turn)
        return self.x + self.length * cos, self.y + self.length * sin


def plan_scene(room: Room, unit: Unit) -> Scene:
    """The room from above: every surveyed wall, joined to the next by its corner as read.

    Cases that stand in full lines, those that hang in broken ones, with the swing of their doors
    and of the room's. Walls that no corner joins stand apart.
    """
    stands = _stands(room.survey)
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
    elements.extend(_appliances(room, stands))
    elements.extend(_name(place, stands[place.wall.spec.key]) for place in places)
    return Scene(tuple(elements), f"{room.spec.name}: plan")


def _stands(survey: Survey) -> Mapping[str, _Stand]:
    """Where each wall is: from one without a neighbour on its left, round by the corners."""
    right_of = {c.spec.left: c.spec.key for c in survey.corners.values()}
    has_left = {c.spec.right for c in survey.corners.values()}
    found: dict[str, _Stand] = {}
    begins = 0.0
    for first in sorted(survey.walls, key=lambda key: key in has_left):
        if first in found:
            continue
        x, y, turn, key = begins, 0.0, 0.0, first
        while key in survey.walls and key not in found:
            width = survey.walls[key].width
            stand = _Stand(x, y, turn, _USUAL if width is None else float(width.value))
            found[key] = stand
            x, y = stand.end
            if key not in right_of:
                break
            corner = survey.corners[right_of[key]]
            inner = 90.0 if corner.cosine is None else angle_of(corner.cosine).degrees
            turn += math.radians(180.0 - inner) * (1 if corner.spec.outside else -1)
            key = corner.spec.right
        begins = max(max(s.x, s.end[0]) for s in found.values()) + _APART
    return found


def _outline(
    stand: _Stand, span: tuple[float, float], out: tuple[float, float]
) -> tuple[Point, ...]:
    (left, right), (near, far) = span, out
    return (stand.at(left, near), stand.at(right, near), stand.at(right, far), stand.at(left, far))


def _wall(wall: SurveyedWall, stand: _Stand, begins: float, unit: Unit) -> Iterator[Element]:
    whole = _outline(stand, (begins, stand.length), (-_THICK, 0.0))
    yield Polyline(whole, CUT, closed=True, fill=Ink.SHADE)
    turned = math.degrees(stand.turn)
    upright = turned if -90 < turned <= 90 else turned + 180
    words = (wall.spec.title,)
    content = (*words, ", ", measure_of(wall.width, unit)) if wall.width is not None else words
    at = stand.at(stand.length / 2, -_THICK - _CLEAR)
    tag = Tag(path="" if wall.width is None else wall.width.path)
    yield Text(at, content, _NAME, rotation_deg=upright, weight=600, tag=tag)


def _thing(thing: PlacedThing, stand: _Stand) -> Iterator[Element]:
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


def _swing(stand: _Stand, span: tuple[float, float], out: float, hinge: str) -> Iterator[Element]:
    """A leaf opened to a right angle, and the way of its free edge."""
    left, right = span
    wide = right - left
    at = stand.at(left if hinge == "left" else right, out)
    yield Polyline((at, stand.at(left if hinge == "left" else right, out + wide)), THIN)
    start = math.degrees(stand.turn) - 90
    sweep = 90.0 if hinge == "left" else -90.0
    begin, turned = (start, sweep) if sweep > 0 else (start + sweep, -sweep)
    yield Arc(at, wide, DIMENSION, start_deg=begin, sweep_deg=turned)


def _case(place: CasePlace, stand: _Stand) -> Iterator[Element]:
    case, hung = place.case, place.case.spec.is_hung
    left, right = float(place.left), float(place.right)
    depth = float(case.overall_depth.value)
    tag = Tag(target=case.key, path=case.key, title=case.spec.title)
    yield Polyline(_outline(stand, (left, right), (0.0, depth)), HIDDEN if hung else VISIBLE,
                   closed=True, tag=tag)  # fmt: skip
    own = left + float(case.left_frame.value)
    if hung:
        return
    for front in case.fronts:
        if isinstance(front, Door):
            x = own + float(front.x.value)
            yield from _swing(stand, (x, x + float(front.width.value)), depth, front.hinge_side)


def _appliances(room: Room, stands: Mapping[str, _Stand]) -> Iterator[Element]:
    for run in room.runs:
        wall = room.survey.walls.get(run.spec.on)
        if wall is None:
            continue
        begins, stand = run_start(run, wall), stands[run.spec.on]
        deep = max((float(case.depth.value) for case in run.cases), default=600.0)
        for each in run.appliances:
            left = float(begins + each.start.value)
            wide = float(each.width.value)
            tag = Tag(path=each.width.path, title=each.spec.title)
            yield Polyline(_outline(stand, (left, left + wide), (0.0, deep)), NEIGHBOUR,
                           closed=True, tag=tag)  # fmt: skip
            yield Text(stand.at(left + wide / 2, deep / 2), each.spec.title, _NAME, tag=tag)


def _name(place: CasePlace, stand: _Stand) -> Element:
    """The title in the middle of its case; of one that hangs where it hides least."""
    case = place.case
    depth = float(case.depth.value)
    middle = float(place.left + place.right) / 2
    tag = Tag(target=case.key, path=case.key, title=case.spec.title)
    words = case.spec.title.split()
    first = (len(words) - 1) / 2
    hung = case.spec.is_hung
    shares = (0.5, 0.35, 0.65) if hung else (0.75, 0.5, 0.9)
    return Choice(
        [
            tuple(
                Text(stand.at(middle, depth * share), word, _NAME,
                     weight=400 if hung else 600, ink=Ink.SOFT if hung else Ink.INK,
                     ground=Ink.PAPER, tag=tag,
                     shift_mm=(0.0, (first - n) * _LINE * _NAME))
                for n, word in enumerate(words)
            )
            for share in shares
        ],
        hides_lines=True,
    )  # fmt: skip
