"""Counter beside what is cooked on, sinks and refrigerators, against planning guidelines.

Figures of the guidelines of a trade association of the USA, read in a secondary copy.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.unit.checks.rooms import found_in
from tests.unit.checks.surveyed_rooms import landing

from casewright.job.load import read_job
from casewright.job.worked import work_out


@pytest.mark.parametrize(("beside", "told"), [(11, True), (12, False), (15, False)])
def test_twelve_on_one_side_of_a_range_and_fifteen_on_the_other(beside: int, told: bool) -> None:
    """36 in lie at its left."""
    found = found_in("landing", landing(beside))
    assert bool(found) == told
    if told:
        assert found[0].path == "appliance.top"
        assert found[0].remedies[0] == f'{12 - beside}" more of base cases at its right'


def test_a_filler_carries_counter() -> None:
    """A filler of 110 - 36 - 30 - 11 closes the run."""
    assert not found_in("landing", landing(11, right="wall"))


def test_in_a_corner_the_counter_goes_on() -> None:
    """The run round it carries it."""
    room = landing(11)
    run = room.runs[0]
    cornered = replace(run, spec=replace(run.spec, right="corner"))
    assert not found_in("landing", replace(room, runs=(cornered,)))


def test_a_sink_wants_eighteen_and_twenty_four() -> None:
    """Between a range and an open end it has none; the range has no counter on its side."""
    told = {f.path: f for f in found_in("landing", landing(30, sink="sink = true\n"))}
    assert set(told) == {"appliance.top", "b"}
    assert told["b"].limit == '18" on one side and 24" on the other'
    assert told["b"].measured == '0", 0"'


def test_beside_what_is_higher_than_the_counter_one_side_is_enough() -> None:
    """15 in beside a refrigerator; 36 lie at its left."""
    assert not found_in("landing", landing(11, "height = 70"))
    assert not found_in("landing", landing(11, "height = 34"))


@pytest.mark.parametrize(("knees", "told"), [(6, True), (12, False)])
def test_nine_behind_what_is_cooked_on_in_an_island(knees: int, told: bool) -> None:
    """A finished back of 3/4 and what stands out over knees lie behind it."""
    text = (
        'format = 1\nunit = "in"\n[case.a]\nkind = "base"\nwidth = 36\ntoe = "plinth"\n'
        '[case.b]\nkind = "base"\nwidth = 36\ntoe = "plinth"\n[appliance.top]\nwidth = 30\n'
        'cooks = true\n[run.r]\ncases = ["a", "top", "b"]\n[island.i]\nfront = "r"\n'
        f"[style]\nisland_seat_overhang = {knees}\n"
    )
    found = [f for f in found_in("landing", work_out(read_job(text, "i.toml")).room)
             if "behind" in f.says]  # fmt: skip
    assert bool(found) == told
    if told:
        assert found[0].remedies[0].startswith('island_seat_overhang 2 9/32" greater')
