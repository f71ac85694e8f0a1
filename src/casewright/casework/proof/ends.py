"""What is on finished ends: flush with the side it covers, in one plane, no metal shows."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.units import apart
from casewright.geometry import Box, Direction, Number

__all__ = ["check_ends"]

_SEEN = (Direction.of("+z"), Direction.of("-y"))
_BOARDS = ("end skin", "flush end")
_METAL = ("brad", "staple", "case screw", "front screw", "pocket screw")


def check_ends(case: Assembled, grid: Fraction) -> Iterator[Failure]:
    """What leaves a step at an edge or in the face of an end, or shows metal there.

    Parameters
    ----------
    grid
        How far rounding to the cutting grid may leave a flush end behind the doors' faces [mm].
    """
    yield from _check_bare(case)
    strips = case.model.frame
    faces = {solid.part.front for solid in case.solids.values()} - case.works - {""}
    names = faces - ({strips.path} if strips is not None else set())
    for name in sorted(names):
        own = [solid for solid in case.solids.values() if solid.part.front == name]
        if own[0].part.role in ("lid", "blind filler"):
            continue
        side = _dressed(case, {solid.part.path for solid in own})
        if side is None:
            yield Failure("fronts", (name,), "a frame lies on no side")
            continue
        if own[0].part.role in _BOARDS:
            yield from _check_board(case, own[0], side, grid)
            continue
        frame = case.extent(own)
        off = max(apart(frame.y1, side.outer.y1), apart(frame.z0, side.outer.z0),
                  apart(frame.z1, side.outer.z1))  # fmt: skip
        if off:
            says = f"the frame is not flush with the edges of {side.part.title}"
            yield Failure("fronts", (name, side.part.path), says, case.units.length(off))
        yield from _check_members(case, own, frame)


def _check_board(case: Assembled, solid: Solid, side: Solid, grid: Fraction) -> Iterator[Failure]:
    """A skin ends with the box, a flush end in the plane of the fronts: but for the grid."""
    box, units = solid.outer, case.units
    fronts = [s for s in case.solids.values() if s.part.front in case.works]
    plane: Number = units.of(case.model.depth)
    if solid.part.role == "flush end" and fronts:
        plane = max(s.outer.z1 for s in fronts)
    before = apart(box.z1, plane)
    if before <= units.up(grid):
        before = 0
    off = max(apart(box.y1, side.outer.y1), apart(box.z0, 0), before)
    if off:
        says = f"{solid.part.title} is not flush with the case"
        yield Failure("fronts", (solid.part.path, side.part.path), says, units.length(off))
    if any(solid.way(treated.edge) not in _SEEN for treated in solid.part.edges):
        says = f"the edge of {solid.part.title} that shows is not the one that is treated"
        yield Failure("fronts", (solid.part.path,), says)
    yield from _check_no_metal(case, solid)


def _check_bare(case: Assembled) -> Iterator[Failure]:
    """Sides that show as they are have no metal in their outer face either."""
    spec = case.model.spec
    if spec.end == "plain":
        for solid in case.solids.values():
            if solid.part.role == "side" and solid.part.hand in spec.finished:
                yield from _check_no_metal(case, solid)


def _check_no_metal(case: Assembled, solid: Solid) -> Iterator[Failure]:
    """No metal but pocket screws that go in from its inner face, A."""
    rows = case.rows.get(solid.part.path, ())
    inside = all(row.bores.face == "A" for row in rows if row.bores.kind == "pocket")
    for joint in case.joints:
        for held in joint.fastenings:
            if held.kind == "pocket screw" and inside and solid.part.role == "side":
                continue
            if held.through[:1] == (solid.part.path,) and held.kind in _METAL:
                says = f"a {held.kind} goes in through the face of {solid.part.title}"
                yield Failure("show", (joint.path, solid.part.path), says)


def _dressed(case: Assembled, own: set[str]) -> Solid | None:
    """The side a frame lies on."""
    for joint in case.joints:
        if joint.one.part in own and joint.form == "face":
            return case.solids.get(joint.other.part)
    return None


def _check_members(case: Assembled, own: list[Solid], frame: Box) -> Iterator[Failure]:
    rails = [solid for solid in own if solid.part.role == "rail"]
    for solid in own:
        box = solid.outer
        off = max(apart(box.x0, frame.x0), apart(box.x1, frame.x1))
        if solid.part.role == "stile":
            edge = min(apart(box.z0, frame.z0), apart(box.z1, frame.z1))
            off = max(off, edge, apart(box.y0, frame.y0), apart(box.y1, frame.y1))
        if off:
            says = f"{solid.part.title} is not flush with its frame"
            yield Failure("fronts", (solid.part.path,), says, case.units.length(off))
    for word, side in (("lowest", 2), ("highest", 3)):
        off = min((apart(solid.outer[side], frame[side]) for solid in rails), default=0)
        if off:
            says = f"the {word} rail is not flush with the ends of its stiles"
            paths = tuple(solid.part.path for solid in rails)
            yield Failure("fronts", paths, says, case.units.length(off))
