"""Fronts that do not swing: screwed on over wood, in the middle of their row, pulls in line."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.cases import Front
from casewright.casework.joints import Fastening, Joint
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.units import apart

__all__ = ["check_panels"]


def check_panels(case: Assembled) -> Iterator[Failure]:
    """Screws without holes, holes beside the front, pulls off the middle of their front."""
    doors = {door.path for door in case.model.doors}
    screwed = {}
    for joint in case.joints:
        for held in joint.fastenings:
            if held.kind == "front screw" and held.through[0] in case.solids:
                screwed[case.solids[held.into].part.front] = joint
                yield from _check_screws(case, joint, held)
    for front in case.model.fronts:
        if front.path in doors:
            continue
        # Brackets of the appliance's own hold its panel.
        if front.path not in screwed and case.model.spec.panel is None:
            yield Failure("fronts", (front.path,), f"nothing holds the {front.title}")
        yield from _check_pull(case, front)


def _check_screws(case: Assembled, joint: Joint, held: Fastening) -> Iterator[Failure]:
    passed, front = case.solids[held.through[0]], case.solids[held.into]
    rows = [row for row in case.rows.get(held.through[0], ()) if row.bores.kind == "front screw"]
    holes = [(row, hole) for row in rows for hole in row.holes]
    paths = (joint.path, held.through[0], held.into)
    if len(holes) != held.count:
        yield Failure("fasteners", paths, "there is not one hole for each screw of a front")
    for row, hole in holes:
        if row.bores.depth is not None:
            yield Failure("fasteners", paths, "a hole for a front's screw does not go through")
        x, y, _ = passed.point((hole.length, hole.width, 0))
        box, radius = front.outer, hole.radius
        out = max(box.x0 - x, x - box.x1, box.y0 - y, y - box.y1) + radius
        if out > 0:
            says = "a front's screw runs beside the front"
            yield Failure("fasteners", paths, says, case.units.length(out))
    heights = {passed.point((h.length, h.width, 0))[1] for _, h in holes}
    radii = {hole.radius for _, hole in holes}
    across = sorted(passed.point((h.length, h.width, 0))[0] for _, h in holes)
    middle = passed.outer.x0 + passed.outer.x1
    off = max((apart(a + b, middle) for a, b in zip(across, reversed(across), strict=True)),
              default=0)  # fmt: skip
    if off or len(heights) * 2 != len(holes) or len(radii) > 1:
        says = "the screws of a front are not in rows from end to end"
        yield Failure("fasteners", paths, says, case.units.length(off))


def _check_pull(case: Assembled, front: Front) -> Iterator[Failure]:
    """Holes of the pulls lie at the middle of the front's height, even to both sides.

    Those of an appliance's panel lie in one line, where its door is taken hold of: across, or
    upright beside the free edge of one that swings.
    """
    of = case.units.of
    points = []
    for path in front.parts:
        for row in case.rows.get(path, ()):
            if row.bores.kind == "pull":
                solid = case.solids[path]
                points += [solid.point((h.length, h.width, 0))[:2] for h in row.holes]
    if not points:
        return
    middle = 2 * of(front.y) + of(front.height)
    if case.model.spec.panel is not None:
        middle = 2 * points[0][1]
    centre = 2 * of(front.x) + of(front.width)
    hinge = case.solids[front.parts[0]].part.hand
    if hinge is not None:
        at = {(2 * x - centre) * (1 if hinge == "left" else -1) for x, _ in points}
        if len(at) > 1 or min(at) <= 0:
            says = f"the pull of the {front.title} does not stand beside its free edge"
            yield Failure("fronts", (front.path,), says)
        return
    xs = sorted(x for x, _ in points)
    off = max(
        *(apart(2 * y, middle) for _, y in points),
        *(apart(a + b, centre) for a, b in zip(xs, reversed(xs), strict=True)),
    )
    if off:
        says = f"the pull of the {front.title} is not in its middle"
        yield Failure("fronts", (front.path,), says, case.units.length(off) / 2)
