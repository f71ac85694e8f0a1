"""Readings in words: what to hold the tape to, and how well a length is known."""

from __future__ import annotations

from fractions import Fraction

from casewright.dims import (
    Dim,
    Measure,
    Place,
    Told,
    Unit,
    Way,
    as_said,
    format_length,
    round_to,
    size_text,
    tell,
)
from casewright.sources import INCH
from casewright.survey.network import NextReading, middle_width, sum_of_things
from casewright.survey.specs import WallSpec
from casewright.survey.usual import cited, usual_height, usual_station
from casewright.survey.walls import SurveyedWall

__all__ = ["about", "reading_words", "size_of"]

_ABOUT: dict[Unit, tuple[Fraction, int]] = {"in": (INCH / 32, 32), "mm": (Fraction(1, 2), 10)}
"""What lengths are told to that are known about [mm], and its parts of a unit [-]."""


def size_of(dim: Dim, unit: Unit) -> Measure:
    """A size as a sentence says it, with its unit."""
    return as_said(dim, unit, size_text(dim.value, unit))


def about(place: Place, name: str, dim: Dim, unit: Unit) -> Measure:
    """About how far, to 1/32 in or half a millimetre, and never nothing; entered as told."""
    step, parts = _ABOUT[unit]
    value = max(round_to(dim.value, step, Way.NEAREST)[0], step)
    node = place.let(name, Dim("round", (dim, step), value))
    return as_said(node, unit, format_length(value, unit, precision=parts, with_unit=True))


def reading_words(reading: NextReading, wall: SurveyedWall, unit: Unit, place: Place) -> Told:
    """What to read, as one would tell a helper.

    Parameters
    ----------
    place
        Where the numbers of the next reading are named.
    """
    if reading.thing:
        return Told(_of_thing(reading, wall.spec))
    if reading.name == "width":
        height = reading.height
        high = "" if height is None else size_of(usual_height(place, height, unit), unit)
        return tell("the width at the {}, {} above the floor", reading.depth, high)
    target = "down to the floor" if reading.name == "down" else "up to the ceiling"
    along = reading.along
    return tell(
        "from the level line {}, {} from the left end",
        target,
        "" if along is None else size_of(_along(along, wall, unit, place), unit),
    )


def _along(along: Fraction, wall: SurveyedWall, unit: Unit, place: Place) -> Dim:
    """A place along a wall: where it was read already, or a usual one."""
    for n, station in enumerate(wall.spec.stations, start=1):
        if station.along == along:
            return wall.at[f"station_{n}.along"]
    note = "as long as what was read along it, or as a usual wall"
    width = middle_width(wall) or cited(place, "length", sum_of_things(wall.spec), note)
    return usual_station(place, width, along, unit)


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
