"""Face strips: over the front edges, proud inside by what is trimmed, the opening clear then."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.units import apart

__all__ = ["check_face_strips"]

_LEVEL = ("bottom", "top", "stretcher", "divider", "fixed shelf")
_BOTH = 2
"""A strip on a board between two openings is trimmed on both of its edges."""


def check_face_strips(case: Assembled, grid: Fraction) -> Iterator[Failure]:
    """Strips that leave an edge bare, or wood in the opening that nobody trims.

    Parameters
    ----------
    grid
        How far rounding may move an edge [mm].
    """
    frame = case.model.frame
    if frame is None or case.model.spec.face != "strips":
        return
    own = [s for s in case.solids.values() if s.part.front == frame.path]
    if {s.part.path for s in own} != set(frame.parts) or not own:
        yield Failure("fronts", (frame.path,), "the face strips do not name their own parts")
        return
    depth, plane = case.units.of(case.model.depth), case.units.of(case.model.face_plane)
    for solid in own:
        off = max(apart(solid.outer.z0, depth), apart(solid.outer.z1, plane))
        if off:
            yield _failure(case, solid, "does not lie in the plane of the others", off)
        yield from _check_edge(case, solid)
    yield from _check_outside(case, own)


def _failure(case: Assembled, solid: Solid, says: str, off: int | Fraction) -> Failure:
    says = f"{solid.part.title} {says}"
    return Failure("fronts", (solid.part.path,), says, case.units.length(off))


def _check_edge(case: Assembled, solid: Solid) -> Iterator[Failure]:
    """It covers the edge it lies on, and what is left when it is trimmed ends with that."""
    onto = next(
        (case.solids[j.other.part] for j in case.joints
         if j.form == "face" and j.one.part == solid.part.path and j.other.part in case.solids),
        None,
    )  # fmt: skip
    if onto is None:
        yield Failure("fronts", (solid.part.path,), f"{solid.part.title} lies on no edge")
        return
    axis = 2 * solid.part.placed.orientation.width.axis
    edge = onto.outer[axis : axis + 2]
    outer = solid.outer[axis : axis + 2]
    if outer[0] > edge[0] or outer[1] < edge[1]:
        yield _failure(case, solid, "leaves a part of its edge bare",
                       max(outer[0] - edge[0], edge[1] - outer[1]))  # fmt: skip
    trims = [solid.box(room)[axis : axis + 2] for path, room in solid.cuts.items()
             if _is_trim(path)]  # fmt: skip
    inner = solid.way("w1").sign
    if _parts_openings(onto):
        below, above = sorted(trims)[:1], sorted(trims)[1:]
        ways = [*((room, -1) for room in below), *((room, 1) for room in above)]
        if len(trims) != _BOTH:
            yield _failure(case, solid, "is not trimmed on both of its edges", 0)
    else:
        ways = [(room, inner) for room in trims]
    for room, way in ways:
        real, plane = (room[0], edge[1]) if way > 0 else (room[1], edge[0])
        if real != plane:
            yield _failure(case, solid, "is not trimmed flush with the inside", apart(real, plane))
    if solid.part.hand is not None:
        yield from _check_stretch(case, solid)
    if not trims:
        yield Failure("fronts", (solid.part.path,), f"{solid.part.title} is not trimmed")


def _is_trim(path: str) -> bool:
    return path.rpartition(".")[2].startswith("trim")


def _parts_openings(board: Solid) -> bool:
    """Whether a board lies between two openings: a divider, a fixed shelf, a rail."""
    part = board.part
    return part.role in ("divider", "fixed shelf") or ".row_board." in part.path


def _check_stretch(case: Assembled, solid: Solid) -> Iterator[Failure]:
    """An upright one is trimmed from each board that reaches the front to the next, no farther."""
    front = max(s.outer.z1 for s in case.box_solids if s.part.role == "side")
    boards = sorted(
        (s.outer.y0, s.outer.y1) for s in case.box_solids
        if s.part.role in _LEVEL and s.outer.z1 == front and s.outer.y1 - s.outer.y0 < _flat(s)
    )  # fmt: skip
    wanted = [(below[1], above[0]) for below, above in pairwise(boards)]
    rooms = sorted((box.y0, box.y1) for box in (solid.box(r) for path, r in solid.cuts.items()
                                                if _is_trim(path)))  # fmt: skip
    if len(rooms) != len(wanted):
        yield _failure(case, solid, "is not trimmed in each of its openings", 0)
        return
    for room, bay in zip(rooms, wanted, strict=True):
        off = max(apart(room[0], bay[0]), apart(room[1], bay[1]))
        if off:
            yield _failure(case, solid, "is not trimmed all along its opening", off)


def _flat(board: Solid) -> int:
    """Depth of a board: one that lies is less high than that."""
    return int(board.outer.z1 - board.outer.z0)


def _check_outside(case: Assembled, own: list[Solid]) -> Iterator[Failure]:
    """Upright ones are flush with the outside, as tall as the face; the others close it."""
    on_ends = [s for s in case.solids.values() if ".end_" in s.part.path
               and s.part.role in ("end skin", "stile", "rail")]  # fmt: skip
    box = case.extent([*case.box_solids, *on_ends])
    frame = case.model.frame
    low = 0 if frame is None else case.units.of(frame.y)
    for solid in own:
        outer = solid.outer
        on = next((case.solids[j.other.part] for j in case.joints
                   if j.form == "face" and j.one.part == solid.part.path
                   and j.other.part in case.solids), None)  # fmt: skip
        if on is not None and _parts_openings(on):
            continue
        if solid.part.hand is None:
            off = min(apart(outer.y0, low), apart(outer.y1, box.y1))
        else:
            side = apart(outer.x0, box.x0) if solid.part.hand == "left" else (
                apart(outer.x1, box.x1))  # fmt: skip
            off = max(side, apart(outer.y0, low), apart(outer.y1, box.y1))
        if off:
            yield _failure(case, solid, "is not flush with the outside of its box", off)
