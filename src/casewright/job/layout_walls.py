"""What is on a wall already, as a layout of its runs has to know it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from casewright.dims import Unit
from casewright.layout.tasks import KeepClear
from casewright.room.door_swings import swings_beside
from casewright.room.model import Room, Run
from casewright.room.on_walls import cases_on_walls, thing_edges
from casewright.room.run_ends import waits_for
from casewright.room.specs import RunSide
from casewright.room.standing import LEAST_SHARE
from casewright.sources import INCH
from casewright.survey.specs import is_small

__all__ = ["StandsIn", "kept_clear", "parted", "standing_in"]

_PULLS: dict[Unit, Fraction] = {"in": INCH * 3 / 2, "mm": Fraction(40)}
"""Of doors and pulls before a case (common practice) [mm]."""

_AROUND = Fraction(50)
"""On either side of a thing of which only the middle is known [mm]."""


@dataclass(frozen=True, slots=True)
class StandsIn:
    """A thing on the wall where the cases of a run would stand or hang.

    Parameters
    ----------
    key, title
        Its name, in the file and in words.
    left, right
        From the wall's left end [mm].
    last
        Of several cases side by side the right one; empty: there is one.
    swing
        Of the leaf of a door round a corner, open: the end of the wall at which it is.
    """

    key: str
    title: str
    left: Fraction
    right: Fraction
    last: str = ""
    swing: RunSide | None = None


_Met = tuple[StandsIn, bool]


def _things(room: Room, run: Run) -> Iterator[_Met]:
    """What lies behind a run or in its way, and whether it is small enough for a case to hide.

    Where one case is higher than another, the lowest counts: what stands before which of them is
    seen once they have their places.
    """
    wall = room.survey.walls.get(run.spec.on)
    if wall is None:
        return
    low, high = _heights(run)
    for thing in wall.things:
        edges = thing_edges(room, thing)
        if edges is None or thing.spec.key in (run.spec.after, run.spec.before):
            continue
        left, right, bottom, top = edges
        if bottom < high and low < top and _is_along(room, run, left, right):
            spec = thing.spec
            yield StandsIn(spec.key, spec.title, left, right), is_small(spec.kind)


def _heights(run: Run) -> tuple[Fraction, Fraction]:
    """From its lower ends to the lowest of its upper ends, above the floor [mm]."""
    return run.lift.value, min(run.lift.value + case.height.value for case in run.cases)


def _is_along(room: Room, run: Run, left: Fraction, right: Fraction) -> bool:
    """Whether a stretch of the wall and the run's own overlap."""
    begins = run.begins.value
    ends = begins + room.chain.nodes[f"run.{run.spec.key}.wall"].value
    return left < ends and begins < right


def _cases(room: Room, run: Run) -> Iterator[StandsIn]:
    """Cases of other runs of its wall where its own would be, side by side as one.

    A run that hangs makes way for what stands; of two of one sort the one that is listed later
    makes way.
    """
    low, high = _heights(run)
    makes_way = {each.spec.key for each in room.runs if _makes_way(room, run, each)}
    found: dict[str, StandsIn] = {}
    for place in cases_on_walls(room):
        other = place.run.spec.key
        meet = place.bottom < high and low < place.top
        if other not in makes_way or not meet or not _is_along(room, run, place.left, place.right):
            continue
        beside, title = found.get(other), place.case.spec.title
        if beside is None or beside.right != place.left:
            beside = StandsIn(place.case.key, title, place.left, place.left)
        else:
            beside = replace(beside, title=f"{beside.title} and {title}", last=place.case.key)
        found[other] = replace(beside, right=place.right)
    yield from sorted(found.values(), key=lambda each: each.left)


def _makes_way(room: Room, run: Run, other: Run) -> bool:
    """Whether a run makes way for another of its wall."""
    if other is run or other.spec.on != run.spec.on:
        return False
    if run.spec.key in waits_for(room.spec, other.spec):
        return False
    hangs, other_hangs = bool(run.lift.value), bool(other.lift.value)
    keys = [each.key for each in room.spec.runs]
    if hangs == other_hangs:
        return keys.index(other.spec.key) < keys.index(run.spec.key)
    return hangs


def _swings(room: Room, run: Run) -> Iterator[StandsIn]:
    """Doors round the corner whose leaves would strike its cases."""
    wall = room.survey.walls.get(run.spec.on)
    if wall is None or wall.width is None or run.lift.value:
        return
    deep = max(case.depth.value for case in run.cases) + _PULLS[room.spec.unit]
    for swing in swings_beside(room, run.spec.on):
        ends = (Fraction(0), swing.sweep)
        if swing.side == "right":
            ends = (wall.width.value - swing.sweep, wall.width.value)
        if swing.free < deep and _is_along(room, run, *ends):
            door = swing.door.spec
            yield StandsIn(door.key, f"the leaf of {door.title}, open,", *ends, swing=swing.side)


def kept_clear(room: Room, run: Run, step: Fraction) -> Iterator[KeepClear]:
    """Pipes, outlets and vents behind a run: a side of a case there would have to be cut out.

    Each is as wide as it was read, or as an outlet where only its middle is known, and a side's
    thickness more on either hand.
    """
    wall = room.survey.walls.get(run.spec.on)
    if wall is None:
        return
    begins = run.begins.value
    side = max(room.chain.nodes[f"stock.{case.spec.box_stock}.thickness"].value
               for case in run.cases)  # fmt: skip
    for thing, is_hidden in _things(room, run):
        if is_hidden:
            around = side + (_AROUND if thing.left == thing.right else 0)
            low, high = thing.left - around - begins, thing.right + around - begins
            yield KeepClear(thing.title, int(low // step), int(-(-high // step)))


def parted(room: Room, run: Run, thing: StandsIn) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Keys of what stands left and right of a thing, where a run is parted at it.

    So that cases whose width is open come out as alike as can be on either side; nothing on one of
    them where it has no room for a case, or no case is left for it.
    """
    begins, places = run.begins.value, run.spec.places
    ends = begins + room.chain.nodes[f"run.{run.spec.key}.wall"].value
    if ends - thing.right < LEAST_SHARE:
        return places, ()
    if thing.left - begins < LEAST_SHARE:
        return (), places
    widths = {each.spec.key: each.width.value for each in run.appliances}
    for case in run.cases:
        given = None if case.key in run.spec.solved else case.spec.width
        widths[case.key] = Fraction(-1) if given is None else given.value

    def share(keys: tuple[str, ...], free: Fraction) -> Fraction:
        taken = sum((widths[key] for key in keys if widths[key] >= 0), Fraction(0))
        return (free - taken) / max(sum(widths[key] < 0 for key in keys), 1)

    def apart(n: int) -> Fraction:
        left, right = share(places[:n], thing.left - begins), share(places[n:], ends - thing.right)
        return abs(left - right)

    best = min(range(1, len(places)), key=apart, default=len(places))
    return places[:best], places[best:]


def standing_in(room: Room, run: Run) -> Iterator[StandsIn]:
    """Windows, doors, what stands out from the wall or in another run: no case goes there."""
    for thing, is_hidden in _things(room, run):
        if not is_hidden:
            yield thing
    yield from _cases(room, run)
    yield from _swings(room, run)
