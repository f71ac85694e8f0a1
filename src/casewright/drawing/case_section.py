"""A case cut upright from front to back, seen from its right."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.dims import measure_of
from casewright.dims.units import Unit
from casewright.drawing.case_solids import Solid, case_solids
from casewright.drawing.dimension import Dimensions, Span
from casewright.drawing.hatching import BACK_SECTION, SECTION
from casewright.drawing.marks import Tag
from casewright.drawing.pens import CUT, THIN, VISIBLE, Ink
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, Polyline, rectangle

__all__ = ["section_scene"]


def section_scene(case: Case, unit: Unit) -> Scene:
    """Section through the middle of the left leaf, front to the left."""
    at = case.width.value * Fraction(2, 5)
    solids = case_solids(case, fronts=True)
    front = max(Fraction(s.box.z1) for s in solids)
    elements: list[Element] = [*_beyond(solids, front), *_cut(solids, at, front)]
    elements.extend(_dimensions(case, front, unit))
    return Scene(tuple(elements), f"{case.spec.title}: section")


def _beyond(solids: tuple[Solid, ...], front: Fraction) -> Iterator[Element]:
    """The left side as seen behind the cut, its toe notch included."""
    side = next(s for s in solids if s.part.path.endswith("side_left"))
    box = side.box
    notch = next((f for f in side.part.features if f.kind == "notch"), None)
    x0, x1 = front - Fraction(box.z1), front - Fraction(box.z0)
    y0, y1 = Fraction(box.y0), Fraction(box.y1)
    points = [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
    end = getattr(notch, "end", None)
    tall = getattr(notch, "width", None)
    if end is not None and tall is not None:
        inner = (x0 + end.value, y0 + tall.value)
        points = [(inner[0], y0), (x1, y0), (x1, y1), (x0, y1), (x0, inner[1]), inner]
    yield Polyline(tuple(points), VISIBLE, closed=True, fill=Ink.TINT,
                   tag=Tag(path=side.part.path))  # fmt: skip


def _cut(solids: tuple[Solid, ...], at: Fraction, front: Fraction) -> Iterator[Element]:
    for solid in sorted(solids, key=lambda s: s.part.role == "back"):
        box = solid.box
        if not box.x0 < at < box.x1:
            continue
        loose = solid.part.role == "shelf"
        hatch = BACK_SECTION if solid.part.role in ("back", "slab", "pane") else SECTION
        yield rectangle(
            (front - Fraction(box.z1), box.y0), (front - Fraction(box.z0), box.y1),
            THIN if loose else CUT, fill=Ink.GLASS if solid.part.role == "pane" else Ink.PAPER,
            hatch=hatch, tag=Tag(path=solid.part.path, title=solid.part.title,
                                 target=solid.part.path),
        )  # fmt: skip


def _dimensions(case: Case, front: Fraction, unit: Unit) -> Iterator[Element]:
    depth = case.depth.value
    face = front - depth
    below = [Span(face, front, measure_of(case.depth, unit), emphasis=True)]
    if case.frame is not None:
        plane = case.face_plane
        below = [Span(front - plane.value, front, measure_of(plane, unit), emphasis=True)]
    if face:
        below.append(Span(Fraction(0), front, measure_of(case.overall_depth, unit)))
    yield Dimensions("below", Fraction(0), tuple(below))
    spans = [
        Span(clear.low.value, clear.high.value, measure_of(clear.size, unit))
        for clear in case.clear_heights
    ]
    spans.append(
        Span(Fraction(0), case.height.value, measure_of(case.height, unit), emphasis=True)
    )
    yield Dimensions("right", front, tuple(spans))
