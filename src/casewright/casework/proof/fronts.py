"""Fronts: leaves fill their boxes, reveals and gaps add up to the face, faces meet."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from casewright.casework.cases import Face, Front
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.units import apart
from casewright.casework.specs import CaseSpec, front_spec
from casewright.geometry import Box

__all__ = ["check_fronts", "is_inset"]

_BARE = ("open", "appliance")
_LEVEL = ("bottom", "top", "stretcher", "divider", "fixed shelf")


def check_fronts(case: Assembled) -> Iterator[Failure]:
    """Every leaf that its parts do not fill, every face that does not add up."""
    model = case.model
    fronts = {front.path: front for front in model.fronts}
    for front in model.fronts:
        yield from _check_leaf(case, front)
    for face in model.faces:
        leaves = [fronts[path] for path in face.leaves if path in fronts]
        if not leaves or len(leaves) != len(face.leaves):
            yield Failure("fronts", (model.key,), f"the {face.opening} face lacks a leaf")
            continue
        yield from _check_across(case, face, leaves)
        yield from _check_up(case, face, leaves)
        yield from _check_on_box(case, face)
        if is_inset(case, face.opening):
            yield from _check_inset(case, face)
    yield from _check_under_crown(case)
    yield from _check_listed(case)
    yield from _check_seams(case)


def _check_under_crown(case: Assembled) -> Iterator[Failure]:
    """The stretcher that a crown is nailed to reaches behind the fronts right below the crown."""
    of, stretcher = case.units.of, case.solids.get(f"{case.model.key}.crown_stretcher")
    tops = [of(front.y) + of(front.height) for front in case.model.fronts]
    if stretcher is None or not tops or _is_open_above(case.model.spec):
        return
    open_ = stretcher.outer.y0 - max(tops)
    if open_ >= 0:
        says = f"the {stretcher.part.title} ends above the fronts under the crown"
        yield Failure("fronts", (stretcher.part.path,), says, case.units.length(open_))


def _is_open_above(spec: CaseSpec) -> bool:
    """Whether the highest row has no front."""
    if spec.divider is not None:
        return spec.upper_front is None
    return bool(spec.rows) and spec.rows[0].front is None


def _leaf_box(case: Assembled, front: Front) -> Box:
    of = case.units.of
    x, y, z = of(front.x), of(front.y), of(front.z)
    return Box(
        x, x + of(front.width), y, y + of(front.height), z, z + of(front.thickness)
    )  # fmt: skip


def _check_leaf(case: Assembled, front: Front) -> Iterator[Failure]:
    own = [solid for path, solid in case.solids.items() if solid.part.front == front.path]
    if {solid.part.path for solid in own} != set(front.parts) or not own:
        yield Failure("fronts", (front.path,), f"{front.title} does not name its own parts")
        return
    box, real = _leaf_box(case, front), case.extent(own)
    off = max(apart(a, b) for a, b in zip(box, real, strict=True))
    if off:
        says = f"the parts of {front.title} do not fill the leaf"
        yield Failure("fronts", (front.path, *front.parts), says, case.units.length(off))
    yield from _check_members(case, front, box, own)
    depth = case.units.of(case.model.leaf_plane)
    if is_inset(case, front.opening):
        off = apart(box.z1, depth)
        if off:
            says = f"{front.title} is not flush with the front of the case"
            yield Failure("fronts", (front.path,), says, case.units.length(off))
    elif box.z0 < depth:
        says = f"{front.title} stands in the box"
        yield Failure("fronts", (front.path,), says, case.units.length(depth - box.z0))


def is_inset(case: Assembled, opening: str) -> bool:
    """Whether the doors of an opening were asked for inside it, flush."""
    asked = front_spec(case.model.spec, opening)
    return asked is not None and asked.overlay == "inset"


def _check_inset(case: Assembled, face: Face) -> Iterator[Failure]:
    """The face of inset doors is the clear opening: between the sides, from board to board."""
    of = case.units.of
    framed = case.model.spec.framed
    boxes = [(s.part.role, s.outer) for s in case.case_solids]
    uprights: tuple[str, ...] = ("side", "blind panel")
    if framed:
        uprights = ("frame stile", "blind stile")
    if case.model.mouth is not None:
        uprights = ("hinge strip",)
    levels = ("frame rail",) if framed else _LEVEL
    planes = {
        "left": [(of(face.x0), box.x1) for role, box in boxes if role in uprights],
        "right": [(of(face.x1), box.x0) for role, box in boxes if role in uprights],
        "bottom": [(of(face.y0), box.y1) for role, box in boxes if role in levels],
        "top": [(of(face.y1), box.y0) for role, box in boxes if role in levels],
    }
    if case.model.spec.topless:
        # A bowl hangs in it: the front ends at the counter that lies on the sides.
        planes["top"] += [(of(face.y1), box.y1) for role, box in boxes if role == "side"]
    for word, pairs in planes.items():
        off = min((apart(own, plane) for own, plane in pairs), default=0)
        if off:
            says = f"the {face.opening} face does not end on the box at its {word}"
            yield Failure("fronts", face.leaves, says, case.units.length(off))


def _check_members(
    case: Assembled, front: Front, leaf: Box, own: list[Solid]
) -> Iterator[Failure]:
    """Slabs fill the leaf, stiles run its whole height at its edges, rails close its ends."""
    for solid in own:
        box = solid.outer
        sides = min(apart(box.x0, leaf.x0), apart(box.x1, leaf.x1))
        ends = apart(box.y0, leaf.y0), apart(box.y1, leaf.y1)
        face = apart(box.z1, leaf.z1)
        match solid.part.role:
            case "slab" | "door":
                off = max(*ends, apart(box.x0, leaf.x0), apart(box.x1, leaf.x1))
            case "stile":
                off = max(*ends, sides, face)
            case "rail":
                off = max(min(ends), face)
            case _:
                continue
        if off:
            says = f"{solid.part.title} is not flush with the outside of {front.title}"
            yield Failure("fronts", (solid.part.path, front.path), says, case.units.length(off))


def _check_across(case: Assembled, face: Face, leaves: list[Front]) -> Iterator[Failure]:
    """Left reveal, leaves, gaps and right reveal, walked from left to right."""
    of = case.units.of
    if len(face.gaps) != len(leaves) - 1:
        yield Failure("fronts", face.leaves, "there is not one gap between neighbouring leaves")
        return
    at = of(face.x0)
    for before, leaf in zip((face.left, *face.gaps), leaves, strict=True):
        at += of(before)
        if of(before) < 0:
            yield Failure("fronts", (leaf.path,), f"{leaf.title} laps what is left of it")
        if of(leaf.x) != at:
            says = f"{leaf.title} is not where reveal, leaves and gaps put it"
            yield Failure("fronts", (leaf.path,), says, case.units.length(abs(of(leaf.x) - at)))
        at += of(leaf.width)
    off = abs(at + of(face.right) - of(face.x1))
    if off or of(face.right) < 0:
        says = "reveals, leaves and gaps do not add up to the width of the face"
        yield Failure("fronts", face.leaves, says, case.units.length(off))


def _check_up(case: Assembled, face: Face, leaves: list[Front]) -> Iterator[Failure]:
    of = case.units.of
    bottom = of(face.y0) + of(face.bottom)
    for leaf in leaves:
        if of(leaf.y) != bottom:
            says = f"{leaf.title} does not begin at the bottom of its face"
            off = abs(of(leaf.y) - bottom)
            yield Failure("fronts", (leaf.path,), says, case.units.length(off))
        off = abs(bottom + of(leaf.height) + of(face.top) - of(face.y1))
        if off or of(face.bottom) < 0 or of(face.top) < 0:
            says = f"{leaf.title} and its reveals do not add up to the height of the face"
            yield Failure("fronts", (leaf.path,), says, case.units.length(off))


def _check_on_box(case: Assembled, face: Face) -> Iterator[Failure]:
    """A face lies in front of the case, not beside it; that of a panel has no case behind it."""
    if case.model.spec.panel is not None:
        return
    of = case.units.of
    box = case.extent(case.case_solids)
    if case.model.mouth is not None:
        # Across the mouth it lies on the strips, up and down on the whole box.
        role = "frame stile" if case.model.spec.framed else "hinge strip"
        strips = case.extent([s for s in case.case_solids if s.part.role == role])
        box = Box(strips.x0, strips.x1, box.y0, box.y1, box.z0, box.z1)
    out = max(box.x0 - of(face.x0), of(face.x1) - box.x1,
              box.y0 - of(face.y0), of(face.y1) - box.y1)  # fmt: skip
    if out > 0:
        says = f"the {face.opening} face reaches out of the case"
        yield Failure("fronts", face.leaves, says, case.units.length(out))


def _check_listed(case: Assembled) -> Iterator[Failure]:
    """Every leaf belongs to one face."""
    listed = [path for face in case.model.faces for path in face.leaves]
    for front in case.model.fronts:
        if listed.count(front.path) != 1:
            yield Failure("fronts", (front.path,), f"{front.title} is not in one face")


def _check_seams(case: Assembled) -> Iterator[Failure]:
    """Faces above one another meet, except where a row is open, and on the middle of a board."""
    of = case.units.of
    over = (face for face in case.model.faces if not is_inset(case, face.opening))
    faces = sorted(over, key=lambda face: of(face.y0))
    open_rows = sum(row.kind in _BARE for row in case.model.spec.rows)
    for lower, upper in pairwise(faces):
        leaves = (*lower.leaves, *upper.leaves)
        off = max(abs(of(lower.x0) - of(upper.x0)), abs(of(lower.x1) - of(upper.x1)))
        apart_by = of(upper.y0) - of(lower.y1)
        if apart_by > 0 and open_rows:
            open_rows -= 1
        else:
            off = max(off, abs(apart_by))
        if off:
            says = "the lower and the upper face do not meet"
            yield Failure("fronts", leaves, says, case.units.length(off))
    yield from _check_boards_between(case, faces)


def _check_boards_between(case: Assembled, faces: list[Face]) -> Iterator[Failure]:
    """A divider, or a board between rows, lies behind the middle of a gap between two faces."""
    of = case.units.of
    tops, bottoms = [2 * of(f.y1) for f in faces], [2 * of(f.y0) for f in faces]
    is_open = any(row.kind in _BARE for row in case.model.spec.rows)
    for path, solid in case.solids.items():
        box = solid.outer
        middle = box.y0 + box.y1
        between = _is_divider(case, solid) or _has_front_beside(case, path)
        if not between or not faces or not min(bottoms) < middle < max(tops):
            continue
        off = [min(apart(middle, line) for line in lines) for lines in (tops, bottoms)]
        miss = min(off) if is_open else max(off)
        if miss:
            says = f"the fronts do not meet on the middle of the {solid.part.title}"
            yield Failure("fronts", (path,), says, case.units.length(miss) / 2)


def _is_divider(case: Assembled, solid: Solid) -> bool:
    """Whether it is a divider, or the rail of a face frame before one."""
    if case.model.spec.framed:
        return solid.part.path == f"{case.model.key}.frame.rail_divider"
    return solid.part.role == "divider"


def _has_front_beside(case: Assembled, path: str) -> bool:
    """Whether it is a board between rows, or the rail of a frame, one of which has a front."""
    framed = case.model.spec.framed
    _, found, number = path.rpartition(".frame.rail_" if framed else ".row_board.")
    if not found or not number.isdigit():
        return False
    above = int(number)
    rows = case.model.spec.rows[above - 1 : above + 1]
    return any(row.kind not in _BARE for row in rows)
