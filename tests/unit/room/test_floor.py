"""What stands free in a room: its place, the aisles round it, and what opens over them.

Sources: kitchen planning guidelines (42 in work aisle, 36 in walkway, 44 in behind seats, 21 in
before an open dishwasher), read in a secondary copy; shapes against a geometry library.
"""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString, Point, Polygon, box
from tests.island_room import island_room, island_text
from tests.jobs import problem
from tests.unit.checks.rooms import found_in

from casewright.breakdown import Desk
from casewright.dims import Chain
from casewright.findings import Severity
from casewright.job.load import read_job
from casewright.room.aisles import Aisle, AisleWay, aisles
from casewright.room.build import build
from casewright.room.floor_numbers import corner_path, floor_numbers, other_walls
from casewright.room.footprints import footprints
from casewright.room.model import Room
from casewright.room.open_fronts import meet, open_fronts
from casewright.room.plan_distance import apart_squared
from casewright.room.wall_stands import wall_frames, wall_stands

INCH = Fraction(254, 10)
_FEW = settings(max_examples=25, deadline=None)


def _by_way(room: Room) -> dict[AisleWay, Aisle]:
    return {each.way: each for each in aisles(room)}


@_FEW
@given(off=st.integers(0, 40 * 16), along=st.integers(0, 50 * 16), turned=st.booleans(),
       deep=st.integers(160 * 16, 200 * 16))  # fmt: skip
def test_depths_aisles_and_the_island_sum_to_the_room(
    off: int, along: int, deep: int, *, turned: bool
) -> None:
    """Run, aisle, island, aisle, and whatever is across fill the square room from wall to wall."""
    side = "left" if turned else "front"
    place = f'run = "sinks"\noff = "{off}/16"\nalong = "{along}/16"\nside = "{side}"'
    room = island_room(deep=f"{deep}/16", place=place)
    [stand], nodes = room.free, room.chain.nodes
    near, far = stand.counter[2].value, stand.counter[3].value
    long, thick = (nodes[f"island.main.counter_{n}"].value for n in ("length", "depth"))
    assert far - near == (long if turned else thick)
    ways = _by_way(room)
    across = {"pans": nodes["island.main.place.run_edge"].value, "east": Fraction(0)}
    reach = across[ways["far"].across.key]
    whole = near + (far - near) + ways["far"].clear + reach
    assert whole == Fraction(deep, 16) * INCH
    assert near == nodes["island.main.place.run_edge"].value + Fraction(off, 16) * INCH
    assert stand.counter[1].value + ways["right"].clear == 144 * INCH  # to the north wall


@_FEW
@given(across=st.integers(55 * 16, 65 * 16), off=st.integers(10 * 16, 50 * 16),
       side=st.sampled_from(["front", "back", "left", "right"]))  # fmt: skip
def test_aisles_agree_with_a_geometry_library(across: int, off: int, side: str) -> None:
    """In crooked rooms: the strip before each side, cut with every shape there (shapely)."""
    corner = f'triangle = {{ left = 48, right = 36, across = "{across}/16" }}'
    place = f'run = "sinks"\noff = "{off}/16"\nalong = 24\nside = "{side}"'
    room = island_room(corner=corner, place=place, deep="190")
    [stand] = room.free
    frame = wall_frames(room.survey)[stand.wall]
    left, right, near, far = (float(edge.value) for edge in stand.counter)
    far_off = 1e5
    strips = {
        "near": box(left, -far_off, right, near), "far": box(left, far, right, far_off),
        "left": box(-far_off, near, left, far), "right": box(right, near, far_off, far),
    }  # fmt: skip
    own = box(left, near, right, far)
    shapes = [
        Polygon([tuple(map(float, frame.seen(spot))) for spot in each.corners])
        for each in footprints(room)
        if each.key != stand.key
    ]
    for way, aisle in _by_way(room).items():
        cut = [shape.intersection(strips[way]) for shape in shapes]
        gaps = [own.distance(each) for each in cut if each.area > 1e-3]
        if aisle.clear > 0:
            assert min(gaps) == pytest.approx(float(aisle.clear), abs=1e-5), way


@pytest.mark.parametrize("side", ["front", "back", "left", "right"])
def test_an_island_is_turned_and_not_mirrored(side: str) -> None:
    """A quarter turn is one: x to the right of z, whichever side looks to the wall."""
    room = island_room(place=f'wall = "west"\noff = 60\nalong = 30\nside = "{side}"')
    [stand] = room.free
    zero, one = Fraction(0), Fraction(1)
    spots = [stand.at(*each) for each in ((zero, zero), (one, zero), (zero, one))]
    (x0, z0), (x1, z1), (x2, z2) = spots
    assert (x1 - x0) * (z2 - z0) - (x2 - x0) * (z1 - z0) == 1  # as along and out themselves
    case = room.case_of(room.islands[0])
    corners = [stand.at(*each) for each in ((zero, zero), (case.width.value, case.depth.value))]
    assert sorted(x for x, _ in corners) == [stand.left.value, stand.right.value]
    assert sorted(z for _, z in corners) == [stand.near.value, stand.far.value]


def test_both_units_agree() -> None:
    """1000 mm off a wall, its counter 1066 mm before what the inch job calls its own."""
    place = 'wall = "west"\noff = 1000\ncentre = "sink"'
    room = island_room(unit="mm", deep="4600", place=place)
    [stand] = room.free
    assert stand.counter[2].value == 1000
    middle = (stand.counter[0].value + stand.counter[1].value) / 2
    assert middle == 900 + 600 + 450  # pots, washer, half the sink


def test_what_is_short_is_told_with_the_least_that_helps() -> None:
    """42 in for who works alone: 39 1/2 are 2 1/2 short; the seats can spare as much, or not."""
    [found] = found_in("island aisle", island_room(place=_off("39 1/2")))
    assert '39 1/2"' in found.says
    assert '2 1/2" short' in found.says
    assert found.severity is Severity.NOTE
    assert found.remedies[0].startswith('main 2 1/2" farther from sink: 71')
    some = found_in("island aisle", island_room(place=_off("39 1/2"), deep="152"))
    assert "farther from sink and" in some[0].remedies[0]
    none = found_in("island aisle", island_room(place=_off("39 1/2"), deep="149"))
    assert none[0].remedies == ('main 2 1/2" less deep',)


def _off(off: str, along: str = "40") -> str:
    return f'run = "sinks"\noff = "{off}"\nalong = "{along}"'


def test_what_stands_in_another_stops_the_work() -> None:
    """Moved into the north wall."""
    told = found_in("island aisle", island_room(place=_off("42", "100")))
    assert any(each.severity is Severity.STOP and "stands" in each.says for each in told)


def test_a_place_that_is_not_settled_is_told() -> None:
    """A band and nothing accepted: it stands nowhere."""
    room = island_room(place='run = "sinks"\noff = [42, 48]')
    assert not room.free
    [found] = found_in("island aisle", room)
    assert "not settled" in found.says


def test_two_cooks_want_forty_eight() -> None:
    """48 in where more than one works there."""
    alone, both = (island_room(place=_off("45"), head=head) for head in ("", "two_cooks = true\n"))
    assert not found_in("island aisle", alone)
    [found] = found_in("island aisle", both)
    assert (found.limit, found.measured) == ('48"', '45"')


def test_behind_a_wall_is_not_in_the_room() -> None:
    """480 in off in a room of 180; its far edge 366 in behind the east wall (by hand)."""
    [found] = found_in("island aisle", island_room(place=_off("480", "0")))
    assert found.severity is Severity.STOP
    assert '366 11/32" behind east' in found.says


def test_nothing_is_measured_to_a_wall_that_no_corner_joins() -> None:
    """Nor past a wall whose width was not read: where the others stand is not known."""
    apart = island_text().replace('[corner.nw]\nwalls = ["west", "north"]', "")
    assert {each.across.key for each in aisles(build(read_job(apart, "a.toml")))} == {"sink"}
    unread = island_text().replace('[wall.north]\nwidth = "180"', "[wall.north]")
    assert {each.across.key for each in aisles(build(read_job(unread, "a.toml")))} == {"sink"}


def test_an_open_dishwasher_leaves_somebody_room() -> None:
    """27 in of 42 and the counter's 1 1/4 leave 16 1/4; with 30 more none is told."""
    told = found_in("opens into aisle", island_room(opens="27"))
    assert any('16 1/4" are left' in each.says and each.limit == '21"' for each in told)
    wide = island_room(opens="27", place=_off("72"), deep="220")
    assert not found_in("opens into aisle", wide)


@pytest.mark.parametrize(
    ("side", "deep", "left"),
    [("front", "180", '16 1/4"'), ("back", "150", '15 29/32"'), ("back", "180", "")],
)
def test_an_islands_own_dishwasher_opens_into_its_aisle(side: str, deep: str, left: str) -> None:
    """It looks to the sinks' run over 42 in: 27 less the counter's overhang leave 16 1/4.

    Turned round it looks to the east wall: 150 less 42 and twice 25 5/16 to counters, less the
    island, are 41 21/32; 25 3/4 of it are taken. In a room of 180 there is room.
    """
    place = f'{_off("42", "20")}\nside = "{side}"'
    text = island_text(place=place, deep=deep).replace(
        '[run.cooks]\ncases = ["trays", "linen"]',
        '[appliance.dishes]\nwashes = true\nwidth = 24\nopens = "27"\n'
        '[run.cooks]\ncases = ["trays", "dishes", "linen"]',
    )
    told = found_in("opens into aisle", build(read_job(text, "island.toml")))
    own = [each.measured for each in told if each.path == "appliance.dishes" and each.limit]
    assert own == ([left] if left else [])


@_FEW
@given(st.lists(st.integers(-20, 20), min_size=12, max_size=12))
def test_shapes_meet_as_a_geometry_library_says(numbers: list[int]) -> None:
    """Triangles with an area: interiors share something, or not (shapely)."""
    spots = [(Fraction(x), Fraction(y)) for x, y in zip(numbers[::2], numbers[1::2], strict=True)]
    one, other = spots[:3], spots[3:]
    shapes = [Polygon([(float(x), float(y)) for x, y in each]) for each in (one, other)]
    if min(each.area for each in shapes) > 0:
        shared = shapes[0].intersection(shapes[1]).area
        assert meet(one, other) is (shared > 1e-9)
        assert math.isclose(
            math.sqrt(apart_squared(one, other)), shapes[0].distance(shapes[1]), abs_tol=1e-6
        )


def test_drawers_reach_as_far_as_their_slides_and_doors_as_they_are_wide() -> None:
    """Three drawers on slides of 21 in; a pair of doors, each half as wide as its case."""
    opened = {each.key: each for each in open_fronts(island_room())}
    assert opened["trays.drawer_1.front"].reach == 21 * INCH
    door = opened["linen.door_left"]
    assert 14 * INCH < door.reach < 15 * INCH


def test_frames_are_what_drawings_show() -> None:
    """Rational frames and the float ones of drawings agree in a crooked room."""
    corner = 'triangle = { left = 48, right = 36, across = "60 3/8" }'
    survey = island_room(corner=corner).survey
    stands = wall_stands(survey)
    for key, frame in wall_frames(survey).items():
        spot = frame.at(Fraction(1000), Fraction(300))
        assert tuple(map(float, spot)) == pytest.approx(stands[key].at(1000.0, 300.0), abs=1e-6)
        assert frame.seen(spot) == (Fraction(1000), Fraction(300))


def test_a_loose_case_stands_against_its_wall() -> None:
    """In no run, its back to the wall: no aisle behind it, one before it."""
    more = (
        '[case.hutch]\nkind = "tall"\nwidth = 30\n[case.hutch.place]\nwall = "north"\n'
        "off = 0\nalong = 70\n"
    )
    room = build(read_job(island_text() + more, "room.toml"))
    stand = next(each for each in room.free if each.key == "hutch")
    assert stand.near.value == 0
    assert stand.left.value == 70 * INCH
    assert not [
        f for f in found_in("island aisle", room) if f.path == "hutch" and "north" in f.says
    ]


def test_shims_go_up_to_its_own_highest_corner() -> None:
    """Level line to floor 40, 40 1/8, 40 1/4, 40: the least reading is the highest floor."""
    place = _off("42") + '\nfloor = ["40", "40 1/8", "40 1/4", "40"]'
    [stand] = island_room(place=place).free
    assert [shim.value / INCH for shim in stand.shims] == [0, Fraction(1, 8), Fraction(1, 4), 0]


_PANE = '[wall.west.fixed.pane]\nkind = "window"\nleft = 20'
"""A window whose left edge alone was read."""


@pytest.mark.parametrize(
    ("place", "says"),
    [
        ('off = 42\nalong = 3', "not said what this place is measured from"),
        ('wall = "west"\nrun = "sinks"\noff = 4', "from a wall and from a run"),
        ('wall = "wast"\noff = 4', "there is no wall wast"),
        ('run = "cooks"\noff = 4', "does not stand on a surveyed wall"),
        ('run = "sinks"\ncentre = "bath"', "nothing called bath is on wall west"),
        (f'wall = "west"\noff = 70\ncentre = "pane"\n{_PANE}', "the edges of pane are not known"),
        ('run = "sinks"\noff = [48, 42]', "the least comes before the greatest"),
        ('run = "sinks"\nalong = 4\ncentre = "sink"', "said twice"),
    ],
)  # fmt: skip
def test_a_place_without_meaning_is_told(place: str, says: str) -> None:
    """Each with its line and what would be right."""
    found = problem(island_text(place=place))
    assert says in found.what
    assert found.want


def test_a_case_has_one_place() -> None:
    """In a run and on the floor; hung; without its distance."""
    more = '[case.sink.place]\nwall = "west"\noff = 4\nalong = 3\n'
    assert "stands in run sinks already" in problem(island_text() + more).what
    hung = '[case.up]\nkind = "wall"\nwidth = 20\n' + '[case.up.place]\nwall = "west"\noff = 0\n'
    assert "hangs" in problem(island_text() + hung).what


def _floor_chain(room: Room) -> Chain:
    desk = Desk(room)
    floor_numbers(room, desk.chain)
    return desk.chain


@pytest.mark.parametrize("across", ["60", "59 1/2", "60 3/4"])
def test_numbers_of_the_floor_are_what_geometry_says(across: str) -> None:
    """Aisles, diagonals and distances from another wall; the library measures the same shapes."""
    place = 'run = "sinks"\noff = "40"\nalong = "40"\nside = "front"'
    room = island_room(
        place=place, corner=f'triangle = {{ left = "36", right = "48", across = "{across}" }}'
    )
    nodes, [stand] = _floor_chain(room).nodes, room.free
    for aisle in aisles(room):
        assert nodes[f"floor.{stand.key}.aisle_{aisle.way}"].value == aisle.clear
    frames = wall_frames(room.survey)
    spots = [frames[stand.wall].at(x.value, z.value)
             for x, z in ((stand.left, stand.near), (stand.right, stand.near),
                          (stand.right, stand.far), (stand.left, stand.far))]  # fmt: skip
    points = [Point(float(x), float(y)) for x, y in spots]
    diagonal = float(nodes[f"floor.{stand.key}.diagonal_exact"].value)
    assert diagonal == pytest.approx(points[0].distance(points[2]), abs=1e-5)
    walls = list(other_walls(room, stand))
    assert walls
    for key in walls:
        frame = frames[key]
        line = LineString([tuple(map(float, frame.at(Fraction(at), Fraction(0))))
                           for at in (-10_000, 10_000)])  # fmt: skip
        for number, point in enumerate(points):
            out = float(nodes[f"{corner_path(stand, key, number)}_exact"].value)
            assert out == pytest.approx(line.distance(point), abs=1e-5)
