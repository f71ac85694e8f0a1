"""Concealed slides: the recess of the bottom, rear notches and hook holes by their sheet."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Drawer
from casewright.casework.features import Cut
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Solid
from casewright.hardware import UndermountSheet

__all__ = ["check_undermount"]


def check_undermount(case: Assembled, drawer: Drawer, sheet: UndermountSheet) -> Iterator[Failure]:
    """Every number of the sheet that the box does not keep."""
    own = [case.solids[path] for path in drawer.parts]
    length, base = case.units.length, case.units.of(drawer.y)
    for solid in own:
        if solid.part.role == "drawer bottom":
            off = abs(length(solid.outer.y0 - base) - sheet.recess.value)
            if off:
                says = f"the bottom of {drawer.title} is not recessed as its slides want"
                yield Failure("drawers", (solid.part.path, drawer.path), says, off)
        if solid.part.role == "drawer side":
            over = solid.part.finished.thickness.value - sheet.thickest.value
            if over > 0:
                says = f"a side of {drawer.title} is too thick for its slides"
                yield Failure("drawers", (solid.part.path, drawer.path), says, over)
    backs = [s for s in own if s.part.path.endswith("back_end")]
    sides = sorted((s.outer for s in own if s.part.role == "drawer side"), key=lambda b: b.x0)
    for back in backs:
        if len(sides) == 2:
            inner = (length(sides[0].x1), length(sides[1].x0))
            yield from _check_notches(case, drawer, back, sheet, inner)
            yield from _check_hooks(case, drawer, back, sheet, inner)


def _check_notches(
    case: Assembled,
    drawer: Drawer,
    back: Solid,
    sheet: UndermountSheet,
    inner: tuple[Fraction, Fraction],
) -> Iterator[Failure]:
    length, base = case.units.length, _lower_edge(case, drawer)
    found = []
    for cut in back.part.features:
        if isinstance(cut, Cut) and cut.kind == "notch":
            room = back.box(back.cuts[cut.path])
            found.append((length(room.x0), length(room.x1), length(room.y1) - base))
    wide, high = sheet.notch_width.value, sheet.notch_height.value
    right = sorted(found)
    if len(right) != 2:
        says = f"the back of {drawer.title} has not two rear notches"
        yield Failure("drawers", (back.part.path, drawer.path), says)
        return
    off = max(abs(right[0][1] - inner[0] - wide), abs(inner[1] - right[1][0] - wide),
              *(abs(each[2] - high) for each in right))  # fmt: skip
    if off:
        says = f"the rear notches of {drawer.title} are not those of its slides"
        yield Failure("drawers", (back.part.path, drawer.path), says, off)


def _lower_edge(case: Assembled, drawer: Drawer) -> Fraction:
    """Case height of a drawer's lower edge [mm]."""
    return case.units.length(case.units.of(drawer.y))


def _check_hooks(
    case: Assembled,
    drawer: Drawer,
    back: Solid,
    sheet: UndermountSheet,
    inner: tuple[Fraction, Fraction],
) -> Iterator[Failure]:
    length, base = case.units.length, _lower_edge(case, drawer)
    wanted = {
        (inner[0] + sheet.hook_in.value, base + sheet.hook_up.value),
        (inner[1] - sheet.hook_in.value, base + sheet.hook_up.value),
    }
    rows = [r for r in case.rows.get(back.part.path, ()) if r.bores.kind == "slide hook"]
    spots = set()
    for row in rows:
        facing = back.way("t1" if row.bores.face == "A" else "t0")
        size = (length(2 * row.holes[0].radius), length(row.holes[0].high - row.holes[0].low))
        right = (sheet.hook.value, sheet.hook_depth.value)
        if str(facing) != "-z" or size != right:
            says = f"the hook holes of {drawer.title} are not those of its slides"
            yield Failure("drawers", (row.bores.path, drawer.path), says)
        for hole in row.holes:
            x, y, _ = back.point((hole.length, hole.width, 0))
            spots.add((length(x), length(y)))
    if spots != wanted:
        says = f"the hooks of {drawer.title} do not meet their holes"
        yield Failure("drawers", (back.part.path, drawer.path), says)
