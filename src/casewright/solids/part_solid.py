"""A part as a solid: its box less its cuts and holes, in its own axes.

Millimetres become floating point here and nowhere before: solids are to be looked at, no size is
taken from them.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

import manifold3d
import numpy as np
import numpy.typing as npt

from casewright.casework.features import Bores, Cut
from casewright.casework.parts import Part

__all__ = ["Mesh", "part_mesh", "part_solid"]

_OVER = 0.5  # how far a cutter reaches out of the wood, so that no skin is left [mm]
_ROUND = 20  # corners of a hole [-]

Points: TypeAlias = npt.NDArray[np.float32]
Corners: TypeAlias = npt.NDArray[np.uint32]


@dataclass(frozen=True, slots=True)
class Mesh:
    """Triangles.

    Parameters
    ----------
    points
        Of shape (n, 3) [mm].
    corners
        Of shape (m, 3): numbers of points, counter-clockwise seen from outside.
    """

    points: Points
    corners: Corners


def part_mesh(part: Part) -> Mesh:
    """A part as triangles: x along its length, y its width, z its thickness [mm]."""
    mesh = part_solid(part).to_mesh()
    points = np.ascontiguousarray(mesh.vert_properties[:, :3], np.float32)
    return Mesh(points, np.ascontiguousarray(mesh.tri_verts, np.uint32))


def part_solid(part: Part) -> manifold3d.Manifold:
    """A part as a solid in its own axes [mm]."""
    size = part.finished
    length, width, thick = (float(d.value) for d in (size.length, size.width, size.thickness))
    whole = manifold3d.Manifold.cube((length, width, thick))
    cutters = [cutter for feature in part.features for cutter in _cutters(part, feature)]
    if not cutters:
        return whole
    return manifold3d.Manifold.batch_boolean([whole, *cutters], manifold3d.OpType.Subtract)


def _cutters(part: Part, feature: Cut | Bores) -> Iterator[manifold3d.Manifold]:
    if isinstance(feature, Bores):
        yield from _holes(part, feature)
    elif feature.kind in ("mitre", "clip"):
        yield _corner(part, feature)
    elif feature.kind == "bevel":
        yield _bevel(part, feature)
    elif feature.is_square:
        yield _block(part, feature)


def _block(part: Part, cut: Cut) -> manifold3d.Manifold:
    """What a square cut takes out."""
    size = part.finished
    length, width, thick = (float(d.value) for d in (size.length, size.width, size.thickness))
    at, wide, deep = (float(d.value) for d in (cut.at, cut.width, cut.depth))
    start = None if cut.start is None else float(cut.start.value)
    end = None if cut.end is None else float(cut.end.value)
    if cut.edge is not None:
        low = thick - at - wide if cut.datum == "t1" else at
        across = (width - deep, width) if cut.edge == "w1" else (0.0, deep)
        spans = [_run(start, end, length), across, (low, low + wide)]
    else:
        other = width if cut.runs == "l" else length
        low = other - at - wide if cut.datum[1] == "1" else at
        face = (thick - deep, thick) if cut.face == "A" else (0.0, deep)
        run = _run(start, end, length if cut.runs == "l" else width)
        own = (low, low + wide)
        spans = [run, own, face] if cut.runs == "l" else [own, run, face]
    return _box([_reaching(span, full) for span, full in zip(spans, (length, width, thick),
                                                             strict=True)])  # fmt: skip


def _run(start: float | None, end: float | None, full: float) -> tuple[float, float]:
    return (0.0 if start is None else start, full if end is None else end)


def _reaching(span: tuple[float, float], full: float) -> tuple[float, float]:
    """A cut that ends at the outside reaches a little further."""
    low, high = span
    return (low - _OVER if low <= 0 else low, high + _OVER if high >= full else high)


def _box(spans: list[tuple[float, float]]) -> manifold3d.Manifold:
    lows, sizes = zip(*((low, max(high - low, 0.0)) for low, high in spans), strict=True)
    return manifold3d.Manifold.cube(sizes).translate(lows)


def _corner(part: Part, cut: Cut) -> manifold3d.Manifold:
    """The corner that a mitre takes off an end and w1, or a clip off an end and w0."""
    size = part.finished
    length, width, thick = (float(d.value) for d in (size.length, size.width, size.thickness))
    leg = float(cut.width.value)
    at_far = cut.datum == "l1"
    x = length if at_far else 0.0
    inward = -leg if at_far else leg
    out = _OVER if at_far else -_OVER
    edge, into, past = (width, -leg, _OVER) if cut.kind == "mitre" else (0.0, leg, -_OVER)
    outline = [(x + out, edge + past), (x + inward, edge + past), (x + inward, edge),
               (x, edge + into), (x + out, edge + into)]  # fmt: skip
    if _area(outline) < 0:
        outline.reverse()
    section = manifold3d.CrossSection([outline])
    return section.extrude(thick + 2 * _OVER).translate((0.0, 0.0, -_OVER))


def _bevel(part: Part, cut: Cut) -> manifold3d.Manifold:
    """The corner that a bevel takes off a long edge and face A, from end to end."""
    size = part.finished
    length, width, thick = (float(d.value) for d in (size.length, size.width, size.thickness))
    edge, inward = (width, -1.0) if cut.datum == "w1" else (0.0, 1.0)
    reach = inward * (thick + _OVER)
    out = edge - inward * _OVER
    outline = [(out, -_OVER), (edge + reach, thick + _OVER), (out, thick + _OVER)]
    if _area(outline) < 0:
        outline.reverse()
    prism = manifold3d.CrossSection([outline]).extrude(length + 2 * _OVER)
    # Its own x, y and z are the part's width, thickness and length.
    return prism.transform([[0.0, 0.0, 1.0, -_OVER], [1.0, 0.0, 0.0, 0.0], [0.0, 1.0, 0.0, 0.0]])


def _area(outline: list[tuple[float, float]]) -> float:
    pairs = zip(outline, outline[1:] + outline[:1], strict=True)
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in pairs) / 2


def _holes(part: Part, bores: Bores) -> Iterator[manifold3d.Manifold]:
    size = part.finished
    length, width, thick = (d.value for d in (size.length, size.width, size.thickness))
    radius = float(bores.diameter.value) / 2
    deep = float(thick if bores.depth is None else bores.depth.value)
    if bores.kind == "pocket":
        return  # slanting holes of the jig: their screws are drawn on the card
    for along, across in bores.places:
        x = _from(bores.datum_l, along.value, length)
        y = _from(bores.datum_w, across.value, width)
        z = float(thick) - deep if bores.face == "A" else -_OVER
        hole = manifold3d.Manifold.cylinder(deep + _OVER, radius, radius, _ROUND)
        yield hole.translate((x, y, z))


def _from(datum: str, at: Fraction, full: Fraction) -> float:
    return float(full - at) if datum[1] == "1" else float(at)
