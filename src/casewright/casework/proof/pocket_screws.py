"""Pocket screws in place: where each leaves its board, how far it goes into the mate."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.features import Plane
from casewright.casework.joints import Fastening, Joint, Surface
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.holes import Hole, Row
from casewright.casework.proof.solids import Solid
from casewright.geometry import Box

__all__ = [
    "COSINE",
    "PARTS",
    "SINE",
    "TANGENT",
    "PocketScrew",
    "board_box",
    "pocket_screws",
    "screws_of",
]

# Pockets are bored at 15 degrees (common practice). Bounds of its sine, cosine and tangent:
# 0.2588190451, 0.9659258263, 0.2679491924, in ten-thousandths.
PARTS = 10_000
SINE = (2588, 2589)
COSINE = (9659, 9660)
TANGENT = (2679, 2680)

# Half the thickness of a pocket screw with its thread, rounded up (common practice: No. 8).
_RADIUS = Fraction(5, 2)


@dataclass(frozen=True, slots=True)
class PocketScrew:
    """One pocket with its screw.

    Parameters
    ----------
    row, hole
        The pocket: its centre is where the axis meets the face.
    run
        From the end the screw leaves by to where its axis meets the face [unit].
    board
        Path of the part it is bored into.
    joint
        The joint it closes, or None.
    mate
        Path of the part the point ends in; empty without a joint.
    metal
        Encloses what stands in the mate, in case axes; None when the job has no screw for it.
    """

    row: Row
    hole: Hole
    run: int
    board: str
    joint: Joint | None
    mate: str
    metal: Box | None


def pocket_screws(case: Assembled) -> Iterator[PocketScrew]:
    """Every pocket of a case with its screw."""
    by_surface: dict[tuple[str, Plane], list[tuple[Joint, Surface]]] = {}
    for joint in case.joints:
        for one, other in ((joint.one, joint.other), (joint.other, joint.one)):
            if not one.cut:
                by_surface.setdefault((one.part, one.plane), []).append((joint, other))
    for path, rows in case.rows.items():
        for row in rows:
            if row.bores.toward is not None:
                met = by_surface.get((path, row.bores.toward), [])
                for hole in row.holes:
                    yield _screw(case, path, row, hole, met)


def _screw(
    case: Assembled, path: str, row: Row, hole: Hole, met: list[tuple[Joint, Surface]]
) -> PocketScrew:
    solid = case.solids[path]
    run = _run(solid, row, hole)
    axis = _across(solid, row, hole)
    for joint, other in met:
        mate = case.solids.get(other.part)
        if mate is None or not _covers(mate, axis):
            continue
        held = screws_of(joint, path)
        metal = None if held is None else _metal(case, solid, row, hole, held)
        return PocketScrew(row, hole, run, path, joint, other.part, metal)
    return PocketScrew(row, hole, run, path, None, "", None)


def _run(solid: Solid, row: Row, hole: Hole) -> int:
    length, width, _ = solid.size
    match row.bores.toward:
        case "l0":
            return hole.length
        case "l1":
            return length - hole.length
        case "w0":
            return hole.width
        case _:
            return width - hole.width


def screws_of(joint: Joint, board: str) -> Fastening | None:
    """The pocket screws of a joint that go through a board."""
    for held in joint.fastenings:
        if held.kind == "pocket screw" and held.through[:1] == (board,):
            return held
    return None


def _across(solid: Solid, row: Row, hole: Hole) -> Box:
    """A thin rod along the screw's run from its mouth out through the end, in case axes."""
    radius = hole.radius
    middle = solid.size[2] // 2
    return board_box(solid, row, hole, (0, radius), (middle - 1, middle + 1), 1)


def _covers(mate: Solid, rod: Box) -> bool:
    return mate.outer.meets(rod)


def board_box(
    solid: Solid,
    row: Row,
    hole: Hole,
    beyond: tuple[int, int],
    under: tuple[int, int],
    half: int,
) -> Box:
    """A box along a pocket's axis, in case axes.

    Parameters
    ----------
    beyond
        From where to where beyond the end the screw leaves by; negative: over the board.
    under
        From where to where below the face the pocket is bored into; negative: above it.
    half
        Half its width [unit].
    """
    length, width, thickness = solid.size
    if row.bores.face == "A":
        low, high = thickness - under[1], thickness - under[0]
    else:
        low, high = under
    match row.bores.toward:
        case "l0":
            spans = (-beyond[1], -beyond[0], hole.width - half, hole.width + half)
        case "l1":
            spans = (length + beyond[0], length + beyond[1], hole.width - half, hole.width + half)
        case "w0":
            spans = (hole.length - half, hole.length + half, -beyond[1], -beyond[0])
        case _:
            spans = (hole.length - half, hole.length + half, width + beyond[0], width + beyond[1])
    return solid.box(Box(*spans, low, high))


def _metal(case: Assembled, solid: Solid, row: Row, hole: Hole, held: Fastening) -> Box | None:
    """What of the screw stands in the mate.

    The collar is set to the board's thickness, so that the screw's head seats one thickness
    before the end, measured along the screw (common practice).
    """
    if held.length is None:
        return None
    units = case.units
    thickness = solid.size[2]
    stands = units.of(held.length) - thickness
    if stands <= 0:
        return None
    radius = units.up(_RADIUS)
    middle = thickness // 2
    reach = -(-stands * COSINE[1] // PARTS)
    sink = -(-stands * SINE[1] // PARTS)
    return board_box(
        solid, row, hole, (0, reach), (middle - radius, middle + sink + radius), radius
    )
