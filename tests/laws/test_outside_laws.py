"""Width, height and depth of a case are one number each, and its parts follow them evenly.

Common practice, and plain geometry: a part runs along the case or across it. Moving an outside
size by so much moves the size of each part by nothing, by as much, or, for the leaves of a pair,
by half as much; nothing else about the parts changes as long as no count does.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any, Literal

import pytest
from hypothesis import assume, settings
from hypothesis import given as drawn
from hypothesis import strategies as st
from tests.builders import APPLIED, GLASS, INCH, SLAB, Unit, case_spec, given, house

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.specs import FrontSpec
from casewright.dims import Given, Origin

_Side = Literal["width", "height", "depth"]
_TWO_STEPS: dict[Unit, Fraction] = {"in": INCH / 16, "mm": Fraction(1)}
_SIZES: dict[str, tuple[str, str, str]] = {
    "wall": ("33", "39", "12 1/4"),
    "base": ("30", "34 1/2", "23 1/4"),
    "bookcase": ("32", "80", "12"),
}  # fmt: skip


def _built(unit: Unit, asked: dict[str, Any]) -> Case:
    return build_case(house(unit), case_spec(unit, key="a", **asked))


def _sizes(case: Case) -> dict[str, tuple[Fraction, Fraction]]:
    return {p.path: (p.finished.length.value, p.finished.width.value) for p in case.parts}


def _shares(
    unit: Unit, asked: dict[str, Any], side: _Side, steps: int
) -> dict[str, set[Fraction]]:
    """By how much of the move each part's length and width follow."""
    by = steps * _TWO_STEPS[unit]
    moved = Given(asked[side].value + by, Origin("chosen", "test"))
    before, after = _sizes(_built(unit, asked)), _sizes(_built(unit, {**asked, side: moved}))
    assume(before.keys() == after.keys())
    return {
        path: {(new - old) / by for old, new in zip(before[path], after[path], strict=True)}
        for path in before
    }


@settings(max_examples=60, deadline=None)
@drawn(
    unit=st.sampled_from(("in", "mm")),
    kind=st.sampled_from(("wall", "base", "bookcase")),
    side=st.sampled_from(("width", "height", "depth")),
    steps=st.integers(-12, 12).filter(bool),
    back=st.sampled_from(("rabbeted", "grooved", "applied", "inset")),
    joint=st.sampled_from(("pocket screws", "dado", "rabbet")),
    toe=st.sampled_from(("notch", "plinth", "none")),
    edge=st.sampled_from(("painted", "lip")),
    front=st.sampled_from((None, SLAB, APPLIED, GLASS)),
)
def test_parts_follow_the_outside_evenly(
    unit: Unit, kind: str, side: _Side, steps: int,
    back: str, joint: str, toe: str, edge: str, front: FrontSpec | None,
) -> None:  # fmt: skip
    """Nothing, half or all of a move; half only across the width, in a leaf of a pair."""
    width, height, depth = (given(size) for size in _SIZES[kind])
    asked: dict[str, Any] = {
        "kind": kind, "width": width, "height": height, "depth": depth, "back": back,
        "joint": joint, "toe": toe if kind == "base" else "none", "edge": edge, "shelves": 1,
        "front": None if kind == "bookcase" else front,
    }  # fmt: skip
    half = Fraction(1, 2)
    found = _shares(unit, asked, side, steps)
    assert any(shares != {Fraction(0)} for shares in found.values())
    for path, shares in found.items():
        if side == "width" and ".door_" in path:
            assert shares <= {Fraction(0), half}, path
        else:
            assert shares <= {Fraction(0), Fraction(1)}, path


@pytest.mark.parametrize("side", ["width", "height", "depth"])
def test_an_outside_size_is_one_number_of_the_chain(side: _Side) -> None:
    """`<case>.wanted_<size>` is where it enters, once."""
    shared = house()
    case = build_case(shared, case_spec(key="a"))
    node = shared.chain.nodes[f"a.wanted_{side}"]
    assert node.args == ()
    assert node.value == getattr(case, side).value
