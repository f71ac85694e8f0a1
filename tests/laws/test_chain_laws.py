"""Laws of the chain: values, kinds, facts, long sums."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.laws.chain_inputs import CHOSEN, MM, SAW, SMALL, TAPE, own

from casewright.dims import (
    Cause,
    Chain,
    Dim,
    DimensionKindError,
    greatest,
    least,
    slack,
    total,
    why,
)
from casewright.facts import Fact

Q = Fraction


def explained(chain: Chain, path: str) -> list[str]:
    """Paths that `why` lists for a number, itself first."""
    found = why(
        chain,
        path,
        show=lambda d: d.path,
        number=str,
        branch=lambda b: b.because,
    )
    return [step.path for step in found]


# -- values


@given(data=st.data())
def test_the_chain_calculates_what_bare_fractions_calculate(data: st.DataObject) -> None:
    """Any formula of any shape has the value of the same arithmetic without the chain."""
    chain = Chain()
    place = chain.place("")
    pool = [
        (place.enter(f"n{index}", value, CHOSEN), value)
        for index, value in enumerate(data.draw(st.lists(MM, min_size=2, max_size=5)))
    ]
    for index in range(data.draw(st.integers(1, 12))):
        (a, plain_a), (b, plain_b) = (data.draw(st.sampled_from(pool)) for _ in range(2))
        factor = data.draw(st.fractions(min_value=-4, max_value=4, max_denominator=8))
        dim, plain = data.draw(
            st.sampled_from(
                [
                    (a + b, plain_a + plain_b),
                    (a - b, plain_a - plain_b),
                    (-a, -plain_a),
                    (factor * a, factor * plain_a),
                    (a / 3, plain_a / 3),
                    (total(a, b, a), plain_a + plain_b + plain_a),
                    (least(a, b), min(plain_a, plain_b)),
                    (greatest(a, b), max(plain_a, plain_b)),
                ]
            )
        )
        named = data.draw(st.booleans())
        pool.append((place.let(f"step{index}", dim) if named else dim, plain))
    assert all(dim.value == plain and dim.power == 1 for dim, plain in pool)


@given(terms=st.lists(st.tuples(st.integers(-9, 9), MM), min_size=1, max_size=8), shift=SMALL)
def test_a_slope_is_the_exact_difference_it_makes(
    terms: list[tuple[int, Fraction]], shift: Fraction
) -> None:
    """Moving one input moves a linear formula by the slope times as much."""

    def formula(moved: int) -> Dim:
        place = Chain().place("")
        dims = [
            place.enter(f"n{i}", size + (shift if i == moved else 0), TAPE, causes=own(f"n{i}", 1))
            for i, (_, size) in enumerate(terms)
        ]
        return total(*(dim * factor for dim, (factor, _) in zip(dims, terms, strict=True)))

    still = formula(-1)
    slopes = {term.cause.key: term.slope for term in slack(still).terms}
    for index in range(len(terms)):
        difference = formula(index).value - still.value
        assert difference == slopes.get(f"n{index}", Q(0)) * shift


def test_slopes_of_every_operator_are_its_derivatives() -> None:
    """Difference, product and quotient of two lengths with a deviation each."""
    place = Chain().place("")
    a = place.enter("a", Q(600), TAPE, causes=own("a", 1))
    b = place.enter("b", Q(400), TAPE, causes=own("b", 1))
    expected = {
        a - b: (1, -1),
        -a + b: (-1, 1),
        a * b: (400, 600),
        a / b: (Q(1, 400), Q(-600, 400**2)),
        a / 4 - 3 * b: (Q(1, 4), -3),
        total(a, b, b): (1, 2),
        a * a - b * b: (1200, -800),
    }
    for dim, (by_a, by_b) in expected.items():
        slopes = {term.cause.key: term.slope for term in slack(dim).terms}
        assert slopes == {"a": by_a, "b": by_b}


def test_what_two_things_share_cancels_between_them() -> None:
    """The gap between a wall and a case read with one tape does not feel the tape's hook."""
    place = Chain().place("")
    hook = Cause("hook", Q(1, 2), Q(3, 2), bias=True)
    wall_read = place.enter("wall", Q(1000), TAPE, causes=(hook, *own("first", 1)))
    case_read = place.enter("case", Q(990), TAPE, causes=(hook, *own("second", 1)))
    found = slack(wall_read - case_read)
    assert {term.cause.key for term in found.terms} == {"first", "second"}
    assert found.bias_mm == 0
    assert found.worst == 2


# -- kinds


def _lengths() -> tuple[Dim, Dim]:
    place = Chain().place("")
    return place.enter("a", Q(300), CHOSEN), place.enter("b", Q(200), CHOSEN)


@pytest.mark.parametrize(
    "mix",
    [
        lambda a, b: a + a * b,
        lambda a, b: a * b - b,
        lambda a, b: total(a, b, a * b),
        lambda a, b: least(a, a * b),
        lambda a, b: greatest(a * b, b),
        lambda a, b: a + a / b,
        lambda a, _: a + 1,
        lambda a, _: a - Q(1, 2),
        lambda a, _: a * 0.5,
        lambda a, _: a / 2.0,
    ],
)
def test_lengths_areas_ratios_and_floats_do_not_mix(mix: Callable[[Dim, Dim], Dim]) -> None:
    """A length plus an area, a bare number or a float is refused, not calculated."""
    with pytest.raises(DimensionKindError):
        mix(*_lengths())


def test_kinds_follow_the_arithmetic() -> None:
    """Length by length is an area, and over a length a length again."""
    a, b = _lengths()
    assert (a * b).power == 2
    assert (a * b / b).power == 1
    assert (a / b).power == 0
    assert (a * b + b * a).value == 120_000


@pytest.mark.parametrize(
    "compare", [lambda a, b: a < b, lambda a, b: a > b, lambda a, b: a <= b, lambda a, b: a >= b]
)
def test_a_comparison_that_nobody_would_remember_is_refused(
    compare: Callable[[Dim, Dim], bool],
) -> None:
    """Sizes are compared through a place, which keeps the decision for `why`."""
    with pytest.raises(TypeError, match=r"Place\.over"):
        compare(*_lengths())


# -- facts


@given(designed=MM, cut=st.none() | MM, built=st.none() | MM)
def test_what_is_known_of_the_real_thing_wins(
    designed: Fraction, cut: Fraction | None, built: Fraction | None
) -> None:
    """Downstream sees the built size, else the cut size, else the number wanted; all are kept."""
    facts = {"shelf.width": Fact(TAPE, cut=cut, built=built, causes=own("tape", 1))}
    chain = Chain(facts)
    wish = chain.place("").enter("wish", designed, CHOSEN)
    width = chain.place("shelf").made("width", wish, own("saw", Q(1, 2)))
    known = built if built is not None else cut if cut is not None else designed
    assert (width + wish).value == known + designed
    assert (width.wanted, width.cut, width.built) == (designed, cut, built)
    assert chain.unused_facts == ()


def test_a_fact_for_nothing_is_reported_not_dropped() -> None:
    """The path of a fact that no number took up is listed."""
    chain = Chain({"gone.width": Fact(SAW, cut=Q(1)), "here.width": Fact(SAW, cut=Q(2))})
    chain.place("here").enter("width", Q(3), CHOSEN)
    assert chain.unused_facts == ("gone.width",)


def test_a_path_names_one_number() -> None:
    """Two numbers of one name are a defect and are refused."""
    place = Chain().place("case")
    place.enter("width", Q(1), CHOSEN)
    with pytest.raises(ValueError, match=r"two dims are named case\.width"):
        place.enter("width", Q(2), CHOSEN)


# -- long sums


def test_a_bare_number_named_in_many_places_is_many_numbers() -> None:
    """Naming it here must not rename it there, nor in what was made from it."""
    chain = Chain()
    nothing = Dim("", (), Fraction(0))
    nothing.origin = CHOSEN
    total = chain.place("left").made("width", nothing)
    names = [chain.place(place).let("low", nothing).path for place in ("left", "right")]
    assert names == ["left.low", "right.low"]
    assert not nothing.path
    assert total.args == (nothing,)
    assert all(chain.nodes[name].origin == nothing.origin for name in names)


def test_a_sum_of_two_thousand_terms_is_explained_without_recursion() -> None:
    """A long row added step by step can be explained, sampled in slack, and written out."""
    chain = Chain()
    place = chain.place("")
    terms = [place.enter(f"t{n}", Q(n), TAPE, causes=own(f"t{n}", Q(1, 100))) for n in range(2000)]
    running = terms[0]
    for term in terms[1:]:
        running = running + term
    place.let("row", running)
    steps = explained(chain, "row")
    assert steps == ["row", *(f"t{n}" for n in range(2000))]
    found = slack(chain.nodes["row"])
    assert found.nominal == 1999 * 1000
    assert found.worst == 20


def test_a_chain_of_two_thousand_names_is_walked_without_recursion() -> None:
    """Each number named and resting on the one before."""
    chain = Chain()
    place = chain.place("")
    last = place.enter("n0", Q(1), TAPE, causes=own("tape", 1))
    for number in range(1, 2000):
        last = place.let(f"n{number}", last * 1 + last * 0)
    assert len(explained(chain, "n1999")) == 2000
    assert slack(last).worst == 1


def test_why_of_a_path_that_is_not_there_is_a_key_error() -> None:
    """The caller offers the nearest names."""
    with pytest.raises(KeyError):
        explained(Chain(), "nowhere")
