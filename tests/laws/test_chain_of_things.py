"""Laws of things on the chain: doors, boxes, a wall and its cases, the order of making."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.laws.chain_inputs import CHOSEN, MM, SAW, SMALL, TAPE, own

from casewright.dims import (
    Chain,
    Dim,
    Place,
    Way,
    greatest,
    least,
    parse_length,
    slack,
    total,
    why,
)
from casewright.facts import Fact

Q = Fraction


def inches(text: str) -> Fraction:
    """'24 1/16' in mm."""
    return parse_length(text, "in")


# -- a pair of doors from a built opening

LIMIT = inches("24")
GAP, REVEAL = inches("1/8"), inches("1/16")


@dataclass(frozen=True, slots=True)
class Doors:
    """Doors of one opening, and the play left beside and between them."""

    chain: Chain
    leaves: tuple[Dim, ...]
    play: Dim


def doors(reading: Fraction | None, designed: Fraction = LIMIT) -> Doors:
    """One inset door, or two where the opening as built is over the limit.

    The tape strays 1 mm, each leaf 1/4 mm.
    """
    facts = {} if reading is None else {"opening": Fact(TAPE, None, reading, own("tape", 1))}
    chain = Chain(facts)
    place = chain.place("")
    opening = place.made("opening", place.enter("design", designed, CHOSEN))
    gap = place.enter("gap", GAP, CHOSEN)
    reveal = place.enter("reveal", REVEAL, CHOSEN)
    limit = place.enter("limit", LIMIT, CHOSEN)
    if place.over(opening, limit, "two doors, one would be too wide"):
        size = (opening - 2 * reveal - gap) / 2
        names = ["left", "right"]
    else:
        size = opening - 2 * reveal
        names = ["door"]
    leaves = tuple(place.made(name, size, own(name, Q(1, 4))) for name in names)
    return Doors(chain, leaves, place.let("play", opening - total(*leaves)))


@given(over=st.fractions(min_value=-20, max_value=20, max_denominator=64))
def test_a_reading_decides_between_one_door_and_two(over: Fraction) -> None:
    """Above the threshold two leaves, at it and below one; leaves and play fill the opening."""
    reading = LIMIT + over
    found = doors(reading)
    assert len(found.leaves) == (2 if over > 0 else 1)
    assert found.play.value == 2 * REVEAL + (GAP if over > 0 else 0)
    assert sum(leaf.value for leaf in found.leaves) + found.play.value == reading


def test_the_reading_and_not_the_design_decides() -> None:
    """A case designed for one door that came out wide gets two, and `why` says so."""
    assert len(doors(None).leaves) == 1
    wide = doors(LIMIT + Q(1, 64))
    assert [leaf.path for leaf in wide.leaves] == ["left", "right"]
    steps = why(
        wide.chain,
        "left",
        show=lambda d: d.path,
        number=str,
        branch=lambda b: f"{b.because}: {b.left.path} over {b.right.path}",
    )
    assert steps[0].formula == "(opening - 2 x reveal - gap) / 2"
    assert {"opening", "reveal", "gap"} <= {step.path for step in steps}


def test_play_of_doors_cut_to_a_reading_strays_with_the_tape_and_each_saw_cut() -> None:
    """1 mm of tape and 1/4 mm a leaf: 1 1/2 mm at worst, 1.06 by root sum of squares."""
    two, one = slack(doors(LIMIT + 1).play), slack(doors(LIMIT - 1).play)
    assert two.worst == Q(3, 2)
    assert one.worst == Q(5, 4)
    assert 3 * two.sigma_mm == pytest.approx(1.0607, abs=5e-5)
    assert 3 * one.sigma_mm == pytest.approx(1.0308, abs=5e-5)


# -- four boxes of one sheet


def four_boxes(thickness: Fraction, cut_bottom: Fraction | None = None) -> Dim:
    """Length of a run of four boxes that share one measured thickness."""
    facts: dict[str, Fact] = {}
    if cut_bottom is not None:
        facts = {f"box{n}.bottom": Fact(SAW, cut=cut_bottom) for n in range(4)}
    chain = Chain(facts)
    place = chain.place("")
    sheet = place.enter("sheet", thickness, TAPE, causes=own("calliper", Q(1, 10)))
    wish = place.enter("width", Q(600), CHOSEN)
    widths = []
    for number in range(4):
        box = place.at(f"box{number}")
        bottom = box.made("bottom", wish - 2 * sheet, own(f"bottom{number}", Q(1, 4)))
        sides = [box.follows(side, sheet) for side in ("left", "right")]
        widths.append(box.follows("width", total(sides[0], bottom, sides[1])))
    return place.let("run", total(*widths))


@given(error=SMALL, thickness=st.fractions(min_value=15, max_value=20, max_denominator=100))
def test_four_boxes_run_off_by_eight_times_the_error_of_their_sheet(
    error: Fraction, thickness: Fraction
) -> None:
    """Bottoms cut by a wrong reading: the run moves by eight times the error."""
    cut = 600 - 2 * thickness
    assert four_boxes(thickness + error, cut).value - four_boxes(thickness, cut).value == 8 * error


@given(thickness=st.fractions(min_value=15, max_value=20, max_denominator=100))
def test_four_boxes_cut_by_the_right_reading_keep_their_run(thickness: Fraction) -> None:
    """Bottoms not cut yet take up the thickness: the run is as designed."""
    assert four_boxes(thickness).value == 2400


def test_the_shared_sheet_is_one_cause_and_each_bottom_its_own() -> None:
    """The slope of the calliper is eight, of each bottom one; the sheet does not average out."""
    found = slack(four_boxes(Q(18)))
    slopes = {term.cause.key: term.slope for term in found.terms}
    assert slopes == {"calliper": 8, **{f"bottom{n}": 1 for n in range(4)}}
    assert found.worst == 8 * Q(1, 10) + 4 * Q(1, 4)
    assert found.terms[0].cause.key in slopes
    assert 3 * found.sigma_mm == pytest.approx((0.8**2 + 4 * 0.25**2) ** 0.5)


# -- readings of a wall, equal cases and fillers


def wall(place: Place, readings: tuple[Fraction, ...]) -> Dim:
    """The narrowest of several readings."""
    taken = [
        place.enter(f"reading{n}", size, TAPE, causes=own(f"reading{n}", 1))
        for n, size in enumerate(readings)
    ]
    return place.let("wall", least(*taken))


@given(readings=st.tuples(MM, MM, MM), wider=st.fractions(min_value=0, max_value=50))
def test_the_least_of_three_readings_decides_alone(
    readings: tuple[Fraction, Fraction, Fraction], wider: Fraction
) -> None:
    """The wall is its narrowest reading; the others may grow without effect."""
    least_at = min(range(3), key=lambda n: readings[n])
    grown = tuple(size if n == least_at else size + wider for n, size in enumerate(readings))
    assert wall(Chain().place(""), readings).value == readings[least_at]
    assert wall(Chain().place(""), grown).value == readings[least_at]


@pytest.mark.parametrize(
    ("readings", "close"),
    [
        ((Q(2600), Q(2610), Q(2620)), False),
        ((Q(2600), Q(2602), Q(2620)), True),
        ((Q(2600), Q(2600), Q(2600)), True),
    ],
)
def test_readings_that_lie_close_are_said_to(
    readings: tuple[Fraction, Fraction, Fraction], close: bool
) -> None:
    """Where the tape's error could pick another reading, linear figures are a guide."""
    assert slack(wall(Chain().place(""), readings)).decided is close


def test_a_close_choice_between_formulas_is_seen_too() -> None:
    """Candidates that are themselves sums of readings are judged by all that reaches them."""
    place = Chain().place("")
    a = place.enter("a", Q(1000), TAPE, causes=own("a", 1))
    b = place.enter("b", Q(500), TAPE, causes=own("b", 1))
    assert slack(least(a - b, b * 1)).decided
    assert slack(least(a - b, b + b)).decided is False
    assert slack(greatest(a - b, b * 1)).decided


@dataclass(frozen=True, slots=True)
class Row:
    """Equal cases between two fillers."""

    wall: Dim
    cases: tuple[Dim, ...]
    rests: tuple[Dim, ...]
    fillers: tuple[Dim, ...]


def row(readings: tuple[Fraction, ...], count: int, filler: Fraction, step: Fraction) -> Row:
    """Cases down to the grid, what is left shared by the fillers."""
    place = Chain().place("")
    narrow = wall(place, readings)
    wished = place.enter("filler", filler, CHOSEN)
    exact = place.let("share", (narrow - 2 * wished) / count)
    case, rest = place.rounded("case", exact, step, Way.DOWN)
    side = place.let("side", wished + rest * Q(count, 2))
    return Row(narrow, (case,) * count, (rest,) * count, (side, side))


@given(
    readings=st.tuples(*[st.fractions(min_value=1500, max_value=4000, max_denominator=64)] * 3),
    count=st.integers(1, 8),
    step=st.sampled_from([inches("1/32"), inches("1/4"), Q(1, 2), Q(5)]),
)
def test_equal_cases_and_fillers_close_the_wall_exactly(
    readings: tuple[Fraction, Fraction, Fraction], count: int, step: Fraction
) -> None:
    """Rounded cases on the grid, fillers as wished or wider, the sum the wall to the last bit."""
    found = row(readings, count, inches("1 5/8"), step)
    assert sum(d.value for d in (*found.cases, *found.fillers)) == min(readings)
    assert all(case.value % step == 0 for case in found.cases)
    assert all(filler.value >= inches("1 5/8") for filler in found.fillers)


def test_three_equal_cases_on_a_wall_of_102_and_a_quarter() -> None:
    """102 1/4 less two fillers of 1 5/8 leaves three cases of 33."""
    readings = tuple(inches(text) for text in ("102 3/8", "102 1/4", "102 1/2"))
    found = row(readings, 3, inches("1 5/8"), inches("1/4"))
    assert [case.value for case in found.cases] == [inches("33")] * 3
    assert [filler.value for filler in found.fillers] == [inches("1 5/8")] * 2


@given(
    value=SMALL | MM, step=st.fractions(min_value=Q(1, 64), max_value=30), way=st.sampled_from(Way)
)
def test_a_rounded_number_and_its_rest_are_the_number(
    value: Fraction, step: Fraction, way: Way
) -> None:
    """Rounding loses nothing, stays on the grid, and goes the way it was told."""
    place = Chain().place("")
    exact = place.enter("exact", value, CHOSEN)
    rounded, rest = place.rounded("door", exact, step, way)
    assert (rounded + rest).value == value
    assert rounded.value % step == 0
    low, high = {
        Way.DOWN: (Q(0), step),
        Way.UP: (-step, Q(0)),
        Way.NEAREST: (-step / 2, step / 2),
        Way.CLOSE: (-step / 4, step * Q(3, 4)),
    }[way]
    assert low <= rest.value <= high
    assert abs(rest.value) < step


# -- the order of making


def box(facts: Mapping[str, Fact], sheet: Fraction) -> Chain:
    """A small box, each formula over what is made before it: sides, bottom, back, door."""
    chain = Chain(facts)
    place = chain.place("")
    wish = place.enter("width", Q(600), CHOSEN)
    dado = place.enter("dado_depth", Q(6), CHOSEN)
    air = place.enter("air", Q(1), CHOSEN)
    reveal = place.enter("reveal", Q(2), CHOSEN)
    thickness = place.enter("sheet", sheet, TAPE)
    left = place.made("left_floor", thickness - dado)
    right = place.made("right_floor", thickness - dado)
    bottom = place.made("bottom", wish - left - right)
    real = place.follows("real_width", total(left, bottom, right))
    opening = place.let("opening", real - 2 * thickness)
    back = place.made("back", opening + 2 * dado - air)
    door = place.made("door", real - 2 * reveal)
    place.fit("back_air", opening + 2 * dado - back, Q(1), Q(1), "back")
    place.fit("door_reveals", real - door, Q(4), Q(4), "door")
    return chain


MADE = ("left_floor", "right_floor", "bottom", "back", "door")


@given(
    made=st.integers(0, len(MADE)),
    sheet=st.fractions(min_value=15, max_value=20, max_denominator=100),
    change=SMALL,
)
def test_freezing_what_is_made_changes_nothing_else(
    made: int, sheet: Fraction, change: Fraction
) -> None:
    """Any prefix of the build order taken as cut to its number leaves every number as it was."""
    free = box({}, sheet)
    facts = {path: Fact(SAW, cut=free.nodes[path].value) for path in MADE[:made]}
    frozen = box(facts, sheet)
    assert {p: d.value for p, d in frozen.nodes.items()} == {
        p: d.value for p, d in free.nodes.items()
    }
    later = box(facts, sheet + change)
    for owner, name in (("back", "back_air"), ("door", "door_reveals")):
        assert later.fits[name].holds or owner in facts
