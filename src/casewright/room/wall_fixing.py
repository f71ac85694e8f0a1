"""How each case is held to the wall: rows of screws, and what each screw passes on its way."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.room.model import Room

__all__ = ["WallFixing", "wall_fixings"]

_PER_STUD = 2
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
    case_depth
        From the head to the rear of the case: nailer, back and any air between [mm].
    shim, wallboard
        Reckoned with, from the style [mm].
    length
        Of the screw [mm].
    studs
        Most studs that can stand behind the case at the style's spacing [-].
    screws
        In all, at the most [-].
    """

    case: str
    rows: tuple[str, ...]
    case_depth: Fraction
    shim: Fraction
    wallboard: Fraction
    length: Fraction
    studs: int
    screws: int

    @property
    def bite(self) -> Fraction:
        """How far a screw goes into the stud, with the shim in place [mm]."""
        return self.length - self.case_depth - self.shim - self.wallboard


def _front_plane(part: Part) -> Fraction:
    """Plane z of an upright board's face toward the room [mm]."""
    corner = part.placed.z.value
    lies = part.placed.orientation.thickness
    return corner + part.finished.thickness.value if lies.sign > 0 else corner


def wall_fixings(room: Room) -> tuple[WallFixing, ...]:
    """Every case that is screwed to the wall, in the order of the job.

    Studs are counted as the most that can stand behind the width: floor(width / spacing) + 1.
    """
    return tuple(found for case in room.cases if (found := _fixing(room, case)) is not None)


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
    studs = int(case.width.value // style["stud_spacing"].value) + 1
    return WallFixing(
        case=case.key,
        rows=rows,
        case_depth=max(_front_plane(part) for part in (*backs, *nailers)),
        shim=style["wall_shim"].value,
        wallboard=style["wallboard"].value,
        length=room.spec.hardware.wall_screw.length.value,
        studs=studs,
        screws=len(rows) * studs * _PER_STUD,
    )
