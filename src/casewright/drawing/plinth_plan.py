"""A ladder plinth from above: rails, sleepers, and where each sleeper stands."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.dims import Measure, measure_of
from casewright.dims.units import Unit
from casewright.drawing.case_solids import case_solids, seen_from_above
from casewright.drawing.dimension import Dimensions, Span
from casewright.drawing.marks import Tag
from casewright.drawing.pens import VISIBLE, Ink
from casewright.drawing.running import Running, Stop
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, Polyline, rectangle

__all__ = ["corner_plinth_scene", "plinth_scene"]


def plinth_scene(case: Case, unit: Unit) -> Scene:
    """Plan of a plinth, its front rail below; sleepers by their left faces from the left end."""
    return Scene(tuple(_elements(case, unit)), f"{case.spec.title}: from above")


def _elements(case: Case, unit: Unit) -> Iterator[Element]:
    width, depth = case.width.value, case.depth.value
    zero = Fraction(0)
    stops = []
    for solid in case_solids(case, fronts=True):
        box, part = solid.box, solid.part
        yield rectangle(
            (box.x0, depth - box.z1), (box.x1, depth - box.z0), VISIBLE, fill=Ink.PAPER,
            tag=Tag(path=part.path, title=part.title, target=part.path),
        )  # fmt: skip
        if part.role == "sleeper" and box.x0:
            stops.append(Stop(Fraction(box.x0), measure_of(part.placed.x, unit)))
    stops.append(Stop(width, measure_of(case.width, unit), emphasis=True))
    yield Running("below", zero, zero, tuple(stops))
    yield Dimensions(
        "right", width, (Span(zero, depth, measure_of(case.depth, unit), emphasis=True),)
    )


def corner_plinth_scene(case: Case, unit: Unit) -> Scene:
    """Plan of the plinth of a diagonal corner and of its toe board, the run's wall above.

    Sleepers and rails of the arm by their left faces.
    """
    return Scene(tuple(_corner_elements(case, unit)), f"{case.spec.title}: its plinth from above")


def _corner_elements(case: Case, unit: Unit) -> Iterator[Element]:
    zero, wide, deep = Fraction(0), case.width.value, case.depth.value
    stops: dict[str, list[Stop]] = {"main": [], "arm": []}
    reach = zero
    for solid in case_solids(case, fronts=False):
        box, part = solid.box, solid.part
        tag = Tag(path=part.path, title=part.title, target=part.path)
        if part.turned and part.path.endswith(".toe_board") and case.mouth is not None:
            places = seen_from_above(case.mouth, wide, part)
            corners = tuple((x, -z) for x, z in places)
            yield Polyline(corners, VISIBLE, closed=True, fill=Ink.TINT, tag=tag)
        elif part.group == "plinth":
            yield rectangle((box.x0, -box.z1), (box.x1, -box.z0), VISIBLE, fill=Ink.PAPER, tag=tag)
            along = part.placed.orientation.length.axis == 2
            if along and box.x0:
                name = "arm" if part.role == "plinth rail" else "main"
                left = measure_of(part.placed.x, unit)
                if name == "arm":
                    left = Measure(Fraction(box.x0), unit, f"{part.path}_left")
                stops[name].append(Stop(Fraction(box.x0), left))
            if part.path.endswith(".front"):
                reach = Fraction(box.z1)
    stops["main"].append(Stop(wide, measure_of(case.width, unit), emphasis=True))
    yield Running("above", zero, zero, tuple(sorted(stops["main"], key=lambda s: s.at)))
    yield Running("below", -deep, zero, tuple(sorted(stops["arm"], key=lambda s: s.at)))
    own = Span(-reach, zero, Measure(reach, unit, f"{case.key}.plinth.out"))
    leg = Span(-deep, zero, measure_of(case.depth, unit), emphasis=True)
    low, high = (
        (leg, own) if case.mouth is not None and case.mouth.corner == "left" else (own, leg)
    )
    yield Dimensions("left", zero, (low,))
    yield Dimensions("right", wide, (high,))
