"""What stands against every answer of a layout, in words, with what would help."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from casewright.dims import shop_text
from casewright.job.heights import RoomHeights
from casewright.job.island_layouts import IslandLayout
from casewright.job.layouts import RunLayout
from casewright.layout.conflicts import Relief
from casewright.layout.island_answers import IslandConflict

__all__ = ["Hindrance", "height_hindrances", "island_hindrances", "run_hindrances"]


_SHORT_OF_IT = "widths written for its cases: its open end may stand short of what is there"


class Hindrance(NamedTuple):
    """Why nothing fits.

    Parameters
    ----------
    what
        What is needed, what is there, what it lacks.
    reliefs
        Each would do by itself; one may have lines of its own, to be written into the file.
    """

    what: str
    reliefs: tuple[str, ...] = ()


def run_hindrances(run: RunLayout) -> Iterator[Hindrance]:
    """Against a run: what stands in it or round its corners, or a width that nothing fills."""
    for number, thing in enumerate(run.in_it):
        left, right = (shop_text(each, run.unit) for each in (thing.left, thing.right))
        what = f"{thing.title} stands in it, from {left} to {right} along the wall"
        last = number == len(run.in_it) - 1
        yield Hindrance(what, ("\n".join(_two_runs(run)),) if last else ())
    for stop in run.corners:
        yield Hindrance(stop.what, stop.reliefs)
    for conflict in run.conflicts:
        reliefs = (
            _run_relief(run, relief)
            for relief in conflict.reliefs
            # A pin does not move with the wall, and what is made stays as wide as it is.
            if (relief.of != "wall" or not conflict.before) and relief.key not in run.made
        )
        short = (_SHORT_OF_IT,) if run.has_open_end and conflict.short < 0 else ()
        yield Hindrance(run.conflict_text(conflict), (*short, *reliefs))


def _two_runs(run: RunLayout) -> Iterator[str]:
    """What to write where something stands in a run: one up to it, and one from it on."""
    thing, (left, right) = run.in_it[0], run.parts
    if thing.swing is not None:
        word = "after" if thing.swing == "left" else "before"
        yield "past it, that end open:"
        yield f'[run.{run.key}] {word} = "{thing.key}", {thing.swing} = "open"'
    elif not (left and right):
        yield "as far as that, with a filler at it:"
        word = f'before = "{thing.key}"' if left else f'after = "{thing.last or thing.key}"'
        yield f"[run.{run.key}] {word}"
    else:
        yield "two runs, each with a filler at it; datum and level line stay one:"
        for key, cases, word, at in (
            (run.key, left, "before", thing.key),
            (f"{run.key}_2", right, "after", thing.last or thing.key),
        ):
            names = ", ".join(f'"{each}"' for each in cases)
            yield f'[run.{key}] cases = [{names}], {word} = "{at}"'


def _run_relief(run: RunLayout, relief: Relief) -> str:
    if relief.of == "another":
        one = relief.count == 1
        return f"{'one more case' if one else f'{relief.count} more cases'} in the run"
    if relief.of == "without":
        return f"one case less: {relief.key} in another run, or nowhere"
    by, more = run.text(abs(relief.steps)), relief.steps > 0
    if relief.of == "seam":
        return f"the pinned seam of {relief.key} {by} farther to the {'right' if more else 'left'}"
    if relief.of == "wall":
        return f"the wall {by} {'longer' if more else 'shorter'}"
    what = relief.key if relief.of == "place" else f"the {relief.of}"
    return f"{what} {by} {'narrower' if more else 'wider'}"


def island_hindrances(island: IslandLayout) -> Iterator[Hindrance]:
    """Against an island: aisles that are short, or no floor for it at all."""
    if not island.answers and not island.conflicts:
        yield Hindrance(_no_room(island))
    for conflict in island.conflicts:
        text, title = island.text, island.titles.get(conflict.key, conflict.key)
        yield Hindrance(
            f"aisle to {title}: {text(conflict.wished)} wished, {text(conflict.left)} left: "
            f"{text(conflict.short)} short",
            tuple(_aisle_reliefs(island, conflict)),
        )


def _no_room(island: IslandLayout) -> str:
    task, text = island.task, island.text
    low, high = (each + task.more for each in task.boxes_band)
    wished = [each + task.more for each in task.length]
    if max(low, wished[0]) > min(high, wished[1]):
        return (
            f"its boxes make a counter {text(low)} to {text(high)} long, and its length asks for "
            f"{text(wished[0])} to {text(wished[1])}: another length, or one more or less of them"
        )
    return "it is longer or deeper than the floor that was read"


def _aisle_reliefs(island: IslandLayout, conflict: IslandConflict) -> Iterator[str]:
    by = island.text(conflict.short)
    yield f"that aisle {by} less"
    if conflict.opposite:
        other = island.titles.get(conflict.opposite, conflict.opposite)
        yield f"the aisle to {other} {by} less"
    yield f"{island.title} {by} {'shorter' if conflict.ends else 'less deep'}"


def height_hindrances(heights: RoomHeights) -> Iterator[Hindrance]:
    """Against heights that close: what lies over what is too high together, or too low."""
    text = heights.text
    for conflict in heights.conflicts:
        short = conflict.short * heights.step
        what = f"{text(-short)} are left over, and nothing that may take them"
        if short > 0:
            what = f"at least {text(heights.clear.value + short)} is needed: {text(short)} short"
        yield Hindrance(what, tuple(_height_relief(heights, each) for each in conflict.reliefs))


def _height_relief(heights: RoomHeights, relief: Relief) -> str:
    by, less = heights.text(abs(relief.steps) * heights.step), relief.steps > 0
    if relief.of == "wall":
        return f"a ceiling {by} {'higher' if less else 'lower'}"
    what = relief.key if relief.of == "place" else "frieze"
    return f"{what} {by} {'less' if less else 'more'}"
