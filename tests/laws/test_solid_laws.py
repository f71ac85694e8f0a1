"""Laws of solids: what is left of a part, and what two parts share, against counted cubes.

The cubes are NumPy arrays filled straight from each cut's own words, with no boxes and no
subtraction, so that they are an independent computation.
"""

from __future__ import annotations

from itertools import permutations, product
from typing import NamedTuple

import numpy as np
import numpy.typing as npt
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.pieces import board, cut, placed

from casewright.casework.features import Cut
from casewright.casework.parts import Part
from casewright.casework.proof.overlaps import shared
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.units import Units
from casewright.dims import Dim
from casewright.geometry import Box, volume

UNITS = Units(1)
Cubes = npt.NDArray[np.bool_]

LIES = [
    " ".join(f"{sign}{axis}" for sign, axis in zip(signs, axes, strict=True))
    for axes in permutations("xyz")
    for signs in product("+-", repeat=3)
]


class _Span(NamedTuple):
    low: int
    size: int


def _length(dim: Dim) -> int:
    return int(dim.value)


@st.composite
def _spans(draw: st.DrawFn, whole: int) -> _Span:
    low = draw(st.integers(0, whole - 1))
    return _Span(low, draw(st.integers(1, whole - low)))


@st.composite
def _cuts(draw: st.DrawFn, number: int, size: tuple[int, int, int]) -> Cut:
    length, width, thickness = size
    runs = draw(st.sampled_from(("l", "w")))
    along, across = (length, width) if runs == "l" else (width, length)
    wide = draw(_spans(across))
    stopped = draw(_spans(along)) if draw(st.booleans()) else None
    return cut(
        path=f"board.cut_{number}", runs=runs, face=draw(st.sampled_from("AB")),
        datum=("w" if runs == "l" else "l") + draw(st.sampled_from("01")),
        at=wide.low, width=wide.size, depth=draw(st.integers(1, thickness)),
        start=stopped.low if stopped else None,
        end=stopped.low + stopped.size if stopped else None,
    )  # fmt: skip


@st.composite
def _parts(draw: st.DrawFn) -> Part:
    size = draw(st.tuples(st.integers(3, 9), st.integers(3, 9), st.integers(2, 6)))
    cuts = [draw(_cuts(number, size)) for number in range(draw(st.integers(0, 3)))]
    at = draw(st.tuples(*[st.integers(-3, 6)] * 3))
    return board(*size, *cuts, placed=placed(draw(st.sampled_from(LIES)), *at))


def _in_span(index: int, low: int, size: int, whole: int, *, from_far: bool) -> bool:
    """Whether the cube at an index lies in a stretch measured from the near or far plane."""
    place = whole - 1 - index if from_far else index
    return low <= place < low + size


def _taken(part: Part, one: Cut, place: tuple[int, int, int]) -> bool:
    """Whether a cube of the part falls to a cut, by the cut's words."""
    length, width = _length(part.finished.length), _length(part.finished.width)
    along, across = (place[0], place[1]) if one.runs == "l" else (place[1], place[0])
    run, wide = (length, width) if one.runs == "l" else (width, length)
    start = 0 if one.start is None else _length(one.start)
    end = run if one.end is None else _length(one.end)
    deep = _in_span(
        place[2], 0, _length(one.depth), _length(part.finished.thickness),
        from_far=one.face == "A",
    )  # fmt: skip
    return (
        deep
        and start <= along < end
        and _in_span(across, _length(one.at), _length(one.width), wide,
                     from_far=one.datum.endswith("1"))
    )  # fmt: skip


def _cubes(part: Part) -> Cubes:
    """The part's wood in part axes."""
    size = part.finished
    cubes = np.ones([_length(d) for d in (size.length, size.width, size.thickness)], dtype=bool)
    for place in np.ndindex(cubes.shape):
        for feature in part.features:
            if isinstance(feature, Cut) and _taken(part, feature, place):
                cubes[place] = False
    return cubes


def _in_case(part: Part, cubes: Cubes) -> set[tuple[int, int, int]]:
    """Case positions of the part's cubes, walked direction by direction."""
    corner = tuple(_length(d) for d in (part.placed.x, part.placed.y, part.placed.z))
    found = set()
    for place in zip(*np.nonzero(cubes), strict=True):
        at = list(corner)
        for way, steps in zip(part.placed.orientation, place, strict=True):
            at[way.axis] += int(steps) if way.sign > 0 else -int(steps) - 1
        found.add((at[0], at[1], at[2]))
    return found


def _filled(boxes: tuple[Box, ...]) -> list[tuple[int, int, int]]:
    return [
        (x, y, z)
        for b in boxes
        for x in range(int(b.x0), int(b.x1))
        for y in range(int(b.y0), int(b.y1))
        for z in range(int(b.z0), int(b.z1))
    ]


@settings(deadline=None)
@given(_parts())
def test_a_part_less_its_cuts_is_what_the_counted_cubes_leave(part: Part) -> None:
    """The pieces of a solid are disjoint and fill just the cubes that no cut takes."""
    solid = Solid(part, UNITS)
    filled = _filled(solid.pieces)
    assert len(filled) == len(set(filled)) == volume(solid.wood)
    assert set(filled) == _in_case(part, _cubes(part))


@settings(deadline=None)
@given(_parts(), _parts())
def test_what_two_parts_share_is_what_their_cubes_share(one: Part, other: Part) -> None:
    """Two solids overlap by the volume that counting cubes gives, and in no other place."""
    common = tuple(shared(Solid(one, UNITS), Solid(other, UNITS)))
    assert set(_filled(common)) == _in_case(one, _cubes(one)) & _in_case(other, _cubes(other))
    assert len(_filled(common)) == volume(common)
