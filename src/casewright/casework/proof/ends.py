"""Frames on finished ends: flush with the side they dress, all in one plane."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.units import apart
from casewright.geometry import Box

__all__ = ["check_ends"]


def check_ends(case: Assembled) -> Iterator[Failure]:
    """Frames on ends that leave a step at an edge or in their face."""
    names = {solid.part.front for solid in case.solids.values()} - case.works - {""}
    for name in sorted(names):
        own = [solid for solid in case.solids.values() if solid.part.front == name]
        side = _dressed(case, {solid.part.path for solid in own})
        if side is None:
            yield Failure("fronts", (name,), "a frame lies on no side")
            continue
        frame = case.extent(own)
        off = max(apart(frame.y1, side.outer.y1), apart(frame.z0, side.outer.z0),
                  apart(frame.z1, side.outer.z1))  # fmt: skip
        if off:
            says = f"the frame is not flush with the edges of {side.part.title}"
            yield Failure("fronts", (name, side.part.path), says, case.units.length(off))
        yield from _check_members(case, own, frame)


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
