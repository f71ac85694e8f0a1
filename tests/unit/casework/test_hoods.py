"""Hoods against a worked construction of the trade, in inches and millimetres.

Source: a set of trade constructions whose formulas and sizes were re-derived by placing the parts
in space (`HOOD`); common practice, no publication. Figures transcribed.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given as drawn
from hypothesis import settings
from hypothesis import strategies as st
from tests.builders import Unit, given, hardware, length, stock
from tests.hoods import hood, hood_house

from casewright.casework.cases import Case
from casewright.casework.verification import verify
from casewright.findings import Severity

HOOD: dict[Unit, dict[str, str]] = {
    "in": {
        "side_left": "25 1/2 x 17 1/4", "side_right": "25 1/2 x 17 1/4",
        "face_panel": "25 1/2 x 36", "bottom": "34 9/16 x 17 1/32", "top": "34 9/16 x 17 1/32",
    },
    "mm": {
        "side_left": "656 x 441", "side_right": "656 x 441", "face_panel": "656 x 900",
        "bottom": "864.4 x 434.8", "top": "864.4 x 434.8",
    },
}  # fmt: skip
DERIVED: dict[Unit, dict[str, str]] = {
    "in": {"underside": "66", "liner_hole": "28 5/8", "side_pad": "2 31/32"},
    "mm": {"underside": "1674", "liner_hole": "726", "side_pad": "69.2"},
}


def _stops(case: Case) -> list[str]:
    return [f.says for f in case.findings if f.severity is Severity.STOP]


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_parts_and_heights_of_the_worked_example(unit: Unit) -> None:
    """Its underside zc + clr, its height to the crown line, the hole Wl + 2cl and the pads."""
    made = hood_house(unit, cut_step="0", hood_air="0")
    case = hood(unit, made=made)
    assert verify(case, hardware=hardware(unit), grid=Fraction(0)).failures == ()
    for name, size in HOOD[unit].items():
        part = case.part(f"hood.{name}")
        wanted = tuple(length(each, unit) for each in size.split(" x "))
        assert (part.finished.length.value, part.finished.width.value) == wanted, name
    for name, value in DERIVED[unit].items():
        assert made.chain.nodes[f"hood.{name}"].value == length(value, unit), name
    assert not case.findings


@settings(max_examples=15, deadline=None)
@drawn(
    unit=st.sampled_from(("in", "mm")),
    size=st.tuples(st.integers(500, 1200), st.integers(900, 1500), st.integers(300, 600)),
    share=st.tuples(*(st.integers(20, 60) for _ in range(3))),
    ply=st.sampled_from(("15", "17.8", "18.3", "19")),
    clear=st.integers(610, 900),
    built=st.tuples(
        st.sampled_from(("pocket screws", "dado", "rabbet")),
        st.sampled_from(("rabbeted", "grooved", "applied", "inset")),
        st.sampled_from(("band", "painted")),
    ),
)
def test_it_goes_together_in_every_size_and_hangs_high_enough(
    unit: Unit,
    size: tuple[int, int, int],
    share: tuple[int, int, int],
    ply: str,
    clear: int,
    built: tuple[str, str, str],
) -> None:
    """Whatever the box is, its underside is no lower than its sheets ask."""

    def text(mm: Fraction | int) -> str:
        return str(Fraction(mm) * 5 / 127) if unit == "in" else str(mm)

    wide, high, deep = size
    liner = (text(wide * share[0] // 100), text(high * share[1] // 500),
             text(deep * share[2] // 130))  # fmt: skip
    goods = stock(unit, ply=text(Fraction(ply)))
    joint, back, edge = built
    case = hood(
        unit, made=hood_house(unit, dict(goods)), sizes=(text(wide), text(high), text(deep)),
        liner=liner, joint=joint, back=back, edge=edge,
        asked={"clear": given(text(clear), unit), "duct": (given(text(100), unit),) * 2,
               "duct_back": given(text(deep // 2), unit)},
    )  # fmt: skip
    assert not [said for said in _stops(case) if "duct" not in said]
    if not _stops(case):
        failures = verify(case, hardware=hardware(unit)).failures
        assert not [f for f in failures if not f.of_goods]
    spec = case.spec.hood
    assert spec is not None
    assert spec.surface is not None
    under = spec.bottom.value + case.standing.value
    assert under >= spec.surface.value + clear
    assert case.part("hood.face_panel").placed.y.value == case.standing.value


@pytest.mark.parametrize(
    ("changes", "says", "remedy"),
    [
        ({"liner": ("32", "10", "10 1/2")}, "at each side of the liner", "wider"),
        ({"liner": ("28 3/8", "10", "15")}, "before and behind the liner", "deeper"),
        ({"liner": ("28 3/8", "26", "10 1/2")}, '26" high, and the case 25 1/2', '1/2" taller'),
        ({"asked": {"duct_back": given("3")}}, "runs 1", "deeper"),
        ({"asked": {"duct_back": given("15")}}, "into the face panel", "deeper"),
    ],
)
def test_what_does_not_go_in_is_told_with_the_numbers(
    changes: dict[str, Any], says: str, remedy: str
) -> None:
    """Each with the smallest change that helps."""
    case = hood("in", **changes)
    assert any(says in said for said in _stops(case))
    assert any(remedy in each for f in case.findings for each in f.remedies)


def test_the_code_is_the_floor_where_a_sheet_wants_less() -> None:
    """24 in at the least (IRC M1901.1, read in a secondary copy); 30 while no sheet is known."""
    made = hood_house("in", hood_air="0")
    case = hood("in", made=made, asked={"clear": given("18")})
    assert case.standing.value == length("6")
    case = hood("in", made=hood_house("in", hood_air="0"), asked={"clear": None})
    assert case.standing.value == length("12")
    case = hood("in", made=hood_house("in", hood_air="0"), asked={"liner_clear": given("33")})
    assert case.standing.value == length("15")


def test_wall_cases_that_hang_higher_than_it_must_take_it_along() -> None:
    """Never lower than the cases beside it."""
    case = hood("in", asked={"bottom": given("70")})
    assert case.standing.value == 0
    assert verify(case, hardware=hardware("in"), grid=Fraction(0)).failures == ()


def test_liner_face_and_pads_are_fits() -> None:
    """The air round the liner; the face flush with the box."""
    made = hood_house("in")
    hood("in", made=made)
    fits = {"liner_fit", "side_pad_fit", "face_wide_fit", "face_high_fit"}
    assert {f"hood.{name}" for name in fits} <= set(made.chain.fits)
