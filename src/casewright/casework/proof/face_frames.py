"""Face frames: flush and square, out beside the box, level with its bottom, pads at its edges."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from casewright.casework.cases import FaceFrame
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.units import apart
from casewright.casework.specs import front_spec
from casewright.geometry import Box
from casewright.geometry.box import Number
from casewright.sources import INCH

__all__ = ["check_face_frame"]

_MEMBERS = ("frame stile", "frame rail", "mullion", "backer", "blind stile")

# A bottom rail's top may stand above the bottom by so much (common practice) [mm].
_ABOVE = INCH / 16
# A pad may end so far short of the frame's edge [mm], and a skin's face of its outside: a slide
# still lies on both, the step is planed flush (common practice).
_SHORT = INCH / 32


def check_face_frame(case: Assembled, grid: Fraction) -> Iterator[Failure]:
    """Every way a frame is not the face of its box.

    Parameters
    ----------
    grid
        What rounding to the cutting grid may move a plane by [mm].
    """
    frame = case.model.frame
    if frame is None or not case.model.spec.framed:
        return
    own = [s for s in case.solids.values() if s.part.front == frame.path]
    if {s.part.path for s in own} != set(frame.parts) or not own:
        yield _failure(case, "it does not name its own members")
        return
    of = case.units.of
    x, y, z = of(frame.x), of(frame.y), of(frame.z)
    box = Box(x, x + of(frame.width), y, y + of(frame.height), z, z + of(frame.thickness))
    off = max(apart(a, b) for a, b in zip(box, case.extent(own), strict=True))
    if off:
        yield _failure(case, "its members do not fill it", off)
    yield from _check_members(case, own, box)
    yield from _check_mortises(case, own)
    yield from _check_openings(case, own, frame)
    yield from _check_mullions(case, own, grid)
    yield from _check_on_box(case, box, grid)
    yield from _check_bottom(case, own, grid)
    yield from _check_pads(case, own, grid)


def _failure(case: Assembled, says: str, off: Number = 0) -> Failure:
    frame = case.model.frame
    path = case.model.key if frame is None else frame.path
    return Failure("fronts", (path,), f"the face frame: {says}", case.units.length(off))


def _check_members(case: Assembled, own: list[Solid], frame: Box) -> Iterator[Failure]:
    """Two stiles of full height at its ends, rails from one to the other, one at either end."""
    stiles = sorted((s.outer for s in own if s.part.role == "frame stile"), key=lambda b: b.x0)
    rails = sorted((s.outer for s in own if s.part.role == "frame rail"), key=lambda b: b.y0)
    if len(stiles) != 2 or len(rails) < 2 or any(s.part.role not in _MEMBERS for s in own):
        yield _failure(case, "it has not two stiles and the rails between")
        return
    left, right = stiles
    foot = frame.y0
    if case.model.spec.between_panels:
        foot = min(s.outer.y0 for s in case.box_solids if s.part.role == "side")
    off = max(
        apart(left.x0, frame.x0), apart(right.x1, frame.x1),
        *(max(apart(b.y0, frame.y0), apart(b.y1, frame.y1)) for b in stiles),
        apart(rails[0].y0, foot), apart(rails[-1].y1, frame.y1),
    )  # fmt: skip
    if off:
        yield _failure(case, "its members are not flush with its outside", off)
    for solid in own:
        off = max(apart(solid.outer.z0, frame.z0), apart(solid.outer.z1, frame.z1))
        if off:
            yield _failure(case, f"{solid.part.title} is not flush with its faces", off)


def _check_mortises(case: Assembled, own: list[Solid]) -> Iterator[Failure]:
    """A mortise is as long as the rail is wide that goes in: beside it would be a hole."""
    rails = [s.outer for s in own if s.part.role in ("frame rail", "backer")]
    for solid in (s for s in own if s.part.role == "frame stile"):
        for path, hollow in solid.cuts.items():
            room = solid.box(hollow)
            off = min(max(apart(room.y0, b.y0), apart(room.y1, b.y1)) for b in rails)
            if off:
                says = f"a mortise of the {solid.part.title} is not as long as its rail is wide"
                yield Failure("joints", (path, solid.part.path), says, case.units.length(off))


def _check_openings(case: Assembled, own: list[Solid], frame: FaceFrame) -> Iterator[Failure]:
    """Between its stiles and its rails are the openings that its fronts were cut to."""
    of = case.units.of
    stiles = sorted((s.outer for s in own if s.part.role == "frame stile"), key=lambda b: b.x0)
    rails = sorted((s.outer for s in own if s.part.role == "frame rail"), key=lambda b: b.y0)
    if len(rails) != len(frame.openings) + 1 or len(stiles) != 2:
        yield _failure(case, "it has not a rail on either side of each row")
        return
    for (name, wide, tall), (below, above) in zip(frame.openings, pairwise(rails), strict=True):
        off = max(apart(_between(case, own, stiles), of(wide)),
                  apart(above.y0 - below.y1, of(tall)))  # fmt: skip
        if off:
            yield _failure(case, f"the opening of {name} is not as large as it says", off)


def _between(case: Assembled, own: list[Solid], stiles: list[Box]) -> Number:
    """From stile to stile, or from that beside the mouth of a blind corner to the far one."""
    low, high = stiles[0].x1, stiles[1].x0
    for box in (s.outer for s in own if s.part.role == "blind stile"):
        low, high = (box.x1, high) if case.model.spec.blind == "left" else (low, box.x0)
    return high - low


def _overlay(case: Assembled, opening: str) -> str:
    front = front_spec(case.model.spec, opening)
    return "full" if front is None else front.overlay


def _check_mullions(case: Assembled, own: list[Solid], grid: Fraction) -> Iterator[Failure]:
    """A mullion stands in the middle; doors cover it as they cover the stiles, or clear it so."""
    of = case.units.of
    stiles = sorted((s.outer for s in own if s.part.role == "frame stile"), key=lambda b: b.x0)
    for solid in (s for s in own if s.part.role == "mullion"):
        box, off = solid.outer, case.units.up(grid)
        if apart(box.x0 - stiles[0].x1, stiles[-1].x0 - box.x1):
            yield _failure(case, f"the {solid.part.title} does not stand in its middle")
        yield from _check_behind(case, solid)
        for door in case.model.doors:
            y = of(door.y) + of(door.height) // 2
            if not box.y0 < y < box.y1 or _overlay(case, door.opening) == "full":
                continue
            x0, x1 = of(door.x), of(door.x) + of(door.width)
            left = door.hinge_side == "left"
            cover = stiles[0].x1 - x0 if left else x1 - stiles[-1].x0
            other = x1 - box.x0 if left else box.x1 - x0
            if apart(cover, other) > off:
                says = f"{door.title} does not lie over mullion and stile alike"
                yield Failure("fronts", (door.path, solid.part.path), says,
                              case.units.length(apart(cover, other)))  # fmt: skip


def _check_behind(case: Assembled, mullion: Solid) -> Iterator[Failure]:
    """The partition behind a mullion is hidden by it; its pads end with the mullion's edges."""
    front = mullion.outer
    for solid in case.box_solids:
        back = solid.outer
        if solid.part.role != "partition" or back.y0 > front.y1 or back.y1 < front.y0:
            continue
        if apart(back.x0 - front.x0, front.x1 - back.x1):
            yield _failure(case, f"the {solid.part.title} does not stand behind its mullion")
        for pad in (s.outer for s in case.solids.values() if s.part.role == "pad"):
            left, right = pad.x1 == back.x0, pad.x0 == back.x1
            off = apart(pad.x0, front.x0) if left else apart(pad.x1, front.x1) if right else 0
            if off:
                yield _failure(case, "a pad on the partition is not flush with the mullion", off)


def _check_on_box(case: Assembled, frame: Box, grid: Fraction) -> Iterator[Failure]:
    """It lies on the front edges of the box and stands out beside both of its sides."""
    box, mouth = case.extent(case.box_solids), case.model.mouth
    off = apart(frame.z0, case.units.of(case.model.depth if mouth is None else mouth.front))
    if mouth is not None:  # it lies before the strips, not before the return sides
        strips = case.extent([s for s in case.box_solids if s.part.role == "hinge strip"])
        box = box._replace(x0=strips.x0, x1=strips.x1)
    if off:
        yield _failure(case, "it does not lie on the front edges of the box", off)
    within = case.units.up(grid)
    for word, out in (("left", box.x0 - frame.x0), ("right", frame.x1 - box.x1)):
        if out < -within:
            yield _failure(case, f"the box stands out beside it at the {word}", -out)
    off = apart(frame.y1, box.y1)
    if off:
        yield _failure(case, "it does not end with the top of the box", off)
    for solid in (s for s in case.solids.values() if s.part.role == "end skin"):
        left = solid.part.path.startswith(f"{case.model.key}.end_left.")
        off = apart(solid.outer.x0, frame.x0) if left else apart(solid.outer.x1, frame.x1)
        if off > case.units.up(max(grid, _SHORT)):
            yield _failure(case, f"its edge is not flush with the {solid.part.title}", off)


def _check_bottom(case: Assembled, own: list[Solid], grid: Fraction) -> Iterator[Failure]:
    """A rail hides bottom, divider and boards between rows, its top flush or a little higher.

    Before a deck with an appliance on it, it is flush or a little lower.
    """
    rails = sorted((s.outer for s in own if s.part.role == "frame rail"), key=lambda b: b.y0)
    decks = {
        f"{case.model.key}.row_board.{number}": row.appliance is not None
        for number, row in enumerate(case.model.spec.rows, start=1)
    }
    for solid in case.box_solids:
        path = solid.part.path
        if solid.part.role not in ("bottom", "divider") and path not in decks:
            continue
        board, word = solid.outer, solid.part.title
        near = rails[:1] if solid.part.role == "bottom" else rails
        rail = min(near, key=lambda b: apart(b.y1, board.y1))
        over = rail.y1 - board.y1
        short, most = -over if over < 0 else 0, case.units.up(max(_ABOVE, grid))
        if decks.get(path):
            if over > 0:
                says = f"the rail before the {word} stands in the way of what is pushed in"
                yield _failure(case, says, over)
            short = max(0, short - most)
        if short:
            yield _failure(case, f"the rail before the {word} ends under its top", short)
        elif over > most:
            yield _failure(case, f"the rail before the {word} stands too far above it", over)
        elif rail.y0 > board.y0:
            yield _failure(case, f"the rail before the {word} leaves its edge bare")


def _check_pads(case: Assembled, own: list[Solid], grid: Fraction) -> Iterator[Failure]:
    """Pads on the sides end at the frame's edges: hardware lies as on a frameless box."""
    stiles = {s.part.hand: s.outer for s in own if s.part.role == "frame stile"}
    within = case.units.up(max(grid, _SHORT))
    for solid in case.solids.values():
        if solid.part.group != "frame pads":
            continue
        stile = stiles.get(solid.part.hand)
        if stile is None:
            continue
        left = solid.part.hand == "left"
        inner, outer = (stile.x1, solid.outer.x1) if left else (solid.outer.x0, stile.x0)
        short = inner - outer
        if short < 0 or short > within:
            says = f"the {solid.part.title} does not end at the edge of the frame"
            yield Failure(
                "fronts", (solid.part.path,), says, case.units.length(apart(inner, outer))
            )
