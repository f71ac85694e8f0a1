"""Hoods: high enough over what is cooked on, no wood where liner and duct go, the face closed."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.hood_spec import HoodSpec
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.units import apart
from casewright.geometry import Box

__all__ = ["check_hood"]


def check_hood(case: Assembled, grid: int) -> Iterator[Failure]:
    """A hood that hangs too low, holds no liner, or whose face does not cover its edges.

    Parameters
    ----------
    grid
        How far rounding may move an edge of the face panel off the box [unit].
    """
    hood = case.model.spec.hood
    if hood is None:
        return
    yield from _check_height(case, hood)
    holes = dict(_holes(case))
    if set(holes) != {"bottom", "top"}:
        yield Failure(
            "cuts", (case.model.key,), "a hood has a hole for its liner and for its duct"
        )
        return
    yield from _check_liner(case, *holes["bottom"])
    yield from _check_duct(case, hood, *holes["top"])
    yield from _check_face(case, grid)


def _check_height(case: Assembled, hood: HoodSpec) -> Iterator[Failure]:
    """Its underside over the surface: no less than the sheets that are known."""
    low = hood.bottom.value + case.model.standing.value
    if hood.surface is None:
        return
    asked = [given.value for given in (hood.clear, hood.liner_clear) if given is not None]
    short = hood.surface.value + max(asked, default=low - hood.surface.value) - low
    if short > 0:
        yield Failure("size", (case.model.key,), "it hangs too low over what is cooked on", short)


def _holes(case: Assembled) -> Iterator[tuple[str, tuple[Solid, Box]]]:
    for solid in case.solids.values():
        for cut in solid.part.features:
            if cut.kind == "cutout":
                yield solid.part.role, (solid, solid.box(solid.cuts[cut.path]))


def _check_liner(case: Assembled, deck: Solid, hole: Box) -> Iterator[Failure]:
    """In the middle, with the liner's air all round; above it nothing but air."""
    liner = case.model.spec.appliance
    middle = case.units.of(case.model.width)
    off = apart(hole.x0 + hole.x1, middle)
    if off:
        says = "the liner's hole is not in the middle"
        yield Failure("cuts", (deck.part.path,), says, case.units.length(off) / 2)
    if liner is None or liner.width is None or liner.depth is None:
        return
    down = case.units.down
    wide, deep = down(liner.width.value), down(liner.depth.value)
    if hole.x1 - hole.x0 < wide or hole.z1 - hole.z0 < deep:
        yield Failure("cuts", (deck.part.path,), "the liner does not go through its hole")
    if liner.height is None:
        return
    x0, z0 = (
        hole.x0 + Fraction(hole.x1 - hole.x0 - wide, 2),
        hole.z0 + Fraction(hole.z1 - hole.z0 - deep, 2),
    )
    air = Box(
        x0, x0 + wide, deck.outer.y0, deck.outer.y0 + down(liner.height.value), z0, z0 + deep
    )
    yield from _is_free(case, air, liner.title)


def _check_duct(case: Assembled, hood: HoodSpec, top: Solid, hole: Box) -> Iterator[Failure]:
    """Where the liner's sheet puts it, as large as it says; below it nothing but air."""
    if hood.duct is None or hood.duct_back is None:
        return
    down, of = case.units.down, case.units.of
    wide, deep = (down(size.value) for size in hood.duct)
    middle = Fraction(of(case.model.width), 2)
    back = down(hood.duct_back.value)
    low = case.units.of(case.model.standing)
    spans = (
        middle - Fraction(wide, 2),
        middle + Fraction(wide, 2),
        back - Fraction(deep, 2),
        back + Fraction(deep, 2),
    )
    if spans[0] < hole.x0 or spans[1] > hole.x1 or spans[2] < hole.z0 or spans[3] > hole.z1:
        says = "the duct does not go through the hole for it"
        yield Failure("cuts", (top.part.path,), says)
    uneven = max(apart(hole.x0 + hole.x1, 2 * middle), apart(hole.z0 + hole.z1, 2 * back))
    if uneven > 1:
        says = "the duct's hole is not round the middle of the duct"
        yield Failure("cuts", (top.part.path,), says, case.units.length(uneven) / 2)
    liner = case.model.spec.appliance
    tall = 0 if liner is None or liner.height is None else down(liner.height.value)
    air = Box(*spans[:2], low + tall, top.outer.y1, *spans[2:])
    yield from _is_free(case, air, "the duct")


def _is_free(case: Assembled, air: Box, what: str) -> Iterator[Failure]:
    for path, solid in case.solids.items():
        if any(piece.meets(air) for piece in solid.pieces):
            yield Failure("size", (path,), f"{solid.part.title} stands where {what} goes")


def _check_face(case: Assembled, grid: int) -> Iterator[Failure]:
    """One board before the box, flush with it all round."""
    boards = [s for s in case.solids.values() if s.part.role == "face panel"]
    if len(boards) != 1:
        yield Failure("parts", (case.model.key,), "a hood has one face panel")
        return
    [board], of, model = boards, case.units.of, case.model
    low, high, wide = of(model.standing), of(model.height), of(model.width)
    box = board.outer
    off = max(apart(box.x0 + box.x1, wide), apart(box.y0, low), apart(box.z0, of(model.depth)))
    short = max(apart(box.x1 - box.x0, wide), apart(box.y1, high))
    if off or short > grid:
        says = "the face panel is not flush with the box"
        yield Failure("fronts", (board.part.path,), says, case.units.length(max(off, short)))
    frame = model.frame
    if frame is None or of(frame.z) + of(frame.thickness) != box.z1:
        yield Failure("size", (board.part.path,), "the face is not where the case says")
