"""Readings that cannot all be right are told, with the likely slip."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given as examples
from hypothesis import strategies as st
from tests.builders import INCH, length
from tests.unit.survey.rooms import at, read, station, surveyed, thing, widths

from casewright.dims import Chain, Origin
from casewright.facts import Fact
from casewright.survey.doubts import Doubt, wall_doubts
from casewright.survey.slips import meant
from casewright.survey.specs import FixedThing, Plumb, PlumbOf, TopReading, WallSpec, WidthReading
from casewright.survey.walls import survey_wall


def _doubts(**spec: object) -> tuple[Doubt, ...]:
    return wall_doubts(surveyed(WallSpec("w", "sink wall", **spec)), "in")  # type: ignore[arg-type]


def test_181_among_118s_is_two_figures_swapped() -> None:
    """The one reading is doubted, the two others are not."""
    [doubt] = _doubts(widths=widths("118 1/4", "181 3/8", "118 1/2"))
    assert doubt.paths == ("survey.wall.w.width_2",)
    assert '118 3/8" was probably meant (two figures swapped)' in doubt.says


def test_a_reading_that_was_taken_again_is_left_alone() -> None:
    """The person said it is sure."""
    odd = WidthReading(read("125", sure=True))
    assert not _doubts(widths=(*widths("118 1/4", "118 1/2"), odd))


def test_a_reading_recorded_since_is_left_alone_too() -> None:
    """The record asks about odd readings by itself; a right one settles the doubt."""
    spec = WallSpec("w", "sink wall", widths("118 1/4", "181 3/8", "118 1/2"))
    path = "survey.wall.w.width_2"
    for size in ("118 3/8", "123"):
        fact = Fact(Origin("measured", "tape"), built=length(size))
        assert not wall_doubts(survey_wall(Chain({path: fact}), spec), "in")


def test_of_two_readings_far_apart_neither_is_preferred() -> None:
    """Both are doubted until a third decides."""
    [doubt] = _doubts(widths=widths("118", "181"))
    assert len(doubt.paths) == 2
    assert "a third time" in doubt.again


@pytest.mark.parametrize("spread", ["1/4", "3/4", "1"])
def test_a_crooked_wall_is_no_slip(spread: str) -> None:
    """Walls are out by as much as an inch (common practice)."""
    low, high = 118, 118 + Fraction(spread)
    assert not _doubts(widths=widths("118", f"{high}", f"{Fraction(low + high, 2)}"))


def test_segments_must_sum_to_the_whole() -> None:
    """30 + 40 + 30 1/4 is the wall of 100 1/4; 30 + 40 + 13 1/4 is not, and 31 was read as 13."""
    good = thing(left="30", width="40", right="30 1/4")
    assert not _doubts(widths=widths("100 1/4"), things=(good,))
    bad = thing(left="30", width="40", right="13 1/4")
    [doubt] = _doubts(widths=widths("101 1/4"), things=(bad,))
    assert doubt.paths[0] == "survey.wall.w.fixed.window.right"
    assert '83 1/4", 18" less than' in doubt.says
    assert '31 1/4" was probably meant (two figures swapped)' in doubt.says


def test_segments_from_thing_to_thing_are_followed() -> None:
    """Door, 20, window, 30: a chain across the wall is summed whole."""
    door = FixedThing("door", "door", "door", left=read(10), width=read(36))
    window = FixedThing(
        "window", "window", "window", left=read(20), width=read(40), right=read(30), after="door"
    )
    assert not _doubts(widths=widths("136"), things=(door, window))
    [doubt] = _doubts(widths=widths("138"), things=(door, window))
    assert "10" in doubt.says
    assert len(doubt.paths) == 6


def test_heights_must_sum_too() -> None:
    """Down and up against floor to ceiling; bottom and height against top."""
    assert not _doubts(stations=(station(6, "40", "66", "106"),))
    [doubt] = _doubts(stations=(station(6, "40", "66", "107"),))
    assert "one less" not in doubt.says
    assert '1" less than floor to ceiling 107"' in doubt.says
    [doubt] = _doubts(things=(thing(bottom="42", height="36", top="77"),))
    assert 'more than top of window 77"' in doubt.says


def test_a_counter_or_a_floor_out_by_inches_is_doubted() -> None:
    """A floor 4 in lower at one station than at the two others."""
    [doubt] = _doubts(stations=(station(6, "40"), station(30, "44"), station(60, "40 1/4")))
    assert doubt.paths == ("survey.wall.w.station_2.down",)
    tops = tuple(TopReading(Fraction(n), read(size)) for n, size in enumerate(("4", "14", "4")))
    [doubt] = _doubts(things=(FixedThing("c", "old counter", "counter", tops=tops),))
    assert "one ten off" in doubt.says


def _leaning(high: str, *leans: str) -> tuple[Doubt, ...]:
    """Widths of 100 at 4 and of so much at 84; both ends lean in so much over 48."""
    ends: tuple[PlumbOf, ...] = ("left", "right")
    plumbs = tuple(Plumb(of, 48 * INCH, read(x)) for of, x in zip(ends, leans, strict=False))
    return _doubts(widths=(at(4, "100"), at(84, high)), plumbs=plumbs)


def test_leans_of_both_ends_must_agree_with_the_widths() -> None:
    """1/4 in over 48 at each end takes 5/6 in off in 80 in (by proportion)."""
    assert not _leaning("99 1/4", "1/4", "1/4")
    assert not _leaning("99 1/8", "1/4", "1/4")
    [doubt] = _leaning("100 3/8", "1/4", "1/4")
    assert '3/8" wider than the lower one' in doubt.says
    assert len(doubt.paths) == 4


def test_the_lean_of_one_end_alone_says_nothing_of_the_width() -> None:
    """The other end may lean as much the other way."""
    assert not _leaning("100 3/8", "1/4")


@examples(st.integers(20, 300), st.integers(0, 15))
def test_a_swap_is_found_wherever_it_was_made(whole: int, sixteenths: int) -> None:
    """Swapping two neighbouring figures of a reading, the reading itself is offered again."""
    value = (whole + Fraction(sixteenths, 16)) * INCH
    figures = str(whole)
    swapped = f"{figures[1]}{figures[0]}{figures[2:]}"
    wrong = (int(swapped) + Fraction(sixteenths, 16)) * INCH
    found = meant(wrong, value, INCH / 16, "in")
    if swapped != figures and not swapped.startswith("0"):
        assert found is not None
        assert found.value == value


def test_what_no_slip_explains_is_not_guessed() -> None:
    """37 mm off is nothing usual."""
    assert meant(Fraction(1037), Fraction(1000), Fraction(2), "mm") is None


@examples(st.permutations(["118", "118 1/4", "118 1/2", "181"]))
def test_the_order_of_readings_does_not_matter(sizes: list[str]) -> None:
    """The odd one is found wherever it stands."""
    [doubt] = _doubts(widths=widths(*sizes))
    assert doubt.paths == (f"survey.wall.w.width_{sizes.index('181') + 1}",)


def _honest(draws: np.random.Generator) -> WallSpec:
    """A wall out by up to 3/4 in, read to 1/16 by somebody who makes no slip."""
    true = [100 + float(draws.uniform(0, 0.75)) for _ in range(3)]

    def taken(size: float) -> str:
        return f"{Fraction(round((size + float(draws.normal(0, 0.02))) * 16), 16)}"

    left, wide = float(draws.uniform(10, 40)), float(draws.uniform(20, 45))
    window = thing(left=taken(left), width=taken(wide), right=taken(true[1] - left - wide))
    heights = [(float(draws.uniform(39, 40)), float(draws.uniform(66, 67))) for _ in range(4)]
    stations = tuple(
        station(20 * n, taken(down), taken(up), taken(down + up))
        for n, (down, up) in enumerate(heights)
    )
    return WallSpec("w", "W", widths(*(taken(size) for size in true)), stations, things=(window,))


def test_an_honest_wall_is_hardly_ever_doubted_and_a_swap_always() -> None:
    """Monte Carlo with NumPy, 300 walls: doubts of sound readings in 2 % of them at most.

    At three standard deviations 0.3 % of sound sums are off; rounding to 1/16 adds some. Swapping
    the first two figures of a width is found in every wall.
    """
    draws = np.random.default_rng(11)
    walls = [_honest(draws) for _ in range(300)]
    doubted = [spec for spec in walls if wall_doubts(surveyed(spec), "in")]
    assert len(doubted) <= 6
    for spec in walls[:60]:
        value = spec.widths[0].reading.value / INCH
        swapped = WidthReading(read(value - 90 if value < 110 else value))
        slipped = replace(spec, widths=(swapped, *spec.widths[1:]))
        assert any(
            d.paths == ("survey.wall.w.width_1",) for d in wall_doubts(surveyed(slipped), "in")
        )
