"""How each case is held to the wall: rows of screws, and what each screw passes on its way."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.dims import Dim, Given, Origin, greatest, shop_text
from casewright.hardware import WALL_SCREWS
from casewright.room.model import Room

__all__ = ["PER_STUD", "WallFixing", "name_wall_screws", "wall_fixings"]

PER_STUD = 2
"""Screws of a row in each stud (common practice)."""


@dataclass(frozen=True, slots=True)
class WallFixing:
    """The wall screws of one case.

    Parameters
    ----------
    case
        Its key.
    rows
        Paths of the boards the screws go through, one row each: nailers, or a thick back twice.
    through_case
        From the head to the rear of the case: nailer, back and any air between [mm].
    shim, wallboard
        Reckoned with, from the style [mm].
    screw
        Its length with its origin [mm].
    studs
        Most studs that can stand behind the case at the style's spacing [-].
    screws
        In all, at the most [-].
    """

    case: str
    rows: tuple[str, ...]
    through_case: Dim
    shim: Fraction
    wallboard: Fraction
    screw: Given
    studs: int
    screws: int

    @property
    def case_depth(self) -> Fraction:
        """From the head to the rear of the case [mm]."""
        return self.through_case.value

    @property
    def length(self) -> Fraction:
        """Of a screw [mm]."""
        return self.screw.value

    @property
    def bite(self) -> Fraction:
        """How far a screw goes into the stud, with the shim in place [mm]."""
        return self.length - self.case_depth - self.shim - self.wallboard


def _front_plane(part: Part) -> Dim:
    """Plane z of an upright board's face toward the room [mm]."""
    corner = part.placed.z
    ahead = part.placed.orientation.thickness.sign > 0
    return corner + part.finished.thickness if ahead else corner


def wall_fixings(room: Room) -> tuple[WallFixing, ...]:
    """Every case that is screwed to the wall, in the order of the job; none of an island.

    Studs are counted as the most that can stand behind the width: floor(width / spacing) + 1.
    """
    free = room.in_islands
    return tuple(
        found
        for case in room.cases
        if case.key not in free and (found := _fixing(room, case)) is not None
    )


def _wall_screw(room: Room, case_depth: Fraction) -> Given:
    """The wall screw for a case: the job's, or the usual one that bites as it should.

    Where the job names none and the usual one would bite too little or too much, the longest
    one sold that bites no more than style 'wall_bite_most', if it bites enough.

    Parameters
    ----------
    case_depth
        From the head to the rear of the case [mm].
    """
    sheet, style = room.spec.hardware.wall_screw, room.spec.style
    before = case_depth + style["wall_shim"].value + style["wallboard"].value
    low, high = style["wall_bite"].value, style["wall_bite_most"].value
    if not sheet.placeholder or low <= sheet.length.value - before <= high:
        return sheet.length
    fit = [size for size in WALL_SCREWS[room.spec.unit] if low <= size - before <= high]
    if not fit:
        return sheet.length
    text = shop_text(high, room.spec.unit, with_unit=True)
    note = f"the longest one sold that goes no more than {text} into the stud"
    return Given(max(fit), Origin("cited", note, "common practice"))


def _fixing(room: Room, case: Case) -> WallFixing | None:
    style = room.spec.style
    backs = [part for part in case.parts if part.role == "back"]
    nailers = [part for part in case.parts if part.role == "nailer"]
    if case.spec.back == "inset":
        rows = tuple(back.path for back in backs for _ in range(2))
    else:
        rows = tuple(nailer.path for nailer in nailers)
    if not rows:
        return None
    # Those of a diagonal corner on the wall round it lie as far before theirs.
    before = (p for p in (*backs, *nailers) if p.placed.orientation.thickness.axis == 2)
    planes = [_front_plane(part) for part in before]
    farthest = max(plane.value for plane in planes)
    through_case = greatest(*(plane for plane in planes if plane.value == farthest))
    studs = int(case.width.value // style["stud_spacing"].value) + 1
    return WallFixing(
        case=case.key,
        rows=rows,
        through_case=through_case,
        shim=style["wall_shim"].value,
        wallboard=style["wallboard"].value,
        screw=_wall_screw(room, farthest),
        studs=studs,
        screws=len(rows) * studs * PER_STUD,
    )


def name_wall_screws(room: Room) -> None:
    """Enter the length of each case's wall screws, `<case>.wall_screw`, for `why`."""
    for fixing in wall_fixings(room):
        room.chain.place(fixing.case).given("wall_screw", fixing.screw)
