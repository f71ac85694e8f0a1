"""Drawers: boxes as their slides' sheet wants them, level and alike on both sides, free to run."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.cases import Drawer, Front
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.drawer_slides import check_box_holes, check_slide_holes
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.undermounts import check_undermount
from casewright.casework.proof.units import apart
from casewright.geometry import Box
from casewright.geometry.box import Number
from casewright.hardware import HardwareList, SlideSheet

__all__ = ["check_drawers"]


def check_drawers(case: Assembled, hardware: HardwareList | None) -> Iterator[Failure]:
    """Every drawer that is not the box it says, or that its slides do not take.

    Parameters
    ----------
    hardware
        Data sheets; without them boxes are held against their case only.
    """
    for drawer in case.model.drawers:
        own = [s for s in case.solids.values() if s.part.front == drawer.path]
        if {solid.part.path for solid in own} != set(drawer.parts) or not own:
            says = f"{drawer.title} does not name its own parts"
            yield Failure("drawers", (drawer.path,), says)
            continue
        yield from _check_box(case, drawer, own)
        if drawer.front:
            yield from _check_front(case, drawer)
        if hardware is None:
            continue
        under = drawer.slides == "undermount"
        sheet: SlideSheet = hardware.undermount if under else hardware.slide
        yield from _check_air(case, drawer, own, sheet)
        yield from _check_room(case, drawer, own, sheet)
        yield from check_slide_holes(case, drawer, sheet)
        yield from check_box_holes(case, drawer, sheet)
        if not drawer.front:
            yield from _check_open_doors(case, drawer, hardware)
        if under:
            yield from check_undermount(case, drawer, hardware.undermount)


def _check_open_doors(
    case: Assembled, drawer: Drawer, hardware: HardwareList
) -> Iterator[Failure]:
    """What carries a roll-out's slides stands clear of its doors at a right angle.

    A leaf then reaches into the opening from its closed edge by its thickness, less what its
    hinge takes it out (`stand_off`).
    """
    of = case.units.of
    walls = sorted((case.solids[path].outer for path in _carriers(case, drawer)),
                   key=lambda each: each.x0)  # fmt: skip
    if len(walls) != 2:
        return
    out = case.units.down(hardware.hinge.stand_off.value)
    for door in (d for d in case.model.doors if d.opening == drawer.opening):
        if door.y.value >= drawer.y.value + drawer.height.value:
            continue
        left = door.hinge_side == "left"
        edge = of(door.x) if left else of(door.x) + of(door.width)
        into = edge + of(door.thickness) - out if left else edge - of(door.thickness) + out
        wall = walls[0].x1 if left else walls[1].x0
        off = into - wall if left else wall - into
        if off > 0:
            yield _failure(case, drawer, f"the open {door.title} stands in its way", off)


def _failure(case: Assembled, drawer: Drawer, says: str, off: Number = 0) -> Failure:
    return Failure("drawers", (drawer.path,), f"{drawer.title}: {says}", case.units.length(off))


def _sides(own: list[Solid]) -> list[Box]:
    sides = [solid.outer for solid in own if solid.part.role == "drawer side"]
    return sorted(sides, key=lambda box: box.x0)


def _check_box(case: Assembled, drawer: Drawer, own: list[Solid]) -> Iterator[Failure]:
    """The parts fill the box that the drawer says it is."""
    of = case.units.of
    x, y, z = of(drawer.x), of(drawer.y), of(drawer.z)
    box = Box(
        x, x + of(drawer.width), y, y + of(drawer.height), z, z + of(drawer.depth)
    )  # fmt: skip
    off = max(apart(a, b) for a, b in zip(box, case.extent(own), strict=True))
    if off:
        yield _failure(case, drawer, "its parts do not fill its box", off)
    if of(drawer.depth) != of(drawer.slide_length):
        off = apart(of(drawer.depth), of(drawer.slide_length))
        yield _failure(case, drawer, "the box is not as long as its slides", off)
    sides = _sides(own)
    if len(sides) != 2:
        yield _failure(case, drawer, "it has not two sides")
        return
    off = apart(sides[1].x0 - sides[0].x1, of(drawer.inside_width))
    if off:
        yield _failure(case, drawer, "the inside width is not what it says", off)
    for solid in own:
        if solid.part.role != "drawer bottom":
            off = max(apart(solid.outer.y0, box.y0), apart(solid.outer.y1, box.y1))
            if off:
                yield _failure(case, drawer, f"{solid.part.title} is not flush", off)


def _check_front(case: Assembled, drawer: Drawer) -> Iterator[Failure]:
    """Its front is fixed to it, and covers it on all sides."""
    of = case.units.of
    front = next((f for f in case.model.fronts if f.path == drawer.front), None)
    fixed = any(
        joint.form == "face" and joint.one.part in (front.parts if front else ())
        and joint.other.part in drawer.parts
        for joint in case.joints
    )  # fmt: skip
    if front is None or not fixed:
        yield _failure(case, drawer, "it has no front")
        return
    yield from _check_pull(case, drawer, front)
    x, y = of(front.x), of(front.y)
    out = max(
        x - of(drawer.x), of(drawer.x) + of(drawer.width) - x - of(front.width),
        y - of(drawer.y), of(drawer.y) + of(drawer.height) - y - of(front.height),
    )  # fmt: skip
    if out > 0:
        yield _failure(case, drawer, "its box stands out beside its front", out)


def _check_pull(case: Assembled, drawer: Drawer, front: Front) -> Iterator[Failure]:
    """Each hole of its pull goes on through its box, where that lies behind it."""
    pulls = [hole for path in front.parts for hole in _circles(case, path, "pull")]
    holes = [hole for path in drawer.parts for hole in _circles(case, path, "pull play")]
    ends = [case.solids[p] for p in drawer.parts if case.solids[p].part.role == "box front"]
    behind = [solid.box(piece) for solid in ends for piece in solid.wood]
    for x, y, radius in pulls:
        inside = any((x - a) ** 2 + (y - b) ** 2 <= (r - radius) ** 2 and r >= radius
                     for a, b, r in holes)  # fmt: skip
        reach = 2 * radius
        met = any(
            box.x0 < x - reach and x + reach < box.x1 and box.y0 < y - reach
            and y + reach < box.y1
            for box in behind
        )  # fmt: skip
        if met and holes and not inside:
            yield _failure(case, drawer, "a hole for its pull does not go on through its box")
    if len(holes) not in (0, len(pulls)):
        yield _failure(case, drawer, "it has not a hole for each of its pulls' screws")


def _circles(case: Assembled, path: str, kind: str) -> list[tuple[int, int, int]]:
    """Holes of a kind seen from the front: x, y and radius [unit]."""
    solid = case.solids[path]
    return [
        (*solid.point((hole.length, hole.width, 0))[:2], hole.radius)
        for row in case.rows.get(path, ())
        if row.bores.kind == kind
        for hole in row.holes
    ]


def _carriers(case: Assembled, drawer: Drawer) -> set[str]:
    """The sides, or the pads on them, that its slides are screwed to."""
    return {
        path
        for path, rows in case.rows.items()
        if any(row.bores.path in drawer.bores for row in rows)
    }


def _check_air(
    case: Assembled, drawer: Drawer, own: list[Solid], sheet: SlideSheet
) -> Iterator[Failure]:
    """What the slides take beside the box, alike on both sides."""
    length = case.units.length
    walls = sorted((case.solids[path].outer for path in _carriers(case, drawer)),
                   key=lambda box: box.x0)  # fmt: skip
    sides = _sides(own)
    if len(walls) != 2 or len(sides) != 2:
        return
    left, right = sides[0].x0 - walls[0].x1, walls[1].x0 - sides[1].x1
    if left != right:
        yield _failure(case, drawer, "there is not as much air at both sides", apart(left, right))
    if drawer.slides == "undermount":
        real, wanted = length(walls[1].x0 - walls[0].x1 - sides[1].x0 + sides[0].x1), 1
    else:
        real, wanted = length(left + right), 2
    over = real - wanted * sheet.air.value
    if not 0 <= over <= sheet.play.value:
        says = f"{drawer.title}: its slides do not take the air beside its box"
        off = -over if over < 0 else over - sheet.play.value
        yield Failure("drawers", (drawer.path,), says, off)
    if drawer.slide_length.value not in {size.value for size in sheet.lengths}:
        yield _failure(case, drawer, "there are no slides of its length")


def _check_room(
    case: Assembled, drawer: Drawer, own: list[Solid], sheet: SlideSheet
) -> Iterator[Failure]:
    """Under the box and behind the slides is the room that the sheet asks for."""
    length = case.units.length
    box = case.extent(own)
    end = case.plane_of_slides(drawer) - case.units.of(drawer.slide_length)
    for solid in case.box_solids:
        other = solid.outer
        across = other.x0 < box.x1 and box.x0 < other.x1
        if across and other.z0 < box.z1 and box.z0 < other.z1 and other.y1 <= box.y0:
            off = sheet.below.value - length(box.y0 - other.y1)
            if off > 0:
                says = f"{drawer.title}: too little room over the {solid.part.title}"
                yield Failure("drawers", (drawer.path, solid.part.path), says, off)
        if across and other.y0 < box.y1 and box.y0 < other.y1 and other.z1 <= box.z0:
            off = sheet.behind.value + sheet.front.value - length(end - other.z1)
            if off > 0:
                says = f"{drawer.title}: too little room before the {solid.part.title}"
                yield Failure("drawers", (drawer.path, solid.part.path), says, off)
