"""Cuts lie in their parts and take wood away; parts have a size."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.features import Cut
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.units import Units, apart
from casewright.geometry import Box, subtract
from casewright.geometry.box import Number

__all__ = ["check_cuts"]

_THROUGH = ("notch", "finger", "trim", "cutout")


def check_cuts(case: Assembled) -> Iterator[Failure]:
    """Every part without a size, every cut that is not a cut of its part."""
    for solid in case.solids.values():
        part = solid.part
        if min(solid.size) <= 0:
            yield Failure("parts", (part.path,), f"{part.title} would have no size left")
            continue
        if solid.cuts:
            yield from _check_part(solid, case.units)


def _check_part(solid: Solid, units: Units) -> Iterator[Failure]:
    left = [Box(0, solid.size[0], 0, solid.size[1], 0, solid.size[2])]
    for cut in solid.part.features:
        if not isinstance(cut, Cut) or not cut.is_square:
            continue
        hollow = solid.cuts[cut.path]
        paths = (cut.path, solid.part.path)
        out = _out_of(hollow, solid.size)
        if out:
            yield Failure("cuts", paths, f"the {cut.kind} runs out of the part", units.length(out))
        yield from _check_depth(cut, hollow, solid, units)
        if hollow.is_empty or not any(piece.meets(hollow) for piece in left):
            yield Failure("cuts", paths, f"the {cut.kind} takes no wood away")
        left = [rest for piece in left for rest in subtract(piece, (hollow,))]
    if not left:
        yield Failure("cuts", (solid.part.path,), "the cuts leave nothing of the part")


def _check_depth(cut: Cut, hollow: Box, solid: Solid, units: Units) -> Iterator[Failure]:
    """A notch or a slot goes right through; any other cut leaves wood under it."""
    thickness = solid.size[2]
    deep = hollow.z1 - hollow.z0
    paths = (cut.path, solid.part.path)
    if cut.kind in _THROUGH:
        if deep != thickness:
            off = units.length(apart(thickness, deep))
            says = f"the {cut.kind} is not as deep as the part is thick"
            yield Failure("cuts", paths, says, off)
    elif deep >= thickness:
        off = units.length(deep - thickness)
        yield Failure("cuts", paths, f"the {cut.kind} cuts the part in two", off)


def _out_of(hollow: Box, size: tuple[int, int, int]) -> Number:
    """How far a cut reaches out of its part [unit]."""
    length, width, thickness = size
    return max(
        0, -hollow.x0, hollow.x1 - length, -hollow.y0, hollow.y1 - width,
        -hollow.z0, hollow.z1 - thickness,
    )  # fmt: skip
