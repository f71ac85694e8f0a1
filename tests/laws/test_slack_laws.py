"""Laws of slack: what tools and readings do to the chance that a gap misses its band."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from random import Random  # noqa: TID251 - only its type: drawn by hypothesis

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.laws.chain_inputs import TAPE

from casewright.dims import (
    Cause,
    Chain,
    Dim,
    even_sum_below,
    reading_causes,
    slack,
    total,
)
from casewright.room.simulation import chance_outside

Q = Fraction
SIGMA = st.fractions(min_value=Q(1, 64), max_value=2, max_denominator=64)
LAWS = st.sampled_from(["normal", "even"])
BAND = (Q(98), Q(103))
NOISE = 5e-6
"""What rounding, and small evens counted as normal, may come to [-]."""


@st.composite
def causes(draw: st.DrawFn, *, most: int = 5) -> tuple[Cause, ...]:
    """Random causes of either law, each with a key of its own."""
    found = []
    for number in range(draw(st.integers(1, most))):
        sigma = draw(SIGMA)
        even = draw(LAWS) == "even"
        key = f"cause {number}"
        found.append(Cause.even(key, sigma) if even else Cause(key, sigma, 3 * sigma))
    return tuple(found)


def gap(*terms: Cause) -> Dim:
    """A gap of 100 that these causes reach."""
    return Chain().place("").enter("gap", Q(100), TAPE, causes=terms)


def tighter(cause: Cause, share: Fraction) -> Cause:
    """The same cause at a share of what it was."""
    return replace(cause, sigma=cause.sigma * share, limit=cause.limit * share)


@given(causes(), st.data())
def test_a_tighter_tool_never_raises_the_risk(
    terms: tuple[Cause, ...], data: st.DataObject
) -> None:
    """Nor the worst case, as long as the number itself lies in the band."""
    index = data.draw(st.integers(0, len(terms) - 1))
    share = data.draw(st.fractions(min_value=0, max_value=1, max_denominator=16))
    better = [*terms[:index], tighter(terms[index], share), *terms[index + 1 :]]
    assert slack(gap(*better)).worst <= slack(gap(*terms)).worst
    assert chance_outside(gap(*better), *BAND) <= chance_outside(gap(*terms), *BAND) + NOISE


@given(causes(), SIGMA, SIGMA)
def test_systematic_causes_add(terms: tuple[Cause, ...], one: Fraction, two: Fraction) -> None:
    """Two of them are as one of their sum; random ones stay as they were."""
    apart = [Cause("a", one, one, bias=True), Cause("b", two, two, bias=True)]
    joined = Cause("a", one + two, one + two, bias=True)
    first, second = slack(gap(*terms, *apart)), slack(gap(*terms, joined))
    assert (first.bias_mm, first.worst) == (float(one + two), second.worst)
    assert first.sigma_mm == second.sigma_mm
    assert chance_outside(gap(*terms, *apart), *BAND) == chance_outside(gap(*terms, joined), *BAND)


@given(causes(), st.randoms(use_true_random=False))
def test_names_and_order_of_causes_change_nothing(
    terms: tuple[Cause, ...], source: Random
) -> None:
    """What is worked out once for gaps that are alike is right for each of them."""
    others = [cause.named(f"other {cause.key}") for cause in terms]
    source.shuffle(others)
    one, other = slack(gap(*terms)), slack(gap(*others))
    assert (one.worst, one.bias_mm, one.sigma_mm) == (other.worst, other.bias_mm, other.sigma_mm)
    assert one.worst == sum(cause.limit for cause in terms)
    assert one.sigma_mm**2 == pytest.approx(float(sum(cause.variance for cause in terms)))
    assert chance_outside(gap(*terms), *BAND) == chance_outside(gap(*others), *BAND)


@given(causes(), SIGMA, st.integers(2, 9))
def test_a_shared_cause_adds_and_single_ones_combine(
    terms: tuple[Cause, ...], sigma: Fraction, count: int
) -> None:
    """Four sides of one batch stray by four times its deviation, of four batches by twice."""
    place = Chain().place("")
    shared = [place.enter(f"s{n}", Q(18), TAPE, causes=(Cause("batch", sigma, sigma),))
              for n in range(count)]  # fmt: skip
    single = [place.enter(f"o{n}", Q(18), TAPE, causes=(Cause(f"o{n}", sigma, sigma),))
              for n in range(count)]  # fmt: skip
    assert abs(slack(total(*shared)).sigma_mm - count * float(sigma)) < NOISE
    assert abs(slack(total(*single)).sigma_mm - count**0.5 * float(sigma)) < NOISE
    assert slack(total(*shared)).worst == slack(total(*single)).worst == count * sigma


@given(causes(), causes(most=2), st.fractions(min_value=0, max_value=1, max_denominator=8))
def test_measuring_never_raises_the_risk(
    first: tuple[Cause, ...], later: tuple[Cause, ...], share: Fraction
) -> None:
    """A reading that strays no more than the thing itself: the chance is no higher with it."""
    place = Chain().place("")
    opening = place.enter("opening", Q(600), TAPE, causes=first)
    own = tuple(replace(cause, key=f"own {cause.key}") for cause in later)
    play = opening - place.enter("box", Q(500), TAPE, causes=own)
    reading = tuple(tighter(cause, share) for cause in first)

    def settled(dim: Dim) -> tuple[Cause, ...] | None:
        return reading if dim is opening else None

    without = chance_outside(play, *BAND)
    assert chance_outside(play, *BAND, settled=settled) <= without + NOISE


@given(st.lists(SIGMA, min_size=1, max_size=6), st.fractions(-4, 4, max_denominator=32))
def test_the_law_of_a_sum_of_evens_is_a_law(halves: list[Fraction], value: Fraction) -> None:
    """Between 0 and 1, alike on both sides, never falling, all of it between the limits."""
    whole = sum(halves, Q(0))
    below = even_sum_below(halves, value)
    assert 0 <= below <= 1
    assert below + even_sum_below(halves, -value) == 1
    assert below <= even_sum_below(halves, value + Q(1, 7))
    assert even_sum_below(halves, -whole) == 0
    assert even_sum_below(halves, whole) == 1
    assert even_sum_below(list(reversed(halves)), value) == below


@given(SIGMA)
def test_the_hook_of_one_tape_adds_over_readings_and_drops_out_of_differences(
    sigma: Fraction,
) -> None:
    """Each reading strays by what the tape does: 3/5 and 4/5 as squares make one (3, 4, 5)."""
    place = Chain().place("")
    one, two = (
        place.enter(n, Q(500), TAPE, causes=reading_causes(n, sigma, 2 * sigma, "tape"))
        for n in ("one", "two")
    )
    own, hook = float(sigma) * 4 / 5, float(sigma) * 3 / 5
    alone = slack(one)
    assert alone.sigma_mm**2 + alone.bias_mm**2 == pytest.approx(float(sigma) ** 2)
    assert alone.worst == 2 * sigma
    both, apart = slack(one + two), slack(one - two)
    assert both.bias_mm == pytest.approx(2 * hook)
    assert apart.bias_mm == 0
    assert both.sigma_mm == pytest.approx(apart.sigma_mm) == pytest.approx(own * 2**0.5)
    (rule,) = reading_causes("three", sigma, 2 * sigma, "steel rule")
    assert not rule.bias
