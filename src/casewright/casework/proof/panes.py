"""A pane passes the round corners of its rebate, and its film ends inside it, all edges alike."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.features import Cut, Plane
from casewright.casework.joints import Joint
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Solid

__all__ = ["check_panes"]


def check_panes(case: Assembled) -> Iterator[Failure]:
    """Corners that would stand on the wood in a corner of their rebate; films of another size."""
    for solid in case.solids.values():
        if solid.part.role == "pane":
            yield from _check_pane(case, solid)
            yield from _check_film(case, solid)


def _check_film(case: Assembled, solid: Solid) -> Iterator[Failure]:
    """Smaller than its pane by the same margin at every edge, as the card has it laid."""
    film, size = solid.part.film, solid.part.finished
    if film is None:
        return
    units = case.units
    margin = units.of(film.margin)
    for own, whole in ((film.length, size.length), (film.width, size.width)):
        off = units.of(whole) - 2 * margin - units.of(own)
        if off or margin <= 0 or units.of(own) <= 0:
            says = f"the film does not end inside {solid.part.title}, all its edges alike"
            yield Failure("joints", (solid.part.path,), says, units.length(abs(off)))


def _check_pane(case: Assembled, solid: Solid) -> Iterator[Failure]:
    path = solid.part.path
    corner = solid.part.corner_radius
    own = 0 if corner is None else case.units.of(corner)
    air: dict[Plane, tuple[int, int]] = {}
    for joint in case.joints:
        if joint.one.part == path and joint.other.cut and joint.one.plane[0] != "t":
            air[joint.one.plane] = (case.units.of(joint.gap), _radius(case, joint))
    ends: tuple[Plane, Plane] = ("l0", "l1")
    edges: tuple[Plane, Plane] = ("w0", "w1")
    for end in ends:
        for edge in edges:
            if end in air and edge in air:
                radius = max(air[end][1], air[edge][1])
                if not _passes(own, radius, air[end][0], air[edge][0]):
                    says = f"a corner of {solid.part.title} stands on its rebate's round corner"
                    yield Failure("joints", (path,), says, case.units.length(radius - own))


def _radius(case: Assembled, joint: Joint) -> int:
    for feature in case.solids[joint.other.part].part.features:
        if isinstance(feature, Cut) and feature.path == joint.other.cut and feature.radius:
            return case.units.of(feature.radius)
    return 0


def _passes(own: int, rebate: int, air_l: int, air_w: int) -> bool:
    """Whether a corner of radius `own` lies inside one of radius `rebate`, air round it.

    Its centre must not lie farther toward the corner than the difference of the radii.
    """
    off_l, off_w = max(0, rebate - own - air_l), max(0, rebate - own - air_w)
    if not off_l and not off_w:
        return True
    return off_l * off_l + off_w * off_w <= (rebate - own) ** 2
