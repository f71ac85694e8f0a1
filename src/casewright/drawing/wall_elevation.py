"""A wall as measured: floor and ceiling as they lie, the level line, what is on it."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.dims import Dim, measure_of
from casewright.dims.units import Unit
from casewright.drawing.choice import Choice
from casewright.drawing.notes import Balloon, Text
from casewright.drawing.pens import CENTRE, HIDDEN, NEIGHBOUR, THIN, VISIBLE, Ink
from casewright.drawing.running import Running, Stop
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, Polyline, circle, line, rectangle
from casewright.survey.fixed_things import PlacedThing
from casewright.survey.form import FormStation, FormWidth, SurveyForm
from casewright.survey.specs import FixedKind, has_upper_edge, is_small
from casewright.survey.walls import SurveyedWall

__all__ = [
    "USUAL_LEVEL", "level_of", "outline_elements", "rise_of", "stud_elements", "thing_box",
    "thing_marks", "wall_scene",
]  # fmt: skip

USUAL_LEVEL = Fraction(1016)
"""Height of the level line above the floor, as drawn where nothing was read yet [mm]."""

_CEILING = Fraction(2438)  # where nothing was read yet [mm]
_USUAL: dict[FixedKind, tuple[int, int]] = {
    "window": (1070, 2080), "door": (0, 2080), "outlet": (1070, 1170), "switch": (1170, 1270),
    "pipe": (400, 500), "gas": (100, 200), "vent": (2130, 2230), "soffit": (2130, 2440),
    "radiator": (100, 700), "chimney": (0, 2440), "base case": (0, 880), "wall case": (1370, 2130),
    "tall case": (0, 2130), "counter": (0, 910), "appliance": (0, 900),
    "tub": (0, 560), "shower": (0, 2130), "stairs": (0, 2440),
}  # fmt: skip
"""Where things are drawn up a wall as long as their heights were not read [mm]."""

_SMALL = Fraction(100)  # an outlet of which only the middle is known [mm]
_AROUND = ((5.0, 4.5), (-5.0, 4.5), (5.0, -5.5), (-5.0, -5.5), (0.0, 10.0), (0.0, -10.0),
           (9.0, 9.0), (-9.0, 9.0), (9.0, -9.0), (-9.0, -9.0))  # fmt: skip
_RING = 2.0  # height of the marks in rings [mm on paper]


def thing_marks(form: SurveyForm) -> dict[str, str]:
    """Small letters for what is on a wall, by its key."""
    letters = "abcdefghijklmnopqrstuvwxyz"
    return {
        each.spec.key: letters[n % 26] * (n // 26 + 1) for n, each in enumerate(form.wall.things)
    }


def level_of(wall: SurveyedWall) -> Fraction:
    """Height of the level line above the highest floor, the usual one where none was read [mm]."""
    return wall.floor.value if wall.floor is not None else USUAL_LEVEL


def rise_of(wall: SurveyedWall) -> Fraction:
    """From the level line up to the lowest ceiling, as usual where none was read [mm]."""
    return wall.ceiling.value if wall.ceiling is not None else _CEILING - USUAL_LEVEL


def wall_scene(form: SurveyForm, unit: Unit) -> Scene:
    """Elevation of a wall, heights from its highest floor; where nothing was read, as usual.

    Capitals mark widths, numbers the stations of the level line, small letters what is on it.
    """
    level, rise = level_of(form.wall), rise_of(form.wall)
    elements = [
        *outline_elements(form, level, rise),
        *stud_elements(form, level + rise),
        *_things(form, level + rise),
        *_width_marks(form.widths, form.length),
        *_level_line(form, level),
        *_along(form, unit),
        *_rings(form, level + rise),
    ]
    return Scene(tuple(elements), f"{form.wall.spec.title} as measured")


def outline_elements(form: SurveyForm, level: Fraction, rise: Fraction) -> Iterator[Element]:
    """Floor and ceiling through what was read, and both ends."""
    back = [each for each in form.stations if each.depth == "back"]
    floor = _profile(back, "down", form.length, level)
    ceiling = [(x, level + y) for x, y in _profile(back, "up", form.length, -rise, sign=1)]
    yield Polyline(tuple((x, level + y) for x, y in floor), VISIBLE)
    yield Polyline(tuple(ceiling), VISIBLE)
    for x, low, high in (
        (Fraction(0), floor[0][1] + level, ceiling[0][1]),
        (form.length, floor[-1][1] + level, ceiling[-1][1]),
    ):
        yield line((x, low), (x, high), NEIGHBOUR)


def _profile(
    stations: list[FormStation], name: str, length: Fraction, usual: Fraction, *, sign: int = -1
) -> list[tuple[Fraction, Fraction]]:
    """Heights against the level line along the wall [mm]; the ends go on level."""
    read: list[tuple[Fraction, Fraction]] = []
    for each in stations:
        dim: Dim | None = getattr(each, name)
        if dim is not None:
            read.append((min(each.along.value, length), sign * dim.value))
    read = read or [(Fraction(0), -usual)]
    return [(Fraction(0), read[0][1]), *read, (length, read[-1][1])]


def stud_elements(form: SurveyForm, high: Fraction) -> Iterator[Element]:
    """Middles of the studs, a dot on those that were probed."""
    for stud, found in zip(form.wall.studs, form.wall.spec.studs, strict=True):
        yield line((stud.value, Fraction(0)), (stud.value, high), CENTRE, ink=Ink.SOFT)
        if found.probed:
            yield circle((stud.value, high * 9 / 10), Fraction(12), THIN, fill=Ink.INK)


def _things(form: SurveyForm, ceiling: Fraction) -> Iterator[Element]:
    """What is on the wall; in broken lines what is not built or not read in full."""
    for thing in form.wall.things:
        if thing.left is None or thing.right is None:
            continue
        x0, x1, y0, y1 = thing_box(thing, ceiling)
        pen = VISIBLE if thing.spec.built and _is_read(thing) else HIDDEN
        yield rectangle((x0, y0), (x1, y1), pen)


def _rings(form: SurveyForm, ceiling: Fraction) -> Iterator[Element]:
    """Letters of what is on the wall, over all lines."""
    marks = thing_marks(form)
    for thing in form.wall.things:
        if thing.left is None or thing.right is None:
            continue
        x0, x1, y0, y1 = thing_box(thing, ceiling)
        small = x1 - x0 < 3 * _SMALL or y1 - y0 < 3 * _SMALL
        middle, mark = ((x0 + x1) / 2, (y0 + y1) / 2), marks[thing.spec.key]
        reaches = _AROUND if small else ((0.0, 0.0), *_AROUND)
        rings = [(Balloon(middle, mark, reach, height=_RING),) for reach in reaches]
        yield Choice(rings, hides_lines=True)


def _is_read(thing: PlacedThing) -> bool:
    """Whether it is known where a thing begins and ends, up the wall too."""
    if thing.left is None or thing.right is None:
        return False
    if is_small(thing.spec.kind):
        return thing.bottom is not None or thing.top is not None
    stands = _USUAL[thing.spec.kind][0] == 0
    return (stands or thing.bottom is not None) and (
        not has_upper_edge(thing.spec.kind) or thing.top is not None
    )


def thing_box(
    thing: PlacedThing, ceiling: Fraction
) -> tuple[Fraction, Fraction, Fraction, Fraction]:
    """Left, right, lower and upper edge as drawn.

    A small square where they are not known; usual heights where they were not read.

    Parameters
    ----------
    ceiling
        Above the highest floor, up to which soffits and chimneys reach [mm].
    """
    left = thing.left.value if thing.left is not None else Fraction(0)
    right = thing.right.value if thing.right is not None else left
    if left == right:
        left, right = left - _SMALL / 2, right + _SMALL / 2
    kind = thing.spec.kind
    foot, head = map(Fraction, _USUAL[kind])
    low = thing.bottom.value if thing.bottom is not None else None
    high = thing.top.value if thing.top is not None else None
    if high is None and kind in ("soffit", "chimney"):
        high = max(ceiling, (low or foot) + _SMALL)
    if low is None:
        low = foot if high is None or high > foot else max(Fraction(0), high - (head - foot))
    if high is None:
        tall = max(_SMALL, right - left) if is_small(kind) else head - foot
        high = low + tall
    return left, right, low, high


def _width_marks(widths: tuple[FormWidth, ...], length: Fraction) -> Iterator[Element]:
    """A thin line across the wall at each height; back and front share one where they do."""
    seen: dict[Fraction, list[str]] = {}
    for each in widths:
        if each.height is not None:
            seen.setdefault(each.height.value, []).append(each.mark)
    for height, marks in seen.items():
        yield line((Fraction(0), height), (length, height), THIN, ink=Ink.SOFT)
        yield Balloon((Fraction(0), height), " ".join(marks), (-9.0, 0.0), height=_RING)


def _level_line(form: SurveyForm, level: Fraction) -> Iterator[Element]:
    yield line((Fraction(0), level), (form.length, level), CENTRE)
    yield Text((form.length, level), "level line", 2.2, anchor="start", shift_mm=(2.0, 0.0))
    for each in form.stations:
        if each.depth == "back":
            at = (min(each.along.value, form.length), level)
            yield Balloon(at, each.mark, (0.0, 5.0), height=_RING)


def _along(form: SurveyForm, unit: Unit) -> Iterator[Element]:
    """Edges of what is on the wall and its length, from the left end."""
    stops: dict[Fraction, Stop] = {}
    for thing in form.wall.things:
        for edge in (thing.left, thing.right):
            if edge is not None and edge.value:
                stops.setdefault(edge.value, Stop(edge.value, measure_of(edge, unit)))
    if form.wall.width is not None:
        width = form.wall.width
        stops[width.value] = Stop(width.value, measure_of(width, unit), emphasis=True)
    if stops:
        lowest = -max(
            (each.down.value for each in form.stations if each.down), default=Fraction(0)
        )
        base = min(
            Fraction(0), lowest + (form.wall.floor.value if form.wall.floor else Fraction(0))
        )
        yield Running("below", base, Fraction(0), tuple(stops.values()))
