"""Readings and walls for tests, in inches."""

from __future__ import annotations

from fractions import Fraction

from tests.builders import INCH, length

from casewright.dims import Chain, Dim, Given, Origin
from casewright.survey.readings import TAPE, Accuracy, Reading
from casewright.survey.specs import FixedThing, Station, WallSpec, WidthReading
from casewright.survey.walls import SurveyedWall, survey_wall

EXACT = Accuracy(Fraction(1, 10), Fraction(1, 5))


def read(size: str | int | Fraction, *, sure: bool = False, by: Accuracy = TAPE) -> Reading:
    """A reading in inches: '100 1/4'."""
    return Reading(Given(length(size), Origin("measured", "tape")), by, sure)


def widths(*sizes: str) -> tuple[WidthReading, ...]:
    """Widths whose heights are not known."""
    return tuple(WidthReading(read(size)) for size in sizes)


def at(height: int, size: str, depth: str = "back") -> WidthReading:
    """A width at a height in inches."""
    return WidthReading(read(size), height * INCH, "front" if depth == "front" else "back")


def station(along: int, down: str = "", up: str = "", whole: str = "") -> Station:
    """Heights at a place in inches; what is empty was not read."""
    heights = [read(size) if size else None for size in (down, up, whole)]
    return Station(along * INCH, heights[0], heights[1], heights[2])


def thing(key: str = "window", **sizes: str) -> FixedThing:
    """A window with the sizes given."""
    return FixedThing(key, key, "window", **{name: read(size) for name, size in sizes.items()})  # type: ignore[arg-type]


def surveyed(spec: WallSpec) -> SurveyedWall:
    """A wall on a chain of its own."""
    return survey_wall(Chain(), spec)


def inches(found: Dim | None) -> Fraction:
    """A number of the chain in inches; it must be there."""
    assert found is not None
    return found.value / INCH
