"""A case pulled apart, in cabinet projection: fronts true to shape, depth running up and right."""

from __future__ import annotations

from collections.abc import Container, Iterator, Sequence
from fractions import Fraction
from itertools import pairwise, product

from casewright.casework.cases import Case
from casewright.casework.pulling import way_out
from casewright.drawing.case_solids import Solid, case_solids, clip_of, front_corners, part_box
from casewright.drawing.choice import Choice
from casewright.drawing.marks import Tag
from casewright.drawing.notes import Balloon
from casewright.drawing.pens import THIN, VISIBLE, Ink
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, Point, Polyline
from casewright.geometry import Box

__all__ = ["pulled_apart_scene"]

_RECEDE = Fraction(7, 20)
_SHARES = tuple(Fraction(n, 12) for n in (6, 4, 8, 3, 9, 2, 10))
"""Places on a front, along it and up: the middle first."""
_REACHES = tuple(
    (u * far, v * far)
    for far in (5.0, 7.0, 9.0, 12.0, 15.0, 19.0, 24.0)
    for u, v in ((0.7, 0.7), (-0.7, 0.7), (0.7, -0.7), (-0.7, -0.7),
                 (1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0),
                 (0.4, 0.9), (-0.4, 0.9), (0.4, -0.9), (-0.4, -0.9))
)  # fmt: skip


def pulled_apart_scene(
    case: Case, together: Container[str] = (), comes: Container[str] | None = None
) -> Scene:
    """Every part moved out of the way it came in, with its mark.

    Parameters
    ----------
    together
        Paths of the parts that are in their places.
    comes
        Paths of those that come in now: they alone are marked, what comes later is left out.
        None: all that is not in its place.
    """
    solids = [_apart(case, together, _straight(solid)) for solid in _shown(case, together, comes)]
    solids.sort(key=lambda s: (s.box.z1, s.box.x0, s.box.y0))
    elements: list[Element] = []
    for solid in solids:
        elements.extend(_block(solid))
    marked = [solid for solid in solids if solid.part.path not in together]
    elements.extend(Choice(_rings(solid), hides_lines=True) for solid in marked)
    return Scene(tuple(elements), f"{case.spec.title}: pulled apart")


def _shown(case: Case, together: Container[str], comes: Container[str] | None) -> list[Solid]:
    solids = case_solids(case, fronts=True)
    if comes is None:
        return list(solids)
    paths = ((solid, solid.part.path) for solid in solids)
    return [solid for solid, path in paths if path in together or path in comes]


def _apart(case: Case, together: Container[str], solid: Solid) -> Solid:
    return solid if solid.part.path in together else _moved(case, solid)


def _straight(solid: Solid) -> Solid:
    """What lies in the mouth of a diagonal corner is drawn square to its face."""
    return Solid(solid.part, part_box(solid.part)) if solid.part.turned else solid


def _rings(solid: Solid) -> Iterator[Sequence[Element]]:
    """The mark of a part in a ring on its front, else beside it with a line to it."""
    tag = Tag(target=solid.part.path)
    box = solid.box
    away = _RECEDE * box.z1
    across = [box.x0 + (box.x1 - box.x0) * share - away for share in _SHARES]
    up = [box.y0 + (box.y1 - box.y0) * share - away for share in _SHARES]
    for y in up:
        for x in across:
            yield (Balloon((x, y), solid.part.mark, height=2.0, tag=tag),)
    for reach, x in product(_REACHES, across):
        yield (Balloon((x, up[0]), solid.part.mark, reach, height=2.0, tag=tag),)


def _moved(case: Case, solid: Solid) -> Solid:
    dx, dy, dz = way_out(solid.part, case)
    b = solid.box
    return Solid(solid.part, Box(b.x0 + dx, b.x1 + dx, b.y0 + dy, b.y1 + dy, b.z0 + dz, b.z1 + dz))


def _flat(x: Fraction, y: Fraction, z: Fraction) -> Point:
    return (x - _RECEDE * z, y - _RECEDE * z)


def _block(solid: Solid) -> Iterator[Element]:
    box = solid.box
    x0, x1, y0, y1, z0, z1 = (Fraction(v) for v in box)
    tag = Tag(path=solid.part.path, title=solid.part.title, target=solid.part.path)
    clip = clip_of(solid.part)
    if clip is not None:
        yield from _clipped(solid, *clip)
        return
    front = tuple((x, y, z1) for x, y in front_corners(solid))
    top = ((x0, y1, z1), (x1, y1, z1), (x1, y1, z0), (x0, y1, z0))
    right = ((x1, y0, z1), (x1, y0, z0), (x1, y1, z0), (x1, y1, z1))
    glass = solid.part.role == "pane"
    for corners, fill in ((right, Ink.SHADE), (top, Ink.TINT), (front, Ink.PAPER)):
        yield Polyline(
            tuple(_flat(*c) for c in corners), VISIBLE if corners is front else THIN,
            closed=True, fill=Ink.GLASS if glass else fill, tag=tag,
        )  # fmt: skip


def _clipped(solid: Solid, leg: Fraction, at_right: bool) -> Iterator[Element]:
    """A board with a front corner off: its slant is seen in front, its upper face a pentagon."""
    x0, x1, y0, y1, z0, z1 = (Fraction(v) for v in solid.box)
    tag = Tag(path=solid.part.path, title=solid.part.title, target=solid.part.path)
    line = [(x0, z1), (x1 - leg, z1), (x1, z1 - leg), (x1, z0)]
    if not at_right:
        line = [(x0, z1 - leg), (x0 + leg, z1), (x1, z1), (x1, z0)]
    top = [*((x, y1, z) for x, z in line), (x0, y1, z0)]
    yield Polyline(tuple(_flat(*c) for c in top), THIN, closed=True, fill=Ink.TINT, tag=tag)
    for one, other in pairwise(line):
        side = [(one[0], y0, one[1]), (other[0], y0, other[1]), (other[0], y1, other[1]),
                (one[0], y1, one[1])]  # fmt: skip
        fill = Ink.SHADE if other[0] == one[0] else Ink.PAPER
        yield Polyline(tuple(_flat(*c) for c in side), VISIBLE, closed=True, fill=fill, tag=tag)
