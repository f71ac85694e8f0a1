"""Diagonal corners: what lies in the mouth, against what lies along the walls.

Placements in the mouth are in its own axes, so that its parts are proved among themselves as those
of any box. What is proved here is how the two fit: exactly, in numbers a + b sqrt(2).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import product

from casewright.casework.case_mouth import CaseMouth
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.corner_bowls import check_under_bowl
from casewright.casework.proof.corner_frames import check_corner_frame, check_slant
from casewright.casework.proof.corner_plinths import check_before_plinth
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.plans import Plans, apart_in_plan, is_clipped, plans_of
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.surds import Surd
from casewright.casework.proof.units import apart
from casewright.geometry import Box

__all__ = ["check_mouth"]

_Spot = tuple[int, int, int, int]
"""A pin hole's mouth in case axes, and its radius."""

# What a shelf pin sticks out of its hole at the least [mm] (common practice).
_PIN = Fraction(6)
_ROOT = Fraction(99, 70)  # a little over the root of 2


def check_mouth(case: Assembled, grid: Fraction) -> Iterator[Failure]:
    """A mouth whose parts run into the box, do not meet it, or stand before a neighbour.

    Parameters
    ----------
    grid
        How far rounding may keep a clip or the strips off the face [mm].
    """
    mouth, turned = case.model.mouth, [s for s in case.solids.values() if s.part.turned]
    if (mouth is None) != (not turned) or (mouth is None) != (case.model.spec.diagonal is None):
        yield Failure("parts", (case.model.key,), "a diagonal corner has a mouth, no other case")
        return
    plans = plans_of(case)
    if mouth is None or plans is None:
        return
    yield from _check_overlaps(case, plans, turned)
    yield from _check_joints(case, plans, grid)
    yield from _check_face(case, mouth, plans, grid)
    yield from _check_strips(case, mouth, plans, grid)
    yield from _check_door(case, plans)
    yield from _check_pins(case, plans)
    yield from check_corner_frame(case, mouth, plans, grid)
    yield from check_under_bowl(case, mouth, plans, grid)


def _check_overlaps(case: Assembled, plans: Plans, turned: list[Solid]) -> Iterator[Failure]:
    plain = [solid for solid in case.solids.values() if not solid.part.turned]
    for one, other in product(turned, plain):
        if _level(one.outer, other.outer) and _meet(case, plans, one, other):
            says = f"{one.part.title} and {other.part.title} would be in the same place"
            yield Failure("overlap", (one.part.path, other.part.path), says)


def _meet(case: Assembled, plans: Plans, one: Solid, other: Solid) -> bool:
    """Whether any pieces of two parts share space."""
    pieces, mates = (
        list(zip(solid.pieces, plans.of(solid, case.units), strict=True)) for solid in (one, other)
    )
    return any(
        _level(piece, mate) and not apart_in_plan(plan, other_plan)
        for (piece, plan), (mate, other_plan) in product(pieces, mates)
    )


def _level(one: Box, other: Box) -> bool:
    """Whether two boxes share any height; upright axes are the same in the mouth."""
    return one.y0 < other.y1 and other.y0 < one.y1


def _check_joints(case: Assembled, plans: Plans, grid: Fraction) -> Iterator[Failure]:
    """Uprights end on bottom and top: one above the other, and over some area.

    A rail before a slant is held by `check_corner_frame`.
    """
    for joint in case.joints:
        if not case.is_mixed(joint):
            continue
        if joint.one.cut:
            yield from check_slant(case, plans, joint, grid)
            continue
        ends = [(case.solids[s.part], case.solids[s.part].way(s.plane))
                for s in (joint.one, joint.other)]  # fmt: skip
        (one, way), (other, back) = ends
        paths = (joint.path, joint.one.part, joint.other.part)
        if way.axis != 1 or back != way.opposite:
            yield Failure("joints", paths, "the two surfaces do not face each other")
            continue
        at, mate = one.outer.y1, other.outer.y0
        if way.sign < 0:
            at, mate = other.outer.y1, one.outer.y0
        off = apart(mate - at, case.units.of(joint.gap))
        if off:
            says = f"{one.part.title} does not meet {other.part.title}"
            yield Failure("joints", paths, says, case.units.length(off))
        flat = product(plans.of(one, case.units), plans.of(other, case.units))
        if all(apart_in_plan(a, b) for a, b in flat):
            yield Failure("joints", paths, "the two surfaces lie beside each other")


def _check_face(
    case: Assembled, mouth: CaseMouth, plans: Plans, grid: Fraction
) -> Iterator[Failure]:
    """The face runs from side to side; bottom and top end on it, a hair behind, never before."""
    units = case.units
    reach = units.of(mouth.reach)
    for solid in _sides(case):
        off = apart(solid.outer.y1, units.of(case.model.height))
        if off:
            says = f"{solid.part.title} does not reach the outside of the case"
            yield Failure("size", (solid.part.path,), says, units.length(off))
        high = plans.plain(solid.outer).both.high.whole // 2
        if high != reach:
            says = f"the face does not begin at the front of {solid.part.title}"
            yield Failure("size", (solid.part.path,), says, units.length(apart(high, reach)))
        deep = solid.size[1]
        if deep != units.of(mouth.side):
            says = f"{solid.part.title} is not as deep as the other"
            off = units.length(apart(deep, units.of(mouth.side)))
            yield Failure("size", (solid.part.path,), says, off)
    for solid in case.solids.values():
        if solid.part.role not in ("bottom", "top", "shelf") or solid.part.turned:
            continue
        line = plans.clip_line(solid, units)
        paths = (solid.part.path,)
        if line is None or not is_clipped(solid, mouth):
            yield Failure("cuts", paths, f"{solid.part.title} is not clipped at its front corner")
        elif line > reach:
            says = f"{solid.part.title} stands out of the face"
            yield Failure("size", paths, says, units.length(line - reach))
        elif (
            solid.part.role != "shelf"
            and units.length(reach - line) > grid + mouth.band.value * _ROOT
        ):
            says = f"{solid.part.title} ends behind the face"
            yield Failure("size", paths, says, units.length(reach - line))


def _sides(case: Assembled) -> list[Solid]:
    return [solid for solid in case.solids.values() if solid.part.role == "side"]


def _check_strips(
    case: Assembled, mouth: CaseMouth, plans: Plans, grid: Fraction
) -> Iterator[Failure]:
    """Each strip stands at an end of the mouth, its front on the face, against its side."""
    strips = [s for s in case.solids.values() if s.part.role == "hinge strip"]
    units = case.units
    if len(strips) != 2:
        yield Failure("parts", (case.model.key,), "a mouth has two hinge strips")
        return
    ends = sorted((s.outer.x0, s.outer.x1) for s in strips)
    off = max(apart(ends[0][0], 0), apart(ends[1][1], units.of(mouth.width)),
              *(apart(s.outer.z1, units.of(mouth.front)) for s in strips))  # fmt: skip
    if off:
        says = "a hinge strip does not stand at its end of the mouth, flush with the face"
        yield Failure("size", (case.model.key,), says, units.length(off))
    if not case.model.spec.framed:
        yield from _check_tight(case, plans, strips, grid)
    for board in (s for s in case.solids.values() if s.part.path.endswith(".toe_board")):
        if case.model.spec.toe == "plinth":
            yield from check_before_plinth(case, plans, board, grid)
        else:
            yield from _check_tight(case, plans, [board], grid)
            yield from _check_toe(case, plans, board, grid)


def _check_toe(case: Assembled, plans: Plans, board: Solid, grid: Fraction) -> Iterator[Failure]:
    """A toe board's front is in line with the notches outside, a hair behind, never before."""
    front = plans.turned(board.outer).both.high
    for side in _sides(case):
        notched = [plans.plain(p).both.high for p in side.pieces if _level(board.outer, p)]
        line = Surd(max((high.whole for high in notched), default=0))
        near = line.minus(Surd(2 * case.units.up(2 * grid)))
        if front.minus(line).sign > 0 or near.minus(front).sign > 0:
            says = f"{board.part.title} is not in line with the notch of {side.part.title}"
            yield Failure("size", (board.part.path, side.part.path), says)


def _check_tight(
    case: Assembled, plans: Plans, across: list[Solid], grid: Fraction
) -> Iterator[Failure]:
    """What stands between the return sides reaches them: a step wider it would run into both."""
    if not across:
        return
    box, wide = case.extent(across), case.units.up(grid)
    step = plans.turned(box._replace(x0=box.x0 - wide, x1=box.x1 + wide))
    for side in _sides(case):
        level = [plans.plain(piece) for piece in side.pieces if _level(box, piece)]
        if all(apart_in_plan(step, piece) for piece in level):
            says = f"{across[0].part.title} stands off the {side.part.title}"
            yield Failure("joints", (across[0].part.path, side.part.path), says)


def _check_door(case: Assembled, plans: Plans) -> Iterator[Failure]:
    """The square edges of a door stay behind the planes of the neighbours' sides."""
    width, depth = case.units.of(case.model.width), case.units.of(case.model.depth)
    for front in case.model.fronts:
        own = [s for s in case.solids.values() if s.part.front == front.path]
        plan = plans.turned(case.extent(own))
        if any(span.high.minus(Surd(2 * most)).sign > 0
               for span, most in ((plan.u, width), (plan.v, depth))):  # fmt: skip
            says = f"an edge of the {front.title} stands before the neighbouring case"
            yield Failure("fronts", (front.path,), says)


def _check_pins(case: Assembled, plans: Plans) -> Iterator[Failure]:
    """Every hole of a height has its shelf over it, and sides and post have the same heights."""
    rows: dict[str, set[_Spot]] = {}
    for path, held in case.rows.items():
        solid = case.solids[path]
        for row in held:
            if row.bores.kind == "shelf pins":
                face = solid.size[2] if row.bores.face == "A" else 0
                spots = {(*solid.point((h.length, h.width, face)), h.radius) for h in row.holes}
                rows.setdefault(path, set()).update(spots)
    heights = {frozenset(y for _, y, _, _ in spots) for spots in rows.values()}
    if len(heights) > 1 or len(rows) not in (0, 3):
        says = "sides and corner post have not the same pin holes"
        yield Failure("pins", tuple(rows), says)
    for solid in case.solids.values():
        if solid.part.role == "shelf":
            yield from _check_shelf(case, plans, solid, rows)


def _check_shelf(
    case: Assembled, plans: Plans, shelf: Solid, rows: dict[str, set[_Spot]]
) -> Iterator[Failure]:
    most = plans.clip_line(shelf, case.units)
    [plan] = [plans.plain(shelf.outer, most)]
    deep = case.units.up(_PIN)
    for path, spots in rows.items():
        solid = case.solids[path]
        inside = {row.bores.face for row in case.rows[path] if row.bores.kind == "shelf pins"}
        way = solid.way("t1" if inside == {"A"} else "t0")
        for x, y, z, radius in spots:
            if y + radius != shelf.outer.y0:
                continue
            reach = [deep if way.axis == axis else radius for axis in (0, 2)]
            sign = way.sign
            xs = (x, x + sign * reach[0]) if way.axis == 0 else (x - radius, x + radius)
            zs = (z, z + sign * reach[1]) if way.axis == 2 else (z - radius, z + radius)
            pin = plans.plain(Box(min(xs), max(xs), y - radius, y + radius, min(zs), max(zs)))
            if apart_in_plan(pin, plan) or pin.both.high.minus(plan.both.high).sign > 0:
                says = f"{shelf.part.title} does not reach over its pins"
                yield Failure("pins", (shelf.part.path, path), says)
