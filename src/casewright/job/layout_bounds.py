"""What bound an answer of a layout: the stretch it fills, what is given, what is at a limit."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from casewright.layout.tasks import EndFiller
from casewright.layout.wall_layout import WallLayout
from casewright.room.model import Room, Run
from casewright.room.run_ends import SIDES, thing_at
from casewright.room.specs import RunSide

__all__ = ["bounds_of", "stretch_words"]


def stretch_words(room: Room, run: Run, text: str) -> str:
    """How much there is to fill, and from where to where: '62 from the wall's left end to pantry'.

    Parameters
    ----------
    text
        The stretch as the job writes a length.
    """
    if not (run.spec.after or run.spec.before):
        return f"{text} from end to end of the wall"
    left, right = (_end_words(room, run, side) for side in SIDES)
    return f"{text} from {left} to {right}"


def _end_words(room: Room, run: Run, side: RunSide) -> str:
    key = thing_at(run.spec, side)
    if not key:
        return f"the wall's {side} end"
    things = (thing for wall in room.survey.walls.values() for thing in wall.things)
    titles = {thing.spec.key: thing.spec.title for thing in things}
    titles = {case.key: case.spec.title for case in room.cases} | titles
    titles |= {each.key: each.title for each in room.spec.appliances if each.key == key}
    return titles.get(key, key)


def bounds_of(layout: WallLayout, text: Callable[[int], str]) -> Iterator[str]:
    """What an answer could not change: given widths, pinned seams, fillers and cases at a limit.

    Parameters
    ----------
    text
        How a number of steps is written.
    """
    task = layout.task
    given = [place for place in task.places if place.low == place.high]
    if given:
        yield "given " + ", ".join(f"{place.key} {text(place.low)}" for place in given)
    for place, start in zip(task.places, layout.starts, strict=True):
        if place.start is not None:
            yield f"{place.key} pinned {text(start)} along"
    needs = task.places[0].needs[0], task.places[-1].needs[1]
    ends = (("left", task.left, layout.left), ("right", task.right, layout.right))
    for (side, filler, width), need in zip(ends, needs, strict=True):
        if filler is not None and not filler.in_corner:
            yield from _filler(side, filler, width, need)
    for place, width in zip(task.places, layout.widths, strict=True):
        if place.low < place.high and width in (place.low, place.high):
            yield f"{place.key} as {'narrow' if width == place.low else 'wide'} as a case may be"


def _filler(side: str, filler: EndFiller, width: int, need: int) -> Iterator[str]:
    if width == max(filler.low, need):
        why = "the door beside it lets it be" if need > filler.low else "it can be scribed"
        yield f"the {side} filler as narrow as {why}"
    elif width == filler.high:
        yield f"the {side} filler as wide as one may be"
