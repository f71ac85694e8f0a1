"""Another depth that saves a sheet or a setting: held against the job built with it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from tests.builders import INCH, case_spec, job, length

from casewright.breakdown import Breakdown, Nudge, break_down, find_nudges, moved
from casewright.cutting.engine import Stop
from casewright.room.build import build
from casewright.room.model import Room
from casewright.stock import Sheet

SHORT, LONG = Stop(4000), Stop(20_000)
TALL: dict[str, Any] = {
    "kind": "bookcase", "depth": "12", "width": "24", "height": "60", "shelves": 1,
}  # fmt: skip
LOW = TALL | {"height": "40", "shelves": 2, "width": "30"}


def _room(*cases: dict[str, Any]) -> Room:
    specs = [case_spec(**{"key": f"case{n}", **changes}) for n, changes in enumerate(cases, 1)]
    return build(job(*specs))


def _now(room: Room, stop: Stop = SHORT) -> Breakdown:
    """As if every sheet's thickness were known."""
    known = [
        replace(c, parts=tuple(replace(p, waits_for=()) for p in c.parts)) for c in room.cases
    ]
    return break_down(replace(room, cases=tuple(known)), stop=stop)


def _sheets(room: Room) -> dict[str, int]:
    plans = _now(room).plans
    return {p.stock: p.count for p in plans if isinstance(room.spec.stock[p.stock], Sheet)}


def _nudges(room: Room, stop: Stop = SHORT) -> list[Nudge]:
    return list(find_nudges(room, _now(room, stop), stop=stop))


def test_the_least_move_that_saves_a_sheet_is_found() -> None:
    """Broken down by itself it saves the sheet, and 1/32 in deeper it does not."""
    room = _room(TALL, TALL, TALL)
    [nudge] = _nudges(room)
    now = _sheets(room)
    assert nudge.group.cases == ("case1", "case2", "case3")
    assert nudge.sheets == {"ply18": (now["ply18"], now["ply18"] - 1)}
    for depth, fewer in ((nudge.depth, 1), (nudge.depth + INCH / 32, 0)):
        tried = _sheets(build(moved(room.spec, nudge.group, depth)))
        assert tried["ply18"] == now["ply18"] - fewer


def test_nothing_is_said_where_nothing_is_saved() -> None:
    """One case fills the same two sheets at any depth near its own."""
    assert not _nudges(_room(TALL))


def test_what_is_begun_stays_as_deep_as_it_is() -> None:
    """Three cases would be better a little less deep, but a side of one is cut."""
    room = _room(TALL, TALL, TALL)
    first = room.cases[0]
    parts = (replace(first.parts[0], state="cut"), *first.parts[1:])
    begun = replace(room, cases=(replace(first, parts=parts), *room.cases[1:]))
    assert not _nudges(begun)


def test_settings_are_saved_where_depths_meet() -> None:
    """Cases of 12 and of 11 7/8 in: of one depth they share their rips. What is told to be saved
    is there when the job is built so and broken down as long.
    """
    room = _room(LOW, LOW | {"depth": "11 7/8", "width": "24"})
    now, nudges = _settings(room), _nudges(room, LONG)
    assert nudges
    for nudge in nudges:
        assert nudge.depth in {length("12"), length("11 7/8")} - {nudge.group.depth}
        then = _settings(build(moved(room.spec, nudge.group, nudge.depth)))
        assert nudge.settings == (now, then)
        assert then < now


def _settings(room: Room) -> int:
    works = [plan.work for plan in _now(room, LONG).plans if plan.kind == "sheets"]
    return sum(work.fences + work.stops + work.guides for work in works)
