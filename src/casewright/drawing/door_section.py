"""A door cut level through its middle: stile, groove or rebate, and the edge of what it holds."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case, Door
from casewright.casework.features import Cut
from casewright.casework.parts import Part
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.units import Units, units_of
from casewright.dims import measure_of
from casewright.dims.units import Unit
from casewright.drawing.dimension import Dimensions, Span
from casewright.drawing.hatching import BACK_SECTION, SECTION
from casewright.drawing.marks import Tag
from casewright.drawing.pens import CUT, Ink
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, Polyline, rectangle

__all__ = ["door_section_scene", "has_section"]

_BEYOND = Fraction(40)  # what is shown of the panel inside the stile [mm]


def has_section(door: Door) -> bool:
    """Whether a section tells more than the door's outline does."""
    return door.construction != "slab"


def door_section_scene(case: Case, door: Door, unit: Unit) -> Scene:
    """The left stile and what it holds, seen from above, the show face nearest to you."""
    units = units_of(case)
    stile = next(p for p in case.parts if p.front == door.path and p.role == "stile")
    elements = [*_cut(case, door, stile, units), *_dimensions(case, door, stile, unit)]
    return Scene(tuple(elements), f"{door.title}: section")


def _cut(case: Case, door: Door, stile: Part, units: Units) -> Iterator[Element]:
    """The stile, and what lies beside or before it at the middle of the door's height."""
    tag = Tag(path=stile.path, title=stile.title, target=stile.path)
    back = door.thickness.value - stile.finished.thickness.value
    shift = Fraction(0) if door.construction == "applied frame" else back
    corners = tuple((x, y + shift) for x, y in _profile(stile))
    yield Polyline(corners, CUT, closed=True, fill=Ink.PAPER, hatch=SECTION, tag=tag)
    level = units.of(door.y) + units.of(door.height) // 2
    shown = stile.finished.width.value + _BEYOND
    front = door.z.value + door.thickness.value
    for part in case.parts:
        if part.front != door.path or part is stile:
            continue
        for piece in Solid(part, units).pieces:
            x0 = units.length(piece.x0) - door.x.value
            if not piece.y0 <= level < piece.y1 or x0 >= shown:
                continue
            x1 = min(units.length(piece.x1) - door.x.value, shown)
            near, far = front - units.length(piece.z1), front - units.length(piece.z0)
            glass = part.role == "pane"
            yield rectangle(
                (x0, near), (x1, far), CUT, fill=Ink.GLASS if glass else Ink.PAPER,
                hatch=None if glass else BACK_SECTION,
                tag=Tag(path=part.path, title=part.title, target=part.path),
            )  # fmt: skip


def _profile(stile: Part) -> tuple[tuple[Fraction, Fraction], ...]:
    """Outline of a stile across its length, its show face at 0, with its groove or rebate."""
    wide, thick, zero = stile.finished.width.value, stile.finished.thickness.value, Fraction(0)
    inner = [(wide, zero), (wide, thick)]
    for cut in stile.features:
        if not isinstance(cut, Cut) or cut.runs != "l":
            continue
        if cut.edge == "w1":
            low, floor = cut.at.value, wide - cut.depth.value
            high = low + cut.width.value
            inner[1:1] = [(wide, low), (floor, low), (floor, high), (wide, high)]
        elif cut.kind == "rebate":
            low, floor = thick - cut.depth.value, wide - cut.width.value
            inner[1:] = [(wide, low), (floor, low), (floor, thick)]
    return ((zero, zero), *inner, (zero, thick))


def _dimensions(case: Case, door: Door, stile: Part, unit: Unit) -> Iterator[Element]:
    wide, thick, zero = stile.finished.width.value, door.thickness.value, Fraction(0)
    yield Dimensions("below", zero, (Span(zero, wide, measure_of(stile.finished.width, unit)),))
    up: list[Span] = [Span(zero, thick, measure_of(door.thickness, unit), emphasis=True)]
    across: list[Span] = []
    for cut in stile.features:
        if not isinstance(cut, Cut) or cut.runs != "l":
            continue
        at, width, depth = (measure_of(dim, unit) for dim in (cut.at, cut.width, cut.depth))
        if cut.edge == "w1":
            up += [Span(zero, at.value, at), Span(at.value, at.value + width.value, width)]
            across.append(Span(wide - depth.value, wide, depth))
        elif cut.kind == "rebate":
            up.append(Span(thick - depth.value, thick, depth))
            across.append(Span(wide - width.value, wide, width))
    if door.construction == "applied frame":
        strip = measure_of(stile.finished.thickness, unit)
        up.append(Span(zero, strip.value, strip))
    yield Dimensions("left", zero, tuple(up))
    if across:
        yield Dimensions("above", thick, tuple(across))
