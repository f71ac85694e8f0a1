"""How much wider dadoes and grooves are than the boards they take.

Common practice: the measured thickness and 0.1 to 0.2 mm (0.005 in) more.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.builders import INCH, Unit, hardware, length, one_case, plain_style, stock
from tests.perturbation import moved

from casewright.casework.cases import Case
from casewright.casework.features import Cut
from casewright.casework.proof import prove
from casewright.style import default_style

UNITS: tuple[Unit, ...] = ("in", "mm")
SIZES: dict[Unit, dict[str, Any]] = {
    "in": {"height": "60", "depth": "12"}, "mm": {"height": "1500", "depth": "300"},
}  # fmt: skip
DIVIDERS: dict[Unit, str] = {"in": "20", "mm": "500"}


def _bookcase(unit: Unit, **changes: Any) -> Case:
    return one_case(
        unit, **{"kind": "bookcase", "joint": "dado", "shelves": 2, **SIZES[unit], **changes}
    )


def _cuts(case: Case, kind: str) -> list[tuple[str, Cut]]:
    return [
        (part.path, feature)
        for part in case.parts
        for feature in part.features
        if isinstance(feature, Cut) and feature.kind == kind
    ]


@pytest.mark.parametrize("unit", UNITS)
def test_the_clearance_of_the_house_is_that_of_the_trade(unit: Unit) -> None:
    """0.1 to 0.2 mm, with its origin."""
    value = default_style(unit)["dado_clearance"]
    assert Fraction(1, 10) <= value.value <= Fraction(1, 5)
    assert value.origin.source == "common practice"


@pytest.mark.parametrize(
    ("unit", "read", "wide"), [("in", "0.703", "0.708"), ("mm", "17.6", "17.7")]
)
def test_a_dado_is_the_reading_and_the_clearance(unit: Unit, read: str, wide: str) -> None:
    """0.703 in reads, 0.708 in is cut; 17.6 and 17.7 mm."""
    case = _bookcase(unit, goods=stock(unit, ply=read))
    cuts = _cuts(case, "dado")
    assert len(cuts) == 6
    assert {cut.width.value for _, cut in cuts} == {length(wide, unit)}
    assert prove(case, hardware=hardware(unit)).failures == ()


@pytest.mark.parametrize("unit", UNITS)
def test_a_shelf_lies_on_the_lower_wall_of_its_dado(unit: Unit) -> None:
    """Its underside is on the wall that is measured from; the air is above."""
    case = _bookcase(unit)
    side = case.part("upper.side_left")
    for path, cut in _cuts(case, "dado"):
        if path == side.path and "shelf" in cut.path:
            shelf = case.part(f"upper.shelf.{cut.path[-1]}")
            assert shelf.placed.y.value == side.placed.y.value + cut.at.value


@pytest.mark.parametrize(
    ("unit", "thin", "wide"), [("in", "7/32", "0.22375"), ("mm", "6.2", "6.3")]
)
def test_a_captured_back_lies_on_the_rear_wall_of_its_grooves(
    unit: Unit, thin: str, wide: str
) -> None:
    """7/32 in is 0.21875; the grooves are wider to the front, the back stays where it was."""
    case = one_case(unit, back="grooved", goods=stock(unit, thin=thin))
    cuts = _cuts(case, "groove")
    assert len(cuts) == 4
    assert {cut.width.value for _, cut in cuts} == {length(wide, unit)}
    assert {cut.at.value for _, cut in cuts} == {case.part("upper.back").placed.z.value}
    assert prove(case, hardware=hardware(unit)).failures == ()


def _with_widths(case: Case, kind: str, by: Fraction) -> Case:
    """The same case with its cuts of a kind wider, and their cards too."""

    def wider(cut: Cut) -> Cut:
        assert cut.setup.check is not None
        setup = replace(cut.setup, check=moved(cut.setup.check, by))
        return replace(cut, width=moved(cut.width, by), setup=setup)

    parts = tuple(
        replace(part, features=tuple(
            wider(f) if isinstance(f, Cut) and f.kind == kind else f for f in part.features
        ))
        for part in case.parts
    )  # fmt: skip
    return replace(case, parts=parts)


@pytest.mark.parametrize("unit", UNITS)
@pytest.mark.parametrize("kind", ["dado", "groove"])
def test_a_housing_too_tight_or_too_loose_is_caught(unit: Unit, kind: str) -> None:
    """A hair under the board it cannot go in; over 1 mm loose glue does not hold it."""
    case = one_case(unit, joint="dado", back="grooved", shelves=0, divider=DIVIDERS[unit])
    slack = plain_style(unit)["dado_clearance"].value
    proved = [
        prove(_with_widths(case, kind, by), hardware=hardware(unit)).failures
        for by in (-slack, Fraction(0), -slack - INCH / 1000, 1 - slack + INCH / 1000)
    ]
    assert proved[:2] == [(), ()]
    assert proved[2]
    assert {f.says for f in proved[3]} == {f"what sits in the {kind} does not reach its wall"}


@settings(max_examples=25)
@given(
    ply=st.integers(1600, 1950),
    thin=st.integers(400, 650),
    clearance=st.integers(0, 30),
    inset=st.integers(1000, 2000),
)
def test_cuts_keep_their_clearance_whatever_the_readings(
    ply: int, thin: int, clearance: int, inset: int
) -> None:
    """Whatever calliper and style say [0.01 mm], each cut is wider by the clearance alone."""
    hundredths = {"groove_inset": inset, "dado_clearance": clearance}
    case = one_case(
        "mm", joint="dado", back="grooved", shelves=0, divider="500",
        goods=stock("mm", ply=f"{ply}/100", thin=f"{thin}/100"),
        style=plain_style("mm", **{key: f"{n}/100" for key, n in hundredths.items()}),
    )  # fmt: skip
    for kind, board in (("dado", ply), ("groove", thin)):
        widths = {cut.width.value for _, cut in _cuts(case, kind)}
        assert widths == {Fraction(board + clearance, 100)}
    assert prove(case, hardware=hardware("mm")).failures == ()
