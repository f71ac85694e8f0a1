"""A wall on the chain: every reading, and the worst of them in its direction."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import Chain, Dim, Given, Origin, Place, greatest, least, total
from casewright.survey.fixed_things import PlacedThing, place_things
from casewright.survey.readings import Reading, enter_reading
from casewright.survey.specs import FixedThing, Station, WallSpec, WidthReading

__all__ = ["SurveyedWall", "places_of", "readings_of", "survey_wall", "width_between"]

_HERE = Origin("chosen", "where it was read")
_THING = ("left", "width", "right", "centre", "bottom", "height", "top")


@dataclass(frozen=True, slots=True)
class SurveyedWall:
    """A wall as read.

    Parameters
    ----------
    place
        Where its numbers are named.
    read
        Every reading by its name at that place [mm].
    at
        Where each was read, and what else the file says of the wall, by its name there [mm].
    width
        The narrowest [mm]; None when no width was read. `spread` is how much the widest is wider.
    floor, ceiling
        From the level line down to the highest floor and up to the lowest ceiling [mm].
    fall
        From the highest floor to the lowest [mm].
    clear
        From the highest floor to the lowest ceiling [mm].
    things
        What is on it, with its edges.
    studs
        Their middles from the left end [mm], in the order of the file.
    """

    spec: WallSpec
    place: Place
    read: Mapping[str, Dim]
    at: Mapping[str, Dim]
    width: Dim | None
    spread: Dim | None
    floor: Dim | None
    ceiling: Dim | None
    fall: Dim | None
    clear: Dim | None
    things: tuple[PlacedThing, ...]
    studs: tuple[Dim, ...]

    def widths(self) -> tuple[tuple[WidthReading, Dim], ...]:
        """Each width as it was asked for and read."""
        return tuple(
            (each, self.read[f"width_{n}"]) for n, each in enumerate(self.spec.widths, start=1)
        )


def readings_of(wall: WallSpec) -> Iterator[tuple[str, Reading]]:
    """Every reading of a wall with its name, in the order of the file's reference."""
    for n, width in enumerate(wall.widths, start=1):
        yield f"width_{n}", width.reading
    for n, station in enumerate(wall.stations, start=1):
        yield from _given(f"station_{n}", station, ("down", "up", "whole"))
    for n, plumb in enumerate(wall.plumbs, start=1):
        yield f"plumb_{n}", plumb.lean
    for n, stud in enumerate(wall.studs, start=1):
        yield f"stud_{n}", stud.middle
    for n, hollow in enumerate(wall.hollows, start=1):
        yield f"hollow_{n}", hollow.off
    for thing in wall.things:
        yield from _given(f"fixed.{thing.key}", thing, _THING)
        for n, stand in enumerate(thing.tops, start=1):
            yield f"fixed.{thing.key}.top_{n}", stand.down


def places_of(wall: WallSpec) -> Iterator[tuple[str, Given]]:
    """Where readings of a wall were taken, and what else the file says of it, with its name."""
    found: list[tuple[str, Fraction]] = []
    for n, width in enumerate(wall.widths, start=1):
        found += [] if width.height is None else [(f"width_{n}.height", width.height)]
    found += [(f"station_{n}.along", each.along) for n, each in enumerate(wall.stations, start=1)]
    found += [(f"plumb_{n}.over", each.over) for n, each in enumerate(wall.plumbs, start=1)]
    for n, hollow in enumerate(wall.hollows, start=1):
        found += [(f"hollow_{n}.along", hollow.along), (f"hollow_{n}.height", hollow.height)]
    for thing in wall.things:
        found += [(f"fixed.{thing.key}.top_{n}.along", top.along)
                  for n, top in enumerate(thing.tops, start=1)]  # fmt: skip
    yield from ((name, Given(value, wall.read_at.get(name, _HERE))) for name, value in found)
    if wall.baseboard is not None:
        yield "baseboard.height", wall.baseboard.height
        yield "baseboard.thickness", wall.baseboard.thickness
    for thing in wall.things:
        if thing.out is not None:
            yield f"fixed.{thing.key}.out", thing.out


def _given(
    name: str, holder: Station | FixedThing, fields: Iterable[str]
) -> Iterator[tuple[str, Reading]]:
    for each in fields:
        reading: Reading | None = getattr(holder, each)
        if reading is not None:
            yield f"{name}.{each}", reading


def survey_wall(chain: Chain, wall: WallSpec) -> SurveyedWall:
    """Enter every reading of a wall, and name the numbers that follow."""
    place = chain.place(f"survey.wall.{wall.key}")
    read = {name: enter_reading(place, name, reading) for name, reading in readings_of(wall)}
    widths = [read[f"width_{n}"] for n in range(1, len(wall.widths) + 1)]
    width = place.let("width", least(*widths)) if widths else None
    spread = place.let("spread", greatest(*widths) - width) if width else None
    downs = list(_heights(read, wall.stations, "down", "up"))
    ups = list(_heights(read, wall.stations, "up", "down"))
    floor = place.let("floor", least(*downs)) if downs else None
    ceiling = place.let("ceiling", least(*ups)) if ups else None
    return SurveyedWall(
        spec=wall,
        place=place,
        read=read,
        at={name: _told(place, name, given) for name, given in places_of(wall)},
        width=width,
        spread=spread,
        floor=floor,
        ceiling=ceiling,
        fall=place.let("fall", greatest(*downs) - floor) if floor else None,
        clear=_clear(place, read, floor, ceiling),
        things=place_things(place, wall, read, width),
        studs=tuple(read[f"stud_{n}"] for n in range(1, len(wall.studs) + 1)),
    )


def _told(place: Place, name: str, given: Given) -> Dim:
    """What the file says: no reading in the shop replaces it."""
    dim = Dim("", (), given.value)
    dim.origin = given.origin
    return place.let(name, dim)


def _heights(
    read: Mapping[str, Dim], stations: Iterable[Station], own: str, other: str
) -> Iterator[Dim]:
    """Heights of one kind: as read, else what the other leaves of the whole."""
    for n, _ in enumerate(stations, start=1):
        names = (f"station_{n}.{own}", f"station_{n}.whole", f"station_{n}.{other}")
        height, whole, rest = (read.get(name) for name in names)
        if height is not None:
            yield height
        elif whole is not None and rest is not None:
            yield whole - rest


def _clear(
    place: Place, read: Mapping[str, Dim], floor: Dim | None, ceiling: Dim | None
) -> Dim | None:
    heights = [dim for name, dim in read.items() if name.endswith(".whole")]
    if floor is not None and ceiling is not None:
        heights.insert(0, total(floor, ceiling))
    return place.let("clear", least(*heights)) if heights else None


def width_between(wall: SurveyedWall, low: Fraction, high: Fraction) -> tuple[Dim, ...]:
    """Readings of the width that count for what stands between two heights.

    Those in between; at each depth also the next one below and above, since the wall may be
    narrowest on the way there; and all whose height is not known.

    Parameters
    ----------
    low, high
        Above the floor [mm].
    """
    chosen = [dim for each, dim in wall.widths() if each.height is None]
    for depth in ("back", "front"):
        known = sorted(
            ((each.height, n, dim) for n, (each, dim) in enumerate(wall.widths())
             if each.height is not None and each.depth == depth),
            key=lambda row: row[:2],
        )  # fmt: skip
        below = [dim for height, _, dim in known if height < low][-1:]
        above = [dim for height, _, dim in known if height > high][:1]
        inside = [dim for height, _, dim in known if low <= height <= high]
        chosen += [*below, *inside, *above]
    return tuple(chosen)
