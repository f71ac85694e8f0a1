"""A wall's worst readings, each in its direction, on the chain."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from hypothesis import given as examples
from hypothesis import strategies as st
from tests.builders import INCH
from tests.unit.survey.rooms import at, inches, read, station, surveyed, thing, widths

from casewright.dims import Chain, Origin, slack
from casewright.facts import Fact
from casewright.survey.form import missing, survey_form
from casewright.survey.specs import FixedThing, TopReading, WallSpec
from casewright.survey.walls import survey_wall, width_between


def test_the_narrowest_width_the_highest_floor_and_the_lowest_ceiling_count() -> None:
    """Worst in its direction (common practice); worked by hand.

    40 down at its least is the highest floor, 66 up at its least the lowest ceiling: 106 clear,
    and the floor falls 1/2 from its highest place.
    """
    wall = surveyed(
        WallSpec(
            "sink", "Sink wall", widths("100 1/4", "100 3/8", "100 5/8"),
            (station(6, "40 1/4", "66 1/8"), station(40, "40", "66"),
             station(90, "40 1/2", "66 1/4")),
        )
    )  # fmt: skip
    assert inches(wall.width) == Fraction(401, 4)
    assert inches(wall.spread) == Fraction(3, 8)
    assert [inches(d) for d in (wall.floor, wall.ceiling, wall.fall, wall.clear)] == [
        40, 66, Fraction(1, 2), 106,
    ]  # fmt: skip
    assert "survey.wall.sink.width" in wall.place.chain.nodes


def test_a_height_that_was_not_read_is_what_the_whole_leaves() -> None:
    """106 1/2 from floor to ceiling less 66 up: 40 1/2 down (by hand)."""
    wall = surveyed(WallSpec("w", "W", stations=(station(6, up="66", whole="106 1/2"),)))
    assert inches(wall.floor) == Fraction(81, 2)


def test_only_readings_at_the_height_of_what_stands_there_count() -> None:
    """A base run is not narrowed by a bulge at 84 in, an upper run is.

    The next reading above and below counts too: the narrowest place may be on the way there.
    """
    wall = surveyed(WallSpec("w", "W", (at(4, "101"), at(36, "100 1/2"), at(84, "99"))))
    low = [inches(d) for d in width_between(wall, Fraction(0), 34 * INCH)]
    high = [inches(d) for d in width_between(wall, 54 * INCH, 84 * INCH)]
    assert low == [101, Fraction(201, 2)]
    assert high == [Fraction(201, 2), 99]


def test_front_and_back_both_count() -> None:
    """Where the corners are sharp the front is the narrower one."""
    wall = surveyed(WallSpec("w", "W", (at(36, "100"), at(36, "99 3/4", "front"))))
    chosen = width_between(wall, Fraction(0), 34 * INCH)
    assert {inches(d) for d in chosen} == {100, Fraction(399, 4)}


def test_edges_of_a_window_by_the_way_that_leaves_less_beside_it() -> None:
    """30 + 40 from the left, 100 - 29 1/2 from the right: its right edge at 70 1/2 (by hand)."""
    spec = WallSpec(
        "w", "W", widths("100"), things=(thing(left="30", width="40", right="29 1/2"),)
    )
    [window] = surveyed(spec).things
    assert inches(window.left) == 30
    assert inches(window.right) == Fraction(141, 2)


def test_of_an_outlet_one_edge_is_where_it_is_and_the_other_is_asked_for() -> None:
    """The strip that screws keep off needs a place; of a window so little tells nothing."""
    outlets = (replace(thing(key="a", left="30"), kind="outlet"),
               replace(thing(key="b", right="20"), kind="outlet"))  # fmt: skip
    wall = surveyed(WallSpec("w", "W", widths("100"), things=(*outlets, thing(left="30"))))
    [left, right, window] = wall.things
    assert [inches(left.left), inches(left.right)] == [30, 30]
    assert [inches(right.left), inches(right.right)] == [80, 80]
    assert window.right is None
    told = list(missing(survey_form(wall, "in"), "in"))
    assert {f"where {key} begins and ends along the wall" for key in ("a", "b", "window")} <= {
        *told
    }


def test_a_thing_read_from_another_one_stands_after_it() -> None:
    """A pipe 6 in after a window that ends at 70, 2 wide: from 76 to 78 (by hand)."""
    pipe = FixedThing("pipe", "pipe", "pipe", left=read(6), width=read(2), after="window")
    spec = WallSpec("w", "W", widths("100"), things=(pipe, thing(left="30", width="40")))
    found = surveyed(spec).things[0]
    assert [inches(found.left), inches(found.right)] == [76, 78]


def test_a_counter_counts_at_its_highest_place() -> None:
    """Read down from the level line, the least is the highest."""
    tops = (TopReading(Fraction(0), read("4 1/2")), TopReading(Fraction(900), read("4 1/4")))
    old = FixedThing("old", "old counter", "counter", tops=tops)
    [counter] = surveyed(WallSpec("w", "W", things=(old,))).things
    assert inches(counter.highest) == Fraction(17, 4)


def test_a_new_reading_replaces_the_one_in_the_file() -> None:
    """By its path, like any fact; the least is chosen anew."""
    fact = Fact(Origin("measured", "laser"), built=99 * INCH)
    chain = Chain({"survey.wall.w.width_2": fact})
    wall = survey_wall(chain, WallSpec("w", "W", widths("100", "101")))
    assert inches(wall.width) == 99
    assert not chain.unused_facts


@examples(st.lists(st.integers(90 * 16, 110 * 16), min_size=1, max_size=6))
def test_the_width_is_never_over_a_reading_and_strays_as_one_does(sixteenths: list[int]) -> None:
    """It is one of the readings, and carries that reading's deviation."""
    sizes = [f"{Fraction(n, 16)}" for n in sixteenths]
    wall = surveyed(WallSpec("w", "W", widths(*sizes)))
    assert inches(wall.width) == min(Fraction(n, 16) for n in sixteenths)
    assert slack(wall.place.chain.nodes["survey.wall.w.width"]).worst == 1
