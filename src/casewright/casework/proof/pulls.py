"""Pulls: their holes go through everything in line, as far apart as the pull's screws."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.cases import Door, Front
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.hardware import PullSheet

__all__ = ["check_pulls"]

_Spot = tuple[int, int, int]


def check_pulls(case: Assembled, sheet: PullSheet | None) -> Iterator[Failure]:
    """Pulls without holes, holes that do not go through, holes that fit no pull.

    Parameters
    ----------
    sheet
        Data sheet of the pull; without one sizes are not checked.
    """
    for front in case.model.fronts:
        bored = _bored(case, front)
        if bool(front.pull) != bool(bored) or (front.pull and front.pull not in bored):
            yield Failure("fronts", (front.path,), f"the pull of {front.title} has no holes")
            continue
        if not bored:
            continue
        spots = set().union(*bored.values())
        yield from _check_through(case, front, spots)
        if sheet is not None:
            yield from _check_sheet(case, front, sorted(spots), sheet)


def _bored(case: Assembled, front: Front) -> dict[str, set[_Spot]]:
    """Holes of a leaf's pull by the path of the bores: x, y and radius."""
    bored = {}
    for path in front.parts:
        solid = case.solids.get(path)
        for row in case.rows.get(path, ()):
            if row.bores.kind == "pull" and solid is not None:
                points = (solid.point((hole.length, hole.width, 0)) for hole in row.holes)
                bored[row.bores.path] = {
                    (x, y, hole.radius) for (x, y, _), hole in zip(points, row.holes, strict=True)
                }
    return bored


def _check_through(case: Assembled, front: Front, spots: set[_Spot]) -> Iterator[Failure]:
    """Every part of the leaf that a screw passes has the same hole, right through."""
    for path in front.parts:
        solid = case.solids[path]
        if solid.part.diagonal:  # it lies in the mitre, not where its box is
            continue
        rows = [row for row in case.rows.get(path, ()) if row.bores.kind == "pull"]
        own = {
            (*solid.point((hole.length, hole.width, 0))[:2], hole.radius)
            for row in rows
            for hole in row.holes
        }
        box = solid.outer
        passed = {s for s in spots if box.x0 < s[0] < box.x1 and box.y0 < s[1] < box.y1}
        if own != passed:
            says = f"the holes for the pull of {front.title} are not in line through it"
            yield Failure("fronts", (front.path, path), says)
        if any(row.bores.depth is not None for row in rows):
            says = f"the holes for the pull of {front.title} do not go through"
            yield Failure("fronts", (front.path, path), says)


def _check_sheet(
    case: Assembled, front: Front, spots: list[_Spot], sheet: PullSheet
) -> Iterator[Failure]:
    length = case.units.length
    off = max(abs(length(2 * radius) - sheet.hole.value) for _, _, radius in spots)
    if off:
        says = f"the holes for the pull of {front.title} are not the size of its screws"
        yield Failure("fronts", (front.path,), says, off)
    centres = sheet.centres.value
    holes = 2 if centres else 1
    # A front that does not swing may have two pulls.
    if len(spots) not in ((holes,) if isinstance(front, Door) else (holes, 2 * holes)):
        yield Failure("fronts", (front.path,), f"the pull of {front.title} wants other holes")
        return
    for (x0, y0, _), (x1, y1, _) in zip(spots[::2], spots[1::2], strict=False):
        apart = length(x1 - x0) ** 2 + length(y1 - y0) ** 2
        if centres and apart != centres**2:
            says = f"the holes for the pull of {front.title} are not its centres apart"
            yield Failure("fronts", (front.path,), says)
