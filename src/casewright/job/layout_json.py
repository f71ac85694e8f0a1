"""`layout --json`: what each run could be, as data."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from casewright.dims import length_json
from casewright.job.documents import head_json
from casewright.job.heights import RoomHeights
from casewright.job.island_layouts import IslandLayout
from casewright.job.layouts import RunLayout
from casewright.layout.answers import LayoutAnswer
from casewright.layout.conflicts import LayoutConflict
from casewright.room.specs import JobSpec

__all__ = ["layout_json"]

_Json = dict[str, Any]


def layout_json(
    spec: JobSpec,
    runs: Iterable[RunLayout],
    heights: RoomHeights | None = None,
    islands: Iterable[IslandLayout] = (),
) -> _Json:
    """Answers of runs, islands and heights, the best first, or what stands against any."""
    return {
        **head_json("layout", spec),
        "runs": [
            {
                "run": run.key,
                "title": run.title,
                "free": list(run.free),
                "answers": [_answer(run, each) for each in run.answers],
                "conflicts": [_conflict(run, each) for each in run.conflicts],
                "stands_in": [
                    {
                        "thing": each.key,
                        "left": length_json(each.left, run.unit),
                        "right": length_json(each.right, run.unit),
                    }
                    for each in run.in_it
                ],
                "corners": [
                    {"what": each.what, "reliefs": list(each.reliefs)} for each in run.corners
                ],
            }
            for run in runs
        ],
        "islands": [_island(each) for each in islands],
        "heights": None if heights is None else _heights(heights),
    }


def _island(island: IslandLayout) -> _Json:
    def size(steps: int) -> _Json:
        return {**length_json(steps * island.step, island.unit)}

    return {
        "island": island.key,
        "title": island.title,
        "answers": [
            {
                "off": size(answer.near - island.task.base),
                "along": size(answer.left),
                "side": answer.pose.side,
                "widths": [{"case": key, "width": size(width)}
                           for key, width in island.widths(answer)],
                "aisles": [{"to": each.key, "way": way, "clear": size(gap)}
                           for way, (gap, each) in answer.gaps().items()],
                "cost": answer.cost,
                "bound": answer.bound,
                "trade": list(trade),
            }
            for answer, trade in zip(island.answers, island.trades, strict=True)
        ],
        "conflicts": [
            {"to": each.key, "way": each.way, "wished": size(each.wished),
             "left": size(each.left), "short": size(each.short)}
            for each in island.conflicts
        ],
    }  # fmt: skip


def _heights(heights: RoomHeights) -> _Json:
    unit = heights.unit
    return {
        "clear": length_json(heights.clear.value, unit),
        "bound": heights.bound,
        "answers": [
            {
                "parts": [{"part": key, "height": length_json(high, unit)}
                          for key, high in answer.parts],
                "wall_bottom": length_json(answer.bottom, unit),
                "wall_height": length_json(answer.uppers, unit),
                "trade": list(answer.trade),
            }
            for answer in heights.answers
        ],
        "conflicts": [
            {"short": length_json(each.short * heights.step, unit),
             "reliefs": [{"of": relief.of, "key": relief.key,
                          "by": length_json(relief.steps * heights.step, unit)}
                         for relief in each.reliefs]}
            for each in heights.conflicts
        ],
    }  # fmt: skip


def _length(run: RunLayout, steps: int) -> _Json:
    return {**length_json(steps * run.step, run.unit)}


def _answer(run: RunLayout, answer: LayoutAnswer) -> _Json:
    layout = answer.layout
    return {
        "widths": [
            {"case": key, "width": _length(run, width), "start": _length(run, start)}
            for key, width, start in zip(
                (place.key for place in layout.task.places),
                layout.widths,
                layout.starts,
                strict=True,
            )
        ],
        "fillers": {"left": _length(run, layout.left), "right": _length(run, layout.right)},
        "cost": layout.cost,
        "bound": layout.bound,
        "trade": list(answer.trade),
    }


def _conflict(run: RunLayout, conflict: LayoutConflict) -> _Json:
    return {
        "start": _length(run, conflict.start),
        "end": _length(run, conflict.end),
        "places": list(conflict.places),
        "short": _length(run, conflict.short),
        "reliefs": [
            {"of": relief.of, "key": relief.key, "by": _length(run, relief.steps)}
            for relief in conflict.reliefs
        ],
    }
