"""Laying out the islands of a job: tasks from its room, answers in the job's unit."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.dims import Given, Told, Unit, shop_text, tell
from casewright.job.island_numbers import IslandNumbers
from casewright.job.layout_ends import FREE_WIDTHS, GRID, steps_up
from casewright.job.section_edits import put_section
from casewright.job.splicing import basic_string
from casewright.layout.island_answers import (
    IslandConflict,
    island_answers,
    island_conflicts,
    island_trade,
)
from casewright.layout.island_tasks import (
    WAYS,
    IslandAnswer,
    IslandPose,
    IslandRow,
    IslandTask,
    TakenFloor,
    Way,
)
from casewright.room.aisle_limits import asked_of
from casewright.room.aisles import own_sides
from casewright.room.door_swings import swinging_doors
from casewright.room.floor import middle_of
from casewright.room.floor_spec import FloorPlace, FloorSide
from casewright.room.footprints import counter_reach, footprints, rectangle
from casewright.room.model import Island, Room, Run
from casewright.room.wall_stands import Spot, WallFrame, joined_walls, wall_frames

__all__ = ["IslandLayout", "accepted_island", "island_layouts", "open_islands"]

_UNREAD = Fraction(6000)
"""As far out as is looked at where no wall round the corner was read [mm]."""

_SIDES: tuple[FloorSide, ...] = ("front", "back", "left", "right")


@dataclass(frozen=True, slots=True)
class IslandLayout:
    """Where an island could stand.

    Parameters
    ----------
    key, title
        Of the island.
    free
        By row, keys of its cases whose width is left open.
    trades
        Of each answer, in words.
    titles
        Names in words of what is across.
    step
        Of the grid [mm].
    numbers
        Tells its lengths.
    """

    key: str
    title: str
    free: tuple[tuple[str, ...], ...]
    task: IslandTask
    answers: tuple[IslandAnswer, ...]
    trades: tuple[tuple[Told, ...], ...]
    conflicts: tuple[IslandConflict, ...]
    titles: Mapping[str, str]
    step: Fraction
    unit: Unit
    numbers: IslandNumbers

    def text(self, steps: int) -> str:
        """Steps as the job writes a length."""
        return shop_text(steps * self.step, self.unit)

    def sizes(self, number: int) -> Iterator[Told]:
        """What an answer decides, by its number from 1: '48 off', '44 1/8 along', 'trays 24'."""
        answer, say = self.answers[number - 1], self.numbers.within(f"answer_{number}")
        yield tell("{} off", say(answer.near - self.task.base, "off"))
        yield tell("{} along", say(answer.left, "along"))
        yield from (tell("{} {}", key, say(width, key)) for key, width in self.widths(answer))

    def widths(self, answer: IslandAnswer) -> tuple[tuple[str, int], ...]:
        """Widths of the free cases in an answer [steps]."""
        return tuple(
            (key, share)
            for keys, share in zip(self.free, answer.shares, strict=False)
            for key in keys
        )


def open_islands(room: Room) -> Iterator[tuple[Island, FloorPlace]]:
    """Islands whose place leaves something to a layout."""
    asked = {each.of: each for each in room.spec.floor_places}
    for island in room.islands:
        place = asked.get(island.key)
        wall = room.survey.walls.get(place.wall) if place is not None else None
        known = wall is not None and wall.width is not None
        if place is not None and known and _is_open(room, island, place):
            yield island, place


def island_layouts(room: Room, *, only: str | None = None) -> Iterator[IslandLayout]:
    """What each island could be whose place leaves something to a layout.

    Parameters
    ----------
    only
        Key of an island: the others are left alone, and take no time.
    """
    for island, place in open_islands(room):
        if only not in (None, island.spec.key):
            continue
        task, titles, step = _task(room, island, place), _titles(room), GRID[room.spec.unit]
        found, centre = island_answers(task), titles.get(place.centre, place.centre)
        numbers = IslandNumbers(room, island, place, step)
        says = (numbers.within(f"answer_{n}") for n in range(1, len(found) + 1))
        trades = tuple(tuple(island_trade(each, say, titles, centre))
                       for each, say in zip(found, says, strict=True))  # fmt: skip
        laid_out = IslandLayout(
            island.spec.key, island.spec.title, _free(room, island), task, found, trades,
            () if found else island_conflicts(task), titles, step, room.spec.unit, numbers,
        )  # fmt: skip
        for n in range(1, len(found) + 1):
            answer, because = found[n - 1], "; ".join(trades[n - 1])
            numbers.explain(n, answer, dict(laid_out.widths(answer)), because)
        yield laid_out


def _is_open(room: Room, island: Island, place: FloorPlace) -> bool:
    """Whether its place or its size is not settled by the file."""
    said = place.along is not None and place.along.origin.kind != "solved"
    settled = _is_said(place) and (said or bool(place.centre))
    return not settled or any(_free(room, island))


def _free(room: Room, island: Island) -> tuple[tuple[str, ...], ...]:
    return tuple(
        tuple(case.key for case in run.cases if _has_free_width(case))
        for run in room.runs_of(island)
    )


def _has_free_width(case: Case) -> bool:
    return case.spec.width is None or case.spec.width.origin.kind == "solved"


def _titles(room: Room) -> dict[str, str]:
    return {each.key: each.title for each in footprints(room)} | {
        thing.spec.key: thing.spec.title
        for wall in room.survey.walls.values()
        for thing in wall.things
    }


def _task(room: Room, island: Island, place: FloorPlace) -> IslandTask:
    """In whole steps: the island counts up to the next one, free floor down."""
    step, nodes, case = GRID[room.spec.unit], room.chain.nodes, room.case_of(island)
    runs = room.runs_of(island)
    long, deep = (nodes[f"{island.key}.counter_{name}"].value for name in ("length", "depth"))
    more = steps_up(long - runs[0].cases_end.value, step)
    obstacles = tuple(_obstacles(room, place.wall, step, without=island.key))
    edge = _edge(room, place)
    band = place.band or ((place.off, place.off) if place.off and _is_said(place) else None)
    along = place.along if place.along and place.along.origin.kind != "solved" else None
    ends = _reach(room, place.wall, step)
    length = island.spec.length
    rows = [_row(room, run, step) for run in runs]
    span = (rows[0].given, sum(ends))
    if length is not None and any(row.free for row in rows):
        bodies = case.width.value - runs[0].cases_end.value
        most = int((length[1].value - bodies) // step)
        span = (min(steps_up(length[0].value - bodies, step), most), most)
    if not any(row.free for row in rows):
        rows = rows[:1]  # both are as long: that is looked at elsewhere
    return IslandTask(
        poses=tuple(_pose(room, island, side, step) for side in _poses(place)),
        obstacles=obstacles,
        rows=tuple(rows),
        length=span,
        more=more,
        depth=steps_up(deep, step),
        base=steps_up(edge, step),
        from_key=place.run or place.wall,
        off=None if band is None else _whole(band, step),
        along=None if along is None else steps_up(along.value, step),
        reach=ends,
        centre=_centre(room, place, step),
    )


def _whole(band: tuple[Given, Given], step: Fraction) -> tuple[int, int]:
    """A band in whole steps; the next one up where none lies in it."""
    low = steps_up(band[0].value, step)
    return low, max(low, int(band[1].value // step))


def _is_said(place: FloorPlace) -> bool:
    return place.off is not None and place.off.origin.kind != "solved"


def _poses(place: FloorPlace) -> tuple[FloorSide, ...]:
    return _SIDES if place.side is None or place.side_is_solved else (place.side,)


def _pose(room: Room, island: Island, side: FloorSide, step: Fraction) -> IslandPose:
    """What is asked for before each of its sides."""
    clear: dict[Way, tuple[int, int]] = {}
    for way, own in zip(WAYS, own_sides(side), strict=True):
        works = own == "front" or (own == "back" and bool(island.spec.back))
        seats = own == "back" and not island.spec.back
        facing, else_ = (
            steps_up(asked_of(room, works=works, seats=seats, across=across).least, step)
            for across in (True, False)
        )
        clear[way] = (facing, else_)
    return IslandPose(side, clear)


def _row(room: Room, run: Run, step: Fraction) -> IslandRow:
    widths = [case.spec.width for case in run.cases if not _has_free_width(case)]
    given = sum((width.value for width in widths if width is not None), Fraction(0))
    free = sum(_has_free_width(case) for case in run.cases)
    low, high = (int(each // step) for each in FREE_WIDTHS[room.spec.unit])
    return IslandRow(steps_up(given, step), free, low, high)


def _edge(room: Room, place: FloorPlace) -> Fraction:
    """How far out from its wall what it is measured from reaches [mm]."""
    own = [run for run in room.runs if run.spec.key == place.run]
    reaches = (counter_reach(room, case) for run in own for case in run.cases)
    return max(reaches, default=Fraction(0))


def _obstacles(room: Room, wall: str, step: Fraction, *, without: str) -> Iterator[TakenFloor]:
    """What is on the floor, and what the leaves of the room's doors sweep."""
    frame, near = wall_frames(room.survey)[wall], joined_walls(room.survey, wall)
    for each in footprints(room):
        if each.key != without and each.wall in near:
            yield _taken(frame, each.key, each.corners, step, works=each.kind == "works")
    for key in sorted(near):
        for door, left, right in swinging_doors(room.survey.walls[key]):
            sweep = rectangle(
                wall_frames(room.survey)[key], (left, right), (Fraction(0), right - left)
            )
            yield replace(_taken(frame, door.spec.key, sweep, step, works=False), swept=True)


def _taken(
    frame: WallFrame, key: str, corners: Sequence[Spot], step: Fraction, *, works: bool
) -> TakenFloor:
    """A rectangle round some corners, along and out from a wall, rounded outward."""
    along, out = zip(*(frame.seen(spot) for spot in corners), strict=True)
    return TakenFloor(
        key, int(min(along) // step), steps_up(max(along), step), int(min(out) // step),
        steps_up(max(out), step), works=works,
    )  # fmt: skip


def _reach(room: Room, wall: str, step: Fraction) -> tuple[int, int]:
    """As far along the wall and out from it as the room goes, as far as it was read."""
    frame, near = wall_frames(room.survey)[wall], joined_walls(room.survey, wall)
    there = [each for each in footprints(room) if each.wall in near]
    along, out = (
        max(each)
        for each in zip(
            *(frame.seen(spot) for each in there for spot in each.corners), strict=True
        )
    )
    deep = out if len(near) > 1 else max(out, _UNREAD)
    return int(max(along, frame.length) // step), int(deep // step)


def _centre(room: Room, place: FloorPlace, step: Fraction) -> int | None:
    if not place.centre:
        return None
    middle = middle_of(room, place.centre, place.wall)
    return None if middle is None else round(2 * middle / step)


def accepted_island(text: str, island: IslandLayout, number: int) -> str:
    """The text of a job file with an answer written into it, and what spoke for it.

    Parameters
    ----------
    number
        Of the answer, from 1.

    Raises
    ------
    EditError
        When the section cannot be edited.
    """
    answer = island.answers[number - 1]
    lines = [
        f'off = "{island.text(answer.near - island.task.base)}"',
        f'along = "{island.text(answer.left)}"',
        f'side = "{answer.pose.side}"',
    ]
    widths = ", ".join(f'{key} = "{island.text(width)}"' for key, width in island.widths(answer))
    if widths:
        lines.append(f"widths = {{ {widths} }}")
    lines.append(f"because = {basic_string('; '.join(island.trades[number - 1]))}")
    return put_section(text, ("island", island.key, "solved"), tuple(lines))
