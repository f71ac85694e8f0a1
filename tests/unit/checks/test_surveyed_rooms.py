"""Rules that look at the room as measured."""

from __future__ import annotations

import pytest
from tests.builders import INCH, length
from tests.unit.checks.rooms import found_in
from tests.unit.checks.surveyed_rooms import (
    DOOR,
    OUTLET,
    WINDOW,
    before_wall,
    beside_door,
    corner,
    corner_case,
    counter,
    falling,
    pulled,
    round_corner,
    under,
)

from casewright.findings import Severity
from casewright.room.model import Room
from casewright.room.on_walls import cases_on_walls


def test_a_case_lies_where_its_run_begins() -> None:
    """36 wide at the left end of its wall; a wall case hangs 54 above the floor."""
    [base], [hung] = (list(cases_on_walls(before_wall(kind))) for kind in ("base", "wall"))
    assert [base.left, base.right, base.bottom] == [0, 36 * INCH, 0]
    assert hung.bottom == 54 * INCH


def test_an_outlet_behind_a_case_needs_care_where_a_window_stops() -> None:
    """A back can be cut out for the one; it is told where, from the case's own side."""
    [outlet] = found_in("in the way", before_wall("base", OUTLET))
    assert outlet.severity is Severity.CARE
    assert '20" from its left side and 16" above the floor' in outlet.says
    [window] = found_in("in the way", before_wall("wall", WINDOW))
    assert window.severity is Severity.STOP
    assert '16" of its width' in window.says
    assert 'from 54" to 78" above the floor' in window.says


@pytest.mark.parametrize("kind", ["base", "wall"])
def test_cases_of_two_runs_do_not_share_a_place(kind: str) -> None:
    """Of 36 at the left end of one wall: bases end at 34 1/2, wall cases hang from 54 to 84."""

    def beside(second: str) -> Room:
        case = f'[case.b]\nkind = "{second}"\nwidth = 20\n'
        run = '[run.s]\ncases = ["b"]\non = "w"\nleft = "open"\nright = "open"\n'
        return before_wall(kind, "", case + run)

    other = "wall" if kind == "base" else "base"
    assert not found_in("in the way", beside(other))
    [found] = found_in("in the way", beside("tall"))
    assert found.severity is Severity.STOP
    assert found.path == "b"
    assert 'b and a have one place: both are to stand from 0" to 20" along w' in found.says
    assert any("both in one run" in each for each in found.remedies) == (kind == "base")


@pytest.mark.parametrize("kind", ["gas", "pipe", "vent", "switch"])
def test_gas_is_for_a_licensed_trade(kind: str) -> None:
    """Only of gas is it said first."""
    room = before_wall("base", OUTLET.replace("outlet", kind))
    [found] = found_in("in the way", room)
    assert ("licensed trade" in found.remedies[0]) == (kind == "gas")


def test_a_ceiling_that_was_measured_counts_for_tilting_up() -> None:
    """A bookcase 90 high and 24 deep needs 93.1 from corner to corner (Pythagoras)."""
    deep = 'kind = "bookcase"\nheight = 90\ndepth = 24\nwidth = 30\n'
    more = f"[case.tall]\n{deep}"
    assert not found_in("tilt up", before_wall("base", under(96), more))
    [found] = found_in("tilt up", before_wall("base", under(92), more))
    assert 'the ceiling is 92" high' in found.says


@pytest.mark.parametrize(
    ("studs", "says"),
    [
        ('studs = ["10", "26"]\n', None),
        ('studs = ["10", "36"]\n', 'one stud behind it, 10"'),
        ('studs = ["50"]\n', "none of the studs"),
    ],
)
def test_studs_that_were_found_are_counted(studs: str, says: str | None) -> None:
    """A stud behind a side holds no screw; two inside it hold the case (common practice)."""
    found = found_in("studs behind", before_wall("wall", studs))
    assert bool(found) == (says is not None)
    assert says is None or says in found[0].says


def test_a_width_read_at_the_front_settles_a_sharp_corner() -> None:
    """36, 48 and 59 across: 88.0 degrees by the law of cosines, cos = 119 / 3456.

    Over 23 1/4 in that is 23.25 / tan(88.03 degrees) = 0.80 in: 51/64.
    """
    [found] = found_in("sharp corner", before_wall("base", "", corner("59"), right="wall"))
    assert "has 88.0 degrees" in found.says
    assert found.measured == '51/64"'
    front = '["100", { read = "99 1/8", height = 36, depth = "front" }]'
    read = before_wall("base", "", corner("59"), width=front, right="wall")
    assert not found_in("sharp corner", read)
    assert not found_in("sharp corner", before_wall("base", "", corner("61"), right="wall"))


def test_what_falls_comes_through_and_stands_under_is_left_alone() -> None:
    """At the limits themselves nothing is told."""
    assert not found_in("floor fall", before_wall("base", falling('"40 3/4"')))
    assert found_in("floor fall", before_wall("base", falling('"40 13/16"')))
    assert not found_in("under ceiling", before_wall("wall", under(84)))
    assert not found_in("way in", before_wall("base", more=DOOR))
    landing = DOOR.replace("height = 79", "height = 79\nlanding = 20")
    assert not found_in("way in", before_wall("long", more=landing.replace('"31 1/2"', "42")))


def test_a_run_round_a_corner_begins_before_the_other_ones_pulls() -> None:
    """By hand: 23 1/4 deep, 1/16 of bumper, 3/4 of door, 30 mm of pull, 1/8 of air: 25.37 in.

    A case of 30 in the middle of 80 is 25 out of the corner, of 81 it is 25 1/2.
    """
    found = found_in("inside corner", round_corner("80", inner='"slab"'))
    told = {each.path: each for each in found}
    assert set(told) == {"b", "a.door_right"}
    assert (told["b"].measured, told["b"].limit) == ('25"', '~25 3/8"')
    assert told["b"].severity is Severity.CARE
    assert "b" not in [
        f.path for f in found_in("inside corner", round_corner("81", inner='"slab"'))
    ]


@pytest.mark.parametrize(("side", "path"), [("80", "a.door_right"), ("113", "a.door_right"),
                                            ("115", None)])  # fmt: skip
def test_a_door_in_the_corner_needs_its_width_before_it(side: str, path: str | None) -> None:
    """Its front stands 24 1/16 in out and it is 17 7/8 wide: 42 in out the other is far enough."""
    found = found_in("inside corner", round_corner(side, inner='"slab"'))
    assert [finding.path for finding in found if "open" in finding.says] == (
        [path] if path else []
    )


@pytest.mark.parametrize(("hand", "side", "told"), [
    ("right", "117", 1), ("right", "118", 0), ("left", "115", 1), ("left", "116", 0),
])  # fmt: skip
def test_a_door_hinged_away_from_the_corner_needs_less(hand: str, side: str, told: int) -> None:
    """19 7/8 wide, 13 7/16 of it before a case 15 deep: 19.88, or 18.80 (Pythagoras) hinged away.

    Its front stands 24 1/16 in out: the other case must begin 43.94 or 42.87 in out.
    """
    inner = f'{{ hinge = "{hand}" }}'
    room = round_corner(side, inner=inner, width=20, depth="15")
    found = found_in("inside corner", room)
    assert len([finding for finding in found if "does not open" in finding.says]) == told


def test_boxes_in_one_another_stop_and_what_hangs_above_does_not() -> None:
    """23 out of a corner and 23 1/4 deep, both; a wall case passes over a base."""
    [found] = found_in("inside corner", round_corner("76"))
    assert found.severity is Severity.STOP
    [helps] = found.remedies
    assert helps.endswith('left = "corner" under [run.s]')
    assert not found_in("inside corner", round_corner("76", "wall"))


def test_no_door_no_strike() -> None:
    """Open shelves round the corner have nothing that swings, but their boxes stand there."""
    assert not found_in("inside corner", round_corner("77", front="none"))
    assert found_in("inside corner", round_corner("60", front="none"))


def test_a_door_strikes_only_what_stands_within_its_sweep() -> None:
    """A leaf of 32 twelve from the corner: the case begins in the corner itself."""
    [found] = found_in("door swing", before_wall("base", more=beside_door(12)))
    assert '12" from c' in found.says
    assert not found_in("door swing", before_wall("base", more=beside_door(26)))
    assert not found_in("door swing", before_wall("wall", more=beside_door(12)))
    out = beside_door(12).replace('swing = "left"\n', "")
    assert not found_in("door swing", before_wall("base", more=out))


def test_a_counter_that_stands_there_counts_at_its_highest_place() -> None:
    """40 to the floor less 4 to the counter: 36 high, 18 under wall cases at 54 (by hand)."""
    assert not found_in("over counter", before_wall("wall", counter("4")))
    [found] = found_in("over counter", before_wall("wall", counter('"3 1/2"')))
    assert found.measured == '17 1/2"'
    assert not found_in("over counter", before_wall("base", counter('"3 1/2"')))


@pytest.mark.parametrize(
    ("edge", "beside", "hinge", "left"),
    [
        # Past the neighbour's side: (P - e) / sqrt(2) - r, by plane geometry; its own reveal r.
        ("3/4", "drawers = 3", "left", 2 / 16 - (1.375 - 0.75) / 2**0.5),
        ("1 1/4", "drawers = 3", "left", 2 / 16 - 0.125 / 2**0.5),
        ("1 1/2", "drawers = 3", "left", None),
        ("3/4", "drawers = 3", "right", None),
        ("3/4", 'front = "none"', "left", None),
    ],
)
def test_the_pull_of_a_diagonal_door_clears_what_opens_at_its_free_edge(
    edge: str, beside: str, hinge: str, left: float | None
) -> None:
    """A pull that stands out more than it sits from the edge reaches past the plane beside it."""
    found = found_in("diagonal door", pulled(edge, beside=beside, hinge=hinge))
    assert len(found) == (left is not None)
    for finding in found:
        assert left is not None
        assert finding.severity is (Severity.STOP if left < 0 else Severity.CARE)
        told = float(length(finding.measured.strip('"~-'))) / float(INCH)
        assert told == pytest.approx(abs(left), abs=1 / 32)


@pytest.mark.parametrize(
    ("depth", "more", "told"),
    [
        ("23.25", "", 0),
        ("25", "", 1),
        ("25", "corner_depth = 25", 0),
        ("22", "corner_depth = 25", 1),
    ],
)
def test_a_blind_corner_reckons_with_the_run_round_it(depth: str, more: str, told: int) -> None:
    """As deep as `corner_depth`, or as base cases are."""
    room = corner_case(depth, "base", f'blind = "right"\n{more}')
    found = found_in("corner depth", room)
    assert len(found) == told
    if told:
        assert "corner_depth" in found[0].remedies[0]


def test_neighbours_of_a_diagonal_corner_are_as_deep_as_its_sides() -> None:
    """Told by what the case is to be: the relief is the depth of either."""
    [found] = found_in("corner depth", corner_case("14"))
    assert 'is 14" deep' in found.says
    assert found.remedies[0] == 'depth = 14" for a'
    assert not found_in("corner depth", corner_case("12"))


def test_doors_of_a_pair_are_told_once() -> None:
    """Of a case 60 wide each leaf is over 22, the widest of the house style."""
    wide = [each for each in found_in("leaf size", before_wall("long")) if "swings" in each.says]
    assert [each.path for each in wide] == ["a.door_left"]
    assert "the left door, like the right door, is 29" in wide[0].says
