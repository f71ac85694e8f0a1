"""Sizes between the marks of the tape: whatever is asked for, what meets is cut to meet.

Sizes that several pieces share go onto the grid once; the remainder is named, and it belongs to
the size of the case or to an opening. Common practice: a board is cut to a mark, and what stands
under it is marked from the board.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given as drawn
from hypothesis import settings
from hypothesis import strategies as st
from tests.builders import INCH, Unit, case_spec, given, hardware, house, one_case, plain_style

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.verification import verify
from casewright.dims import Given, Origin

_STEP: dict[Unit, Fraction] = {"in": INCH / 32, "mm": Fraction(1, 2)}


def _mm(value: Fraction | int | str) -> Given:
    return Given(Fraction(value), Origin("chosen", "test"))


def _base(unit: Unit = "in", **changes: Any) -> Case:
    asked: dict[str, Any] = {
        "key": "base", "kind": "base", "width": "30" if unit == "in" else "800",
        "height": "34 1/2" if unit == "in" else "870",
        "depth": "23 1/4" if unit == "in" else "580", "toe": "notch", "shelves": 1,
    }  # fmt: skip
    return one_case(unit, **asked | changes)


def _proves(case: Case, unit: Unit) -> None:
    failures = verify(case, hardware=hardware(unit), grid=_STEP[unit]).failures
    assert failures == (), failures[0].says


def _top_of(case: Case, name: str) -> Fraction:
    part = next(p for p in case.parts if p.path == f"{case.key}.{name}")
    return part.placed.y.value + part.finished.width.value


def _size(case: Case, name: str) -> tuple[Fraction, Fraction]:
    part = next(p for p in case.parts if p.path == f"{case.key}.{name}")
    return part.finished.length.value, part.finished.width.value


def test_a_height_between_marks_on_a_plinth() -> None:
    """34 33/64 on a plinth of 4: sides and plinth on marks, as a base on a ladder is worked.

    A set of trade constructions, 'frameless base box on a separate ladder plinth': side = total
    height less plinth. The 1/64 that is left over goes out of the case's height.
    """
    shared = house()
    case = build_case(
        shared,
        case_spec(
            key="base", kind="base", toe="plinth", width="30", height="34 33/64", depth="23 1/4"
        ),
    )
    _proves(case, "in")
    plinth = _size(case, "plinth.front")[1]
    side = _size(case, "side_left")[0]
    assert plinth == 4 * INCH
    assert side + plinth == case.height.value
    assert shared.chain.nodes["base.height_to_cut_rest"].value == INCH * Fraction(33, 64) - (
        case.height.value - 34 * INCH
    )


@pytest.mark.parametrize(
    ("millimetres", "toe_board"), [("100", "3 15/16"), ("95", "3 3/4"), ("101", "3 31/32")]
)
def test_toe_height_in_millimetres(millimetres: str, toe_board: str) -> None:
    """A toe board is as high as its notch, on the nearest 32nd (25.4 mm = 1 in exactly)."""
    case = _base(overrides={"toe_height": _mm(millimetres)})
    _proves(case, "in")
    assert _size(case, "toe_board")[1] == given(toe_board).value
    bottom = next(p for p in case.parts if p.path == "base.bottom")
    assert _top_of(case, "toe_board") == bottom.placed.y.value


def test_a_nailer_in_millimetres_reaches_the_board_above() -> None:
    """90 mm of nailer is cut to 3 17/32, and stands up against the stretcher it is glued to."""
    case = _base(overrides={"nailer": _mm(90)})
    _proves(case, "in")
    above = next(p for p in case.parts if p.path == "base.rear_stretcher")
    assert _size(case, "nailer_top")[1] == given("3 17/32").value
    assert _top_of(case, "nailer_top") == above.placed.y.value - above.finished.thickness.value


def test_boards_in_dadoes_and_boards_between_are_both_on_the_grid() -> None:
    """A dado of 6 mm in inches is 15/64 deep: two make up whole 32nds, 0.05 mm off the wish."""
    case = _base(joint="dado", overrides={"dado_depth": _mm(6)})
    _proves(case, "in")
    bottom, stretcher = _size(case, "bottom")[0], _size(case, "front_stretcher")[0]
    assert bottom - stretcher == 2 * given("15/64").value


@settings(max_examples=60, deadline=None)
@drawn(
    unit=st.sampled_from(("in", "mm")),
    kind=st.sampled_from(("base", "wall", "bookcase")),
    toe=st.sampled_from(("notch", "plinth", "none")),
    back=st.sampled_from(("rabbeted", "grooved", "applied", "inset")),
    joint=st.sampled_from(("pocket screws", "dado", "rabbet")),
    height=st.integers(6000, 9500),
    sizes=st.fixed_dictionaries(
        {
            "toe_height": st.integers(800, 1400), "nailer": st.integers(700, 1200),
            "stretcher": st.integers(800, 1200), "dado_depth": st.integers(50, 80),
            "end_rabbet_depth": st.integers(60, 90), "toe_setback": st.integers(100, 900),
            "bookcase_toe_height": st.integers(700, 1200), "skirt": st.integers(250, 600),
            "crown_stretcher": st.integers(700, 1200),
        }
    ),
)  # fmt: skip
def test_any_tenth_of_a_millimetre_proves(
    unit: Unit, kind: str, toe: str, back: str, joint: str, height: int, sizes: dict[str, int]
) -> None:
    """No size between marks, in either unit, keeps a case from going together."""
    tenths = {key: _mm(Fraction(value, 10)) for key, value in sizes.items()}
    skirt = tenths.pop("skirt")
    case = one_case(
        unit, style=plain_style(unit).changed(tenths), key="base", kind=kind,
        toe=toe if kind == "base" else "none", back=back, joint=joint, shelves=1,
        height=_mm(Fraction(height, 10)), width=_mm("761.7"), depth=_mm("401.3"),
        skirt=skirt if kind == "wall" else None, crown=_mm("77.7") if kind != "base" else None,
    )  # fmt: skip
    _proves(case, unit)
    if kind == "base" and toe == "plinth":
        assert _size(case, "plinth.front")[1] + _size(case, "side_left")[0] == case.height.value


@pytest.mark.parametrize("setback", ["1/2", "1", "1 3/4", "2", "2 1/4", "2 1/2", "2 3/4"])
@pytest.mark.parametrize("back", ["rabbeted", "grooved", "applied", "inset"])
def test_pockets_of_a_bottom_keep_clear_of_its_toe_board(setback: str, back: str) -> None:
    """However far the toe board stands back, a driver reaches every screw of the bottom.

    Where the toe board is close to the front, the row begins behind it (common practice: a
    driver's head is 2 in across); at the usual 2 3/4 it begins at the front edge.
    """
    case = _base(back=back, overrides={"toe_setback": given(setback)})
    _proves(case, "in")
    bottom = next(p for p in case.parts if p.path == "base.bottom")
    first = min(
        at.value
        for feature in bottom.features
        if feature.kind == "pocket"
        for _, at in getattr(feature, "places", ())
    )
    behind = given(setback).value + given("23/32").value
    assert first > behind if setback not in ("2 1/2", "2 3/4") else first == given("1 1/2").value


def test_a_low_plinth_is_screwed_together_before_the_box_stands_on_it() -> None:
    """3 in of plinth leave no room for a driver under a bottom: the ladder is built by itself."""
    _proves(_base(toe="plinth", overrides={"toe_height": given("3")}), "in")
