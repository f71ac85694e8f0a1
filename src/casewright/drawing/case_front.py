"""The front of a case: as it stands with its doors, and open with the doors removed."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case, Door, FaceFrame
from casewright.dims import Measure, measure_of
from casewright.dims.units import Unit
from casewright.drawing.case_solids import Solid, case_solids, front_corners, part_box
from casewright.drawing.dimension import Dimensions, Span
from casewright.drawing.marks import Tag
from casewright.drawing.pens import CENTRE, THIN, VISIBLE, Ink
from casewright.drawing.running import Running, Stop
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, Polyline, line
from casewright.geometry.box import Number

__all__ = ["closed_elements", "closed_scene", "open_scene", "swing_lines"]


def closed_scene(case: Case, unit: Unit) -> Scene:
    """Front with the doors on: overall size, sizes of the doors, reveals and gaps."""
    elements: list[Element] = [*closed_elements(case), *_door_dimensions(case, unit)]
    return Scene(tuple(elements), f"{case.spec.title}: front")


def open_scene(case: Case, unit: Unit) -> Scene:
    """Front with the doors off: clear openings, heights of shelves."""
    solids = case_solids(case, fronts=False)
    elements: list[Element] = list(_faces(solids))
    if case.frame is None or not case.spec.framed:
        elements.extend(_open_dimensions(case, solids, unit))
    else:
        elements.extend(_frame_dimensions(case, case.frame, unit))
    return Scene(tuple(elements), f"{case.spec.title}: doors removed")


def closed_elements(case: Case) -> Iterator[Polyline]:
    """The case's front without dimensions, doors on."""
    yield from _faces(case_solids(case, fronts=True))
    for front in case.doors if case.mouth is None else ():
        yield from swing_lines(front)


def _faces(solids: tuple[Solid, ...]) -> Iterator[Polyline]:
    """Fronts of the parts, the far ones first, so that the near ones cover them.

    What lies in the mouth of a diagonal corner covers what is behind it, by that mouth's axes; its
    return side round the corner stands before all of it.
    """
    for solid in sorted(solids, key=_nearness):
        part = solid.part
        shows = part.role in ("side", "top", "bottom", "divider", "fixed shelf", "shelf")
        fill = Ink.GLASS if part.role == "pane" else Ink.TINT if part.role == "back" else Ink.PAPER
        if not part.diagonal:  # a spline lies inside the frame
            yield Polyline(
                front_corners(solid), VISIBLE if shows and not part.front else THIN, closed=True,
                fill=fill, tag=Tag(path=part.path, title=part.title, target=part.path),
            )  # fmt: skip


def _nearness(solid: Solid) -> tuple[int, Number, Number, Number]:
    part, box = solid.part, solid.box
    if part.turned:
        return 1, part_box(part).z1, box.y0, box.x0
    round_it = part.role == "side" and part.placed.orientation.thickness.axis == 2
    return 2 if round_it else 0, box.z1, box.y0, box.x0


def swing_lines(front: Door) -> Iterator[Polyline]:
    """Two lines that meet on the hinge side (ISO 7519: opening toward the viewer, full lines)."""
    x0, y0 = front.x.value, front.y.value
    x1, y1 = x0 + front.width.value, y0 + front.height.value
    hinge, free = (x0, x1) if front.hinge_side == "left" else (x1, x0)
    middle = (y0 + y1) / 2
    for y in (y0, y1):
        yield line((free, y), (hinge, middle), CENTRE, ink=Ink.SOFT)


def _door_dimensions(case: Case, unit: Unit) -> Iterator[Element]:
    height, zero = case.height.value, Fraction(0)
    below = [_overall(case, unit)]
    right = [Span(zero, height, measure_of(case.height, unit), emphasis=True)]
    columns: dict[Fraction, Span] = {}
    for front in case.fronts:
        x, y = front.x.value, front.y.value
        columns.setdefault(x, Span(x, x + front.width.value, measure_of(front.width, unit)))
        right_span = Span(y, y + front.height.value, measure_of(front.height, unit))
        if all((s.start, s.end) != (right_span.start, right_span.end) for s in right):
            right.append(right_span)
    below.extend(columns.values())
    yield Dimensions("below", zero, tuple(below))
    yield Dimensions("right", below[0].end, tuple(right))


def _overall(case: Case, unit: Unit) -> Span:
    """Width over all: of the box, or of the face frame before it."""
    if case.frame is None or not case.spec.framed:
        return Span(Fraction(0), case.width.value, measure_of(case.width, unit), emphasis=True)
    x, wide = case.frame.x.value, case.frame.width
    return Span(x, x + wide.value, measure_of(wide, unit), emphasis=True)


def _frame_dimensions(case: Case, frame: FaceFrame, unit: Unit) -> Iterator[Element]:
    """The openings of a face frame: between its stiles, and between its rails."""
    members = [part_box(part) for part in case.parts if part.front == frame.path]
    x0 = min(box.x1 for box in members if box.x0 == frame.x.value)
    if case.spec.blind == "left":
        x0 = next(part_box(part).x1 for part in case.parts if part.role == "blind stile")
    whole = _overall(case, unit)
    inside = Span(x0, x0 + frame.openings[0][1].value, measure_of(frame.openings[0][1], unit))
    yield Dimensions("below", Fraction(0), (inside, whole))
    rails = [part_box(part) for part in case.parts
             if part.front == frame.path and part.role == "frame rail"]  # fmt: skip
    tops = sorted(box.y1 for box in rails)
    spans = [
        Span(low, low + tall.value, measure_of(tall, unit))
        for low, (_, _, tall) in zip(tops, frame.openings, strict=False)
    ]
    tall = Span(Fraction(0), case.height.value, measure_of(case.height, unit), emphasis=True)
    yield Dimensions("right", whole.end, (*spans, tall))


def _open_dimensions(case: Case, solids: tuple[Solid, ...], unit: Unit) -> Iterator[Element]:
    width, height = case.width.value, case.height.value
    zero = Fraction(0)
    left = next(s for s in solids if s.part.path.endswith("side_left")).box
    right = next(s for s in solids if s.part.path.endswith("side_right")).box
    clear = Measure(Fraction(right.x0 - left.x1), unit, f"{case.key}.clear_width")
    yield Dimensions(
        "below", zero,
        (
            Span(left.x1, right.x0, clear),
            Span(zero, width, measure_of(case.width, unit), emphasis=True),
        ),
    )  # fmt: skip
    stops: dict[Fraction, Stop] = {}
    for level in case.levels:
        y = level.high.value
        if y:
            stops.setdefault(y, Stop(y, measure_of(level.high, unit)))
    yield Running("left", zero, zero, tuple(stops.values()))
    yield Dimensions(
        "right", width, (Span(zero, height, measure_of(case.height, unit), emphasis=True),)
    )
