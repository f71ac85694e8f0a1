"""Laws of moving numbers apart."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from casewright.drawing.spread import spread

_PLACES = st.floats(-1000, 1000).map(lambda x: round(x, 3))
_HALVES = st.floats(0.5, 20).map(lambda x: round(x, 3))
_THINGS = st.lists(st.tuples(_PLACES, _HALVES), min_size=1, max_size=12)
_SLIP = 1e-6


@given(_THINGS, st.floats(0, 3))
def test_nothing_overlaps_and_order_is_kept(things: list[tuple[float, float]], gap: float) -> None:
    """Any two neighbours are at least their halves and the gap apart."""
    wished, halves = zip(*things, strict=True)
    places = spread(wished, halves, gap)
    order = sorted(range(len(things)), key=lambda i: (wished[i], i))
    for i, j in pairwise(order):
        assert places[j] - places[i] >= halves[i] + halves[j] + gap - _SLIP


@given(_THINGS)
def test_what_has_room_stays(things: list[tuple[float, float]]) -> None:
    """Spreading what is already spread moves nothing."""
    wished, halves = zip(*things, strict=True)
    once = spread(wished, halves)
    again = spread(once, halves)
    assert all(abs(a - b) < 1e-5 for a, b in zip(once, again, strict=True))


@given(_THINGS)
def test_the_whole_does_not_drift(things: list[tuple[float, float]]) -> None:
    """Least squares: what moves left and what moves right balance."""
    wished, halves = zip(*things, strict=True)
    places = spread(wished, halves)
    assert abs(sum(places) - sum(wished)) < 1e-6 * len(things) * 1000


@given(_PLACES, _HALVES, st.floats(-0.9, 0.9))
def test_one_number_steps_clear_of_one_line(place: float, half: float, offset: float) -> None:
    """A line that would run through a number leaves it whole, on the nearer side."""
    line = place + offset * half
    (moved,) = spread([place], [half], obstacles=[line])
    assert abs(moved - line) >= half - 1e-3
