"""Dadoes, grooves, rabbets and laps are filled; notches end where what they clear begins."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.features import Cut, Plane
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Patch, Solid
from casewright.casework.proof.units import apart
from casewright.geometry import Box
from casewright.geometry.box import Number

__all__ = ["check_housings"]

# A joint that is looser than this between wall and board does not hold glue (common practice:
# a dado is cut 0.1 to 0.2 over the board).
_LOOSE = Fraction(1)
_FILLED = ("dado", "groove", "rabbet", "lap", "tongue", "finger", "mortise")


def check_housings(case: Assembled) -> Iterator[Failure]:
    """Cuts that nothing fits into, and notches off what they were cut for."""
    for solid in case.solids.values():
        for cut in solid.part.features:
            square = isinstance(cut, Cut) and cut.is_square
            if isinstance(cut, Cut) and square and not solid.cuts[cut.path].is_empty:
                if cut.kind in _FILLED:
                    yield from _check_filled(case, solid, cut)
                elif cut.kind == "notch":
                    yield from _check_notch(case, solid, cut)
    yield from _check_toe(case)
    yield from _check_register(case)


def _check_filled(case: Assembled, solid: Solid, cut: Cut) -> Iterator[Failure]:
    room = solid.box(solid.cuts[cut.path])
    inside = [
        piece
        for path in _guests(case, cut)
        if path in case.solids and path != solid.part.path
        for piece in case.solids[path].pieces
        if piece.meets(room)
    ]
    paths = (cut.path, solid.part.path)
    if not inside:
        yield Failure("joints", paths, f"nothing sits in the {cut.kind}")
        return
    for plane in _walls(cut):
        wall = solid.wall(cut.path, plane)
        if wall is None:
            continue
        play = min(_off_wall(wall, piece) for piece in inside)
        if play > case.units.down(_LOOSE):
            says = f"what sits in the {cut.kind} does not reach its wall"
            yield Failure("joints", paths, says, case.units.length(play))


def _walls(cut: Cut) -> tuple[Plane, ...]:
    """The planes of the part that a cut's walls look like; a slot ends in one, too."""
    if cut.edge is not None:
        return "t0", "t1"
    if cut.kind == "finger":
        return "w0", "w1", "l0", "l1"
    return ("w0", "w1") if cut.runs == "l" else ("l0", "l1")


def _guests(case: Assembled, cut: Cut) -> tuple[str, ...]:
    """Parts that a cut was made for: the one that asked, or those of the joint that did."""
    for joint in case.joints:
        if joint.path == cut.asked_by:
            return (joint.one.part, joint.other.part)
    return (cut.asked_by,)


def _off_wall(wall: Patch, piece: Box) -> Number:
    """How far a piece stands off a wall; overlaps are found elsewhere."""
    axis = 2 * wall.facing.axis
    off = piece[axis] - wall.at if wall.facing.sign > 0 else wall.at - piece[axis + 1]
    return max(off, 0)


def _check_notch(case: Assembled, solid: Solid, cut: Cut) -> Iterator[Failure]:
    """The walls of a notch are flush with the part it was cut for."""
    cleared = case.solids.get(cut.asked_by)
    if cleared is None:
        return
    planes: tuple[Plane, ...] = ("l0", "l1", "w0", "w1")
    for plane in planes:
        wall = solid.wall(cut.path, plane)
        if wall is None or (cleared.part.turned and wall.facing.axis != 1):
            continue
        axis = 2 * wall.facing.axis
        flush = cleared.outer[axis : axis + 2]
        frame = case.model.frame
        framed = frame is not None and case.model.spec.framed and not cleared.part.turned
        if frame is not None and framed and wall.facing.axis == 1:
            # A toe board goes on up behind the face frame; the notch ends under it.
            flush = (case.units.of(frame.y),)
        off = min(apart(wall.at, plane) for plane in flush)
        if off:
            says = f"the notch is not flush with {cleared.part.title}"
            yield Failure("joints", (cut.path, solid.part.path), says, case.units.length(off))


def _check_toe(case: Assembled) -> Iterator[Failure]:
    """A case that asks for a toe notch has one in both sides."""
    spec = case.model.spec
    if not spec.has_toe or spec.toe != "notch":
        return
    for solid in case.solids.values():
        part = solid.part
        if part.role == "side" and not any(f.kind == "notch" for f in part.features):
            yield Failure("cuts", (part.path,), f"{part.title} lacks its toe notch")


def _check_register(case: Assembled) -> Iterator[Failure]:
    """Air comes through the middle of a toe board, through an opening as large as was asked."""
    asked = case.model.spec.register
    if asked is None:
        return
    of, units = case.units.of, case.units
    boards = [s for s in case.solids.values() if s.part.path.endswith(".toe_board")]
    cuts = [(s, c) for s in boards for c in s.part.features
            if isinstance(c, Cut) and c.kind == "cutout"]  # fmt: skip
    if len(cuts) != 1:
        yield Failure("cuts", (case.model.key,), "a toe board lacks the opening for its register")
    for solid, cut in cuts:
        hole, paths = solid.cuts[cut.path], (cut.path, solid.part.path)
        size = (hole.x1 - hole.x0, hole.y1 - hole.y0)
        short = max(units.up(want.value) - have for want, have in zip(asked, size, strict=True))
        if short > 0:
            says = "the opening for the register is too small"
            yield Failure("cuts", paths, says, units.length(short))
        off = max(apart(hole.x0 + hole.x1, solid.size[0]),
                  apart(hole.y0 + hole.y1, of(solid.part.finished.width)))  # fmt: skip
        if off:
            says = "the opening for the register is not in the middle of its toe board"
            yield Failure("cuts", paths, says, units.length(off) / 2)
