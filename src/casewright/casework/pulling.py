"""The way each part of a case is pulled out to be seen: against the way it came in."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.parts import Part

__all__ = ["way_out"]

_LEAST_APART = Fraction(220)
"""Between the pieces of a drawer, and one drawer and the next [mm]."""


def way_out(part: Part, case: Case) -> tuple[Fraction, Fraction, Fraction]:
    """How far a part is pulled along x, y and z of its case [mm], by what it is."""
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
    if part.turned:
        aside = (case.width.value - _mouth_width(case)) / 2
        return aside, (-2 * unit if part.role == "rail" else none), case.depth.value + unit
    if case.mouth is not None and part.role == "side":
        return _return_side_way(part, case, unit)
    if part.role == "side":
        return (-unit * 2 if part.hand == "left" else unit * 2), none, none
    return moves.get(part.role, (none, none, none))


def _mouth_width(case: Case) -> Fraction:
    """Of the mouth of a diagonal corner [mm]."""
    return Fraction(0) if case.mouth is None else case.mouth.width.value


def _return_side_way(
    part: Part, case: Case, unit: Fraction
) -> tuple[Fraction, Fraction, Fraction]:
    """The one on the run's wall aside, the other out along its own wall."""
    outward = unit * 2 if part.hand == "right" else -unit * 2
    along = part.placed.orientation.thickness.axis == 0
    return (outward if along else -outward / 2, Fraction(0), Fraction(0) if along else 2 * unit)


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
