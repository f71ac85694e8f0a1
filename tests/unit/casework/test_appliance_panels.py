"""Panels of appliances against a worked construction of the trade, in inches and millimetres.

Source: a set of trade constructions whose formulas and sizes were re-derived by placing the parts
in space (`APPL_PANEL`); common practice, no publication. Figures transcribed.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given as drawn
from hypothesis import settings
from hypothesis import strategies as st
from tests.builders import APPLIED, SLAB, Unit, given, hardware, house, length, stock
from tests.panels import KEY, panel, panel_sheet

from casewright.casework.cases import Case
from casewright.casework.features import Bores
from casewright.casework.specs import FrontSpec, Hand
from casewright.casework.verification import verify
from casewright.findings import Severity
from casewright.stock import Sheet

PANEL: dict[Unit, tuple[str, str]] = {"in": ("30 3/8", "23 3/4"), "mm": ("767", "594")}


def _holds(case: Case, unit: Unit) -> None:
    proved = verify(case, hardware=hardware(unit), grid=Fraction(1))
    assert proved.failures == ()


def _stops(case: Case) -> list[str]:
    return [f.says for f in case.findings if f.severity is Severity.STOP]


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_it_is_as_high_as_the_fronts_beside_it_and_two_gaps_narrower_than_its_opening(
    unit: Unit,
) -> None:
    """hu - gt - kp by Wo - 2g."""
    case = panel(unit)
    _holds(case, unit)
    slab = case.part(f"{KEY}.front.slab")
    assert (slab.finished.length.value, slab.finished.width.value) == tuple(
        length(size, unit) for size in PANEL[unit]
    )
    assert not case.findings


def _mm(value: int) -> Any:
    return given(str(value), "mm")


@settings(max_examples=30, deadline=None)
@drawn(
    unit=st.sampled_from(("in", "mm")),
    wide=st.integers(400, 900),
    high=st.integers(600, 2200),
    kick=st.integers(60, 200),
    ply=st.sampled_from(("15", "18.3", "19")),
    front=st.sampled_from((SLAB, APPLIED)),
    hinge=st.sampled_from((None, "left", "right")),
    limits=st.fixed_dictionaries({}, optional={
        "most_height": st.integers(500, 800).map(_mm),
        "most_width": st.integers(380, 880).map(_mm),
        "free_below": st.integers(50, 220).map(_mm),
    }),
)  # fmt: skip
def test_it_goes_together_in_every_size_and_never_exceeds_its_sheet(
    unit: Unit, wide: int, high: int, kick: int, ply: str, front: Any, hinge: Hand | None,
    limits: dict[str, Any],
) -> None:  # fmt: skip
    """The least of the line, the opening and the sheet's limits; on the grid."""
    goods = stock(unit)
    mdf = goods["mdf"]
    assert isinstance(mdf, Sheet)
    inch = unit == "in"
    sizes = {"Wo": wide, "hu": high, "kp": kick, "gt": 3}
    text = {k: str(Fraction(v * 5, 127)) if inch else str(v) for k, v in sizes.items()}
    thick = {"mdf": Sheet("mdf", "mdf", mdf.length, mdf.width, given(ply, "mm"), grain=False,
                          material="fibreboard", density=Fraction(750))}  # fmt: skip
    case = panel(unit, text, made=house(unit, goods=goods | thick), front=front,
                 hinge=hinge, screw_rows=(_mm(100),), screws_apart=_mm(200), **limits)  # fmt: skip
    _holds(case, unit)
    assert not _stops(case)
    [leaf] = case.fronts
    low = max(Fraction(kick), _value(limits, "free_below", 0))
    assert leaf.height.value <= min(high - 3 - low, _value(limits, "most_height", 10**4))
    assert leaf.width.value <= min(wide - 2 * case.faces[0].left.value,
                                   _value(limits, "most_width", 10**4))  # fmt: skip


def _value(limits: dict[str, Any], name: str, none: int) -> Fraction:
    return limits[name].value if name in limits else Fraction(none)


@pytest.mark.parametrize(
    ("changes", "severity", "says", "remedy"),
    [
        ({"most_height": given("29")}, "CARE", '1 3/8" above the line', '1 3/8" higher'),
        ({"least_height": given("31")}, "STOP", '5/8" is missing', '5/8" lower'),
        ({"most_width": given("23 1/2")}, "CARE", '1/4" narrower', '1/8" wide'),
        ({"most_thickness": given("1/2")}, "STOP", "at most 1/2", '1/8" thinner'),
        ({"least_thickness": given("3/4")}, "STOP", "at least 3/4", '1/8" thicker'),
        ({"screw_depth": given("5/8")}, "STOP", "come through its face", "shorter"),
        ({"screws_apart": given("24")}, "STOP", "would miss", "less"),
        ({"screw_rows": (given("32"),)}, "STOP", "would miss", "less"),
        ({"free_below": given("5")}, "CARE", 'begins 1" above the line', '1" higher'),
        ({"free_below": given("30")}, "STOP", "no room", "more of height"),
    ],
)
def test_what_its_sheet_does_not_let_is_told_with_the_numbers(
    changes: dict[str, Any], severity: str, says: str, remedy: str
) -> None:
    """Each with the smallest change that helps."""
    found = panel("in", **changes).findings
    assert [f.severity.name for f in found if says in f.says] == [severity]
    assert any(remedy in each for f in found if says in f.says for each in f.remedies)


def test_too_heavy_a_panel_stops_with_what_it_weighs_and_may_weigh() -> None:
    """767 x 594 x 15 mm of 750 kg/m3: 5.125 kg."""
    weighs = given(Fraction(5), "mm")
    [found] = panel("mm", most_weight=weighs).findings
    assert (found.measured, found.limit) == ("5.1 kg", "5.0 kg")
    assert "3 % lighter" in found.remedies[0]


def test_a_screw_at_the_pull_is_told() -> None:
    """The pull's holes 96 mm apart, 3 in below the top; a row of screws there, 96 mm apart.

    Of an upright one 1 1/4 in from the edge: screws 21 1/4 apart in a panel of 23 3/4.
    """
    case = panel("in", screw_rows=(given("3"),), screws_apart=given("96", "mm"))
    assert any("meets a hole of its pull" in said for said in _stops(case))
    for row, met in (("2 1/2", True), ("4", False)):
        case = panel("in", hinge="left", screw_rows=(given(row),), screws_apart=given("21 1/4"))
        assert any("meets a hole of its pull" in said for said in _stops(case)) is met


_TALL: dict[Unit, tuple[dict[str, str], str, str]] = {
    "in": ({"hu": "84"}, "42", "1 1/4"), "mm": ({"hu": "2130"}, "1050", "32"),
}  # fmt: skip


@pytest.mark.parametrize("front", [SLAB, APPLIED])
@pytest.mark.parametrize("hinge", ["left", "right"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_the_pull_of_a_tall_panel_stands_in_reach_beside_its_free_edge(
    unit: Unit, hinge: Hand, front: FrontSpec
) -> None:
    """Upper hole 42 in or 1050 mm above the floor, in the middle of a stile (common practice).

    Under 48 in, the highest that is reached from a chair (accessible-design standard, 308).
    """
    sizes, reach, edge = _TALL[unit]
    case = panel(unit, sizes, hinge=hinge, front=front)
    _holds(case, unit)
    [leaf] = case.fronts
    holes = set()
    for path in leaf.parts:
        part = case.part(path)
        for bores in part.features:
            if isinstance(bores, Bores) and bores.kind == "pull":
                assert bores.datum_l == "l0"
                holes |= {leaf.y.value + along.value for along, _ in bores.places}
                free = "w0" if part.role == "stile" else "w1"
                assert bores.datum_w == free
                assert {across.value for _, across in bores.places} == {length(edge, unit)}
    assert max(holes) == length(reach, unit) < length("48")
    assert case.part(leaf.parts[0]).hand == hinge


def test_a_panel_whose_pull_would_be_out_of_reach_asks_for_its_hinges() -> None:
    """84 in high: 81 in above the floor it would lie; of a dishwasher's nothing is asked."""
    made = house("in")
    panel("in", {"hu": "84"}, made=made)
    assert made.chain.nodes[f"{KEY}.pull_across"].value == length("80 7/8")
    made = house("in")
    low = panel("in", made=made)
    assert made.chain.nodes[f"{KEY}.pull_across"].value == length("31 3/8")
    assert low.part(low.fronts[0].parts[0]).hand is None


def test_its_gaps_and_its_lower_line_are_fits() -> None:
    """Beside it the gap of fronts; its lower edge in line with those of its neighbour."""
    made = house("in")
    panel("in", made=made)
    fits = made.chain.fits
    assert {f"{KEY}.{name}" for name in ("left_fit", "right_fit", "step_1_fit")} <= set(fits)
    gap = fits[f"{KEY}.left_fit"]
    assert gap.low < gap.gap.value < gap.high


def test_nothing_is_bored_for_brackets_whose_sheet_is_missing() -> None:
    """The pull's holes alone."""
    case = panel("in", screws_apart=None)
    assert [f.kind for f in case.part(f"{KEY}.front.slab").features] == ["pull"]
    assert panel_sheet("in").screws_apart is not None
