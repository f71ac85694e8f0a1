"""A wall with all its runs on it, below and above, and the numbers that decide them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import NamedTuple

from casewright.dims import measure_of
from casewright.dims.units import Unit
from casewright.drawing.choice import Choice
from casewright.drawing.dimension import Dimensions, Span
from casewright.drawing.notes import Text
from casewright.drawing.pens import CENTRE, HIDDEN, THIN, Ink
from casewright.drawing.rows_under import RowsAndTape
from casewright.drawing.run_elevation import run_elements, run_top, run_widths
from casewright.drawing.running import Running, Stop
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, Length, Polyline, line, moved, rectangle
from casewright.drawing.wall_elevation import (
    level_of,
    outline_elements,
    rise_of,
    stud_elements,
    thing_box,
)
from casewright.room.model import Room, Run
from casewright.survey.form import SurveyForm, survey_form
from casewright.survey.specs import is_small
from casewright.survey.walls import SurveyedWall

__all__ = ["cased_wall_scene", "runs_on"]

_NAME = 2.0  # height of lettering [mm on paper]
_ASIDE = 2.4  # from an edge to the middle of a name beside it [mm on paper]
_ROOMY = Fraction(400)  # what is as large in both directions has its name inside [mm]


class _OnWall(NamedTuple):
    """A run, where it begins along its wall, and how high what hangs in it is lifted [mm]."""

    run: Run
    begins: Fraction
    lift: Fraction


def runs_on(room: Room, wall: SurveyedWall) -> tuple[Run, ...]:
    """Runs that stand or hang on a wall, in the order of the job."""
    return tuple(run for run in room.runs if run.spec.on == wall.spec.key)


def cased_wall_scene(room: Room, wall: SurveyedWall, unit: Unit) -> Scene:
    """Elevation of a wall with its runs: widths of what hangs over it, of what stands under it.

    Floor and ceiling as they were read, heights from the highest floor at the left, seams of what
    stands as a tape reads them; studs, level line and what is on the wall behind the cases. No
    number stands inside.
    """
    form = survey_form(wall, unit)
    level, rise = level_of(wall), rise_of(wall)
    runs = [_OnWall(run, run.begins.value, _lift(room, run)) for run in runs_on(room, wall)]
    outline = tuple(outline_elements(form, level, rise))
    elements: list[Element] = [
        *outline,
        *stud_elements(form, level + rise),
        *_level_line(form, level),
        *_things(form, level + rise, small=False),
    ]
    for run, begins, lift in sorted(runs, key=_depth):
        elements.extend(_beside(run_elements(run, lift, named=True), begins))
    elements.extend(_things(form, level + rise, small=True))
    ends = [y for shape in outline if isinstance(shape, Polyline) for _, y in shape.points]
    tops = [run_top(each.run, each.lift) for each in runs]
    elements.extend(_widths_above(runs, max(*tops, *ends), unit))
    elements.extend(_widths_below(runs, min(*ends, 0), unit))
    elements.extend(_heights(room, [each.run for each in runs], unit))
    elements.extend(_names(form, level + rise))
    return Scene(tuple(elements), wall.spec.title)


def _depth(placed: _OnWall) -> Fraction:
    """How far a run stands off the wall: what is before another is drawn over it [mm]."""
    return max(case.overall_depth.value for case in placed.run.cases)


def _lift(room: Room, run: Run) -> Fraction:
    hangs = any(case.spec.is_hung for case in run.cases)
    return room.wall_bottom.value if hangs else Fraction(0)


def _beside(elements: Iterable[Element], along: Fraction) -> Iterator[Element]:
    """The same elements so far along the wall."""
    for each in elements:
        if isinstance(each, Polyline):
            yield moved(each, along, Fraction(0))
        elif isinstance(each, Text):
            x, y = each.at
            yield replace(each, at=(x + along, y))
        else:
            msg = f"{type(each).__name__} cannot be drawn along a wall"
            raise TypeError(msg)


def _level_line(form: SurveyForm, level: Fraction) -> Iterator[Element]:
    if form.wall.floor is not None:
        yield replace(line((Fraction(0), level), (form.length, level), CENTRE), ink=Ink.SOFT)


def _things(form: SurveyForm, top: Fraction, *, small: bool) -> Iterator[Element]:
    """What is on the wall; outlets, taps and the like in broken lines over what hides them."""
    for thing in form.wall.things:
        if is_small(thing.spec.kind) is not small:
            continue
        if thing.left is not None and thing.right is not None:
            x0, x1, y0, y1 = thing_box(thing, top)
            pen = THIN if thing.spec.built and not small else HIDDEN
            yield replace(rectangle((x0, y0), (x1, y1), pen), ink=Ink.SOFT)


def _names(form: SurveyForm, top: Fraction) -> Iterator[Element]:
    """Names of what is on the wall: in its middle, else beside it, where nothing is written."""
    for thing in form.wall.things:
        if thing.left is None or thing.right is None:
            continue
        x0, x1, y0, y1 = thing_box(thing, top)
        x = (x0 + x1) / 2
        places = [(y, up) for up in (_ASIDE, 3 * _ASIDE) for y, up in ((y1, up), (y0, -up))]
        if min(x1 - x0, y1 - y0) > _ROOMY:
            places = [((y0 + y1) / 2, up) for up in (0.0, 2 * _ASIDE, -2 * _ASIDE)] + places
        options = (
            Text((x, y), thing.spec.title, _NAME, ink=Ink.SOFT, ground=Ink.PAPER, shift_mm=(0, up))
            for y, up in places
        )
        yield Choice([(each,) for each in options], hides_lines=True)


def _widths_above(runs: Sequence[_OnWall], top: Length, unit: Unit) -> Iterator[Element]:
    """Of what hangs, over all of the wall."""
    spans = [
        span for run, begins, lift in runs if lift for span in run_widths(run, unit, begins)
    ]  # fmt: skip
    if spans:
        yield Dimensions("above", top, tuple(spans), offset_mm=3.0)


def _widths_below(runs: Sequence[_OnWall], floor: Length, unit: Unit) -> Iterator[Element]:
    """Of what stands, under the floor; beyond them its seams, run by run, from their datums."""
    standing = [each for each in runs if not each.lift]
    spans = [span for run, begins, _ in standing for span in run_widths(run, unit, begins)]
    tapes = tuple(_tape(run, begins, floor, unit) for run, begins, _ in standing)
    if tapes:
        yield RowsAndTape(Dimensions("below", floor, tuple(spans)), tapes)


def _tape(run: Run, begins: Fraction, floor: Length, unit: Unit) -> Running:
    ends = [*run.starts, *(each.start for each in run.appliances), run.cases_end]
    stops = {
        begins + end.value: Stop(begins + end.value, measure_of(end, unit))
        for end in ends
        if end.value
    }
    whole = begins + run.length.value
    stops[whole] = Stop(whole, measure_of(run.length, unit), emphasis=True)
    return Running("below", floor, begins, tuple(stops.values()), offset_mm=1.0)


def _heights(room: Room, runs: Sequence[Run], unit: Unit) -> Iterator[Element]:
    """Of cases, and of the lower edge of those that hang."""
    spans: dict[tuple[Fraction, Fraction], Span] = {}
    for run in runs:
        for case in run.cases:
            low = room.wall_bottom.value if case.spec.is_hung else Fraction(0)
            ends = (low, low + case.height.value)
            spans.setdefault(ends, Span(*ends, measure_of(case.height, unit)))
            if low:
                under = measure_of(room.wall_bottom, unit)
                spans.setdefault((Fraction(0), low), Span(Fraction(0), low, under))
    if spans:
        yield Dimensions("left", Fraction(0), tuple(spans.values()), offset_mm=6.0)
