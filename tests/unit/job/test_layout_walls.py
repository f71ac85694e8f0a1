"""What a layout of a run knows of its wall: cases of other runs, leaves of the room's doors."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.builders import INCH
from tests.jobs import problem, read

from casewright.checks import check
from casewright.job.hindrances import run_hindrances
from casewright.job.layouts import RunLayout, layouts
from casewright.room.build import build

ROOM = """\
format = 1
unit = "in"
[wall.west]
width = 120
[wall.west.fixed.yard_door]
kind = "door"
title = "door to the yard"
left = 84
width = 32
bottom = 0
height = 80
swing = "right"
[wall.north]
width = ["150", "150 1/4"]
[corner.nw]
walls = ["west", "north"]
[case.pots]
kind = "base"
[case.pans]
kind = "base"
[case.trays]
kind = "base"
[case.pantry]
kind = "tall"
width = 24
divider = 54
[run.below]
cases = ["pots", "pans", "trays", "pantry"]
on = "north"
[case.plates]
kind = "wall"
[case.cups]
kind = "wall"
[case.teas]
kind = "wall"
[case.jars]
kind = "wall"
[run.above]
cases = ["plates", "cups", "teas", "jars"]
on = "north"
"""
PAST = 'pantry"]\non = "north"\nafter = "yard_door"\nleft = "open"'


def _found(text: str, key: str) -> RunLayout:
    return next(each for each in layouts(build(read(text))) if each.key == key)


def test_a_run_that_would_go_through_a_tall_case_is_told_to_end_at_it() -> None:
    """What is told can be written into the file, and then the wall is filled up to the case."""
    above = _found(ROOM, "above")
    [stands] = above.in_it
    assert stands.key == "pantry"
    assert [each / INCH for each in (stands.left, stands.right)] == [124.5, 148.5]
    assert not above.answers
    [told] = run_hindrances(above)
    assert told.reliefs[0].splitlines()[1] == '[run.above] before = "pantry"'
    ended = _found(f'{ROOM}before = "pantry"\n', "above")
    assert ended.answers
    assert all(
        each.layout.left + sum(each.layout.widths) + each.layout.right == Fraction(249 * 8)
        for each in ended.answers
    )


def test_the_leaf_of_a_door_round_the_corner_keeps_a_run_off() -> None:
    """The door is 4 in from the corner, its leaf 32 in wide: the run begins 32 in along."""
    below = _found(ROOM, "below")
    [leaf] = below.in_it
    assert [leaf.left, leaf.right / INCH] == [0, 32]
    [told] = run_hindrances(below)
    assert told.reliefs[0].splitlines()[1] == '[run.below] after = "yard_door", left = "open"'
    past = ROOM.replace('pantry"]\non = "north"', PAST)
    room = build(read(past))
    assert room.runs[0].begins.value == 32 * INCH
    assert room.chain.nodes["run.below.wall"].value == 118 * INCH
    assert not [f for f in check(room) if f.rule == "door swing"]
    assert [f for f in check(build(read(ROOM))) if f.rule == "door swing"]


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("left = 84", "left = 60"),  # 28 in from the corner: it clears cases of 24 in
        ('swing = "right"\n', ""),  # it opens the other way
    ],
)
def test_a_door_that_clears_the_cases_keeps_no_run_off(old: str, new: str) -> None:
    """28 in from the corner it passes by cases 24 deep; opening outward it meets none."""
    assert not _found(ROOM.replace(old, new), "below").in_it


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('left = "open"', 'left = "wall"', 'write left = "open"'),
        ('swing = "right"\n', "", "does not open into the room"),
        ("width = 32\n", "", "edges of yard_door are not known"),
        ('walls = ["west", "north"]', 'walls = ["north", "west"]', "there is no yard_door"),
    ],
)
def test_an_end_at_a_door_that_cannot_be_is_told(old: str, new: str, says: str) -> None:
    """A filler in the air, a door that opens outward, one not read, one at the other end."""
    found = problem(ROOM.replace('pantry"]\non = "north"', PAST).replace(old, new))
    assert says in f"{found.what}; {found.want}"
