"""Work triangle, preparation run and counter in all, worked out by hand from the widths.

Figures of the planning guidelines of a trade association of the USA, read in a secondary copy; the
158 in of counter from memory.
"""

from __future__ import annotations

import math
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.island_room import island_text
from tests.unit.checks.kitchens import kitchen, round_the_corner
from tests.unit.checks.rooms import found_in

from casewright.dims import size_text
from casewright.findings import Severity
from casewright.job.load import read_job
from casewright.room.build import build
from casewright.room.floor_cuts import share_inside
from casewright.room.model import Room
from casewright.room.wall_stands import Spot
from casewright.room.work_centres import work_centres
from casewright.sources import INCH


def _told(rule: str, room: Room) -> list[tuple[str, str]]:
    return [(each.measured, each.limit) for each in found_in(rule, room)]


@pytest.mark.parametrize(
    ("widths", "told"),
    [
        # Sink to range: 33/2 + b + 15; range to refrigerator: 15 + c + 18; both to the third.
        ((30, 17, 26), []),
        ((30, 16, 27), [('47 1/2"', '48"')]),
        ((30, 77, 15), [('108 1/2"', '108"'), ('156 1/2"', '108"'), ('313"', '312"')]),
        ((30, 17, 12), [('45"', '48"')]),
    ],
)
def test_ways_of_four_to_nine_feet_and_twenty_six_in_all(
    widths: tuple[int, ...], told: list[tuple[str, str]]
) -> None:
    """On one wall the longest way is the two others together."""
    found = _told("work triangle", kitchen(*widths))
    assert found == told


def test_round_a_corner_the_ways_are_straight() -> None:
    """Against the hypotenuse: the fronts in the measure of their walls, by their own places."""
    room = round_the_corner()
    known = work_centres(room)
    [sink], [cooking] = known["sink"], known["cooking"]
    west, north = room.runs
    out = west.cases[1].overall_depth.value + OVER
    along = 115 * INCH - (west.starts[1].value + west.begins.value + Fraction(33, 2) * INCH)
    east = north.begins.value + north.appliances[0].start.value + 15 * INCH
    want = math.hypot(float(east - out), float(along - out))
    got = math.dist([float(n) for n in sink.spot], [float(n) for n in cooking.spot])
    assert got == pytest.approx(want)


def test_nothing_is_said_until_the_job_knows_enough() -> None:
    """Without a refrigerator named as one; with the range on a wall that no corner joins."""
    room = kitchen(30, 77, 15)
    unnamed = tuple(replace(each, cools=False) for each in room.spec.appliances)
    nothing = replace(room, spec=replace(room.spec, appliances=unnamed))
    assert not _told("work triangle", nothing)
    assert not _told("counter in all", nothing)


def test_a_way_through_an_island_of_more_than_twelve_inches_is_told() -> None:
    """By hand: 48 aside in 129.38 across; it comes in at 42 across and leaves at its end."""
    text = island_text(
        head="[appliance.hob]\nwidth = 30\ncooks = true\n"
        "[appliance.cold]\nwidth = 36\nheight = 70\ncools = true\n"
    )
    text = text.replace("[case.sink]\n", "[case.sink]\nsink = true\n")
    room = build(
        read_job(text.replace('cases = ["pans"]', 'cases = ["cold", "pans", "hob"]'), "i.toml")
    )
    told = [found for found in found_in("work triangle", room) if found.path == "island.main"]
    assert [found.limit for found in told] == ['12"', '12"']
    # The end of the counter lies 104.4 along, the sink's middle 78, the refrigerator's 126.
    share = (104.4 - 78) / 48 - 42 / 129.38
    assert f"{math.floor(share * math.hypot(48, 129.38))}" in told[1].measured


OVER = Fraction(5, 4) * INCH
"""How far the counter stands out before the fronts: style `island_front_overhang`."""

_PLACES = st.tuples(*(st.fractions(-10, 20, max_denominator=8),) * 2)


@given(one=_PLACES, other=_PLACES)
def test_share_of_a_way_within_a_square(one: Spot, other: Spot) -> None:
    """Against counting many places along it."""
    square = [(Fraction(x), Fraction(y)) for x, y in ((0, 0), (10, 0), (10, 10), (0, 10))]
    steps = 400
    inside = 0
    for n in range(steps):
        at = Fraction(2 * n + 1, 2 * steps)
        spot = [a + (b - a) * at for a, b in zip(one, other, strict=True)]
        inside += all(0 < each < 10 for each in spot)
    share = share_inside((one, other), square)
    if one != other:
        assert abs(float(share) - inside / steps) <= 2 / steps
    assert share == share_inside((other, one), square[::-1])


@pytest.mark.parametrize(
    ("widths", "told"), [((36, 17, 30), False), ((35, 17, 30), True), ((30, 36, 30), False)]
)
def test_thirty_six_beside_a_sink(widths: tuple[int, ...], told: bool) -> None:
    """At one of its sides; the range ends what lies at its right."""
    assert bool(found_in("preparation run", kitchen(*widths))) == told


def test_counter_that_is_too_shallow_is_not_counted() -> None:
    """A counter of 22 is no place to prepare on (24 in)."""
    [found] = found_in("preparation run", kitchen(36, 17, 30, deep="depth = 20\n"))
    assert found.measured == '0"'
    assert found_in("counter in all", kitchen(60, 60, 60, deep="depth = 20\n"))


@pytest.mark.parametrize(
    ("widths", "total"), [((60, 50, 48), None), ((60, 50, 47), '157"'), ((20, 20, 20), '60"')]
)
def test_158_of_counter_in_all(widths: tuple[int, ...], total: str | None) -> None:
    """Bases alone: neither sink nor range nor refrigerator."""
    assert _told("counter in all", kitchen(*widths)) == (
        [] if total is None else [(total, '158"')]
    )
    assert all(f.severity is Severity.NOTE for f in found_in("counter in all", kitchen(*widths)))


def test_what_lies_in_a_corner_is_on_neither_edge() -> None:
    """By hand: a base of 36 and what is past the sink, 69 in, up to the other's edge; a base."""
    room = round_the_corner()
    west, north = room.runs
    edges = [run.cases[0].overall_depth.value + OVER for run in room.runs]  # the counter's edge
    past = north.begins.value + north.starts[0].value + 36 * INCH - edges[0]
    total = 36 * INCH + (115 - 69) * INCH - edges[1] + past
    [found] = found_in("counter in all", room)
    assert west.cases[1].key == "sink"
    assert found.measured == size_text(total, "in")
