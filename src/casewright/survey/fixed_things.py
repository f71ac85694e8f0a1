"""Edges of what is on a wall: from the readings that give them, the worse where two do."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from casewright.dims import Dim, Place, greatest, least
from casewright.survey.specs import FixedThing, WallSpec, is_small, stands_on_floor

__all__ = ["PlacedThing", "place_things"]


@dataclass(frozen=True, slots=True)
class PlacedThing:
    """What is on a wall, with its edges as far as readings give them.

    Parameters
    ----------
    left, right
        From the wall's left end [mm]; of several ways to reach an edge the one that leaves less
        beside the thing. Both are the same where only the middle of what is small is known, or
        only one edge.
    bottom, top
        Above the floor [mm]; likewise.
    highest
        Of a counter: from the level line down to its highest place [mm].
    """

    spec: FixedThing
    left: Dim | None
    right: Dim | None
    bottom: Dim | None
    top: Dim | None
    highest: Dim | None


def place_things(
    place: Place, wall: WallSpec, read: Mapping[str, Dim], width: Dim | None
) -> tuple[PlacedThing, ...]:
    """Edges of everything on a wall.

    Parameters
    ----------
    read
        Readings by their names at the wall.
    width
        The narrowest reading of the wall [mm], or None.
    """
    placed: dict[str, PlacedThing] = {}
    waiting = {thing.key: thing for thing in wall.things}
    while waiting:
        ready = [each for each in waiting.values() if each.after not in waiting]
        for thing in ready:
            before = placed.get(thing.after) if thing.after else None
            placed[thing.key] = _placed(place, thing, read, (width, before))
            del waiting[thing.key]
        if not ready:
            break  # each after another of them: the job file's checks refuse that first
    return tuple(placed[each.key] for each in wall.things if each.key in placed)


def _placed(
    place: Place,
    thing: FixedThing,
    read: Mapping[str, Dim],
    around: tuple[Dim | None, PlacedThing | None],
) -> PlacedThing:
    wall, before = around
    own = place.at("fixed").at(thing.key)

    def of(name: str) -> Dim | None:
        return read.get(f"fixed.{thing.key}.{name}")

    left, width, right, centre = of("left"), of("width"), of("right"), of("centre")
    start = left
    if thing.after is not None:
        reached = before.right if before else None
        start = left + reached if left is not None and reached is not None else None
    end = wall - right if wall is not None and right is not None else None
    half = width / 2 if width is not None else None
    lefts = [start, _less(end, width), _less(centre, half)]
    rights = [_sum(start, width), end, _sum(centre, half)]
    if width is None and centre is not None:
        lefts, rights = [*lefts, centre], [*rights, centre]
    elif width is None and is_small(thing.kind) and (start is None) != (end is None):
        # The one edge stands for its middle: screws must keep off the cable behind it.
        lefts, rights = [start, end], [start, end]
    bottom, height, top = of("bottom"), of("height"), of("top")
    uppers = [_sum(bottom, height), top]
    if bottom is None and stands_on_floor(thing.kind):
        uppers.insert(0, height)
    tops = [dim for n in range(1, len(thing.tops) + 1) if (dim := of(f"top_{n}")) is not None]
    return PlacedThing(
        spec=thing,
        left=_named(own, "left_edge", lefts, worst=least),
        right=_named(own, "right_edge", rights, worst=greatest),
        bottom=_named(own, "lower_edge", [bottom, _less(top, height)], worst=least),
        top=_named(own, "upper_edge", uppers, worst=greatest),
        highest=own.let("highest", least(*tops)) if tops else None,
    )


def _sum(one: Dim | None, other: Dim | None) -> Dim | None:
    return None if one is None or other is None else one + other


def _less(one: Dim | None, other: Dim | None) -> Dim | None:
    return None if one is None or other is None else one - other


def _named(place: Place, name: str, ways: list[Dim | None], *, worst: object) -> Dim | None:
    known = [way for way in ways if way is not None]
    if not known:
        return None
    pick = least if worst is least else greatest
    return place.let(name, known[0] if len(known) == 1 else pick(*known))
