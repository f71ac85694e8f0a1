"""Brads, staples and case screws: each goes through what it holds and ends inside the next."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.joints import Fastening, Joint
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.contacts import patch_of
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Patch
from casewright.geometry import Direction
from casewright.geometry.box import Number

__all__ = ["check_fasteners"]

_STRAIGHT = ("brad", "staple", "case screw", "front screw")


def check_fasteners(case: Assembled) -> Iterator[Failure]:
    """Fasteners driven square through a joint that are too short or come out."""
    for joint in case.joints:
        for held in joint.fastenings:
            missing = [p for p in (*held.through, held.into) if p not in case.solids]
            if missing or not held.through:
                yield Failure("fasteners", (joint.path, *missing),
                              f"a {held.kind} holds a part that does not exist")  # fmt: skip
            elif held.kind in _STRAIGHT and held.length is not None:
                yield from _check_straight(case, joint, held)


def _check_straight(case: Assembled, joint: Joint, held: Fastening) -> Iterator[Failure]:
    last = joint.one if joint.one.part == held.through[-1] else joint.other
    other = joint.other if last is joint.one else joint.one
    start, end = patch_of(case, last), patch_of(case, other)
    if start is None or end is None or held.length is None or other.part != held.into:
        yield Failure("fasteners", (joint.path,), f"a {held.kind} does not go through its joint")
        return
    way = start.facing
    passed = sum(_thick(case, path, way.axis) for path in held.through[:-1])
    passed += _behind(case, last.part, start, way) + case.units.of(joint.gap)
    bite = case.units.of(held.length) - passed
    room = _behind(case, other.part, end, way.opposite)
    paths = (joint.path, *held.through, held.into)
    if bite <= 0:
        says = f"a {held.kind} is too short to reach what it holds"
        yield Failure("fasteners", paths, says, case.units.length(-bite),
                      mended_by="a longer one")  # fmt: skip
    elif bite >= room:
        says = f"a {held.kind} comes out on the far side"
        yield Failure("fasteners", paths, says, case.units.length(bite - room),
                      mended_by="a shorter one")  # fmt: skip
    yield from _check_row(case, joint, held, way.axis)


def _check_row(case: Assembled, joint: Joint, held: Fastening, axis: int) -> Iterator[Failure]:
    """A row runs in the wood it is driven into, and is no longer than the two parts meet.

    Parameters
    ----------
    axis
        Along which the fasteners are driven: 0, 1 or 2.
    """
    if held.line is None or held.pitch is None:
        return
    units = case.units
    one, other = case.solids[held.through[-1]], case.solids[held.into]
    plane, off = held.line
    way = one.way(plane)
    at = one.outer[2 * way.axis + (way.sign > 0)] - way.sign * units.of(off)
    if not other.outer[2 * way.axis] < at < other.outer[2 * way.axis + 1]:
        says = f"a row of {held.kind}s runs beside what it is to hold"
        yield Failure("fasteners", (joint.path, held.into), says)
    [along] = {0, 1, 2} - {axis, way.axis}
    ends = [(s.outer[2 * along], s.outer[2 * along + 1]) for s in (one, other)]
    shared = min(high for _, high in ends) - max(low for low, _ in ends)
    if (held.count - 1) * units.of(held.pitch) >= shared:
        says = f"a row of {held.kind}s is longer than its joint"
        yield Failure("fasteners", (joint.path, held.into), says)


def _thick(case: Assembled, path: str, axis: int) -> Number:
    outer = case.solids[path].outer
    return outer[2 * axis + 1] - outer[2 * axis]


def _behind(case: Assembled, path: str, patch: Patch, way: Direction) -> Number:
    """How much of a part lies behind one of its surfaces."""
    outer = case.solids[path].outer
    low, high = outer[2 * way.axis], outer[2 * way.axis + 1]
    return patch.at - low if way.sign > 0 else high - patch.at
