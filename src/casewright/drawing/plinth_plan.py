"""A ladder plinth from above: rails, sleepers, and where each sleeper stands."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.dims.units import Unit
from casewright.drawing.case_solids import case_solids
from casewright.drawing.dimension import Dimensions, Span
from casewright.drawing.marks import Tag
from casewright.drawing.measure import measure_of
from casewright.drawing.pens import VISIBLE, Ink
from casewright.drawing.running import Running, Stop
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, rectangle

__all__ = ["plinth_scene"]


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
