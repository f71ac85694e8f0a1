"""Far faces: the parts of the box end on its width, height and depth."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.units import apart

__all__ = ["check_extents"]


def check_extents(case: Assembled, grid: Fraction) -> Iterator[Failure]:
    """Width, height and depth against the parts' far faces, and against what was asked for.

    Parameters
    ----------
    grid
        How far rounding to the cutting grid may move a size off what was asked for [mm].
    """
    model, units = case.model, case.units
    key = model.key
    box = case.extent(case.box_solids)
    sizes = (model.width, model.height, model.depth)
    for axis, (word, size, wanted) in enumerate(
        zip(("width", "height", "depth"), sizes, model.wanted, strict=True)
    ):
        low, high = box[2 * axis], box[2 * axis + 1]
        if low:
            off = units.length(apart(low, 0))
            yield Failure("size", (key,), f"the parts do not begin where the {word} begins", off)
        if high != units.of(size):
            off = units.length(apart(high, units.of(size)))
            yield Failure("size", (key,), f"the parts do not end on the {word} of the case", off)
        off = abs(size.value - wanted.value)
        if off > grid:
            yield Failure("size", (key,), f"the {word} is not the one asked for", off)
    yield from _check_overall(case)


def _check_overall(case: Assembled) -> Iterator[Failure]:
    model, units = case.model, case.units
    doors = {front.path for front in model.fronts}
    box = case.extent([s for s in case.solids.values() if s.part.front not in doors])
    off = apart(box.x1 - box.x0, units.of(model.overall_width))
    if off:
        says = "the parts are not as wide together as the overall width"
        yield Failure("size", (model.key,), says, units.length(off))
