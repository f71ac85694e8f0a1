"""Rolls that edges come off in one length, and what several of a thing cost."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.buying.edges import rolls
from casewright.buying.words import priced


def test_edges_come_off_a_roll_in_one_length() -> None:
    """By hand: of 100, two of 60 take two, beside each a 40; what is longer is joined."""
    roll = Fraction(100)
    assert rolls([Fraction(n) for n in (40, 60, 60, 40)], roll) == (2, 0)
    assert rolls([Fraction(n) for n in (60, 60, 60)], roll) == (3, 0)
    assert rolls([Fraction(n) for n in (230, 70)], roll) == (3, 1)
    assert rolls([Fraction(100)], roll) == (1, 0)


@given(st.lists(st.integers(1, 250), min_size=1, max_size=12))
def test_rolls_hold_their_edges(edges: list[int]) -> None:
    """Never fewer than all lengths together take, nor more than one for each length begun."""
    count, joined = rolls([Fraction(edge) for edge in edges], Fraction(100))
    assert -(-sum(edges) // 100) <= count <= sum(-(-edge // 100) for edge in edges)
    assert joined == sum(edge > 100 for edge in edges)


@pytest.mark.parametrize(
    ("price", "told"),
    [
        ("62.40, 3 May, the yard", "62.40, 3 May, the yard; 3 x 62.40 = 187.20"),
        ("€ 9,80, 1. Juni", "€ 9,80, 1. Juni; 3 x € 9,80 = €29,40"),
        ("$62, 2026-05-03", "$62, 2026-05-03; 3 x $62 = $186"),
        ("3 May: ask again", "3 May: ask again"),
        ("2026-05-03: 62.40", "2026-05-03: 62.40"),
        ("1.200,00", "1.200,00"),
    ],
)
def test_what_several_cost_is_reckoned_where_the_price_begins(price: str, told: str) -> None:
    """A day or a date is no price; by hand."""
    assert priced(price, 3) == told
    assert priced(price, 1) == price
