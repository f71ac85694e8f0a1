"""A case pulled apart, in cabinet projection: fronts true to shape, depth running up and right."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.drawing.case_solids import Solid, case_solids, front_corners
from casewright.drawing.choice import Choice
from casewright.drawing.marks import Tag
from casewright.drawing.notes import Balloon
from casewright.drawing.pens import THIN, VISIBLE, Ink
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, Point, Polyline
from casewright.geometry import Box

__all__ = ["pulled_apart_scene"]

_RECEDE = Fraction(7, 20)
_HALF = Fraction(1, 2)
_LEAST_APART = Fraction(220)
"""Between the pieces of a drawer, and one drawer and the next [mm]."""
_SHARES = tuple(Fraction(n, 12) for n in (6, 4, 8, 3, 9, 2, 10))
_REACHES = tuple(
    (u * far, v * far)
    for far in (5.0, 7.0, 9.0, 12.0, 15.0, 19.0, 24.0)
    for u, v in ((0.7, 0.7), (-0.7, 0.7), (0.7, -0.7), (-0.7, -0.7),
                 (1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0),
                 (0.4, 0.9), (-0.4, 0.9), (0.4, -0.9), (-0.4, -0.9))
)  # fmt: skip


def pulled_apart_scene(case: Case) -> Scene:
    """Every part moved out of the way it came in, with its mark."""
    solids = [_moved(case, solid) for solid in case_solids(case, fronts=True)]
    solids.sort(key=lambda s: (s.box.z1, s.box.x0, s.box.y0))
    elements: list[Element] = []
    for solid in solids:
        elements.extend(_block(solid))
    elements.extend(Choice(_rings(solid), hides_lines=True) for solid in solids)
    return Scene(tuple(elements), f"{case.spec.title}: pulled apart")


def _rings(solid: Solid) -> Iterator[Sequence[Element]]:
    """The mark of a part in a ring on its front, else beside it with a line to it."""
    tag = Tag(target=solid.part.path)
    for share in _SHARES:
        for other in _SHARES:
            at = _front(solid.box, other, share)
            yield (Balloon(at, solid.part.mark, height=2.0, tag=tag),)
    for reach in _REACHES:
        for share in _SHARES:
            at = _front(solid.box, share, _HALF)
            yield (Balloon(at, solid.part.mark, reach, height=2.0, tag=tag),)


def _moved(case: Case, solid: Solid) -> Solid:
    dx, dy, dz = _way(solid.part, case)
    b = solid.box
    return Solid(solid.part, Box(b.x0 + dx, b.x1 + dx, b.y0 + dy, b.y1 + dy, b.z0 + dz, b.z1 + dz))


def _way(part: Part, case: Case) -> tuple[Fraction, Fraction, Fraction]:
    """How far a part is pulled, by what it is."""
    unit = case.width.value / 4
    none = Fraction(0)
    if part.front:
        return _door_way(part, case, unit)
    if case.is_plinth:
        away = case.depth.value if part.role == "plinth rail" else none
        return none, none, away if part.placed.z.value else -away
    moves: dict[str, tuple[Fraction, Fraction, Fraction]] = {
        "back": (unit, unit, -case.depth.value),
        "top": (none, unit, none),
        "bottom": (none, -unit, none),
        "plinth rail": (none, -3 * unit, none),
        "sleeper": (none, -3 * unit, none),
        "rail": (none, -2 * unit, none),
        "stretcher": (none, unit, none),
        "shelf": (none, none, unit),
        "pad": (none, none, case.depth.value),
        "cleat": (none, none, case.depth.value),
        "nosing": (none, none, unit),
        "nailer": (unit / 3, none, -case.depth.value / 2),
    }
    if part.role == "side":
        return (-unit * 2 if part.hand == "left" else unit * 2), none, none
    return moves.get(part.role, (none, none, none))


def _door_way(part: Part, case: Case, unit: Fraction) -> tuple[Fraction, Fraction, Fraction]:
    """Doors stand to the right of the box, leaf beside leaf, their frames off their panels."""
    if any(drawer.path == part.front for drawer in case.drawers):
        return _drawer_way(part, case, unit)
    if case.frame is not None and part.front == case.frame.path:
        return -case.width.value - unit / 2, -case.height.value / 2, Fraction(0)
    leaf = next((f for f in case.fronts if f.path == part.front), None)
    if leaf is None:
        outward = -3 * unit if part.placed.x.value <= 0 else 3 * unit
        return outward, Fraction(0), Fraction(0)
    if any(drawer.front == leaf.path for drawer in case.drawers):
        aside, up = _drawer_place(leaf.path, case)
        return aside + case.width.value + 4 * max(unit, _LEAST_APART), up, Fraction(0)
    right = any(f.x.value < leaf.x.value for f in case.doors)
    upper = leaf.opening == "upper"
    sideways = case.width.value * Fraction(19, 10) + (unit * Fraction(3, 2) if right else 0)
    forward = unit * 2 if part.role not in ("slab", "pane", "panel", "door") else Fraction(0)
    return sideways, unit if upper else Fraction(0), forward


def _drawer_way(part: Part, case: Case, unit: Fraction) -> tuple[Fraction, Fraction, Fraction]:
    """Boxes of drawers stand to the right of the box, one over the other, each pulled apart."""
    aside, up = _drawer_place(part.front, case)
    apart = max(unit, _LEAST_APART)
    if part.role == "drawer side":
        return aside + (-apart if part.hand == "left" else apart), up, Fraction(0)
    if part.role in ("box front", "drawer back"):
        return aside, up, apart if part.role == "box front" else -apart
    return aside, up, Fraction(0)


def _drawer_place(path: str, case: Case) -> tuple[Fraction, Fraction]:
    """How far a drawer is moved to the right and up, with room between it and the next."""
    order = sorted(case.drawers, key=lambda drawer: drawer.y.value)
    number = next(n for n, each in enumerate(order) if path.startswith(each.path))
    middle = Fraction(len(order) - 1, 2)
    return case.width.value * Fraction(21, 10), (number - middle) * _LEAST_APART


def _flat(x: Fraction, y: Fraction, z: Fraction) -> Point:
    return (x - _RECEDE * z, y - _RECEDE * z)


def _block(solid: Solid) -> Iterator[Element]:
    box = solid.box
    x0, x1, y0, y1, z0, z1 = (Fraction(v) for v in box)
    tag = Tag(path=solid.part.path, title=solid.part.title, target=solid.part.path)
    front = tuple((x, y, z1) for x, y in front_corners(solid))
    top = ((x0, y1, z1), (x1, y1, z1), (x1, y1, z0), (x0, y1, z0))
    right = ((x1, y0, z1), (x1, y0, z0), (x1, y1, z0), (x1, y1, z1))
    glass = solid.part.role == "pane"
    for corners, fill in ((right, Ink.SHADE), (top, Ink.TINT), (front, Ink.PAPER)):
        yield Polyline(
            tuple(_flat(*c) for c in corners), VISIBLE if corners is front else THIN,
            closed=True, fill=Ink.GLASS if glass else fill, tag=tag,
        )  # fmt: skip


def _front(box: Box, along: Fraction, up: Fraction) -> Point:
    """A place on the front of a block."""
    x = Fraction(box.x0) + Fraction(box.x1 - box.x0) * along
    y = Fraction(box.y0) + Fraction(box.y1 - box.y0) * up
    return _flat(x, y, Fraction(box.z1))
