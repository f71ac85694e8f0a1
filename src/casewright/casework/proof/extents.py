"""Far faces: the parts of the box end on its width, height and depth."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.features import Plane
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.units import apart
from casewright.geometry.box import Number

__all__ = ["check_extents"]

_AT_FLOOR = "floor cleat"
"""What stands on the floor under a box that panels carry."""


def check_extents(case: Assembled, grid: Fraction) -> Iterator[Failure]:
    """Width, height and depth against the parts' far faces, and against what was asked for.

    Parameters
    ----------
    grid
        How far rounding to the cutting grid may move a size off what was asked for [mm].
    """
    model, units = case.model, case.units
    key = model.key
    box = case.extent([s for s in case.box_solids
                       if s.part.role != _AT_FLOOR and not s.part.turned])  # fmt: skip
    sizes = (model.width, model.height, model.depth)
    for axis, (word, size, wanted) in enumerate(
        zip(("width", "height", "depth"), sizes, model.wanted, strict=True)
    ):
        low, high = box[2 * axis], box[2 * axis + 1]
        begins = units.of(model.standing) if axis == 1 else 0
        if low != begins:
            off = units.length(apart(low, begins))
            yield Failure("size", (key,), f"the parts do not begin where the {word} begins", off)
        if high != units.of(size):
            off = units.length(apart(high, units.of(size)))
            yield Failure("size", (key,), f"the parts do not end on the {word} of the case", off)
        off = abs(size.value - wanted.value)
        if off > grid:
            yield Failure("size", (key,), f"the {word} is not the one asked for", off)
    if model.mouth is None:
        yield from _check_sides(case)
    yield from _check_overall(case)
    yield from _check_floor(case)


def _check_floor(case: Assembled) -> Iterator[Failure]:
    """What holds the feet of panels stands on the floor, against the wall."""
    for path, solid in case.solids.items():
        off = max(apart(solid.outer.y0, 0), apart(solid.outer.z0, 0))
        if solid.part.role == _AT_FLOOR and off:
            says = f"{solid.part.title} does not stand on the floor at the wall"
            yield Failure("size", (path,), says, case.units.length(off))


def _check_sides(case: Assembled) -> Iterator[Failure]:
    """Each side by itself reaches the planes of the case that nothing else gives it."""
    model, units = case.model, case.units
    joined = {(s.part, s.plane) for joint in case.joints for s in (joint.one, joint.other)}
    for path, solid in case.solids.items():
        box = solid.outer
        if model.is_plinth and solid.part.role == "plinth rail":
            off = max(apart(box.y1, units.of(model.height)), apart(box.y0, 0))
            if off:
                says = f"{solid.part.title} is not as high as its plinth"
                yield Failure("size", (path,), says, units.length(off))
        if solid.part.role != "side":
            continue
        planes: tuple[tuple[Plane, Number, int], ...] = (
            ("l1", box.y1, units.of(model.height)),
            ("w0", box.z1, units.of(model.depth)),
            ("l0", box.y0, units.of(model.standing)),
            ("w1", box.z0, 0),
        )
        for plane, real, wanted in planes:
            if real != wanted and (path, plane) not in joined:
                off = units.length(apart(real, wanted))
                says = f"{solid.part.title} does not reach the outside of the case"
                yield Failure("size", (path,), says, off)


def _check_overall(case: Assembled) -> Iterator[Failure]:
    model, units = case.model, case.units
    box = case.extent([s for s in case.case_solids if not s.part.turned])
    off = apart(box.x1 - box.x0, units.of(model.overall_width))
    if off:
        says = "the parts are not as wide together as the overall width"
        yield Failure("size", (model.key,), says, units.length(off))
