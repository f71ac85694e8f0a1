"""Shelf pins: every hole has one across from it, and shelves lie on their pins."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.holes import Row
from casewright.casework.proof.solids import Solid
from casewright.hardware import PinSheet

__all__ = ["check_pins"]

_Spot = tuple[int, ...]


class _PinRow(NamedTuple):
    """A row in case axes: the way it faces, where its face lies, its holes by height and depth."""

    row: Row
    part: str
    sign: int
    face: int
    spots: frozenset[_Spot]
    heights: frozenset[int]


def check_pins(case: Assembled, sheet: PinSheet | None) -> Iterator[Failure]:
    """Pin holes without a partner, and shelves that lie on none.

    Parameters
    ----------
    sheet
        Data sheet of the pins; without one the size of the holes is not checked.
    """
    rows = [
        _in_case(case.solids[path], row)
        for path, rows in case.rows.items()
        for row in rows
        if row.bores.kind == "shelf pins"
    ]
    if rows:
        if case.model.mouth is None:
            yield from _check_facing(case, rows)
        yield from _check_level(case, rows)
        yield from _check_row(case, rows, sheet)
    yield from _check_shelves(case, rows)


def _in_case(solid: Solid, row: Row) -> _PinRow:
    facing = solid.way("t1" if row.bores.face == "A" else "t0")
    mouth = solid.size[2] if row.bores.face == "A" else 0
    points = [solid.point((h.length, h.width, mouth)) for h in row.holes]
    first = row.holes[0]
    size = (first.radius, first.high - first.low)
    across = solid.way("w1").axis
    spots = frozenset((point[1], point[across], *size) for point in points)
    sign = facing.sign if facing.axis == 0 else 0
    return _PinRow(
        row, solid.part.path, sign, points[0][0], spots, frozenset(p[1] for p in points)
    )


def _check_facing(case: Assembled, rows: list[_PinRow]) -> Iterator[Failure]:
    for one in rows:
        across = [o for o in rows if one.sign and o.sign == -one.sign
                  and (o.face - one.face) * one.sign > 0]  # fmt: skip
        partners = frozenset[_Spot]().union(*(o.spots for o in across))
        lost = one.spots - partners
        if lost:
            near = min((_apart(a, b) for a in lost for b in partners), default=0)
            says = "pin holes have none across from them at the same height and depth"
            yield Failure("pins", (one.row.bores.path, one.part), says, case.units.length(near))


def _apart(one: _Spot, other: _Spot) -> int:
    return max(abs(a - b) for a, b in zip(one, other, strict=True))


def _check_level(case: Assembled, rows: list[_PinRow]) -> Iterator[Failure]:
    """In one side every height has a hole in front and one behind."""
    for one in rows:
        beside = [o for o in rows if o.part == one.part and o is not one]
        others = frozenset[int]().union(*(o.heights for o in beside))
        lost = one.heights - others
        if lost:
            near = min((abs(a - b) for a in lost for b in others), default=0)
            says = "pin holes in front and behind are not level"
            yield Failure("pins", (one.row.bores.path, one.part), says, case.units.length(near))


def _check_row(case: Assembled, rows: list[_PinRow], sheet: PinSheet | None) -> Iterator[Failure]:
    """Rows are plumb, their holes as large and as deep as the pins want."""
    for one in rows:
        paths = (one.row.bores.path, one.part)
        lines = sorted({spot[1] for spot in one.spots})
        if len(lines) > 1:
            off = case.units.length(lines[-1] - lines[0])
            yield Failure("pins", paths, "pin holes of a row are not in line", off)
        first = one.row.holes[0]
        if sheet is not None:
            wide = abs(case.units.length(2 * first.radius) - sheet.hole.value)
            deep = abs(case.units.length(first.high - first.low) - sheet.depth.value)
            if wide or deep:
                yield Failure("pins", paths, "pin holes are not the pins' size", max(wide, deep))


def _check_shelves(case: Assembled, rows: list[_PinRow]) -> Iterator[Failure]:
    tops = sorted({spot[0] + spot[2] for row in rows for spot in row.spots})
    for solid in case.solids.values():
        if solid.part.role != "shelf":
            continue
        under = int(solid.outer.y0)
        if under not in tops:
            near = min((abs(under - top) for top in tops), default=0)
            says = f"{solid.part.title} does not lie on its pins"
            yield Failure("pins", (solid.part.path,), says, case.units.length(near))
        elif case.model.mouth is None and not _carried(solid, rows):
            says = f"{solid.part.title} does not reach over its pins"
            yield Failure("pins", (solid.part.path,), says)


def _carried(solid: Solid, rows: list[_PinRow]) -> bool:
    """Whether every pin at the shelf's height lies under it."""
    box = solid.outer
    return all(
        box.z0 <= z - radius and z + radius <= box.z1
        for row in rows
        for y, z, radius, _ in row.spots
        if y + radius == box.y0
    )
