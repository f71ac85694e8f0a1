"""Mitres close on one slant, long point on long point; their splines fill their slots.

A mitred end is the half of a square that lies behind the square's diagonal. Two of them fill the
square when both squares are one, the parts run away from it square to each other, and each has its
long edge outside.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from casewright.casework.features import Cut
from casewright.casework.joints import Joint
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.units import apart
from casewright.geometry import Box
from casewright.geometry.box import Number

__all__ = ["check_mitres"]

_Key = tuple[str, str]
"""Path of a part, and its end."""


class _End(NamedTuple):
    """A mitred end in its place: its square, its long point, its slot."""

    solid: Solid
    cut: Cut
    square: Box
    point: tuple[int, int]
    slot: Cut | None


def check_mitres(case: Assembled) -> Iterator[Failure]:
    """Mitres that do not close, and splines that do not fill what they lie in."""
    ends = {
        (solid.part.path, str(end.cut.mitred_end)): end
        for solid in case.solids.values()
        for end in _ends(solid)
    }
    met: list[_Key] = []
    held: list[_Key] = []
    for end in ends.values():
        yield from _check_end(case, end)
    for joint in case.joints:
        if joint.form == "mitre":
            met += [(surface.part, surface.plane) for surface in (joint.one, joint.other)]
            yield from _check_joint(joint, ends)
        elif joint.form == "spline":
            held.append((joint.other.part, joint.other.plane))
            yield from _check_held(case, joint, ends)
    for key, end in ends.items():
        if met.count(key) != 1 or held.count(key) != (end.slot is not None):
            says = f"a mitre of {end.solid.part.title} lacks its mate or its spline"
            yield Failure("joints", (end.cut.path, key[0]), says)


def _ends(solid: Solid) -> Iterator[_End]:
    cuts = [f for f in solid.part.features if isinstance(f, Cut) and f.mitred_end is not None]
    length, width, thickness = solid.size
    for cut in cuts:
        if cut.kind != "mitre":
            continue
        low = cut.mitred_end == "l0"
        own = Box(0 if low else length - width, width if low else length, 0, width, 0, thickness)
        x, y, _ = solid.point((0 if low else length, 0, 0))
        slots = [c for c in cuts if c.kind == "slot" and c.mitred_end == cut.mitred_end]
        yield _End(solid, cut, solid.box(own), (x, y), slots[0] if slots else None)


def _check_end(case: Assembled, end: _End) -> Iterator[Failure]:
    """At 45 degrees from the long point, right through, with nothing bored into its square."""
    solid, cut, of = end.solid, end.cut, case.units.of
    paths = (cut.path, solid.part.path)
    _, width, thickness = solid.size
    off = max(apart(of(cut.width), width), apart(of(cut.depth), thickness), abs(of(cut.at)))
    if off or cut.face != "A":
        says = "the mitre is not at 45 degrees, from the long point right through"
        yield Failure("joints", paths, says, case.units.length(off))
    for row in case.rows.get(solid.part.path, ()):
        if solid.box(row.box).meets(end.square):
            says = f"a hole for the {row.bores.kind} runs into a mitre"
            yield Failure("bores", (row.bores.path, *paths), says)


def _check_joint(joint: Joint, ends: dict[_Key, _End]) -> Iterator[Failure]:
    one, other = (ends.get((s.part, s.plane)) for s in (joint.one, joint.other))
    paths = (joint.path, joint.one.part, joint.other.part)
    if one is None or other is None:
        yield Failure("joints", paths, "a mitre joint has an end that is not mitred")
        return
    ways = [end.solid.part.placed.orientation.length for end in (one, other)]
    if one.square != other.square or one.point != other.point:
        yield Failure("joints", paths, "the mitres do not close, long point on long point")
    elif ways[0].axis == ways[1].axis:
        yield Failure("joints", paths, "the mitred parts do not run square to each other")
    if joint.gap.value:
        yield Failure("joints", paths, "a mitre leaves no gap")
    numbers = {
        None if slot is None else (slot.at.value, slot.width.value, slot.depth.value)
        for slot in (one.slot, other.slot)
    }
    if len(numbers) != 1:
        yield Failure("joints", paths, "the slots of a mitre do not lie opposite each other")


def _check_held(case: Assembled, joint: Joint, ends: dict[_Key, _End]) -> Iterator[Failure]:
    end = ends.get((joint.other.part, joint.other.plane))
    spline = case.solids.get(joint.one.part)
    if end is None or end.slot is None or spline is None or not spline.part.diagonal:
        says = "a spline joint has no slot or no spline"
        yield Failure("joints", (joint.path, joint.one.part, joint.other.part), says)
        return
    yield from _check_spline(case, joint, end, spline)


def _check_spline(case: Assembled, joint: Joint, end: _End, spline: Solid) -> Iterator[Failure]:
    """As thick as its slots, as wide as both together less what is free, short of the panel."""
    of, slot = case.units.of, end.slot
    paths = (joint.path, joint.one.part, joint.other.part)
    if slot is None:
        return
    length, width, thickness = spline.size
    off = apart(2 * of(slot.depth) - length, 2 * of(joint.gap))
    if off:
        says = "the spline is not as wide as its two slots, less what is free"
        yield Failure("joints", paths, says, case.units.length(off))
    play = of(slot.width) - thickness
    if not 0 <= play <= case.units.per_mm:
        says = "the spline does not fit the width of its slot"
        yield Failure("joints", paths, says, case.units.length(abs(play)))
    if spline.outer.z1 != end.square.z1 - of(slot.at) or _outermost(spline, end) != end.point:
        yield Failure("joints", paths, "the spline does not lie in its slot")
    if width**2 > 2 * _room(case, end) ** 2:
        yield Failure("joints", paths, "the spline is longer than its mitre up to the panel")


def _outermost(spline: Solid, end: _End) -> tuple[Number, Number]:
    """The corner of a spline's box on the side of its mitre's long point."""
    box, square = spline.outer, end.square
    x, y = end.point
    return (box.x0 if x == square.x0 else box.x1, box.y0 if y == square.y0 else box.y1)


def _room(case: Assembled, end: _End) -> Number:
    """From the long point along either member to the corner of the panel [unit]."""
    front, square = end.solid.part.front, end.square
    panels = [s for s in case.solids.values() if s.part.role == "panel" and s.part.front == front]
    box = case.extent(panels)
    x, y = end.point
    return min(
        apart(x, box.x0 if x == square.x0 else box.x1),
        apart(y, box.y0 if y == square.y0 else box.y1),
    )
