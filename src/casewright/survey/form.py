"""The survey form of a wall: a line for every reading, taken or still missing."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from string import ascii_uppercase

from casewright.dims import Chain, Dim, Place, Unit, size_text
from casewright.survey.fixed_things import PlacedThing
from casewright.survey.specs import (
    Depth,
    FixedKind,
    has_upper_edge,
    is_small,
    stands_on_floor,
)
from casewright.survey.usual import (
    NEAR_HEIGHT,
    cited,
    heights_stood_for,
    usual_height,
    usual_heights,
    usual_station,
    usual_stations,
)
from casewright.survey.walls import SurveyedWall

__all__ = [
    "FORM", "FormStation", "FormWidth", "SurveyForm", "asks_heights", "form_place", "missing",
    "survey_form",
]  # fmt: skip

FORM = "form"
"""Under which the numbers of survey forms stand on the chain, when one of them is asked for."""

_NEAR_ALONG = Fraction(305)
_UNREAD = (None, None, None)
_USUAL_WIDTH = Fraction(3048)
_NO_STUD = Fraction(640)
"""Studs stand 16 in or at the most 24 in apart (common practice), and readings stray [mm]."""


@dataclass(frozen=True, slots=True)
class FormWidth:
    """A width on the form.

    Parameters
    ----------
    mark
        Letter on the drawing.
    height
        Above the floor [mm]; None: not told.
    dim
        As read [mm]; None: still missing.
    """

    mark: str
    height: Dim | None
    depth: Depth
    dim: Dim | None


@dataclass(frozen=True, slots=True)
class FormStation:
    """A station on the form.

    Parameters
    ----------
    mark
        Number on the drawing.
    along
        From the wall's left end [mm].
    down, up, whole
        As read [mm]; None: still missing.
    """

    mark: str
    along: Dim
    depth: Depth
    down: Dim | None
    up: Dim | None
    whole: Dim | None


@dataclass(frozen=True, slots=True)
class SurveyForm:
    """Lines for all readings of a wall, in the order in which one takes them.

    Parameters
    ----------
    wall
        As read.
    place
        Where its numbers are named.
    length
        Of the wall as drawn: its narrowest reading, or a usual one [mm].
    """

    wall: SurveyedWall
    place: Place
    length: Fraction
    widths: tuple[FormWidth, ...]
    stations: tuple[FormStation, ...]


def form_place(chain: Chain, wall: SurveyedWall) -> Place:
    """Where the numbers of a wall's form are named."""
    return chain.place(FORM).at(wall.spec.key)


def survey_form(wall: SurveyedWall, unit: Unit, chain: Chain | None = None) -> SurveyForm:
    """What was read of a wall, and where the usual readings are still missing.

    Parameters
    ----------
    chain
        On which the usual places are entered; None: one of the form's own.
    """
    place = form_place(chain or Chain(), wall)
    length = wall.width or cited(place, "length", _USUAL_WIDTH, "a usual wall, until it is read")
    widths = sorted(
        _widths(wall, unit, place),
        key=lambda row: (row[1] == "front", row[0] is None, row[0].value if row[0] else 0),
    )
    stations = sorted(
        _stations(wall, length, unit, place),
        key=lambda row: (row.depth == "front", row.along.value),
    )
    return SurveyForm(
        wall,
        place,
        length.value,
        tuple(FormWidth(_letter(n), *row) for n, row in enumerate(widths)),
        tuple(replace(row, mark=str(n)) for n, row in enumerate(stations, start=1)),
    )


def _letter(number: int) -> str:
    return ascii_uppercase[number % 26] * (number // 26 + 1)


_WidthRow = tuple[Dim | None, Depth, Dim | None]


def _widths(wall: SurveyedWall, unit: Unit, place: Place) -> Iterator[_WidthRow]:
    """Those read, then the usual ones that none of them stands for."""
    usual: list[tuple[Fraction, Depth]] = [
        (height, depth) for depth in _depths() for height in usual_heights(unit)
    ]
    for n, (width, dim) in enumerate(wall.widths(), start=1):
        yield wall.at.get(f"width_{n}.height"), width.depth, dim
        usual = [each for each in usual if not _is_at(each, width.height, width.depth)]
    for height, depth in usual:
        own = [each.height for each in wall.spec.widths if each.depth == depth]
        told = [each for each in own if each is not None]
        if height not in heights_stood_for(told, len(own) - len(told), unit):
            yield usual_height(place, height, unit), depth, None


def _depths() -> tuple[Depth, ...]:
    return ("back", "front")


def _is_at(place: tuple[Fraction, Depth], height: Fraction | None, depth: Depth) -> bool:
    return height is not None and depth == place[1] and abs(height - place[0]) <= NEAR_HEIGHT


def _stations(wall: SurveyedWall, length: Dim, unit: Unit, place: Place) -> Iterator[FormStation]:
    """Those read, then the usual ones that none of them is near; none has its mark yet."""
    for n, each in enumerate(wall.spec.stations, start=1):
        own = f"station_{n}"
        down, up, whole = (wall.read.get(f"{own}.{name}") for name in ("down", "up", "whole"))
        yield FormStation("", wall.at[f"{own}.along"], each.depth, down, up, whole)
    known = [each.along for each in wall.spec.stations if each.depth == "back"]
    for along in usual_stations(length.value, unit):
        if all(abs(along - each) > _NEAR_ALONG for each in known):
            yield FormStation("", usual_station(place, length, along, unit), "back", *_UNREAD)


def asks_heights(kind: FixedKind) -> tuple[bool, bool]:
    """Whether a thing's lower and its upper edge are asked for."""
    return not stands_on_floor(kind), has_upper_edge(kind)


def missing(form: SurveyForm, unit: Unit) -> Iterator[str]:
    """What is still to be read of a wall, in words, in the order of the form."""
    absent = [each for each in form.widths if each.dim is None]
    for depth in _depths():
        told = [each.height for each in absent if each.depth == depth]
        heights = [size_text(height.value, unit) for height in told if height is not None]
        if heights:
            yield f"its width at the {depth}, {' and '.join(heights)} above the floor"
    yield from _missing_heights(form, unit)
    for thing in form.wall.things:
        yield from _missing_of(thing)
    yield from _missing_studs(form, unit)
    plumb = {each.of for each in form.wall.spec.plumbs}
    if not plumb:
        yield "how plumb it stands, and the walls at its ends"


def _missing_heights(form: SurveyForm, unit: Unit) -> Iterator[str]:
    for name, words in (("down", "down to the floor"), ("up", "up to the ceiling")):
        absent_at = [s for s in form.stations if getattr(s, name) is None]
        for depth, at in (("back", ""), ("front", ", at the front")):
            places = [size_text(s.along.value, unit) for s in absent_at if s.depth == depth]
            if places:
                yield f"the level line {words}, {', '.join(places)} from the left end{at}"


def _missing_studs(form: SurveyForm, unit: Unit) -> Iterator[str]:
    if not form.wall.spec.studs:
        yield "its studs"
    elif not any(stud.probed for stud in form.wall.spec.studs):
        yield "its studs probed with a thin nail, where a case will hide the hole"
    if gaps := list(_stretches_without_stud(form.wall)):
        places = (" to ".join(size_text(end, unit) for end in gap) for gap in gaps)
        yield f"its studs from {' and '.join(places)}: they seldom stand so far apart"
    if not form.wall.spec.hollows:
        yield "how flat it is at its studs, where cases will be screwed to it"


def _stretches_without_stud(wall: SurveyedWall) -> Iterator[tuple[Fraction, Fraction]]:
    """Where studs were found, stretches of wall too long to be without one: windows end them."""
    if not wall.studs or wall.width is None:
        return
    open_to = [
        (thing.left.value, thing.right.value)
        for thing in wall.things
        if thing.spec.kind in ("window", "door") and thing.left and thing.right
    ]
    ends = [(stud.value, stud.value) for stud in wall.studs] + open_to
    low = Fraction(0)
    for left, right in sorted([*ends, (wall.width.value, wall.width.value)]):
        if left - low > _NO_STUD:
            yield low, left
        low = max(low, right)


def _missing_of(thing: PlacedThing) -> Iterator[str]:
    title, (lower, upper) = thing.spec.title, asks_heights(thing.spec.kind)
    spec = thing.spec
    one_edge = spec.width is spec.centre is None and (spec.left is None) != (spec.right is None)
    if thing.left is None or thing.right is None or one_edge:
        yield f"where {title} begins and ends along the wall"
    if is_small(thing.spec.kind):
        if thing.bottom is None and thing.top is None:
            yield f"how high {title} is"
    elif (lower and thing.bottom is None) or (upper and thing.top is None):
        yield f"how high {title} reaches, from where to where"
    if thing.spec.kind == "counter" and thing.highest is None:
        yield f"the level line down to {title}, at three places"
