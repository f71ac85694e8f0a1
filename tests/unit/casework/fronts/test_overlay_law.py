"""The law of a cup hinge, and the choice of plate and bore distance.

Worked figures: hinge makers' sheets (constant 13: bore 5 on plate 3 gives 15, on plate 0 gives
18 mm) and a worked case of the trade, common practice, for the rest.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given as drawn
from hypothesis import strategies as st
from tests.builders import given, house

from casewright.casework.fronts.overlay import Overlay, overlay_finding, solve_overlay
from casewright.casework.house import House
from casewright.dims import Given, Origin
from casewright.findings import Severity


def _mm(*values: str) -> tuple[Given, ...]:
    return tuple(given(value, "mm") for value in values)


def _house(plates: tuple[str, ...]) -> House:
    made = house("mm")
    hinge = replace(made.hardware.hinge, plate_heights=_mm(*plates))
    made.hardware = replace(made.hardware, hinge=hinge)
    return made


def _solved(
    made: House, wanted: Fraction, low: str = "3", high: str = "6", step: str = "1"
) -> Overlay:
    place = made.chain.place("case.door")
    low_dim, high_dim = (
        place.enter(name, *_pair(value)) for name, value in (("low", low), ("high", high))
    )
    wanted_dim = place.enter("wanted", *_pair(wanted))
    return solve_overlay(
        made, place, wanted_dim, low=low_dim, high=high_dim,
        step=place.enter("step", *_pair(step)),
    )  # fmt: skip


def _pair(value: str | Fraction) -> tuple[Fraction, Origin]:
    found = given(value, "mm")
    return found.value, found.origin


@pytest.mark.parametrize(
    ("overlay", "plate", "bore"),
    [("18", "0", 5), ("17", "0", 4), ("16", "2", 5), ("15", "3", 5)],
)
def test_overlay_is_constant_and_bore_less_plate(overlay: str, plate: str, bore: int) -> None:
    """With constant 13, the printed pairs of plate and bore distance give the printed overlay."""
    found = _solved(_house((plate,)), Fraction(overlay))
    assert found.bore.value == bore
    assert found.rest.value == 0


def test_side_screw_takes_what_is_left() -> None:
    """A side of 17.8 with a reveal of 1.5 wants 16.3: plate 2 and bore 5 give 16, 0.3 is left."""
    found = _solved(_house(("0", "2", "4")), Fraction("17.8") - Fraction("1.5"))
    assert found.plate.value == 2
    assert found.bore.value == 5
    assert found.rest.value == Fraction("0.3")


def test_overlay_out_of_reach_is_stopped_with_remedies() -> None:
    """A door that is to lie 28 over the side gets a stop that says which plates would do."""
    made = _house(("0", "2"))
    found = _solved(made, Fraction(28))
    nodes = made.chain.nodes
    finding = overlay_finding(
        made, "case.door", found, nodes["case.door.low"], nodes["case.door.high"]
    )
    assert finding is not None
    assert finding.severity is Severity.STOP
    assert found.rest.value == Fraction(9)
    assert finding.remedies


@drawn(
    wanted=st.fractions(8, 22, max_denominator=64),
    plates=st.sets(st.integers(0, 9), min_size=1, max_size=4),
)
def test_no_other_plate_comes_nearer(wanted: Fraction, plates: set[int]) -> None:
    """The bore stays in its range, and no plate with a whole bore distance comes nearer."""
    found = _solved(_house(tuple(str(p) for p in sorted(plates))), wanted)
    assert 3 <= found.bore.value <= 6
    assert found.rest.value == wanted - (13 + found.bore.value - found.plate.value)
    best = min(abs(wanted - (13 + bore - plate)) for plate in plates for bore in (3, 4, 5, 6))
    assert abs(found.rest.value) <= max(best, Fraction(1, 2))
