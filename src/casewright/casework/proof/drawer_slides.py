"""Holes of slides: level, alike on both sides, where the sheet has them."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Drawer
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.holes import Row
from casewright.casework.proof.solids import Solid
from casewright.hardware import LAST_HOLE, SlideSheet

__all__ = ["check_box_holes", "check_slide_holes"]

_Spot = tuple[Fraction, Fraction]


def check_slide_holes(case: Assembled, drawer: Drawer, sheet: SlideSheet) -> Iterator[Failure]:
    """Holes in the case's sides: on the drawer's line, behind the front as the sheet says."""
    found = _rows(case, "side") | _rows(case, "pad") | _rows(case, "partition")
    wanted = {
        (sheet.line.value, sheet.front.value + hole.value)
        for hole in sheet.holes
        if hole.value + LAST_HOLE <= drawer.slide_length.value
    }
    for path, inward in zip(drawer.bores, ("+x", "-x"), strict=True):
        solid, row = found.get(path, (None, None))
        if solid is None or row is None:
            yield Failure("drawers", (path, drawer.path), f"a slide of {drawer.title} lacks holes")
            continue
        facing = solid.way("t1" if row.bores.face == "A" else "t0")
        if str(facing) != inward:
            says = f"the holes of a slide of {drawer.title} are in the wrong face"
            yield Failure("drawers", (path, drawer.path), says)
        yield from _check_spots(case, drawer, solid, row, wanted)
        yield from _check_bit(case, drawer, solid, row, sheet)


def check_box_holes(case: Assembled, drawer: Drawer, sheet: SlideSheet) -> Iterator[Failure]:
    """Holes in the box's own sides, on the same line.

    One that would come out where front or back go into the side may be left out.
    """
    found = _rows(case, "drawer side")
    # The inner member of a roll-out begins at the front of its box, which is as far in.
    wanted = {
        (sheet.line.value, sheet.front.value + hole.value)
        for hole in sheet.box_holes
        if hole.value + LAST_HOLE <= drawer.slide_length.value
    }
    for path in drawer.parts:
        if case.solids[path].part.role != "drawer side":
            continue
        rows = [(s, row) for s, row in found.values() if s.part.path == path]
        if bool(rows) != bool(wanted):
            says = f"a side of {drawer.title} lacks its holes for the slide"
            yield Failure("drawers", (path, drawer.path), says)
        for solid, row in rows:
            outward = "-x" if solid.part.hand == "left" else "+x"
            if str(solid.way("t1" if row.bores.face == "A" else "t0")) != outward:
                says = f"the holes of a slide of {drawer.title} are inside its box"
                yield Failure("drawers", (path, drawer.path), says)
            lacking = wanted - set(_spots(case, drawer, solid, row))
            left_out = set(_at_corners(case, drawer, lacking, row)) if lacking else lacking
            yield from _check_spots(case, drawer, solid, row, wanted - left_out)
            yield from _check_bit(case, drawer, solid, row, sheet)


def _at_corners(case: Assembled, drawer: Drawer, lacking: set[_Spot], row: Row) -> Iterator[_Spot]:
    """Spots, of those that are not bored, as deep in the box as its front or its back lies."""
    units, front, half = case.units, case.plane_of_slides(drawer), row.holes[0].radius
    pieces = (case.solids[path] for path in drawer.parts)
    ends = [each.outer for each in pieces if each.part.role in ("box front", "drawer back")]
    for spot in lacking:
        z = front - units.down(spot[1])
        if any(end.z0 < z + half and z - half < end.z1 for end in ends):
            yield spot


def _rows(case: Assembled, role: str) -> dict[str, tuple[Solid, Row]]:
    return {
        row.bores.path: (case.solids[path], row)
        for path, rows in case.rows.items()
        for row in rows
        if row.bores.kind == "slide" and case.solids[path].part.role == role
    }


def _check_spots(
    case: Assembled, drawer: Drawer, solid: Solid, row: Row, wanted: set[_Spot]
) -> Iterator[Failure]:
    spots = set(_spots(case, drawer, solid, row))
    if spots != wanted:
        off = max((min((max(abs(a - c), abs(b - d)) for c, d in wanted), default=Fraction(0))
                   for a, b in spots), default=Fraction(0))  # fmt: skip
        says = f"the holes of a slide of {drawer.title} are not where its sheet has them"
        yield Failure("drawers", (row.bores.path, drawer.path), says, off)


def _spots(case: Assembled, drawer: Drawer, solid: Solid, row: Row) -> Iterator[_Spot]:
    """How far each hole lies above the box's edge and behind the plane of the slides [mm]."""
    units, front = case.units, case.plane_of_slides(drawer)
    for hole in row.holes:
        _, y, z = solid.point((hole.length, hole.width, 0))
        yield units.length(y - units.of(drawer.y)), units.length(front - z)


def _check_bit(
    case: Assembled, drawer: Drawer, solid: Solid, row: Row, sheet: SlideSheet
) -> Iterator[Failure]:
    """The sheet's diameter; its depth, or two thirds of a thinner board."""
    length = case.units.length
    first = row.holes[0]
    deep = min(sheet.depth.value, solid.part.finished.thickness.value * 2 / 3)
    off = max(abs(length(2 * first.radius) - sheet.hole.value),
              abs(length(first.high - first.low) - deep))  # fmt: skip
    if off:
        says = f"the holes of a slide of {drawer.title} are not its screws' size"
        yield Failure("drawers", (row.bores.path, drawer.path), says, off)
