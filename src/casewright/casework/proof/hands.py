"""Hands: left parts lie in mirrored frames, pairs mirror each other, the rest can be turned."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import TypeAlias

from casewright.casework.features import Cut
from casewright.casework.parts import Part
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.units import apart
from casewright.geometry import Direction, Number

__all__ = ["check_hands"]

_Feature: TypeAlias = tuple[object, ...]

_TO_THE_WALL = Direction.of("-z")
# Hinges and pulls sit where the doors want them, so that these need not be the same in a pair.
_OWN = ("hinge cup", "hinge plate", "pull")
# Its brackets and its pull know top from bottom: its step marks the bottom end first.
_MARKED = ("pull", "panel screw")

_FROM_INSIDE = ("frame stile", "face strip")


def check_hands(case: Assembled) -> Iterator[Failure]:
    """Every part that lies in the frame of the other hand, or could be turned wrong."""
    for path, solid in case.solids.items():
        part = solid.part
        wanted = -1 if part.hand == "left" else 1
        if part.placed.orientation.hand != wanted:
            yield Failure("hands", (path,), f"{part.title} lies in the frame of the other hand")
        at_wall = not part.front and case.model.spec.kind != "island"
        if at_wall and any(solid.way(plane) == _TO_THE_WALL for plane in part.shows):
            says = f"a plane of {part.title} that shows looks to the wall"
            yield Failure("hands", (path,), says)
        if part.hand is None:
            yield from _check_turned(case, solid)
        elif part.hand == "left":
            yield from _check_pair(case, part)
        elif part.role == "side" and _other(path, "right", "left") not in case.solids:
            yield Failure("hands", (path,), f"{part.title} has no left side to match")


def _check_turned(case: Assembled, solid: Solid) -> Iterator[Failure]:
    """A part without a hand is the same from either end."""
    part, length = solid.part, solid.size[0]
    marked = case.model.spec.panel is not None
    if not part.features or (marked and all(f.kind in _MARKED for f in part.features)):
        return
    cuts: set[_Feature] = {("cut", *box) for box in solid.cuts.values()}
    turned: set[_Feature] = {
        ("cut", length - box.x1, length - box.x0, *box[2:]) for box in solid.cuts.values()
    }
    rows = case.rows.get(part.path, ())
    holes: set[_Feature] = {(row.bores.face, *hole) for row in rows for hole in row.holes}
    around: set[_Feature] = {
        (row.bores.face, length - hole[0], *hole[1:]) for row in rows for hole in row.holes
    }
    slants = {_slant(cut) for cut in part.features if isinstance(cut, Cut) and cut.mitred_end}
    other = {(("l1" if end == "l0" else "l0"), *rest) for end, *rest in slants}
    if cuts != turned or holes != around or slants != other:
        says = f"{part.title} is not the same from both ends, but has no hand"
        off = Fraction(0) if slants != other else _off(case, cuts | holes, turned | around)
        yield Failure("hands", (part.path,), says, off)


def _other(path: str, hand: str, other: str) -> str:
    """The path with the last word for one hand changed to the other."""
    head, found, tail = path.rpartition(hand)
    return f"{head}{other}{tail}" if found else ""


def _check_pair(case: Assembled, left: Part) -> Iterator[Failure]:
    path = _other(left.path, "left", "right")
    solid = case.solids.get(path)
    if solid is None or solid.part.hand != "right":
        if left.role == "side":
            yield Failure("hands", (left.path,), f"{left.title} has no right side to match")
        return
    right = solid.part
    # Sheets differ in thickness; a stile at a wall, a strip on a dressed end are wider.
    same = 1 if left.role in _FROM_INSIDE else 2
    one, other = case.solids[left.path].size[:same], solid.size[:same]
    if one != other:
        off = max(abs(a - b) for a, b in zip(one, other, strict=True))
        says = f"{left.title} and {right.title} are not the same size"
        yield Failure("hands", (left.path, right.path), says, case.units.length(off))
    mine, its = _features(case, left.path), _features(case, path)
    if mine != its:
        says = f"{left.title} and {right.title} do not mirror each other"
        yield Failure("hands", (left.path, right.path), says, _off(case, mine, its))


def _off(case: Assembled, one: set[_Feature], other: set[_Feature]) -> Fraction:
    """How far cuts and holes lie apart that are alike else [mm]; 0 where they are not alike."""
    mine, its = (sorted(map(_apart, each)) for each in (one, other))
    if [words for words, _ in mine] != [words for words, _ in its]:
        return Fraction(0)
    pairs = (pair for a, b in zip(mine, its, strict=True) for pair in zip(a[1], b[1], strict=True))
    return case.units.length(max(apart(a, b) for a, b in pairs))


def _apart(feature: _Feature) -> tuple[tuple[str, ...], tuple[Number, ...]]:
    """Words and numbers of a cut or a hole."""
    words: list[str] = []
    numbers: list[Number] = []
    for each in feature:
        if isinstance(each, tuple):
            inner = _apart(each)
            words += inner[0]
            numbers += inner[1]
        elif isinstance(each, int | Fraction):
            numbers.append(each)
        else:
            words.append(str(each))
    return tuple(words), tuple(numbers)


def _features(case: Assembled, path: str) -> set[_Feature]:
    """Cuts and holes in part axes, which read the same in both hands.

    Depths count from the face they are cut into: the two boards may differ in thickness.
    """
    solid = case.solids[path]
    thick = solid.size[2]
    # Stiles of a frame and strips are alike from their inner edges, however wide.
    inner = solid.size[1] if solid.part.role in _FROM_INSIDE else 0
    features: set[_Feature] = set()
    for cut in solid.part.features:
        if isinstance(cut, Cut) and not cut.is_square:
            features.add(_slant(cut))
        elif isinstance(cut, Cut):
            box = solid.cuts[cut.path]
            depth = _depth(box.z0, box.z1, thick)
            if cut.edge is not None:
                depth = (cut.edge, thick - box.z1)
            plan = (box.x0, box.x1, box.y0 - inner, box.y1 - inner)
            features.add((cut.kind, plan, depth, str(cut.radius and cut.radius.value)))
    # Beside a blind part a partition carries one of two slides.
    own = (*_OWN, "slide") if case.model.spec.blind is not None else _OWN
    for row in case.rows.get(path, ()):
        if row.bores.kind not in own:
            features.update(
                (row.bores.kind, row.bores.toward, h[:3], _depth(h.low, h.high, thick))
                for h in row.holes
            )
    return features


def _slant(cut: Cut) -> tuple[object, ...]:
    """A mitre or a slot in one: the end it is at, and its numbers."""
    sizes = (str(dim.value) for dim in (cut.at, cut.width, cut.depth))
    return (str(cut.mitred_end), cut.kind, *sizes)


def _depth(low: Number, high: Number, thick: Number) -> tuple[str, Number]:
    """The face something is cut into and how deep; right through reads as no depth."""
    if low == 0 and high == thick:
        return "through", 0
    return ("B", high) if low == 0 else ("A", thick - low)
