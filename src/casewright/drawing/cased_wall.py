"""A wall with all its runs on it, below and above, and the numbers that decide them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from casewright.dims.units import Unit
from casewright.drawing.dimension import Dimensions, Span
from casewright.drawing.measure import measure_of
from casewright.drawing.notes import Balloon, Text
from casewright.drawing.pens import HIDDEN, THIN, Ink
from casewright.drawing.run_elevation import run_elements, run_top, run_widths
from casewright.drawing.running import Running, Stop
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, Polyline, moved, rectangle
from casewright.drawing.wall_elevation import level_of, outline_elements, rise_of, thing_box
from casewright.room.model import Room, Run
from casewright.room.on_walls import run_start
from casewright.survey.form import SurveyForm, survey_form
from casewright.survey.walls import SurveyedWall

__all__ = ["cased_wall_scene", "runs_on"]

_NAME = 2.0


def runs_on(room: Room, wall: SurveyedWall) -> tuple[Run, ...]:
    """Runs that stand or hang on a wall, in the order of the job."""
    return tuple(run for run in room.runs if run.spec.on == wall.spec.key)


def cased_wall_scene(room: Room, wall: SurveyedWall, unit: Unit) -> Scene:
    """Elevation of a wall with its runs: widths over each, seams of what stands from one datum.

    Floor and ceiling as they were read, heights from the highest floor; what is on the wall in
    thin lines behind.
    """
    form = survey_form(wall, unit)
    level, rise = level_of(wall), rise_of(wall)
    runs = [(run, run_start(run, wall), _lift(room, run)) for run in runs_on(room, wall)]
    elements: list[Element] = [*outline_elements(form, level, rise), *_things(form)]
    for run, begins, lift in runs:
        elements.extend(_beside(run_elements(run, lift), begins))
        widths = tuple(run_widths(run, unit, begins))
        elements.append(Dimensions("above", run_top(run, lift), widths, offset_mm=4.0))
    elements.extend(_seams([(run, begins) for run, begins, lift in runs if not lift], unit))
    elements.extend(_heights(room, [run for run, _, _ in runs], unit))
    return Scene(tuple(elements), wall.spec.title)


def _lift(room: Room, run: Run) -> Fraction:
    hangs = all(case.spec.kind == "wall" for case in run.cases)
    return room.wall_bottom.value if hangs else Fraction(0)


def _beside(elements: Iterable[Element], along: Fraction) -> Iterator[Element]:
    """The same elements so far along the wall."""
    for each in elements:
        if isinstance(each, Polyline):
            yield moved(each, along, Fraction(0))
        elif isinstance(each, Balloon | Text):
            x, y = each.at
            yield replace(each, at=(x + along, y))
        else:
            msg = f"{type(each).__name__} cannot be drawn along a wall"
            raise TypeError(msg)


def _things(form: SurveyForm) -> Iterator[Element]:
    for thing in form.wall.things:
        if thing.left is None or thing.right is None:
            continue
        x0, x1, y0, y1 = thing_box(thing)
        pen = THIN if thing.spec.built else HIDDEN
        yield replace(rectangle((x0, y0), (x1, y1), pen), ink=Ink.SOFT)
        middle = ((x0 + x1) / 2, (y0 + y1) / 2)
        yield Text(middle, thing.spec.title, _NAME, ink=Ink.SOFT)


def _seams(standing: Sequence[tuple[Run, Fraction]], unit: Unit) -> Iterator[Element]:
    """Where what stands begins and ends, run by run, from the datum of each."""
    for run, begins in standing:
        ends = [*run.starts, *(each.start for each in run.appliances), run.cases_end]
        stops = {
            begins + end.value: Stop(begins + end.value, measure_of(end, unit))
            for end in ends
            if end.value
        }
        whole = begins + run.length.value
        stops[whole] = Stop(whole, measure_of(run.length, unit), emphasis=True)
        yield Running("below", Fraction(0), begins, tuple(stops.values()))


def _heights(room: Room, runs: Sequence[Run], unit: Unit) -> Iterator[Element]:
    """Of cases, and of the lower edge of those that hang."""
    spans: dict[tuple[Fraction, Fraction], Span] = {}
    for run in runs:
        for case in run.cases:
            low = room.wall_bottom.value if case.spec.kind == "wall" else Fraction(0)
            ends = (low, low + case.height.value)
            spans.setdefault(ends, Span(*ends, measure_of(case.height, unit)))
            if low:
                under = measure_of(room.wall_bottom, unit)
                spans.setdefault((Fraction(0), low), Span(Fraction(0), low, under))
    if spans:
        yield Dimensions("left", Fraction(0), tuple(spans.values()), offset_mm=6.0)
