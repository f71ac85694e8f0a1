"""Up to five places for an island that differ in kind, or what stands against any."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from casewright.dims import Told, joined, tell
from casewright.layout.island_model import IslandDemand, lay_out_island
from casewright.layout.island_tasks import IslandAnswer, IslandPose, IslandTask, Way
from casewright.layout.tasks import Say

__all__ = ["IslandConflict", "IslandKind", "island_answers", "island_conflicts", "island_trade"]

_MOST = 5
_OTHER_POSE = 640
"""Points that another way round than the wished one counts as worse: some 13 in of length."""

_ALIKE = 10
"""Lengths that differ by less than one part in so many are of one kind."""

_OPPOSITE: Mapping[Way, Way] = {"near": "far", "far": "near", "left": "right", "right": "left"}
_LOOKS = {
    "front": "its front", "back": "its back", "left": "its left end", "right": "its right end",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class IslandKind:
    """What makes two answers unlike; a shift along an aisle does not.

    Parameters
    ----------
    side
        Which side looks to the wall.
    centred
        Whether its middle stands before what it is to stand before.
    length
        As long as can be there, as short as may be, or between, to a tenth.
    """

    side: str
    centred: bool
    length: Literal["longest", "shortest", "between"]


@dataclass(frozen=True, slots=True)
class IslandConflict:
    """An aisle that would be too narrow wherever the island stands.

    Parameters
    ----------
    way, key
        The side, seen from the wall; what is across.
    wished, left, short
        What is asked for, what would be left, what it lacks [steps].
    opposite
        What is across on the other side; empty: nothing.
    ends
        Whether it lies before an end of the island: then a shorter one helps, else one less deep.
    """

    way: Way
    key: str
    wished: int
    left: int
    short: int
    opposite: str
    ends: bool


def island_answers(task: IslandTask) -> tuple[IslandAnswer, ...]:
    """The best answer and up to four of other kinds, the best first."""
    found: dict[IslandKind, tuple[int, IslandAnswer]] = {}
    for number, pose in enumerate(task.poses):
        here = list(_in_pose(task, pose))
        longest = max((each.boxes for each in here), default=0)
        for each in here:
            kind = _kind(each, longest)
            rank = each.cost + number * _OTHER_POSE
            if kind not in found or rank < found[kind][0]:
                found[kind] = (rank, each)
    ordered = sorted(found.values(), key=lambda pair: (pair[0], pair[1].left, pair[1].near))
    return tuple(answer for _, answer in ordered[:_MOST])


def _in_pose(task: IslandTask, pose: IslandPose) -> Iterator[IslandAnswer]:
    demands = [IslandDemand()]
    if any(row.free for row in task.rows):
        demands.append(IslandDemand(length="short"))
    if task.centre is not None:
        demands += [IslandDemand(on_centre=True), IslandDemand(on_centre=False)]
    for demand in demands:
        found = lay_out_island(task, pose, demand)
        if found is None and demand == IslandDemand():
            return
        if found is not None:
            yield found


def _kind(answer: IslandAnswer, longest: int) -> IslandKind:
    length: Literal["longest", "shortest", "between"] = "between"
    if answer.boxes >= longest - longest // _ALIKE:
        length = "longest"
    elif answer.boxes <= answer.task.length[0] + answer.task.length[0] // _ALIKE:
        length = "shortest"
    return IslandKind(answer.pose.side, answer.off_centre in (-1, 0, 1), length)


def island_trade(
    answer: IslandAnswer, say: Say, titles: Mapping[str, str], centre: str
) -> Iterator[Told]:
    """What it gives and what it takes, in words.

    Parameters
    ----------
    say
        How a number of steps is told.
    titles
        Names of the obstacles in words.
    centre
        Name of what its middle is to stand before.
    """
    long, deep = answer.boxes + answer.task.more, answer.task.depth
    sizes = say(long, "length"), say(deep, "depth")
    yield tell("{} long and {} deep, counter included", *sizes)
    if answer.pose is not answer.task.poses[0]:
        yield Told(f"{_LOOKS[answer.pose.side]} to the wall")
    if answer.task.centre is not None:
        off = answer.off_centre
        if abs(off) <= 1:
            yield Told(f"its middle before {centre}")
        else:
            by = say(abs(off) // 2, "off_centre")
            yield tell("{} {} of {}", by, "right" if off > 0 else "left", centre)
    aisles = [
        tell("{} to {}", say(gap, f"aisle_{way}"), titles.get(each.key, each.key))
        for way, (gap, each) in answer.gaps().items()
    ]
    yield tell("aisles of {}", joined(", ", aisles)) if aisles else Told("free all round")


def island_conflicts(task: IslandTask) -> tuple[IslandConflict, ...]:
    """The least that aisles lack, in the wished pose if that is any use; none where none is."""
    tries = (lay_out_island(task, pose, soft=True) for pose in task.poses)
    best = next((each for each in tries if each is not None), None)
    if best is None:
        return ()
    gaps = best.gaps()
    found = []
    for way, short in best.short:
        gap = gaps.get(way)
        left = gap[0] if gap is not None else 0
        other = gaps.get(_OPPOSITE[way])
        turned = best.pose.is_turned
        found.append(
            IslandConflict(
                way, gap[1].key if gap is not None else task.from_key, left + short, left, short,
                other[1].key if other is not None else "",
                ends=(way in ("near", "far")) == turned,
            )
        )  # fmt: skip
    return tuple(found)
