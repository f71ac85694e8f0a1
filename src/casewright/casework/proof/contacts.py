"""The two surfaces of every joint face each other, with the gap that was meant, over some area."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.joints import Joint, Surface
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Patch
from casewright.casework.proof.units import apart
from casewright.geometry import Box

__all__ = ["check_joints", "patch_of"]


def patch_of(case: Assembled, surface: Surface) -> Patch | None:
    """A joint's surface in its place; None where the part or the wall does not exist."""
    solid = case.solids.get(surface.part)
    if solid is None:
        return None
    if surface.cut:
        return solid.wall(surface.cut, surface.plane)
    return solid.surface(surface.plane)


def check_joints(case: Assembled) -> Iterator[Failure]:
    """Every joint whose sides do not meet as it says; mitres and mouths are checked apart."""
    for joint in case.joints:
        if joint.form in ("mitre", "spline") or case.is_mixed(joint):
            continue
        one, other = patch_of(case, joint.one), patch_of(case, joint.other)
        if one is None or other is None:
            yield _failure(joint, "one of the two surfaces does not exist")
        elif other.facing != one.facing.opposite:
            yield _failure(joint, "the two surfaces do not face each other")
        else:
            yield from _check_meeting(case, joint, one, other)


def _check_meeting(case: Assembled, joint: Joint, one: Patch, other: Patch) -> Iterator[Failure]:
    gap = case.units.of(joint.gap)
    distance = (other.at - one.at) * one.facing.sign
    if gap < 0:
        says, less = "a gap cannot be less than nothing", case.units.length(-gap)
        yield Failure("joints", (joint.path, joint.one.part, joint.other.part), says, less)
    if distance != gap:
        off = case.units.length(apart(distance, gap))
        word = "too far apart" if distance > gap else "too close"
        says = f"{joint.one.part} and {joint.other.part} are {word}"
        yield Failure("joints", (joint.path, joint.one.part, joint.other.part), says, off)
    axis = one.facing.axis
    if not any(_cover(a, b, axis) for a in one.wood for b in other.wood):
        yield _failure(joint, "the two surfaces lie beside each other")


def _cover(one: Box, other: Box, axis: int) -> bool:
    """Whether two boxes share area seen along an axis."""
    return all(one[n] < other[n + 1] and other[n] < one[n + 1] for n in (0, 2, 4) if n != 2 * axis)


def _failure(joint: Joint, says: str) -> Failure:
    return Failure("joints", (joint.path, joint.one.part, joint.other.part), says)
