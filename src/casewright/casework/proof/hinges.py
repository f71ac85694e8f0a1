"""Hinges: every cup has its plate at the same height on the same side, by the hinge's law."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case, Door, Hinge
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.fronts import is_inset
from casewright.casework.proof.holes import Hole, Row
from casewright.casework.proof.solids import Solid
from casewright.hardware import HingeSheet

__all__ = ["check_hinges"]

# What a hinge's side screw gives either way where no data sheet says it [mm] (common practice).
_SIDE_PLAY = Fraction(2)
# Behind an inset door plates are set to half millimetres: as far as that may be off [mm].
_SET = Fraction(1, 4)

_Bored = tuple[Solid, Row]


def check_hinges(case: Assembled, sheet: HingeSheet | None) -> Iterator[Failure]:
    """Cups and plates without a partner in line, and overlays that the hinge does not give.

    Parameters
    ----------
    sheet
        Data sheet of the hinge; without one its constant, line and pitch are not checked.
    """
    fronts = case.model.doors
    bored = {
        row.bores.path: (case.solids[path], row)
        for path, rows in case.rows.items()
        for row in rows
        if row.bores.kind in ("hinge cup", "hinge plate")
    }
    yield from _check_used(case.model, bored)
    for front in fronts:
        if not front.hinges:
            yield Failure("hinges", (front.path,), f"{front.title} hangs on no hinge")
        for hinge in front.hinges:
            cup, plate = bored.get(hinge.cup), bored.get(hinge.plate)
            if cup is None or plate is None:
                yield Failure("hinges", (hinge.path, front.path), "a hinge lacks its cup or plate")
                continue
            yield from _check_cup(case, front, hinge, cup)
            yield from _check_plate(case, front, hinge, plate, sheet)
        if sheet is not None:
            yield from _check_law(case, front, sheet)


def _check_used(case: Case, bored: dict[str, _Bored]) -> Iterator[Failure]:
    """Every cup and every plate belongs to one hinge."""
    hinges = [hinge for front in case.doors for hinge in front.hinges]
    counted = Counter([h.cup for h in hinges] + [h.plate for h in hinges])
    for path, (solid, row) in bored.items():
        if counted[path] != 1:
            says = f"holes for a {row.bores.kind} belong to {counted[path]} hinges"
            yield Failure("hinges", (path, solid.part.path), says)


def _mouths(solid: Solid, row: Row) -> list[tuple[int, int, int]]:
    face = solid.size[2] if row.bores.face == "A" else 0
    return [solid.point((hole.length, hole.width, face)) for hole in row.holes]


def _check_cup(case: Assembled, front: Door, hinge: Hinge, cup: _Bored) -> Iterator[Failure]:
    solid, row = cup
    units = case.units
    paths = (hinge.path, row.bores.path, front.path)
    facing = solid.way("t1" if row.bores.face == "A" else "t0")
    if str(facing) != "-z" or len(row.holes) != 1 or solid.part.front != front.path:
        yield Failure("hinges", paths, "a hinge's cup is not one hole in the back of its door")
        return
    ((x, y, _),) = _mouths(solid, row)
    off = abs(y - units.of(hinge.height))
    if off:
        yield Failure("hinges", paths, "a cup is not level with its plate", units.length(off))
    off = abs(y - units.of(front.y) - units.of(hinge.on_door))
    if off:
        yield Failure("hinges", paths, "a cup is not where its door says", units.length(off))
    off = abs(_edge_distance(case, front, x, row.holes[0]) - units.of(front.bore_distance))
    if off:
        says = "a cup is not bored at the bore distance from the hinge edge"
        yield Failure("hinges", paths, says, units.length(off))


def _edge_distance(case: Assembled, front: Door, x: int, hole: Hole) -> int:
    """From the door's edge on the hinge side to the near edge of the cup [unit]."""
    left = case.units.of(front.x)
    if front.hinge_side == "left":
        return x - hole.radius - left
    return left + case.units.of(front.width) - x - hole.radius


def _check_plate(
    case: Assembled, front: Door, hinge: Hinge, plate: _Bored, sheet: HingeSheet | None
) -> Iterator[Failure]:
    solid, row = plate
    units = case.units
    paths = (hinge.path, row.bores.path, front.path)
    facing = solid.way("t1" if row.bores.face == "A" else "t0")
    inward = "+x" if front.hinge_side == "left" else "-x"
    if str(facing) != inward or len(row.holes) != 2:
        yield Failure("hinges", paths, "a plate is not two holes in the side its door hangs on")
        return
    (x, low, z), (_, high, beyond) = sorted(_mouths(solid, row), key=lambda point: point[1])
    off = abs(Fraction(low + high, 2) - units.of(hinge.height))
    if off:
        says = "the middle of a plate is not at its hinge's height"
        yield Failure("hinges", paths, says, off / units.per_mm)
    if z != beyond:
        says = "the two holes of a plate are not plumb"
        yield Failure("hinges", paths, says, units.length(abs(z - beyond)))
    yield from _check_overlay(case, front, hinge, x, sheet)
    if sheet is None:
        return
    wide = abs(units.length(2 * row.holes[0].radius) - sheet.plate_hole.value)
    if wide:
        yield Failure("hinges", paths, "the holes of a plate are not the plate's size", wide)
    inset = is_inset(case, front.opening)
    framed = case.model.frame is not None
    edge = units.of(front.z) if inset else units.of(case.model.leaf_plane)
    line = sheet.plate_line.value - units.length(edge - z)
    if abs(line) > (_SET if inset or framed else 0):
        yield Failure("hinges", paths, "a plate is off its line behind the front edge", abs(line))
    pitch = sheet.plate_pitch.value - units.length(high - low)
    if pitch:
        yield Failure("hinges", paths, "the holes of a plate are off its pitch", abs(pitch))


def _check_overlay(
    case: Assembled, front: Door, hinge: Hinge, x: int, sheet: HingeSheet | None
) -> Iterator[Failure]:
    """How far the door really lies over its side, against what the hinge gives."""
    units = case.units
    left = units.of(front.x)
    real = x - left if front.hinge_side == "left" else left + units.of(front.width) - x
    play = _SIDE_PLAY if sheet is None else sheet.side_play.value
    off = abs(units.length(real - units.of(front.overlay)))
    if off > play:
        says = "the hinge's side screw cannot bring the door to its place"
        yield Failure("hinges", (hinge.path, front.path), says, off)


def _check_law(case: Assembled, front: Door, sheet: HingeSheet) -> Iterator[Failure]:
    """Overlay = constant - crank + bore distance - plate height."""
    crank = Fraction(0) if front.crank is None else front.crank.value
    given = sheet.constant.value - crank + front.bore_distance.value - front.plate_height.value
    arms = {Fraction(0), sheet.half_crank.value, sheet.inset_crank.value}
    if crank not in arms:
        yield Failure("hinges", (front.path,), "there is no arm of that crank")
    off = abs(front.overlay.value - given)
    if off:
        yield Failure("hinges", (front.path,), "the overlay is not the one the hinge gives", off)
    low, high = sheet.bore_low.value, sheet.bore_high.value
    if not low <= front.bore_distance.value <= high:
        says = "the bore distance is not one the hinge allows"
        yield Failure("hinges", (front.path,), says)
    if front.plate_height.value not in {plate.value for plate in sheet.plate_heights}:
        yield Failure("hinges", (front.path,), "there is no plate of that height")
    for path in front.parts:
        yield from _check_bit(case, path, sheet)


def _check_bit(case: Assembled, path: str, sheet: HingeSheet) -> Iterator[Failure]:
    """Cups are bored with the bit, and to the depth, of the data sheet."""
    for row in case.rows.get(path, ()):
        bores = row.bores
        if bores.kind != "hinge cup" or bores.depth is None:
            continue
        off = max(abs(bores.diameter.value - sheet.cup_diameter.value),
                  abs(bores.depth.value - sheet.cup_depth.value))  # fmt: skip
        if off:
            yield Failure("hinges", (bores.path, path), "a cup is not the hinge's size", off)
