"""Panes where the code asks for safety glazing of a category.

All glass here is tempered, or it is plastic. Where somebody may walk into it or fall against it
the code asks for more: glazing tested for its place, with the mark of its category on it. One such
place is a pane over 9 sq ft (0.84 m2) that begins under 18 in (457 mm) and ends over 36 in (914
mm) above the floor, with a surface to walk on within 36 in of it: all four together. That there is
one before a case is taken for granted. Others are a pane that begins under 60 in (1524 mm) within
24 in (610 mm) of a door of the room on its wall, or, round an inside corner, of the hinges of a
door that swings in (`swing`; while that is not told, of either edge); one under 60 in within 60 in
(1524 mm) of a `tub` or a `shower`; one that begins under 36 in within 60 in of `stairs`. Those
stand among what is fixed on the walls. Distances are in plan, heights from the highest floor. A
pane counts as it is cut, with the edge that its rebate hides: it is smaller in sight. Category I
does up to 9 sq ft, category II over that; plastic does where it bears the mark of its own test,
and a film glued on makes no safety glass. Islands and cases in no run are not looked at, nor are
pools, ramps, and stairs or water that the job does not tell of: there the code has more places.
Whether doors of cabinets count is the building inspector's word: ask before the glass is ordered,
for tempered glass cannot be cut.

Passes
------
Glass doors of an upper, far from any door.

Fails
-----
A glass door beside the door of the room; one of a vanity 30 in from the tub.

Sources
-------
`irc`: R308.4.2 and R308.4.3, all six figures read in secondary copies; 16 CFR 1201 for the
categories, their area read in a secondary copy. From memory: the door round a corner; R308.4.5,
water; R308.4.6 and R308.4.7, stairs, taken together by the farther distance; that plastic is
judged by ANSI Z97.1, and that films count for nothing.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from math import isqrt
from typing import NamedTuple

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.checks.rods import outer_box
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import Dim, Given, Origin, Told, Way, tell
from casewright.findings import Reckoning, Severity
from casewright.room.footprints import rectangle
from casewright.room.model import Room
from casewright.room.on_walls import CasePlace, cases_on_walls
from casewright.room.plan_distance import apart_squared
from casewright.room.wall_stands import Spot, WallFrame, joined_walls, wall_frames
from casewright.sources import FOOT, INCH
from casewright.stock import Glazing
from casewright.survey.fixed_things import PlacedThing
from casewright.survey.specs import FixedKind

__all__ = ["RULE"]

_NAME = "safety glass"
_UP = Origin("solved", "where its lower edge lies, above the highest floor")
_FAR = Origin("solved", "in plan, from the pane to what it is near to")
_SHIFT = Origin("solved", "in plan, along its wall, until it is far enough")
_SIGHT = Origin("solved", "9 sq ft over the height of the pane", "irc")

_LARGE = 9 * FOOT**2
_LOW, _HIGH = 18 * INCH, 36 * INCH
_BESIDE, _DOOR_LOW = 24 * INCH, 60 * INCH
_PLACES: Mapping[FixedKind, tuple[Fraction, Fraction]] = {
    "tub": (60 * INCH, 60 * INCH),
    "shower": (60 * INCH, 60 * INCH),
    "stairs": (60 * INCH, 36 * INCH),
}
"""How near in plan, and up to which lower edge of the pane [mm]."""


class _Asked(NamedTuple):
    """Why a category is asked for, in words, and what takes the pane out of that place.

    Parameters
    ----------
    unsure
        Whether a reading that is missing decides it.
    """

    why: Told
    ways: tuple[str, ...]
    unsure: bool = False


class _Pane(NamedTuple):
    """A pane on a wall: what it takes up in plan, and its edges along the wall and up it [mm].

    Parameters
    ----------
    follows
        Where its case stands, and where it lies in that.
    """

    own: Reckoning
    follows: tuple[Dim, ...]
    wall: str
    frame: WallFrame
    corners: Sequence[Spot]
    left: Fraction
    right: Fraction
    low: Fraction


def _examine(room: Room) -> Iterator[Breach]:
    places: Mapping[str, CasePlace] | None = None
    frames: Mapping[str, WallFrame] = {}
    for case in room.cases:
        told: set[str] = set()
        for part in case.parts:
            goods = room.spec.stock.get(part.stock)
            if not isinstance(goods, Glazing) or part.group in told:
                continue
            if places is None:
                places = {each.case.key: each for each in cases_on_walls(room)}
                frames = wall_frames(room.survey)
            place = places.get(case.key)
            own = reckoning(room, _NAME, part.path)
            asked = _large(room, own, case, part)
            if asked is None and place is not None:
                asked = _near(room, _pane(own, frames, place, part), frames)
            if asked is not None:
                told.add(part.group)
                yield _breach(room, own, case, (part, asked))


def _pane(own: Reckoning, frames: Mapping[str, WallFrame], place: CasePlace, part: Part) -> _Pane:
    box, wall = outer_box(part), place.wall.spec.key
    left, right = Fraction(place.left + box.x0), Fraction(place.left + box.x1)
    corners = rectangle(frames[wall], (left, right), (Fraction(box.z0), Fraction(box.z1)))
    follows = (place.left_edge, part.placed.x)
    return _Pane(
        own, follows, wall, frames[wall], corners, left, right, Fraction(place.bottom + box.y0)
    )


def _figure(own: Reckoning, size: Fraction, note: str) -> Dim:
    """One of the code's [mm]."""
    origin = Origin("cited", f"the code: {note}", "irc")
    return own.given(f"safety_glass.{note.replace(' ', '_')}", Given(size, origin))


def _large(room: Room, own: Reckoning, case: Case, part: Part) -> _Asked | None:
    """A wide pane low down, wherever it is."""
    box = outer_box(part)
    foot = room.wall_bottom.value if case.spec.is_hung else Fraction(0)
    low, high = foot + box.y0, foot + box.y1
    area = part.finished.length.value * part.finished.width.value
    if area <= _LARGE or low >= _LOW or high <= _HIGH:
        return None
    lift = (room.wall_bottom,) if case.spec.is_hung else ()
    begins = own.worked("begins", Fraction(low), _UP, *lift, part.placed.y)
    most = Fraction(_LARGE / max(box.y1 - box.y0, 1))
    wide = own.worked("widest", most, _SIGHT, part.finished.length)
    from_low = own.length(_figure(own, _LOW, "lower edge of a large pane"))
    return _Asked(
        tell("is over 9 sq ft and begins {} above the floor", own.length(begins)),
        (
            tell("glass only from {} up: a divider with other doors below it", from_low),
            tell("a leaf at most {} wide in sight", own.length(wide)),
        ),
    )


def _near(room: Room, pane: _Pane, frames: Mapping[str, WallFrame]) -> _Asked | None:
    """The first thing on a wall that the pane is too near to; None where there is none."""
    joined = joined_walls(room.survey, pane.wall)
    round_corner = {
        other
        for corner in room.survey.corners.values()
        for pair in ((corner.spec.left, corner.spec.right),)
        for here, other in (pair, pair[::-1])
        if here == pane.wall and other in joined and not corner.spec.outside
    }
    for key in sorted(joined, key=lambda key: (key != pane.wall, key)):
        for thing in room.survey.walls[key].things:
            if thing.left is None or thing.right is None:
                continue
            asked = None
            if thing.spec.kind == "door" and pane.low < _DOOR_LOW:
                if key == pane.wall:
                    asked = _beside_door(pane, thing)
                elif key in round_corner:
                    asked = _round_corner(pane, thing, frames[key])
            elif thing.spec.kind in _PLACES:
                asked = _beside(pane, thing, frames[key])
            if asked is not None:
                return asked
    return None


def _edges(thing: PlacedThing) -> tuple[Fraction, Fraction]:
    zero = Fraction(0)
    return (
        zero if thing.left is None else thing.left.value,
        zero if thing.right is None else thing.right.value,
    )


def _far(pane: _Pane, thing: PlacedThing, gap: Fraction) -> Dim:
    """How far a pane is from something on a wall [mm]."""
    edges = (edge for edge in (thing.left, thing.right) if edge is not None)
    return pane.own.worked("far", gap, _FAR, *pane.follows, *edges)


def _beside_door(pane: _Pane, thing: PlacedThing) -> _Asked | None:
    left, right = _edges(thing)
    gap = max(left - pane.right, pane.left - right, Fraction(0))
    if gap >= _BESIDE:
        return None
    name, far = thing.spec.title, _far(pane, thing, gap)
    nearest = _figure(pane.own, _BESIDE, "nearest to a door")
    by = pane.own.let("farther", nearest - far)
    return _Asked(
        tell("lies {} beside {}", pane.own.length(far), name), _ways(pane, by, thing, _DOOR_LOW)
    )


def _round_corner(pane: _Pane, thing: PlacedThing, frame: WallFrame) -> _Asked | None:
    left, right = _edges(thing)
    edges = {"left": (left,), "right": (right,)}.get(thing.spec.swing or "", (left, right))
    spots = [(frame.at(at, Fraction(0)),) for at in edges]
    gap, spot = min((apart_squared(pane.corners, spot), spot) for spot in spots)
    if gap >= _BESIDE**2:
        return None
    far = _far(pane, thing, _root(gap))
    name, off = thing.spec.title, pane.own.length(far)
    nearest = _figure(pane.own, _BESIDE, "nearest to a door")
    by = pane.own.worked("farther", _shift(pane, spot, _BESIDE), _SHIFT, far, nearest)
    ways = _ways(pane, by, thing, _DOOR_LOW)
    if thing.spec.swing is not None:
        return _Asked(tell("lies {} from the hinges of {}, round the corner", off, name), ways)
    swings = f'swing = "left" or "right" under {name}, the side of its hinges, if it opens inward'
    why = tell(
        "lies {} from {}, round the corner, of which nobody has told how it opens", off, name
    )
    return _Asked(why, (swings, *ways), unsure=True)


def _beside(pane: _Pane, thing: PlacedThing, frame: WallFrame) -> _Asked | None:
    least, low = _PLACES[thing.spec.kind]
    out = Fraction(1) if thing.spec.out is None else thing.spec.out.value
    corners = rectangle(frame, _edges(thing), (Fraction(0), out))
    gap = apart_squared(pane.corners, corners)
    if pane.low >= low or gap >= least**2:
        return None
    name, far = thing.spec.title, _far(pane, thing, _root(gap))
    nearest = _figure(pane.own, least, f"nearest to a {thing.spec.kind}")
    by = pane.own.worked("farther", _shift(pane, corners, least), _SHIFT, far, nearest)
    why = tell("lies {} from {}", pane.own.length(far), name)
    return _Asked(why, _ways(pane, by, thing, low))


def _ways(pane: _Pane, by: Dim, thing: PlacedThing, low: Fraction) -> tuple[str, ...]:
    own, name = pane.own, thing.spec.title
    up = own.length(_figure(own, low, f"lower edge near a {thing.spec.kind}"))
    return (
        tell("the glass {} farther from {}, along its wall", own.about(by, "by", Way.UP), name),
        tell("glass only from {} up", up),
    )


def _shift(pane: _Pane, corners: Sequence[Spot], far: Fraction) -> Fraction:
    """How far a pane has to go along its wall to be so far from a thing [mm]."""
    mine = [pane.frame.seen(spot) for spot in pane.corners]
    seen = [pane.frame.seen(spot) for spot in corners]
    (left, right), (low, high) = (
        (min(each[0] for each in spots), max(each[0] for each in spots)) for spots in (mine, seen)
    )
    out = max(
        min(each[1] for each in one) - max(each[1] for each in other)
        for one, other in ((mine, seen), (seen, mine))
    )
    need = _root(max(far**2 - max(out, Fraction(0)) ** 2, Fraction(0))) + Fraction(1, 100)
    to_right, to_left = high + need - left, right - low + need
    fits = [to_right] if right + to_right <= pane.frame.length else []
    fits += [to_left] if to_left <= left else []
    return min(fits or (to_right, to_left))


def _root(square: Fraction) -> Fraction:
    """Root of an area, down to a hundredth of a millimetre, so that what is told is enough."""
    return Fraction(isqrt(int(square * 10_000)), 100)


def _breach(room: Room, own: Reckoning, case: Case, found: tuple[Part, _Asked]) -> Breach:
    part, asked = found
    area = part.finished.length.value * part.finished.width.value
    category = "II" if area > _LARGE else "I"
    goods = room.spec.stock[part.stock]
    plastic = isinstance(goods, Glazing) and goods.material == "acrylic"
    order = (
        "ask the inspector whether this plastic does, and order it with the mark of its test"
        if plastic
        else f"ask the inspector, then order it tested to category {category}, its mark etched in"
    )
    return Breach(
        part.path,
        tell(
            "the {} of {} {}: the code asks for safety glazing of category {} there",
            part.title,
            case.spec.title,
            asked.why,
            category,
        ),
        measured=f"{float(area / FOOT**2):.1f} sq ft",
        limit=f"category {category}",
        remedies=(order, *asked.ways, "a panel of wood"),
        severity=Severity.NOTE if plastic or asked.unsure else Severity.CARE,
        own=own,
    )


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "irc", _examine)
