"""Islands laid out, against every place there is, in small rooms."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from casewright.layout.island_answers import island_answers, island_conflicts
from casewright.layout.island_model import IslandDemand, lay_out_island
from casewright.layout.island_tasks import (
    WAYS,
    IslandAnswer,
    IslandPose,
    IslandRow,
    IslandTask,
    TakenFloor,
    Way,
)


@st.composite
def rooms(draw: st.DrawFn) -> IslandTask:
    """A room of some 16 by 18 steps with up to three things in it; not all leave a place."""
    reach = draw(st.integers(10, 16)), draw(st.integers(9, 18))
    base = draw(st.integers(0, 4))
    clear = st.tuples(st.integers(0, 4), st.integers(0, 3))
    poses: tuple[IslandPose, ...] = (IslandPose("front", {way: draw(clear) for way in WAYS}),)
    if draw(st.booleans()):
        poses += (IslandPose("left", {way: draw(clear) for way in WAYS}),)
    obstacles = [
        TakenFloor("wall", 0, reach[0], -1, 0),
        TakenFloor("run", 0, 5, 0, base, works=True),
    ]
    for number in range(draw(st.integers(0, 2))):
        x, z = draw(st.integers(0, reach[0] - 1)), draw(st.integers(0, reach[1] - 1))
        wide, deep = draw(st.integers(1, 5)), draw(st.integers(1, 5))
        works = draw(st.booleans())
        obstacles.append(TakenFloor(f"o{number}", x, x + wide, z, z + deep, works=works))
    rows = tuple(
        IslandRow(draw(st.integers(0, 3)), draw(st.integers(0, 2)), 1, draw(st.integers(2, 4)))
        for _ in range(draw(st.integers(1, 2)))
    )
    low = draw(st.integers(0, 5))
    band = draw(st.none() | st.tuples(st.integers(0, 3), st.integers(3, 5)))
    along = draw(st.none() | st.integers(0, 6))
    centre = draw(st.none() | st.integers(0, 30))
    return IslandTask(
        poses, tuple(obstacles), rows, (low, low + draw(st.integers(0, 6))),
        draw(st.integers(0, 2)), draw(st.integers(1, 4)), base, "run", band, along, reach, centre,
    )  # fmt: skip


def _places(task: IslandTask, pose: IslandPose) -> Iterator[tuple[int, int, int]]:
    """Left edge, near edge and length of every place, by looking at each."""
    lengths = {
        length
        for length in range(task.length[0], task.length[1] + 1)
        if all(
            any(row.given + row.free * share == length for share in range(row.low, row.high + 1))
            if row.free
            else row.given == length
            for row in task.rows
        )
    }
    lows = task.off if task.off is not None else (0, task.reach[1])
    for boxes, x, y in product(lengths, range(task.reach[0] + 1), range(task.reach[1] + 1)):
        long = boxes + task.more
        wide, deep = (task.depth, long) if pose.is_turned else (long, task.depth)
        if task.along not in (None, x) or not task.base + lows[0] <= y <= task.base + lows[1]:
            continue
        if x + wide > task.reach[0] or y + deep > task.reach[1]:
            continue
        if all(_kept(task, pose, each, (x, y, wide, deep)) for each in task.obstacles):
            yield x, y, boxes


def _kept(task: IslandTask, pose: IslandPose, each: TakenFloor, at: tuple[int, ...]) -> bool:
    x, y, wide, deep = at
    gaps = {"near": y - each.far, "far": each.near - y - deep,
            "left": x - each.right, "right": each.left - x - wide}  # fmt: skip
    return any(gaps[way] >= max(task.wanted(pose, each, way), 0) for way in WAYS)


def _cost(task: IslandTask, pose: IslandPose, place: tuple[int, int, int]) -> int:
    """Three points a step of length, eight a half step off centre, one a step farther off."""
    x, y, boxes = place
    wide = task.depth if pose.is_turned else boxes + task.more
    off = abs(2 * x + wide - task.centre) if task.centre is not None else 0
    first = task.base + (task.off[0] if task.off is not None else 0)
    return 3 * (task.length[1] - boxes) + 8 * off + y - first


@settings(max_examples=120, deadline=None)
@given(rooms())
def test_the_best_place_is_as_good_as_any(task: IslandTask) -> None:
    """Every place of a small room looked at; where there is none, none is found."""
    for pose in task.poses:
        every = list(_places(task, pose))
        found = lay_out_island(task, pose)
        assert (found is None) == (not every)
        if found is not None:
            place = (found.left, found.near, found.boxes)
            assert place in every
            assert found.cost == found.bound == _cost(task, pose, place)
            assert found.cost == min(_cost(task, pose, each) for each in every)
            for row, share in zip(task.rows, found.shares, strict=True):
                assert row.given + row.free * share == found.boxes


@settings(max_examples=60, deadline=None)
@given(rooms())
def test_answers_differ_in_kind_and_the_least_shortage_is_told(task: IslandTask) -> None:
    """At most five; where none fits, the least sum of what aisles lack, by looking at each."""
    found = island_answers(task)
    assert len(found) <= 5
    assert len({(a.pose.side, a.left, a.near, a.boxes) for a in found}) == len(found)
    assert bool(found) == any(any(_places(task, pose)) for pose in task.poses)
    for each in found:
        assert (each.left, each.near, each.boxes) in set(_places(task, each.pose))
    if not found:
        for conflict in island_conflicts(task):
            assert conflict.short > 0
            assert conflict.wished == conflict.left + conflict.short


def _kitchen(deep: str = "124", **changes: object) -> IslandTask:
    """A room so deep between two runs of 25; an island of 40 with fronts before, seats behind."""

    def inches(value: str) -> int:
        return int(float(value) * 16)

    walls = (
        TakenFloor("sinks", 0, inches("140"), 0, inches("25"), works=True),
        TakenFloor(
            "stoves", 0, inches("140"), inches(deep) - inches("25"), inches(deep), works=True
        ),
    )
    clear: dict[Way, tuple[int, int]] = {
        "near": (672, 576), "far": (704, 704), "left": (576, 576), "right": (576, 576),
    }  # fmt: skip
    row = IslandRow(0, 2, 9 * 16, 36 * 16)
    return IslandTask(
        (IslandPose("front", clear),), walls, (row,), (40 * 16, 72 * 16), 4 * 16, 40 * 16,
        25 * 16, "sinks", None, None, (140 * 16, inches(deep)), 140 * 16,
    )  # fmt: skip


def test_an_aisle_is_told_with_what_it_lacks() -> None:
    """25 + 42 + 40 + 44 + 25 are 176; in 173 1/2 they are 2 1/2 short (by hand)."""
    assert island_answers(_kitchen("176"))
    task = _kitchen("173.5")
    assert not island_answers(task)
    [conflict] = island_conflicts(task)
    assert conflict.short == 40
    assert {conflict.wished} <= {42 * 16, 44 * 16}
    assert not conflict.ends


def test_the_longest_stands_in_the_middle() -> None:
    """72 of boxes and 4 of ends and counter, its middle on 70 (by hand)."""
    best: IslandAnswer = island_answers(_kitchen("180"))[0]
    assert (best.boxes, best.left, best.near) == (72 * 16, (70 - 38) * 16, 67 * 16)
    assert best.off_centre == 0
    short = lay_out_island(best.task, best.pose, IslandDemand(length="short"))
    assert short is not None
    assert short.boxes == 40 * 16


@pytest.mark.parametrize("way", ["left", "right"])
def test_what_stands_at_an_end_keeps_its_walkway(way: Way) -> None:
    """A tall case 30 in from the wall's end: 36 in up to it, to either hand (by hand)."""
    task = _kitchen("180")
    at = (0, 30 * 16) if way == "left" else (110 * 16, 140 * 16)
    tall = TakenFloor("tall", *at, 0, 180 * 16)
    there = IslandTask(
        task.poses, (*task.obstacles, tall), task.rows, task.length, task.more, task.depth,
        task.base, task.from_key, None, None, task.reach, task.centre,
    )  # fmt: skip
    best = island_answers(there)[0]
    assert best.gaps()[way][0] >= 36 * 16
    assert best.gaps()[way][1].key == "tall"
