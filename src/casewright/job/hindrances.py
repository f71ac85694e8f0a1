"""What stands against every answer of a layout, in words, with what would help."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from casewright.dims import Told, tell
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
        ends = (run.numbers.edge(thing, side) for side in ("left", "right"))
        what = tell("{} stands in it, from {} to {} along the wall", thing.title, *ends)
        last = number == len(run.in_it) - 1
        yield Hindrance(what, ("\n".join(_two_runs(run)),) if last else ())
    for stop in run.corners:
        yield Hindrance(stop.what, stop.reliefs)
    for number, conflict in enumerate(run.conflicts, start=1):
        reliefs = (
            _run_relief(run, relief, number)
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


def _run_relief(run: RunLayout, relief: Relief, number: int) -> Told:
    if relief.of == "another":
        one = relief.count == 1
        return Told(f"{'one more case' if one else f'{relief.count} more cases'} in the run")
    if relief.of == "without":
        return Told(f"one case less: {relief.key} in another run, or nowhere")
    by, more = run.numbers.relief(number, relief), relief.steps > 0
    if relief.of == "seam":
        way = "right" if more else "left"
        return tell("the pinned seam of {} {} farther to the {}", relief.key, by, way)
    if relief.of == "wall":
        return tell("the wall {} {}", by, "longer" if more else "shorter")
    what = relief.key if relief.of == "place" else f"the {relief.of}"
    return tell("{} {} {}", what, by, "narrower" if more else "wider")


def island_hindrances(island: IslandLayout) -> Iterator[Hindrance]:
    """Against an island: aisles that are short, or no floor for it at all."""
    if not island.answers and not island.conflicts:
        yield Hindrance(_no_room(island))
    say = island.numbers
    for conflict in island.conflicts:
        way, title = conflict.way, island.titles.get(conflict.key, conflict.key)
        sizes = (("wished", conflict.wished), ("left", conflict.left), ("short", conflict.short))
        lengths = (say(size, f"aisle_{way}_{name}") for name, size in sizes)
        yield Hindrance(
            tell("aisle to {}: {} wished, {} left: {} short", title, *lengths),
            tuple(_aisle_reliefs(island, conflict)),
        )


def _no_room(island: IslandLayout) -> Told:
    task, say = island.task, island.numbers
    low, high = (each + task.more for each in task.boxes_band)
    wished = [each + task.more for each in task.length]
    if max(low, wished[0]) > min(high, wished[1]):
        return tell(
            "its boxes make a counter {} to {} long, and its length asks for {} to {}: another "
            "length, or one more or less of them",
            say(low, "shortest"), say(high, "longest"),
            say(wished[0], "length_low"), say(wished[1], "length_high"),
        )  # fmt: skip
    return Told("it is longer or deeper than the floor that was read")


def _aisle_reliefs(island: IslandLayout, conflict: IslandConflict) -> Iterator[Told]:
    by = island.numbers(conflict.short, f"aisle_{conflict.way}_short")
    yield tell("that aisle {} less", by)
    if conflict.opposite:
        other = island.titles.get(conflict.opposite, conflict.opposite)
        yield tell("the aisle to {} {} less", other, by)
    yield tell("{} {} {}", island.title, by, "shorter" if conflict.ends else "less deep")


def height_hindrances(heights: RoomHeights) -> Iterator[Hindrance]:
    """Against heights that close: what lies over what is too high together, or too low."""
    for number, conflict in enumerate(heights.conflicts, start=1):
        asked, off = heights.numbers.short_of(number, conflict)
        what = tell("{} are left over, and nothing that may take them", off)
        if conflict.short > 0:
            what = tell("at least {} is needed: {} short", asked, off)
        reliefs = (_height_relief(heights, each, number) for each in conflict.reliefs)
        yield Hindrance(what, tuple(reliefs))


def _height_relief(heights: RoomHeights, relief: Relief, number: int) -> Told:
    by, less = heights.numbers.relief(number, relief), relief.steps > 0
    if relief.of == "wall":
        return tell("a ceiling {} {}", by, "higher" if less else "lower")
    what = relief.key if relief.of == "place" else "frieze"
    return tell("{} {} {}", what, by, "less" if less else "more")
