"""Blind corner bases: panel, filler and door lie edge to edge in front of the box, or in it."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.units import apart
from casewright.geometry import Number

__all__ = ["check_blind_corner"]


def check_blind_corner(case: Assembled, grid: Fraction) -> Iterator[Failure]:
    """A blind part that is not closed, or whose filler does not lie beside the door.

    Parameters
    ----------
    grid
        What rounding to the cutting grid may move a plane by [mm].
    """
    hand = case.model.spec.blind
    by_role: dict[str, list[Solid]] = {"blind panel": [], "blind filler": []}
    for solid in case.solids.values():
        by_role.get(solid.part.role, []).append(solid)
    if case.model.spec.framed and hand is not None:
        yield from _check_framed(case, by_role, case.units.up(grid), left=hand == "left")
        return
    asked = case.model.spec.front
    inset = asked is not None and asked.overlay == "inset"
    counts = tuple(len(by_role[role]) for role in ("blind panel", "blind filler"))
    if counts != (hand is not None, hand is not None and not inset):
        says = "a blind corner has one panel, and one filler where its door is not inset"
        yield Failure("parts", (case.model.key,), says)
        return
    if hand is None:
        return
    [panel] = by_role["blind panel"]
    if inset:
        yield from _check_inside(case, panel, left=hand == "left")
        return
    [filler] = by_role["blind filler"]
    yield from _check_edges(case, panel, filler, left=hand == "left")


def _check_framed(
    case: Assembled, by_role: dict[str, list[Solid]], grid: Number, *, left: bool
) -> Iterator[Failure]:
    """A stile of the frame stands before the panel, its mouth edge even with the panel's.

    It begins behind the run round the corner, and its door lies over it as over the far stile.
    """
    of = case.units.of
    panels = by_role["blind panel"]
    stiles = [s for s in case.solids.values() if s.part.role == "blind stile"]
    if len(panels) != 1 or len(stiles) != 1 or by_role["blind filler"]:
        yield Failure("parts", (case.model.key,), "a framed blind corner has one panel and stile")
        return
    [panel], [stile] = panels, stiles
    side = 1 if left else 0
    short = stile.outer.x1 - panel.outer.x1 if left else panel.outer.x0 - stile.outer.x0
    off = max(apart(panel.outer.z1, of(case.model.depth)), apart(panel.outer.z1, stile.outer.z0))
    if off or short < 0 or short > grid:
        says = "the blind stile does not end with the mouth, or the panel not with the box's front"
        yield Failure("fronts", (stile.part.path, panel.part.path), says,
                      case.units.length(max(off, apart(short, 0))))  # fmt: skip
    ends = [s.outer for s in case.solids.values() if s.part.role == "frame stile"]
    far = max(box.x0 for box in ends) if left else min(box.x1 for box in ends)
    for door in case.model.doors:
        x0, x1 = of(door.x), of(door.x) + of(door.width)
        near = stile.outer[side] - x0 if left else x1 - stile.outer[side]
        over = x1 - far if left else far - x0
        if apart(near, over) > grid or any(
            hinge.plate and door.hinge_side == case.model.spec.blind for hinge in door.hinges
        ):
            says = (
                f"{door.title} does not lie over both stiles alike, or is hinged on the blind one"
            )
            yield Failure("fronts", (door.path, stile.part.path), says,
                          case.units.length(apart(near, over)))  # fmt: skip


def _check_inside(case: Assembled, panel: Solid, *, left: bool) -> Iterator[Failure]:
    """An inset door hangs beside the panel, which is flush with it."""
    of = case.units.of
    off = apart(panel.outer.z1, of(case.model.depth))
    if off:
        says = "the panel does not end with the front of the box"
        yield Failure("fronts", (panel.part.path,), says, case.units.length(off))
    for door in case.model.doors:
        edge = of(door.x) if left else of(door.x) + of(door.width)
        air: Number = edge - panel.outer.x1 if left else panel.outer.x0 - edge
        if air <= 0 or door.hinge_side == case.model.spec.blind:
            says = f"the {door.title} laps the blind panel, or is hinged on it"
            yield Failure("fronts", (door.path, panel.part.path), says,
                          case.units.length(apart(air, 0)))  # fmt: skip


def _check_edges(case: Assembled, panel: Solid, filler: Solid, *, left: bool) -> Iterator[Failure]:
    of = case.units.of
    side = 1 if left else 0
    off = max(apart(panel.outer[side], filler.outer[side]),
              apart(panel.outer.z1, of(case.model.depth)))  # fmt: skip
    if off:
        says = "the filler does not end with the mouth, or the panel with the front of the box"
        yield Failure("fronts", (filler.part.path, panel.part.path), says, case.units.length(off))
    fronts = case.model.fronts
    if fronts:
        off = max(apart(filler.outer.y0, min(of(f.y) for f in fronts)),
                  apart(filler.outer.y1, max(of(f.y) + of(f.height) for f in fronts)))  # fmt: skip
        if off:
            says = "the filler is not as high as the fronts beside it"
            yield Failure("fronts", (filler.part.path,), says, case.units.length(off))
    for face in case.model.faces:
        leaves = [front for front in fronts if front.path in face.leaves]
        edge = of(leaves[0].x) if left else of(leaves[-1].x) + of(leaves[-1].width)
        air: Number = edge - filler.outer.x1 if left else filler.outer.x0 - edge
        if air <= 0 or any(h.plate and front.hinge_side == case.model.spec.blind
                           for front in case.model.doors for h in front.hinges):  # fmt: skip
            says = "the door beside the blind part laps its filler, or is hinged on it"
            yield Failure("fronts", face.leaves, says, case.units.length(apart(air, 0)))
