"""Readings in words: what to hold the tape to."""

from __future__ import annotations

from casewright.dims import Unit, size_text
from casewright.survey.network import NextReading
from casewright.survey.specs import WallSpec

__all__ = ["reading_words"]


def reading_words(reading: NextReading, wall: WallSpec, unit: Unit) -> str:
    """What to read, as one would tell a helper."""
    if reading.thing:
        return _of_thing(reading, wall)
    if reading.name == "width":
        height = "" if reading.height is None else size_text(reading.height, unit)
        return f"the width at the {reading.depth}, {height} above the floor"
    along = "" if reading.along is None else size_text(reading.along, unit)
    target = "down to the floor" if reading.name == "down" else "up to the ceiling"
    return f"from the level line {target}, {along} from the left end"


def _of_thing(reading: NextReading, wall: WallSpec) -> str:
    thing = wall.thing(reading.thing)
    start = "the left end of the wall"
    if thing.after is not None:
        start = f"the right edge of {wall.thing(thing.after).title}"
    return {
        "left": f"from {start} to the left edge of {thing.title}",
        "width": f"the width of {thing.title}, edge to edge",
        "right": f"from the right edge of {thing.title} to the right end of the wall",
        "centre": f"from the left end of the wall to the middle of {thing.title}",
        "bottom": f"from the floor to the lower edge of {thing.title}",
        "height": f"the height of {thing.title}, edge to edge",
        "top": f"from the floor to the upper edge of {thing.title}",
    }[reading.name]
