"""Wood screws in studs: printed worked examples, and the equations against each other.

Printed, read in a secondary copy: withdrawal of a No. 10 screw, G 0.45 (109 lb per inch, cut off
from 109.65); the nail 0.148 x 3 with a side member of 3/4 in, G 0.50 (105.1 lb, mode IIIs, all six
modes). From memory, not seen in print: withdrawal of a No. 8, G 0.50, and of a No. 10, G 0.55.
The yield limit equations below are typed from the design specification's own table; the program
uses the general dowel equations, which must give the same without a gap.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.install.screw_values import (
    GRAVITIES,
    LEAST_DIAMETERS,
    Member,
    lateral_reference_lb,
    screw_value,
    withdrawal_lb_per_in,
    yield_loads_lb,
)

PRINTED = 16_600 * 0.50**1.84


def limit_equations(
    d: float, lengths: tuple[float, float], strengths: tuple[float, float], bending: float
) -> tuple[float, ...]:
    """NDS table 12.3.1A: Is, Im, II, IIIm, IIIs, IV without Rd."""
    (ls, lm), (fs, fm) = lengths, strengths
    re, rt = fm / fs, lm / ls
    k1 = (math.sqrt(re + 2 * re**2 * (1 + rt + rt**2) + rt**2 * re**3) - re * (1 + rt)) / (1 + re)
    k2 = -1 + math.sqrt(2 * (1 + re) + 2 * bending * (1 + 2 * re) * d**2 / (3 * fm * lm**2))
    k3 = -1 + math.sqrt(2 * (1 + re) / re + 2 * bending * (2 + re) * d**2 / (3 * fm * ls**2))
    return (
        d * ls * fs,
        d * lm * fm,
        k1 * d * ls * fs,
        k2 * d * lm * fm / (1 + 2 * re),
        k3 * d * ls * fm / (2 + re),
        d**2 * math.sqrt(2 * fm * bending / (3 * (1 + re))),
    )


@pytest.mark.handbook
@pytest.mark.parametrize(
    ("gravity", "shank", "pounds"), [(0.45, 0.190, 109.65), (0.50, 0.164, 117), (0.55, 0.190, 164)]
)
def test_withdrawal_of_printed_screws(gravity: float, shank: float, pounds: float) -> None:
    """Pounds for an inch of thread."""
    assert withdrawal_lb_per_in(gravity, shank) == pytest.approx(pounds, abs=0.5)


@pytest.mark.handbook
def test_a_printed_nail_yields_as_printed() -> None:
    """All six modes over 2.2; IIIs governs at 105.1 lb."""
    loads = yield_loads_lb(Member(0.75, PRINTED), Member(2.25, PRINTED), 0.148, 90e3)
    found = [load / 2.2 for load in loads]
    assert found == pytest.approx([233.9, 701.8, 233.9, 243.7, 105.1, 117.4], abs=57)
    assert min(found) == found[4] == pytest.approx(105.09, abs=0.05)
    assert (found[0], found[1], found[3], found[5]) == pytest.approx(
        (233.9, 701.8, 243.7, 117.4), abs=0.1
    )


@pytest.mark.handbook
def test_a_screw_by_its_root() -> None:
    """No. 8, 3/4 in side, 1.64 in main, G 0.50: 88.1 lb, worked by hand from the same table."""
    value = lateral_reference_lb(Member(0.75, PRINTED), Member(1.64, PRINTED), 8)
    assert value == pytest.approx(88.1, abs=0.1)


@given(
    st.floats(0.1, 0.25), st.floats(0.25, 2), st.floats(0.5, 3), st.floats(0.3, 0.7),
    st.floats(0.3, 0.7), st.floats(40e3, 110e3),
)  # fmt: skip
def test_without_a_gap_they_are_the_limit_equations(
    d: float, ls: float, lm: float, gs: float, gm: float, bending: float
) -> None:
    """The general dowel equations with no gap, against the table of yield limit equations."""
    fs, fm = 16_600 * gs**1.84, 16_600 * gm**1.84
    found = yield_loads_lb(Member(ls, fs), Member(lm, fm), d, bending)
    assert found == pytest.approx(limit_equations(d, (ls, lm), (fs, fm), bending), rel=1e-9)


@given(st.floats(0, 2), st.floats(0.01, 1))
def test_a_gap_never_helps(gap: float, more: float) -> None:
    """The farther the stud lies behind the nailer, the less a screw carries across."""
    side, main = Member(0.72, PRINTED), Member(1.2, PRINTED)
    near = lateral_reference_lb(side, main, 8, gap)
    assert lateral_reference_lb(side, main, 8, gap + more) <= near


@pytest.mark.parametrize("gravity", GRAVITIES)
def test_a_shallow_screw_has_no_lateral_value(gravity: float) -> None:
    """Under six diameters in the stud the equations say nothing, and nothing is claimed."""
    six = LEAST_DIAMETERS * 0.190 * 25.4
    assert screw_value(gravity, 5, 18, 20, six - 0.1).lateral_n is None
    deep = screw_value(gravity, 5, 18, 20, six + 0.1)
    assert deep.lateral_n is not None
    assert deep.lateral_n > 0
    assert screw_value(gravity, 5, 18, 20, 5).withdrawal_n == 0


def test_one_value_by_hand() -> None:
    """No. 10, G 0.42, 1 in of bite: 2850 x 0.1764 x 0.190 x (1 - 0.38) x 0.9 = 53.30 lb."""
    value = screw_value(0.42, 5, 18, 20, 25.4)
    assert value.withdrawal_n == pytest.approx(53.30 * 4.4482216, rel=1e-3)


def test_no_screw_is_guessed_at() -> None:
    """A brad is no wood screw."""
    with pytest.raises(ValueError, match="no numbered wood screw"):
        screw_value(0.42, 1.2, 18, 20, 25)
