"""The day of hanging worked out from a wall as it was read."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.jobs import read

from casewright.breakdown import Desk
from casewright.install.bearing import Contact, contact
from casewright.install.hanging import Hanging, WallHanging, hanging
from casewright.install.stud_map import CaseScrews
from casewright.room.build import build
from casewright.room.model import Room
from casewright.room.wall_fixing import wall_fixings
from casewright.sources import INCH

WALL = """\
format = 1
unit = "in"

[wall.north]
width = "120"
stations = [
    { along = 0, down = "40 1/2" }, { along = 60, down = 40 }, { along = 120, down = "40 1/4" },
]
studs = [4, 20, 36, 52, 68, 84, 100, 116]
hollows = [
    { along = 4, height = 81, off = "1/4" }, { along = 20, height = 81, off = 0 },
    { along = 36, height = 81, off = "3/16" }, { along = 52, height = 81, off = "1/8" },
    { along = 68, height = 81, off = "3/8" },
]

[wall.north.fixed.kettle]
kind = "outlet"
centre = 53
bottom = 42

[wall.east]
width = "90"

[corner.right]
walls = ["north", "east"]

[case.cups]
kind = "wall"
width = 30

[case.plates]
kind = "wall"
width = 36

[case.spice]
kind = "wall"
width = 14

[case.sink]
kind = "base"
width = 36

[case.pans]
kind = "base"

[run.over]
cases = ["cups", "plates", "spice"]
on = "north"
left = "open"
right = "open"

[run.below]
cases = ["sink", "pans"]
on = "north"

[case.east_one]
kind = "base"

[run.east]
cases = ["east_one"]
on = "east"
left = "corner"
"""


@cache
def hung_room(text: str) -> tuple[Room, Hanging]:
    room = build(read(text))
    return room, hanging(room, Desk(room).chain)


def north() -> WallHanging:
    return hung_room(WALL)[1].walls["north"]


def of(key: str) -> CaseScrews:
    return next(each for each in north().screws if each.place.case.key == key)


def inches(length: Fraction) -> Fraction:
    return length / INCH


def test_marks_run_from_one_datum() -> None:
    """Seams of the row that hangs, hooked at the wall's left end: no sum of its own is needed."""
    hung = [(int(inches(m.at.value)), m.says) for m in north().marks if m.band == "hung"]
    assert hung == [
        (0, "left side of cups"), (30, "seam: cups | plates"), (66, "seam: plates | spice"),
        (80, "right side of spice"),
    ]  # fmt: skip
    every = [mark.at.value for mark in north().marks]
    assert every == sorted(every)


@pytest.mark.handbook
def test_heights_of_common_practice() -> None:
    """Underside at 54 over the highest floor, 18 over a counter of 36; 14 over a line at 40.

    Common practice: reference value of vertical arithmetic.
    """
    marks = {mark.says: mark for mark in north().heights}
    ledger = next(mark for says, mark in marks.items() if says.startswith("ledger"))
    assert inches(ledger.above_floor.value) == 54 == 36 + 18
    assert ledger.from_line is not None
    assert inches(ledger.from_line.value) == 14
    tops = next(mark for says, mark in marks.items() if says.startswith("top of sink"))
    assert tops.from_line is not None
    assert inches(tops.from_line.value) == Fraction(-11, 2)


def test_only_studs_between_the_sides_take_screws() -> None:
    """A stud at 36 lies behind plates, 30 to 66; the one at 68 behind spice, 66 to 80."""
    assert {inches(s.stud.value) for s in of("cups").screws} == {4, 20}
    assert {inches(s.stud.value) for s in of("plates").screws} == {36, 52}
    assert {inches(s.stud.value) for s in of("spice").screws} == {68}


def test_a_stud_under_an_outlet_does_not_count() -> None:
    """The outlet at 53 takes the stud at 52 away; what has one column left asks for a rail."""
    strips = {inches(s.stud.value): s.strip for s in of("plates").screws}
    assert strips[Fraction(36)] is None
    assert strips[Fraction(52)] is not None
    assert of("plates").hold == "one column"
    assert of("plates").asks_for_rail
    assert of("spice").asks_for_rail
    assert not of("cups").asks_for_rail


def test_screws_go_through_the_board_inside_the_case() -> None:
    """Every screw stands between its board's edges, two to a row and stud."""
    for case in north().screws:
        rows = {title: (low.value, high.value) for title, low, high in case.rows}
        for screw in case.screws:
            low, high = rows[screw.row]
            assert low < screw.low.value < screw.high.value < high
        fixing = next(f for f in wall_fixings(hung_room(WALL)[0]) if f.case == _key(case))
        studs = {screw.stud.value for screw in case.screws}
        assert len(case.screws) == len(studs) * len(fixing.rows)


def _key(case: CaseScrews) -> str:
    return case.place.case.key


def test_each_screw_is_as_long_as_its_own_hollow_asks() -> None:
    """Nailer, back, shim as read, wallboard and bite: their sum is the screw.

    By hand: the row bears at 20 and 52, a line that falls 1/8 over 32; at 4 it lies 1/16 before
    nothing, at 36 and 68 it lies 1/16 and 3/16 back.
    """
    shims = {
        inches(s.stud.value): inches(s.shim.value) for case in north().screws
        for s in case.screws if case.place.is_hung
    }  # fmt: skip
    sixteenth = Fraction(1, 16)
    assert shims == {4: 5 * sixteenth, 20: 0, 36: 2 * sixteenth, 52: 0, 68: 3 * sixteenth}
    for case in north().screws:
        fixing = next(f for f in wall_fixings(hung_room(WALL)[0]) if f.case == _key(case))
        for screw in case.screws:
            whole = fixing.case_depth + screw.shim.value + fixing.wallboard + screw.bite.value
            assert whole == screw.length.value
            assert inches(screw.bite.value) <= Fraction(5, 4)


def test_the_floor_is_made_up_to_its_highest_place() -> None:
    """Highest at 60: nothing there, half an inch less at the left end."""
    shims = {inches(s.at.value): inches(s.shim.value) for s in north().floor_shims}
    left = min(shims)
    assert shims[left] == Fraction(1, 2) * (60 - left) / 60
    assert all(shim >= 0 for shim in shims.values())


def test_a_row_begins_in_its_corner_and_hangs_before_it_stands() -> None:
    """What hangs first, then the base row from the right, where the other run goes."""
    order = [lift.case.key for lift in north().lifts]
    assert order == ["cups", "plates", "spice", "pans", "sink"]
    because = {lift.case.key: lift.because for lift in north().lifts}
    assert because["pans"].startswith("in the corner")
    assert because["cups"] == "first of its row"
    assert all(lift.weight > 0 for lift in north().lifts)


_TURNED = WALL.replace('walls = ["north", "east"]', 'walls = ["east", "north"]').replace(
    'on = "east"\nleft = "corner"', 'on = "east"\nleft = "open"\nright = "corner"'
)
TALL_IN_THE_CORNER = f"""{
    _TURNED.replace('cases = ["sink", "pans"]', 'cases = ["larder", "sink", "oven", "pans"]')
}
[case.larder]
kind = "tall"
width = 18

[appliance.oven]
title = "cooker"
width = 24
height = 36
"""


def test_a_tall_case_comes_first_and_its_row_begins_beside_it() -> None:
    """The row does not claim to stand in the corner that the tall case fills."""
    lifts = hung_room(TALL_IN_THE_CORNER)[1].walls["north"].lifts
    assert lifts[0].case.key == "larder"
    because = {lift.case.key: lift.because for lift in lifts}
    assert because["sink"] == "beside larder, which stands in the corner"


def test_a_reading_above_a_case_says_nothing_of_the_wall_behind_it() -> None:
    """81 in up only the larder is there, before one place that was read: no line is laid by it."""
    hang = hung_room(TALL_IN_THE_CORNER)[1].walls["north"]
    assert {shim.run for shim in hang.wall_shims} == {"over"}


def test_the_room_of_an_appliance_is_marked_from_the_same_datum() -> None:
    """It lies between its neighbours, 24 in wide as its sheet asks, 36 high."""
    hang = hung_room(TALL_IN_THE_CORNER)[1].walls["north"]
    [cooker] = hang.appliances
    places = {place.case.key: place for place in hang.places}
    assert cooker.left.value == places["sink"].right.value
    assert cooker.right.value == places["pans"].left.value
    assert inches(cooker.right.value - cooker.left.value) == 24
    assert cooker.title == "cooker"
    assert inches(cooker.top.value) == 36


LEANING = """\
format = 1
unit = "in"
[wall.north]
width = "60"
studs = [4, 20, 36, 52]
plumb = [{ of = "face", over = 48, off = "1/2", leans = "LEANS" }]
[case.cups]
kind = "wall"
width = 30
[case.pantry]
kind = "tall"
width = 24
[run.over]
cases = ["cups"]
on = "north"
left = "open"
right = "open"
[run.tall]
cases = ["pantry"]
on = "north"
left = "open"
right = "open"
"""


@pytest.mark.parametrize(("leans", "lower"), [("in", True), ("out", False)])
def test_a_leaning_wall_is_shimmed_where_it_falls_back(leans: str, *, lower: bool) -> None:
    """1/2 over 48 is 1/96 for each inch of height between the row that bears and the other."""
    wall = hung_room(LEANING.replace("LEANS", leans))[1].walls["north"]
    case = next(each for each in wall.screws if each.place.case.key == "cups")
    (top, *_), (bottom, *_) = case.rows
    middles = {title: (low + high).value / 2 for title, low, high in case.rows}
    assert middles[top] > middles[bottom]
    usual = INCH / 16
    for screw in case.screws:
        away = middles[top] - middles[screw.row] if lower else middles[screw.row] - 54 * INCH
        assert screw.shim.value == usual + away / 96
        assert screw.bite.value < screw.length.value


def test_tall_cases_come_first() -> None:
    """Both rows end at them."""
    lifts = hung_room(LEANING.replace("LEANS", "in"))[1].walls["north"].lifts
    assert [lift.case.key for lift in lifts] == ["pantry", "cups"]


walls = st.lists(st.integers(0, 40), min_size=2, max_size=12)


@given(walls, st.data())
def test_a_straight_row_bears_on_two_places_and_on_no_other(
    offs: list[int], data: st.DataObject
) -> None:
    """Against a synthetic wall: no place stands out over the line through the two that bear.

    Of all lines that lie on or before every place, tried pair by pair, it is the one that comes
    nearest the wall at its middle.
    """
    points = [(Fraction(16 * n), Fraction(off)) for n, off in enumerate(offs)]
    last = points[-1][0]
    middle = data.draw(st.fractions(0, last, max_denominator=7))
    found = contact(points, middle)
    back = dict(points)
    assert found.left <= middle <= found.right
    assert all(_line(back, found, x) <= off for x, off in points)
    lines = [
        Contact(a, b)
        for a in back
        for b in back
        if a < b and all(_line(back, Contact(a, b), x) <= off for x, off in points)
    ]
    nearest = max(_line(back, line, middle) for line in lines)
    assert _line(back, found, middle) == nearest


def _line(back: dict[Fraction, Fraction], on: Contact, at: Fraction) -> Fraction:
    if on.left == on.right:
        return back[on.left]
    share = (at - on.left) / (on.right - on.left)
    return back[on.left] * (1 - share) + back[on.right] * share


SCRIBED = """\
format = 1
unit = "in"
[wall.w]
width = ["72", "72 1/4"]
[case.a]
kind = "base"
[case.b]
kind = "base"
[run.below]
cases = ["a", "b"]
on = "w"
left_gap = ["{low}", "{middle}", "{high}"]
"""
_GAPS = st.tuples(*(st.integers(14, 40) for _ in range(3)))


def test_a_filler_is_scribed_by_what_the_wall_stands_off_at_each_height() -> None:
    """Gaps of 1 1/2, 1 7/8 and 1 5/8, cut 2 1/8 wide: 5/8, 1/4, 1/2 come off (by hand)."""
    _, day = hung_room(SCRIBED.format(low="1 1/2", middle="1 7/8", high="1 5/8"))
    left = next(each for each in day.walls["w"].profiles if each.filler.side == "left")
    assert left.filler.part.finished.width.value == INCH * 17 / 8
    assert [point.off.value / INCH for point in left.points] == [
        Fraction(5, 8), Fraction(1, 4), Fraction(1, 2),
    ]  # fmt: skip
    assert left.largest.value == INCH * 3 / 8
    assert left.compasses.value == INCH * 5 / 8
    foot, head = left.points[0].above_floor.value, left.points[-1].above_floor.value
    assert head - foot == left.filler.part.finished.length.value


@settings(max_examples=15, deadline=None)
@given(_GAPS)
def test_compasses_of_one_setting_draw_the_line(gaps: tuple[int, int, int]) -> None:
    """Simulated: pushed against the wall until it touches, each point of the wall marks the
    filler at the compasses' distance; what is left of it there fills the gap.
    """
    texts = dict(zip(("low", "middle", "high"), (f"{each}/16" for each in gaps), strict=True))
    _, day = hung_room(SCRIBED.format(**texts))
    profile = next(each for each in day.walls["w"].profiles if each.filler.side == "left")
    wide = profile.filler.part.finished.width.value
    wall = [Fraction(each) * INCH / 16 for each in gaps]
    inner = min(wall) - wide  # its other edge, from the side of the case; below 0: over the case
    assert -inner == profile.compasses.value
    assert max(each - (inner + wide) for each in wall) == profile.largest.value
    for point, at in zip(profile.points, wall, strict=True):
        line = at - profile.compasses.value - inner
        assert line == point.gap.value == wide - point.off.value


def test_where_an_outlet_is_gets_asked_before_anything_hangs() -> None:
    """On its wall, once; of a wall that no case goes to nothing is asked."""
    unknown = WALL.replace("centre = 53\nbottom = 42", "bottom = 42")
    asked = [q for q in build(read(unknown)).questions if "kettle" in q.path]
    assert len(asked) == 1
    assert "[wall.north.fixed.kettle]" in asked[0].how
    assert not [q for q in build(read(WALL)).questions if "kettle" in q.path]
