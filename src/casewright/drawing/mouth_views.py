"""A diagonal corner: from above, and its mouth seen square to the door."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.case_mouth import CaseMouth
from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.dims import Measure, measure_of
from casewright.dims.units import Unit
from casewright.drawing.case_front import swing_lines
from casewright.drawing.case_solids import clip_of, part_box, seen_from_above
from casewright.drawing.dimension import Dimensions, Span
from casewright.drawing.marks import Tag
from casewright.drawing.pens import HIDDEN, THIN, VISIBLE, Ink, Pen
from casewright.drawing.running import Running, Stop
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, Point, Polyline, rectangle

__all__ = ["above_outline", "mouth_scene", "open_mouth_scene", "plan_of_corner"]

_ROOT = Fraction(99, 70)  # about the square root of 2
_ORDER = ("bottom", "back", "nailer", "corner post", "side", "hinge strip")


def plan_of_corner(case: Case, unit: Unit) -> Scene:
    """Cut level over the bottom, the walls above and beside it, the door below at its slant.

    Where a bowl hangs, nothing is cut: it is open from above.
    """
    mouth = _mouth(case)
    parts = [part for part in case.parts if _in_plan(part, cut=not case.spec.sink)]
    parts.sort(key=lambda part: _ORDER.index(part.role) if part.role in _ORDER else len(_ORDER))
    elements: list[Element] = [_seen(case, mouth, part) for part in parts]
    elements.extend(_plan_dimensions(case, mouth, unit))
    return Scene(tuple(elements), f"{case.spec.title}: from above")


def above_outline(case: Case) -> tuple[Point, ...]:
    """The box from above in case axes x and z [mm]: a square with a corner off."""
    mouth = _mouth(case)
    wide, deep = case.width.value, case.depth.value
    leg = wide + deep - mouth.reach.value
    square = (Fraction(0), wide, Fraction(0), deep)
    return _pentagon(square, leg, at_right=mouth.corner == "left")


def _mouth(case: Case) -> CaseMouth:
    if case.mouth is None:
        msg = f"{case.key} is no diagonal corner"
        raise ValueError(msg)
    return case.mouth


def _in_plan(part: Part, *, cut: bool) -> bool:
    """What is met or seen by a cut over the bottom; shelves, the top and a plinth are not."""
    return (
        part.role not in ("shelf", "top")
        and part.group != "plinth"
        and not (cut and part.path.rpartition(".")[2].startswith("nailer_top"))
    )


def _seen(case: Case, mouth: CaseMouth, part: Part) -> Polyline:
    tag = Tag(path=part.path, title=part.title, target=part.path)
    pen: Pen = HIDDEN if part.path.endswith(".toe_board") else VISIBLE
    fill = Ink.TINT if part.role == "bottom" else None if pen is HIDDEN else Ink.PAPER
    if part.turned:
        places = tuple(seen_from_above(mouth, case.width.value, part))
    else:
        box = part_box(part)
        square = (Fraction(box.x0), Fraction(box.x1), Fraction(box.z0), Fraction(box.z1))
        clip = clip_of(part)
        leg, right = clip if clip is not None else (Fraction(0), False)
        places = _pentagon(square, leg, at_right=right)
    return Polyline(tuple((x, -z) for x, z in places), pen, closed=True, fill=fill, tag=tag)


def _pentagon(
    square: tuple[Fraction, Fraction, Fraction, Fraction], leg: Fraction, *, at_right: bool
) -> tuple[tuple[Fraction, Fraction], ...]:
    x0, x1, z0, z1 = square
    if not leg:
        return ((x0, z0), (x1, z0), (x1, z1), (x0, z1))
    if at_right:
        return ((x0, z0), (x1, z0), (x1, z1 - leg), (x1 - leg, z1), (x0, z1))
    return ((x0, z0), (x1, z0), (x1, z1), (x0 + leg, z1), (x0, z1 - leg))


def _plan_dimensions(case: Case, mouth: CaseMouth, unit: Unit) -> Iterator[Element]:
    """Legs along both walls, and how deep the return sides are."""
    wide, deep, side = case.width.value, case.depth.value, mouth.side
    zero = Fraction(0)
    yield Dimensions("above", zero, (Span(zero, wide, measure_of(case.width, unit),
                                          emphasis=True),))  # fmt: skip
    leg = Span(-deep, zero, measure_of(case.depth, unit), emphasis=True)
    beside = Span(-side.value, zero, measure_of(side, unit))
    low, high = (leg, beside) if mouth.corner == "left" else (beside, leg)
    yield Dimensions("left", zero, (low,))
    yield Dimensions("right", wide, (high,))


def mouth_scene(case: Case, unit: Unit) -> Scene:
    """Square to the door, door on: the face from side to side, the door and what is beside it."""
    return Scene(tuple(_mouth_elements(case, unit, doors=True)), f"{case.spec.title}: the mouth")


def open_mouth_scene(case: Case, unit: Unit) -> Scene:
    """The same with the door off: strips, shelves, heights."""
    return Scene(tuple(_mouth_elements(case, unit, doors=False)), f"{case.spec.title}: door off")


def _mouth_elements(case: Case, unit: Unit, *, doors: bool) -> Iterator[Element]:
    mouth = _mouth(case)
    middle, frame = mouth.width.value / 2, case.frame and case.frame.path
    legs = case.width.value + case.depth.value - mouth.reach.value
    half = legs * _ROOT / 2
    for part in _behind(case):
        yield _level(part, middle, half)
    for part in case.parts:
        if part.turned and (doors or not part.front or part.front == frame):
            yield _front_of(part)
    for door in case.doors if doors else ():
        yield from swing_lines(door)
    yield from _across(case, mouth, unit, doors=doors)
    yield from _up(case, unit, doors=doors)


def _behind(case: Case) -> list[Part]:
    """Sides, then the boards that the strips stand between."""
    order = ("side", "shelf", "bottom", "top")
    return sorted((p for p in case.parts if p.role in order and not p.turned),
                  key=lambda part: order.index(part.role))  # fmt: skip


def _level(part: Part, middle: Fraction, half: Fraction) -> Polyline:
    """A board's slant, or a side's front edge, seen square to the face."""
    box = part_box(part)
    tag = Tag(path=part.path, title=part.title, target=part.path)
    thick = part.finished.thickness.value * _ROOT / 2
    low, high = Fraction(box.y0), Fraction(box.y1)
    clip = clip_of(part)
    if clip is not None:
        wide = clip[0] * _ROOT / 2
        if part.role == "shelf":  # it goes on behind the sides, out of sight
            wide = min(wide, half - thick)
        return rectangle((middle - wide, low), (middle + wide, high), VISIBLE, fill=Ink.PAPER,
                         tag=tag)  # fmt: skip
    x = middle - half if part.hand == "left" else middle + half - thick
    return rectangle((x, low), (x + thick, high), THIN, fill=Ink.PAPER, tag=tag)


def _front_of(part: Part) -> Polyline:
    box = part_box(part)
    fill = Ink.GLASS if part.role == "pane" else Ink.PAPER
    return rectangle(
        (Fraction(box.x0), Fraction(box.y0)), (Fraction(box.x1), Fraction(box.y1)),
        VISIBLE if part.role == "hinge strip" else THIN, fill=fill,
        tag=Tag(path=part.path, title=part.title, target=part.path),
    )  # fmt: skip


def _across(case: Case, mouth: CaseMouth, unit: Unit, *, doors: bool) -> Iterator[Element]:
    zero, wide = Fraction(0), mouth.width.value
    spans = []
    if doors:
        for front in case.fronts:
            x = front.x.value
            spans.append(Span(x, x + front.width.value, measure_of(front.width, unit)))
    else:
        strips = [part_box(p) for p in case.parts if p.role == "hinge strip"]
        x0, x1 = min(box.x1 for box in strips), max(box.x0 for box in strips)
        clear = Measure(Fraction(x1 - x0), unit, f"{case.key}.mouth.clear_between")
        spans.append(Span(Fraction(x0), Fraction(x1), clear))
    if case.frame is not None:
        x, thick = case.frame.x.value, case.frame.thickness.value
        outside = case.frame.width.value
        face = Measure(outside - 2 * thick, unit, f"{case.key}.frame.face_width")
        spans.append(Span(x + thick, x + outside - thick, face))
        spans.append(Span(x, x + outside, measure_of(case.frame.width, unit), emphasis=True))
    else:
        spans.append(Span(zero, wide, measure_of(mouth.width, unit), emphasis=True))
    yield Dimensions("below", zero, tuple(spans))


def _up(case: Case, unit: Unit, *, doors: bool) -> Iterator[Element]:
    height, wide, zero = case.height.value, _mouth(case).width.value, Fraction(0)
    whole = Span(zero, height, measure_of(case.height, unit), emphasis=True)
    beyond = wide + (case.width.value + case.depth.value - _mouth(case).reach.value) * _ROOT / 2
    right = beyond - wide / 2
    if doors:
        # Two leaves of a pair are as tall as one another: told once.
        tall = {(f.y.value, f.height.value): Span(f.y.value, f.y.value + f.height.value,
                                                  measure_of(f.height, unit))
                for f in case.fronts}  # fmt: skip
        yield Dimensions("right", right, (*tall.values(), whole))
        return
    stops: dict[Fraction, Stop] = {}
    for level in case.levels:
        if level.high.value:
            stops.setdefault(
                level.high.value, Stop(level.high.value, measure_of(level.high, unit))
            )
    yield Running("left", wide - right, zero, tuple(stops.values()))
    yield Dimensions("right", right, (whole,))
