"""A wall as cases go to it: studs, screws, what is off limits, every mark from one datum."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from typing import NamedTuple

from casewright.dims import Measure, mark_of
from casewright.dims.units import Unit
from casewright.drawing.choice import Choice
from casewright.drawing.hatching import Hatch
from casewright.drawing.marks import Anchor, Tag
from casewright.drawing.notes import Text
from casewright.drawing.pens import CENTRE, FINE, HIDDEN, NEIGHBOUR, THIN, VISIBLE, Ink
from casewright.drawing.plan_names import wrapped, written
from casewright.drawing.running import Running, Stop
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, circle, line, rectangle
from casewright.drawing.wall_elevation import (
    USUAL_LEVEL,
    outline_elements,
    rise_of,
    stud_elements,
    thing_box,
)
from casewright.install.appliances import AppliancePlace
from casewright.install.hanging import WallHanging
from casewright.install.marks import Mark
from casewright.install.places import WallPlace
from casewright.install.stud_map import CaseScrews
from casewright.survey.form import SurveyForm, survey_form

__all__ = ["hanging_scene"]

_OFF = Hatch(spacing_mm=2.2, angle_deg=45)
_SIDEWAYS = Hatch(spacing_mm=4.4, angle_deg=135)
_Ends = tuple[Fraction, Fraction]

_UP = (Fraction(1, 2), Fraction(13, 20), Fraction(7, 20), Fraction(4, 5), Fraction(1, 5))
_ASIDE = (Fraction(1, 2), Fraction(9, 20), Fraction(11, 20), Fraction(2, 5), Fraction(3, 5))
"""Where a name may stand in its rectangle, as shares of it from below and from the left."""

_LIFTS = (0.0, 4.0, -4.0)
_OVER = 2.6  # from an edge to the middle of a name over or under it [mm on paper]
_ROOMY = 8  # what is wider than this part of its wall holds its own name
_SCREW, _CROSS = Fraction(9), Fraction(16)  # radius of a screw, arm of a cross [mm of model]


def hanging_scene(hang: WallHanging, unit: Unit) -> Scene:
    """Elevation of a wall for the day of hanging; heights from the highest floor of the room.

    Above it the marks of what hangs in bold, of studs and of what is on the wall; below it those
    of what stands. To the left heights above the floor, to the right from the level line.
    """
    form = survey_form(hang.wall, unit)
    level = next((h.above_floor.value for h in hang.heights if _is_line(h.says)), USUAL_LEVEL)
    rise = rise_of(form.wall)
    top = level + rise
    elements: list[Element] = [
        *outline_elements(form, level, rise),
        *(_strip(strip.left, strip.right, top) for strip in hang.strips),
        *(
            rectangle((run.left, run.low), (run.right, run.high), NEIGHBOUR, hatch=_SIDEWAYS)
            for run in hang.cables
        ),
        *_appliances(hang.appliances),
        *_cases(hang.places),
        *stud_elements(form, top),
        *(each for case in hang.screws for each in _screws(case)),
        *_things(form, top),
        *_level_line(hang, form, level),
        *_names(hang.places),
        *_thing_names(form, top),
        *_dimensions(hang, unit, form, top),
    ]
    return Scene(tuple(elements), f"{hang.wall.spec.title} on the day of hanging")


def _is_line(says: str) -> bool:
    return says.startswith("level line")


def _strip(left: Fraction, right: Fraction, top: Fraction) -> Element:
    """Where no wall screw is driven."""
    return rectangle((left, Fraction(0)), (right, top), FINE, hatch=_OFF)


def _cases(places: Iterable[WallPlace]) -> Iterator[Element]:
    for place in places:
        tag = Tag(target=place.case.key, path=place.case.key, title=place.case.spec.title)
        low = (place.left.value, place.bottom.value)
        yield rectangle(low, (place.right.value, place.top.value), VISIBLE, tag=tag)


def _appliances(places: Iterable[AppliancePlace]) -> Iterator[Element]:
    """What the runs leave room for, in broken lines with their names: nothing is hung there."""
    for place in places:
        across, up = (place.left.value, place.right.value), (Fraction(0), place.top.value)
        tag = Tag(path=place.left.path, title=place.title)
        yield rectangle((across[0], up[0]), (across[1], up[1]), NEIGHBOUR, tag=tag)
        yield _name(place.title, tag, across, up, soft=True)


def _names(places: Iterable[WallPlace]) -> Iterator[Element]:
    for place in places:
        title = place.case.spec.title
        tag = Tag(target=place.case.key, path=place.case.key, title=title)
        across = (place.left.value, place.right.value)
        yield _name(title, tag, across, (place.bottom.value, place.top.value))


def _name(title: str, tag: Tag, across: _Ends, up: _Ends, *, soft: bool = False) -> Element:
    """A title in its rectangle, where it hides least."""
    wide, high = across[1] - across[0], up[1] - up[0]
    lines = wrapped(title, float(wide), float(high))
    return Choice(
        [
            tuple(written(lines, (across[0] + wide * x, up[0] + high * y), tag, soft=soft))
            for y in _UP
            for x in _ASIDE
        ],
        hides_lines=False,
    )


def _screws(case: CaseScrews) -> Iterator[Element]:
    """The boards that screws go through, a dot for each screw, a cross where none may go."""
    place = case.place
    for _, low, high in case.rows:
        yield rectangle((place.left.value, low.value), (place.right.value, high.value), HIDDEN)
    for screw in case.screws:
        x = screw.stud.value
        for y in (screw.low.value, screw.high.value):
            if screw.strip is None:
                yield circle((x, y), _SCREW, THIN, fill=Ink.INK, keep_clear=True)
                continue
            for sign in (1, -1):
                yield line((x - _CROSS, y - sign * _CROSS), (x + _CROSS, y + sign * _CROSS),
                           VISIBLE, ink=Ink.LOOK)  # fmt: skip


def _things(form: SurveyForm, top: Fraction) -> Iterator[Element]:
    for thing in form.wall.things:
        if thing.left is not None and thing.right is not None:
            x0, x1, y0, y1 = thing_box(thing, top)
            yield rectangle((x0, y0), (x1, y1), VISIBLE if thing.spec.built else HIDDEN)


def _thing_names(form: SurveyForm, top: Fraction) -> Iterator[Element]:
    """Into what is large; else beside, over or under it, where no line is hidden if one can."""
    for thing in form.wall.things:
        if thing.left is None or thing.right is None:
            continue
        x0, x1, y0, y1 = thing_box(thing, top)
        if (x1 - x0) * _ROOMY > form.length:
            inside = [(x0 + (x1 - x0) * x, y0 + (y1 - y0) * y) for y in _UP for x in _ASIDE]
            places = [_Named(at, "middle", 0.0, 0.0) for at in inside]
        else:
            places = list(_round(x0, x1, y0, y1))
        words = [
            (Text(at, thing.spec.title, 2.0, anchor=anchor, ink=Ink.SOFT, ground=Ink.PAPER,
                  shift_mm=(aside, up)),)
            for at, anchor, aside, up in places
        ]  # fmt: skip
        yield Choice(words)


class _Named(NamedTuple):
    """Where a name is held, and how far from there it stands [mm on paper]."""

    at: tuple[Fraction, Fraction]
    anchor: Anchor
    aside: float
    up: float


def _round(x0: Fraction, x1: Fraction, y0: Fraction, y1: Fraction) -> Iterator[_Named]:
    """Places round a small rectangle, the best first."""
    x, y = (x0 + x1) / 2, (y0 + y1) / 2
    for up in _LIFTS:
        yield _Named((x1, y), "start", 1.5, up)
        yield _Named((x0, y), "end", -1.5, up)
    for n in (1, 2, 3):
        yield _Named((x, y1), "middle", 0.0, _OVER * n)
        yield _Named((x, y0), "middle", 0.0, -_OVER * n)


def _level_line(hang: WallHanging, form: SurveyForm, level: Fraction) -> Iterator[Element]:
    if any(_is_line(mark.says) for mark in hang.heights):
        yield line((Fraction(0), level), (form.length, level), CENTRE)
        words = [
            (Text((form.length * n / 24, level), "level line", 2.0, ink=Ink.SOFT,
                  ground=Ink.PAPER),)
            for n in range(1, 24)
        ]  # fmt: skip
        yield Choice(words)


def _stops(marks: Iterable[Mark], unit: Unit) -> tuple[Stop, ...]:
    stops: dict[Fraction, Stop] = {}
    for mark in marks:
        if mark.at.value:
            bold = mark.kind == "case"
            stops[mark.at.value] = Stop(mark.at.value, mark_of(mark.at, unit), emphasis=bold)
    return tuple(stops.values())


def _dimensions(
    hang: WallHanging, unit: Unit, form: SurveyForm, top: Fraction
) -> Iterator[Element]:
    zero = Fraction(0)
    above = _stops((m for m in hang.marks if m.band != "standing" and m.kind != "wall"), unit)
    below = _stops((m for m in hang.marks if m.band == "standing" or m.kind == "wall"), unit)
    low = min(zero, *(-shim.shim.value for shim in hang.floor_shims), zero)
    if above:
        yield Running("above", top, zero, above)
    if below:
        yield Running("below", low, zero, below)
    heights = tuple(
        Stop(mark.above_floor.value, mark_of(mark.above_floor, unit),
             emphasis=not _is_line(mark.says))
        for mark in hang.heights
    )  # fmt: skip
    if heights:
        yield Running("left", zero, zero, heights)
    level = next((m.above_floor.value for m in hang.heights if _is_line(m.says)), None)
    if level is not None:
        yield Running("right", form.length, level, tuple(_from_line(hang, unit, level)))


def _from_line(hang: WallHanging, unit: Unit, level: Fraction) -> Iterator[Stop]:
    """Heights from the level line, with the way to go."""
    for mark in hang.heights:
        if mark.from_line is None or not mark.from_line.value:
            continue
        value, path = mark.from_line.value, mark.from_line.path
        way = "up" if value > 0 else "down"
        yield Stop(level + value, Measure(abs(value), unit, path), note=way)
