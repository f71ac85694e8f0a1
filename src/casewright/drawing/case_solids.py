"""Parts of a case as boxes to draw: what each part takes up in case axes."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.case_mouth import CaseMouth
from casewright.casework.cases import Case
from casewright.casework.features import Cut
from casewright.casework.parts import Part
from casewright.geometry import Box, Placement

__all__ = ["Solid", "case_solids", "clip_of", "front_corners", "part_box", "seen_from_above"]

_ROOT = Fraction(99, 70)  # about the square root of 2


_Place = tuple[Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class Solid:
    """A part and its outer box in case axes [mm]."""

    part: Part
    box: Box


def part_box(part: Part) -> Box:
    """Outer box of a part in case axes [mm], cuts not taken off."""
    size, placed = part.finished, part.placed
    zero = Fraction(0)
    placement = Placement((placed.x.value, placed.y.value, placed.z.value), placed.orientation)
    return placement.box(
        Box(zero, size.length.value, zero, size.width.value, zero, size.thickness.value)
    )


def clip_of(part: Part) -> tuple[Fraction, bool] | None:
    """The leg of a clipped corner [mm] and whether it is at higher x; None without one."""
    lies = part.placed.orientation
    for cut in part.features:
        if isinstance(cut, Cut) and cut.kind == "clip":
            along = (cut.datum == "l1") == (lies.length.sign > 0)
            return cut.width.value, along if lies.length.axis == 0 else lies.width.sign < 0
    return None


def seen_from_above(mouth: CaseMouth, width: Fraction, part: Part) -> list[_Place]:
    """Corners of what lies in a mouth, in case axes x and z [mm].

    Parameters
    ----------
    width
        Of the case [mm].
    """
    box = part_box(part)
    middle, front = mouth.width.value / 2, mouth.front.value
    found = []
    x0, x1 = Fraction(box.x0), Fraction(box.x1)
    if any(isinstance(cut, Cut) and cut.kind == "bevel" for cut in part.features):
        # In front its outer edge is as much farther in as it is thick.
        x0, x1 = (x0 + box.z1 - box.z0, x1) if part.hand == "left" else (x0, x1 - box.z1 + box.z0)
    for x, z in ((box.x0, box.z0), (box.x1, box.z0), (x1, box.z1), (x0, box.z1)):
        aside, out = (x - middle) * _ROOT / 2, (z - front) * _ROOT / 2
        if mouth.corner == "left":
            place = (mouth.reach.value / 2 + out + aside, mouth.reach.value / 2 + out - aside)
        else:
            along = mouth.reach.value / 2 + out - aside
            place = (width - along, mouth.reach.value / 2 + out + aside)
        found.append((Fraction(place[0]), Fraction(place[1])))
    return found


def _as_seen(case: Case, part: Part) -> Box:
    """The box that encloses a part in case axes, also one that lies at 45 degrees."""
    box = part_box(part)
    if case.mouth is None or not part.turned:
        return box
    xs, zs = zip(*seen_from_above(case.mouth, case.width.value, part), strict=True)
    return Box(min(xs), max(xs), box.y0, box.y1, min(zs), max(zs))


def case_solids(case: Case, *, fronts: bool) -> tuple[Solid, ...]:
    """All parts as boxes, with or without those of the doors; a face frame stays on."""
    frame = None if case.frame is None else case.frame.path
    return tuple(
        Solid(part, _as_seen(case, part))
        for part in case.parts
        if fronts or not part.front or part.front == frame
    )


def front_corners(solid: Solid) -> tuple[tuple[Fraction, Fraction], ...]:
    """The outline of a part seen from the room: a rectangle, its mitred ends slanting.

    Returns
    -------
    Corners in case axes x and y [mm].
    """
    part, box = solid.part, solid.box
    slants = {
        cut.mitred_end: cut.width.value
        for cut in part.features
        if isinstance(cut, Cut) and cut.kind == "mitre"
    }
    x0, x1, y0, y1 = (Fraction(value) for value in box[:4])
    if not slants:
        return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
    here = part_box(part)
    dx, dy = x0 - here.x0, y0 - here.y0  # it may have been moved for the picture
    size, placed = part.finished, part.placed
    long, wide, none = size.length.value, size.width.value, Fraction(0)
    own = (
        (none, none), (long, none),
        (long - slants.get("l1", none), wide), (slants.get("l0", none), wide),
    )  # fmt: skip
    place = Placement((placed.x.value, placed.y.value, placed.z.value), placed.orientation)
    corners = (place.box(Box(along, along, across, across, none, none)) for along, across in own)
    return tuple((corner.x0 + dx, corner.y0 + dy) for corner in corners)
