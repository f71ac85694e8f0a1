"""What a shop's readings say of its tools, against NumPy and by hand."""

from __future__ import annotations

from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.shop import LEAST_PAIRS, learned, learned_twice

Q = Fraction
OFFS = st.lists(st.fractions(-2, 2, max_denominator=64), min_size=LEAST_PAIRS, max_size=20)


def pairs(*offs: Fraction, u: str = "0") -> list[tuple[Fraction, Fraction]]:
    """Readings less numbers, each known to the same."""
    return [(off, Q(u)) for off in offs]


def test_seven_pieces_say_nothing() -> None:
    assert learned(pairs(*[Q(1)] * (LEAST_PAIRS - 1))) is None


@given(OFFS)
def test_the_spread_is_the_experimental_standard_deviation(offs: list[Fraction]) -> None:
    """JCGM 100:2008, equation (4); told to a thousandth of a millimetre, upwards."""
    found = learned(pairs(*offs))
    assert found is not None
    plain = float(np.std([float(off) for off in offs], ddof=1))
    assert plain <= float(found.sigma) + 1e-9
    assert float(found.sigma) <= plain + 0.001 + 1e-9
    assert found.limit >= 2 * found.sigma


@given(OFFS, st.fractions(-3, 3, max_denominator=8))
def test_a_shift_of_all_changes_the_offset_and_not_the_spread(
    offs: list[Fraction], by: Fraction
) -> None:
    """It is the scale that is off, not the hand."""
    still, moved = learned(pairs(*offs)), learned(pairs(*(off + by for off in offs)))
    assert still is not None
    assert moved is not None
    assert (still.sigma, still.limit) == (moved.sigma, moved.limit)


def test_an_offset_is_told_when_chance_hardly_brings_it() -> None:
    """Eight at 0.3 +- 0.1: standard error 0.038, so eight times that. At 0.02: less than twice."""
    wide = [Q("0.2"), Q("0.4")] * 4
    found = learned(pairs(*wide))
    assert found is not None
    assert found.offset == Q("0.3")
    small = learned(pairs(*(off - Q("0.28") for off in wide)))
    assert small is not None
    assert small.offset == 0


def test_what_the_reading_strays_by_is_taken_off() -> None:
    """0.5 seen with a rule of 0.3: 0.4 is the tool's own; never less than half of what is seen."""
    offs = [Q(1, 2) * (-1) ** n for n in range(9)]  # mean 1/18, n - 1 = 8
    seen = float(np.std([float(off) for off in offs], ddof=1))
    found = learned(pairs(*offs, u="0.3"))
    assert found is not None
    assert float(found.sigma) == pytest.approx((seen**2 - 0.09) ** 0.5, abs=0.001)
    blind = learned(pairs(*offs, u="2"))
    assert blind is not None
    assert float(blind.sigma) == pytest.approx(seen / 2, abs=0.001)


def test_a_drawn_shop_is_learned_as_it_is() -> None:
    """Two hundred cuts off by 0.4 and straying 0.25, read to 0.2: within their own uncertainty."""
    rng = np.random.default_rng(41)
    offs = 0.4 + rng.normal(0, 0.25, 200) + rng.normal(0, 0.2, 200)
    found = learned([(Q(round(off * 1000), 1000), Q("0.2")) for off in offs])
    assert found is not None
    assert float(found.sigma) == pytest.approx(0.25, abs=0.05)
    assert float(found.offset) == pytest.approx(0.4, abs=0.08)


@given(OFFS)
def test_of_two_readings_each_strays_alike(offs: list[Fraction]) -> None:
    """The variance of a difference is twice that of one reading (JCGM 100:2008, 5.1.2)."""
    found = learned_twice(offs)
    assert found is not None
    plain = float(np.sqrt(np.mean([float(off) ** 2 for off in offs]) / 2))
    assert plain - 1e-9 <= float(found.sigma) <= plain + 0.001 + 1e-9
    assert found.is_twice
    assert not found.offset
    assert learned_twice(offs[: LEAST_PAIRS - 1]) is None
