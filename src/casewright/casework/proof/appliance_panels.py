"""Panels of appliances: in the middle of the opening, within the sheet, screws where it asks."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.units import apart
from casewright.casework.specs import PanelSheet
from casewright.geometry import Box

__all__ = ["check_appliance_panel"]


def check_appliance_panel(case: Assembled) -> Iterator[Failure]:
    """A panel that does not stand free in its opening, or does not suit its appliance."""
    sheet = case.model.spec.panel
    if sheet is None:
        return
    box = case.extent(list(case.solids.values()))
    yield from _check_place(case, box)
    yield from _check_limits(case, sheet, box)
    slab = case.solids[case.model.fronts[0].parts[0]]
    yield from _check_screws(case, sheet, slab)


def _check_place(case: Assembled, box: Box) -> Iterator[Failure]:
    """Both gaps alike; between the line it begins at and the counter; in the plane of fronts."""
    model, of = case.model, case.units.of
    [face] = model.faces
    wide, tall, deep = of(model.width), of(model.height), of(model.depth)
    planes = {
        "the opening does not begin and end with its face": (
            (of(face.x0), 0), (of(face.x1), wide), (of(model.overall_width), wide),
            (of(face.y1), tall), (of(model.standing), 0),
        ),
        "the panel does not stand in the middle of its opening": ((box.x0, wide - box.x1),),
        "the panel's back does not lie in the plane of fronts": ((box.z0, deep),),
        "the panel's face is not where the case ends": ((box.z1, of(model.overall_depth)),),
        "the sizes are not those asked for": tuple(
            zip((of(each) for each in model.wanted), (wide, tall, deep), strict=True)
        ),
    }  # fmt: skip
    for says, pairs in planes.items():
        off = max(apart(one, other) for one, other in pairs)
        if off:
            yield Failure("size", (model.key,), says, case.units.length(off))
    out = max(-box.x0, box.x1 - wide, of(face.y0) - box.y0, box.y1 - tall)
    if out > 0:
        says = "the panel reaches out of its opening"
        yield Failure("size", (model.key,), says, case.units.length(out))


def _check_limits(case: Assembled, sheet: PanelSheet, box: Box) -> Iterator[Failure]:
    """No wider and no taller than the sheet lets it be, and off what has to stay free."""
    units = case.units
    for most, size, word in (
        (sheet.most_width, box.x1 - box.x0, "wide"),
        (sheet.most_height, box.y1 - box.y0, "tall"),
    ):
        over = 0 if most is None else size - units.up(most.value)
        if over > 0:
            says = f"the panel is too {word} for its appliance"
            yield Failure("size", (case.model.key,), says, units.length(over))
    free = 0 if sheet.free_below is None else units.down(sheet.free_below.value)
    if box.y0 < free:
        says = "the panel covers what has to stay free below it"
        yield Failure("size", (case.model.key,), says, units.length(free - box.y0))


def _check_screws(case: Assembled, sheet: PanelSheet, slab: Solid) -> Iterator[Failure]:
    """Two holes a row, as far below the upper edge and as far apart as the sheet asks."""
    units, paths = case.units, (slab.part.path,)
    rows = [row for row in case.rows.get(slab.part.path, ()) if row.bores.kind == "panel screw"]
    if sheet.screws_apart is None or sheet.screw_depth is None or not sheet.screw_rows:
        if rows:
            yield Failure("bores", paths, "holes for brackets that nobody has the sheet of")
        return
    if any(row.bores.face != "B" for row in rows):
        yield Failure("bores", paths, "the holes for the brackets are not in the panel's back")
        return
    spots = sorted(
        (units.length(slab.outer.y1 - y), units.length(2 * x - slab.outer.x0 - slab.outer.x1))
        for row in rows
        for hole in row.holes
        for x, y, _ in (slab.point((hole.length, hole.width, 0)),)
    )
    apart_by = sheet.screws_apart.value
    wanted = sorted((row.value, side * apart_by) for row in sheet.screw_rows for side in (-1, 1))
    if spots != wanted:
        yield Failure("bores", paths, "the holes for the brackets are not where the sheet wants")
    for row in rows:
        depth = row.bores.depth
        if depth is None or depth.value != sheet.screw_depth.value:
            yield Failure("bores", paths, "the holes for the brackets are not as deep as asked")
