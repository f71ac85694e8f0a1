"""What a layout knows of the runs round its inside corners: their boxes, doors and pulls."""

from __future__ import annotations

from collections.abc import Container, Iterator, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction

from casewright.casework.cases import Case, Door
from casewright.checks.inside_corner import out_of_corner
from casewright.checks.opens_beside import filler_beside
from casewright.dims import Measure, Origin, Told, Unit, tell
from casewright.job.layout_numbers import RunNumbers
from casewright.room.corner_neighbours import (
    CornerNeighbour,
    corner_reach,
    neighbours,
    swing_squared,
)
from casewright.room.filler_findings import WIDEST_FILLER
from casewright.room.model import Room, Run
from casewright.room.on_walls import CasePlace, cases_on_walls
from casewright.room.specs import RunSide
from casewright.sources import INCH

__all__ = ["CornerAsked", "CornerStand", "CornerStop", "corner_stand"]

_PAIR_MORE: dict[Unit, Fraction] = {"in": 2 * INCH, "mm": Fraction(50)}
"""So much wider than the widest door hung alone, a case has two, whatever their overlay [mm]."""

_PAST_THINGS = 2
"""A filler may be so many times as wide as others for the sake of what stands round a corner."""

_BARRED = (Fraction(1), Fraction(0))

Band = tuple[Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class CornerStop:
    """Why nothing that opens may stand at an end.

    Parameters
    ----------
    what
        What stands where, with the numbers.
    reliefs
        Each would do by itself, the smallest first.
    """

    what: str
    reliefs: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CornerAsked:
    """An end of a run, as its layout has it.

    Parameters
    ----------
    numbers
        Of the run: they tell its lengths.
    filler
        The least and the greatest there; twice 0 without one [mm].
    free
        Keys of the cases whose width is open.
    widths
        Least and greatest of these [mm].
    """

    numbers: RunNumbers
    side: RunSide
    filler: Band
    free: Container[str]
    widths: Band

    @property
    def room(self) -> Room:
        """The room that it stands in."""
        return self.numbers.room

    @property
    def run(self) -> Run:
        """The run whose end it is."""
        return self.numbers.run

    @property
    def at_right(self) -> bool:
        """Whether the corner is at the right end of the wall."""
        return self.side == "right"

    @property
    def off(self) -> Fraction:
        """From the corner to where its stretch begins, as the narrowest reading has it [mm]."""
        if not self.at_right:
            return self.run.begins.value
        wall = self.room.survey.walls[self.run.spec.on].width
        stretch = self.room.chain.nodes[f"run.{self.run.spec.key}.wall"].value
        ends = self.run.begins.value + stretch
        return max((ends if wall is None else wall.value) - ends, Fraction(0))

    def told(self, name: str, size: Fraction, note: str, *rests_on: str) -> Measure:
        """A length as a sentence tells it.

        Parameters
        ----------
        name
            What it is, at this end of the run.
        note
            Where it comes from, in words.
        rests_on
            Paths of numbers of the room that it follows.
        """
        rests = list(self.numbers.of_room(*rests_on))
        origin = Origin("solved", note)
        return self.numbers.told(self.numbers.number(f"{self.side}_{name}", size, origin, rests))


@dataclass(frozen=True, slots=True)
class CornerStand:
    """How the cases of a run may stand at an end of it that is in an inside corner.

    Parameters
    ----------
    needs
        By key of a case, the least filler beside it there [mm].
    bands
        Least and greatest width there [mm], of those that are held to one; the least above the
        greatest: it cannot stand there.
    stops
        Why not.
    is_shut
        Whether none may stand there.
    """

    needs: Mapping[str, Fraction] = field(default_factory=dict)
    bands: Mapping[str, Band] = field(default_factory=dict)
    stops: tuple[CornerStop, ...] = ()
    is_shut: bool = False


def corner_stand(asked: CornerAsked) -> CornerStand:
    """What stands round the corner at an end of a run, as each case of it would meet that.

    A run that keeps out of the corner begins where it need not care.
    """
    run, side = asked.run, asked.side
    places = {at.case.key: at for at in cases_on_walls(asked.room) if at.run is run}
    if not places or run.spec.end(side) == "corner":
        return CornerStand()
    met = list(_met(asked))
    for own, other in met:
        if _is_met(asked, own, other):
            return CornerStand(stops=(_both_in(asked, own, other),), is_shut=True)
    needs, bands, stops = dict[str, Fraction](), dict[str, Band](), dict[str, CornerStop]()
    for key, place in places.items():
        if side in (place.case.spec.blind, place.case.spec.diagonal):
            continue
        for own, other in met:
            need, band = _past(asked, replace(own, place=place), other)
            needs[key] = max(needs.get(key, Fraction(0)), need)
            if band is not None:
                bands[key] = _both(bands.get(key), band)
                stops[key] = _shut_in(asked, replace(own, place=place), other, band)
        need, stop = _past_things(asked, place)
        needs[key] = max(needs.get(key, Fraction(0)), need)
        if stop is not None:
            bands[key], stops[key] = _BARRED, stop
    barred = {key for key, (low, high) in bands.items() if low > high}
    ends = _ends(asked, places)
    first = next((stops[key] for key in ends if key in stops), None)
    others = [key for key in places if key not in bands and key not in ends]
    told = () if first is None else (_with_others(asked, first, others),)
    return CornerStand(needs, bands, told, barred >= ends)


def _ends(asked: CornerAsked, places: Mapping[str, CasePlace]) -> set[str]:
    """Keys of the cases that may come to stand at the end."""
    corner = {k for k, at in places.items()
              if asked.side in (at.case.spec.blind, at.case.spec.diagonal)}  # fmt: skip
    if asked.run.spec.is_free:
        return corner or set(places)
    keys = [key for key in asked.run.spec.places if key in places]
    return {keys[-1 if asked.at_right else 0]}


def _met(asked: CornerAsked) -> Iterator[tuple[CornerNeighbour, CornerNeighbour]]:
    """Its own case at the corner, and that of each run round it that is as high."""
    for left, right in neighbours(asked.room):
        own, other = (left, right) if asked.at_right else (right, left)
        if own.place.run is asked.run:
            yield own, other


def _is_met(asked: CornerAsked, own: CornerNeighbour, other: CornerNeighbour) -> bool:
    """Whether both boxes would have one place, and no filler helps."""
    low, high = (asked.off + each for each in asked.filler)
    in_it = other.out < own.depth and low < other.depth
    return in_it and high < corner_reach(asked.room, other)


def _past(
    asked: CornerAsked, own: CornerNeighbour, other: CornerNeighbour
) -> tuple[Fraction, Band | None]:
    """The least filler, and the widths, with which a case opens past the run round the corner."""
    low, high = asked.filler
    reach = corner_reach(asked.room, other) - asked.off
    if low < reach <= high and (other.out < own.depth or other.depth <= asked.off + low):
        return reach, None
    needs, band = [Fraction(0)], None
    for bare, found in _fronts_shut(asked, replace(own, out=asked.off + low), other):
        clear = other.depth - asked.off - bare
        if clear <= high:
            needs.append(clear)
        else:
            band = _both(band, found)
    return max(needs), band


def _fronts_shut(
    asked: CornerAsked, own: CornerNeighbour, other: CornerNeighbour
) -> Iterator[tuple[Fraction, Band]]:
    """What does not open before the other run: the edge of box beside it, and the widths let."""
    case = own.place.case
    slides = {drawer.front: drawer.slide_length.value for drawer in case.drawers}
    for front in case.wall_fronts:
        covered = other.depth - own.from_corner(front)
        space = max(other.out - front.z.value - front.thickness.value, Fraction(0))
        if covered <= 0:
            continue
        if front.path in slides:
            if space < slides[front.path]:
                yield own.bare(front), _BARRED
        elif isinstance(front, Door):
            band = _door_band(asked, case, front, space)
            if band is None:
                wide = min(covered, front.width.value)
                if space**2 < swing_squared(front, wide, at_right=own.at_right):
                    yield own.bare(front), _BARRED
            elif band != asked.widths:
                yield own.bare(front), band


def _door_band(asked: CornerAsked, case: Case, door: Door, space: Fraction) -> Band | None:
    """Widths at which doors are no wider than the space before them; None: it has its width."""
    if case.key not in asked.free:
        return None
    low, high = asked.widths
    leaves = case.spec.front.leaves if case.spec.front is not None else None
    alone = asked.room.spec.style["widest_single_door"].value + _PAIR_MORE[asked.room.spec.unit]
    single, pair = (low, min(space, high)), (max(low, alone), min(2 * space, high))
    if leaves == 1 or space >= high:
        return single
    if leaves == 2 or space >= alone:
        return low, pair[1]
    # Between the widest single door that opens and the narrowest pair: the nearer one.
    share = case.width.value
    is_single = pair[0] > pair[1] or (low <= space and share - space <= pair[0] - share)
    return single if is_single else pair


def _both(one: Band | None, other: Band) -> Band:
    """The widths that two bands have in common."""
    if one is None:
        return other
    return max(one[0], other[0]), min(one[1], other[1])


def _past_things(asked: CornerAsked, place: CasePlace) -> tuple[Fraction, CornerStop | None]:
    """The least filler with which a case opens past what stands out round the corner."""
    case = place.case
    left = asked.off
    if asked.at_right and place.wall.width is not None:
        left = place.wall.width.value - asked.off - case.overall_width.value
    widest = _widest_leaf(asked, case) if case.key in asked.free else None
    found = filler_beside(asked.room, replace(place, left=left), widest, at_right=asked.at_right)
    if found is None:
        return Fraction(0), None
    need, thing = found
    need += asked.room.spec.style["cut_step"].value
    most = max(asked.filler[1], _PAST_THINGS * WIDEST_FILLER[asked.room.spec.unit])
    if need <= most and asked.filler[1]:
        return need, None
    title, out = thing.spec.title, next(_stands_out(asked, thing.spec.key), "as a casing does")
    wide = asked.told(f"{case.key}_filler", need, f"to open {case.spec.title} past {title}",
                      f"{case.key}.overall_width", "style.cut_step")  # fmt: skip
    what = tell(
        "at its {} end what opens of {} would strike {} round the corner, which stands out {}: a "
        "filler of {} is needed, and layouts make none as wide",
        asked.side, case.spec.title, title, out, wide,
    )  # fmt: skip
    return need, CornerStop(
        what,
        (
            tell("widths written for its cases, so that a filler of {} is left", wide),
            "a front that does not open there, or a door hinged on its other side",
        ),
    )


def _stands_out(asked: CornerAsked, thing: str) -> Iterator[Measure]:
    """How far a thing round the corner stands out of its wall, where that was told."""
    for key in asked.room.survey.walls:
        for dim in asked.numbers.of_room(f"survey.wall.{key}.fixed.{thing}.out"):
            yield asked.numbers.told(dim)


def _widest_leaf(asked: CornerAsked, case: Case) -> Fraction:
    """The widest leaf that a case whose width is open may get [mm]."""
    widest, leaves = asked.widths[1], case.spec.front.leaves if case.spec.front else None
    alone = asked.room.spec.style["widest_single_door"].value
    return widest if leaves == 1 else widest / 2 if leaves == 2 else max(alone, widest / 2)


def _shut_in(
    asked: CornerAsked, own: CornerNeighbour, other: CornerNeighbour, band: Band
) -> CornerStop:
    fronts = own.place.case.fronts
    face = max((each.z.value + each.thickness.value for each in fronts), default=own.depth)
    space = max(other.out - face, Fraction(0))
    low, high = band
    case, title = own.place.case, other.place.case.spec.title
    name, deep = case.key, f"{other.place.case.key}.depth"
    opens = Told("nothing")
    if low <= high:
        note = f"that doors of {case.spec.title} open before {title}"
        opens = tell(
            "only a case of {} to {}",
            asked.told(f"{name}_narrowest", low, f"least width so {note}"),
            asked.told(f"{name}_widest", high, f"greatest width so {note}", deep),
        )
    what = tell(
        "at its {} end {} opens: {} of the run round the corner stands {} before its fronts, as "
        "far as {} out of the corner",
        asked.side, opens, title,
        asked.told(f"{name}_space", space, f"from its fronts to {title}", f"{name}.depth"),
        asked.told(f"{name}_past", other.depth, f"how far {title} reaches, pulls and all", deep),
    )  # fmt: skip
    return CornerStop(what, out_of_corner(asked.room, own, other, asked.numbers.own))


def _with_others(asked: CornerAsked, stop: CornerStop, others: list[str]) -> CornerStop:
    """With the case that may stand there, which is less to change than any other."""
    if not others or asked.run.spec.is_free:
        return stop
    way = f"{others[0]} at that end instead, which does open there or need not"
    return replace(stop, reliefs=(way, *stop.reliefs))


def _both_in(asked: CornerAsked, own: CornerNeighbour, other: CornerNeighbour) -> CornerStop:
    """Both runs go into the corner: the one that opens nothing there may, the other keeps out."""
    names = own.place.case.spec.title, other.place.case.spec.title
    far: RunSide = "left" if asked.at_right else "right"
    keys = [run.spec.key for run in asked.room.runs]
    ways = [(own, asked.side), (other, far)]
    ways.sort(key=lambda way: (_opens_there(*way), keys.index(way[0].place.run.spec.key)))
    (stays, at), (keeps, side) = ways
    line = f'[run.{keeps.place.run.spec.key}] {side} = "corner"'
    also: tuple[str, ...] = ()
    if _opens_there(stays, at):
        shut = f"and what opens of {stays.place.case.spec.title} is shut in then"
        helps = out_of_corner(asked.room, stays, keeps, asked.numbers.own)
        also = (tell("{}: {}", shut, helps[0]),)
    return CornerStop(
        f"at its {asked.side} end {names[0]} and {names[1]} of run "
        f"{other.place.run.spec.key} would stand in one another in the corner: both go into it",
        (f"one of the runs keeps out of it:\n{line}", *also),
    )


def _opens_there(own: CornerNeighbour, side: RunSide) -> bool:
    """Whether it has fronts that the run round the corner would shut in."""
    spec = own.place.case.spec
    return bool(own.place.case.fronts) and side not in (spec.blind, spec.diagonal)
