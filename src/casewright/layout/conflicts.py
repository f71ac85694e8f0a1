"""Why nothing fits: the fewest facts that contradict each other, and the smallest relief.

Places that may not move cut the wall into stretches; what lies between two of them must fill the
stretch exactly, and no stretch asks anything of another. So the facts of one stretch are a
smallest set in conflict exactly when its least widths exceed it, or its greatest fall short of it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import permutations
from typing import Literal

from casewright.layout.tasks import EndFiller, RunPlace, WallTask

__all__ = ["LayoutConflict", "Relief", "conflicts", "relieved"]

_TRIED = 7

_MOST_MORE = 12
"""More cases than so many are not proposed for one stretch [-]."""

_LARGE = 4
"""Where more lacks than one part in so many of a narrow case, one case less is proposed."""

ReliefOf = Literal["wall", "place", "left filler", "right filler", "another", "without", "seam"]


@dataclass(frozen=True, slots=True)
class Relief:
    """One fact that, changed alone, would make room.

    Parameters
    ----------
    of, key
        What it is; the place's name for a place, or for the one whose start moves the wall's.
    steps
        By how much: narrower for places and fillers, longer for the wall; below 0 the other way
        round, where a stretch is too long to be filled. Of other cases: what they are to fill with
        the rest; of a case less, what its place lacks. Of a pinned seam, of the place that begins
        there: to the right [steps].
    count
        How many other cases [-].
    """

    of: ReliefOf
    key: str
    steps: int
    count: int = 1


@dataclass(frozen=True, slots=True)
class LayoutConflict:
    """A stretch of the wall that cannot be filled.

    Parameters
    ----------
    start, end
        Of the stretch, from the wall's left end [steps].
    places
        Keys of what must fill it.
    short
        By how much the least of all widths is longer than it; below 0: by how much the greatest
        is shorter [steps].
    reliefs
        Each of which would do alone, within what a place or filler can give.
    after, before
        Keys of the places whose pinned starts the stretch lies between; empty: an end of the wall.
    """

    start: int
    end: int
    places: tuple[str, ...]
    short: int
    reliefs: tuple[Relief, ...]
    after: str = ""
    before: str = ""


@dataclass(frozen=True, slots=True)
class _Stretch:
    start: int
    end: int
    places: tuple[RunPlace, ...]
    left: EndFiller | None
    right: EndFiller | None
    after: str = ""
    before: str = ""

    @property
    def short(self) -> int:
        """0 when it can be filled."""
        room = self.end - self.start
        least, most = self._filled()
        return max(least - room, 0) or min(most - room, 0)

    def more(self, another: tuple[int, int]) -> int:
        """The fewest more places of a band that would fill it [-]; 0: none would."""
        (least, most), room = self._filled(), self.end - self.start
        counts = range(1, _MOST_MORE + 1)
        fits = (n for n in counts if least + n * another[0] <= room <= most + n * another[1])
        return next(fits, 0)

    def _filled(self) -> tuple[int, int]:
        """The least and the most that can be filled [steps]."""
        bands = [(each.low, each.high) for each in self.places]
        bands += [(each.low, each.high) for each in (self.left, self.right) if each is not None]
        return sum(band[0] for band in bands), sum(band[1] for band in bands)


def conflicts(task: WallTask) -> tuple[LayoutConflict, ...]:
    """Every stretch that cannot be filled, left to right; none when something fits.

    Where the order is free: of the order that comes nearest to fitting.
    """
    if task.is_free:
        task = min(map(_with_doors, _orders(task)), key=_shortage)
    listed, task = task.places, _with_doors(task)
    # What a corner holds to a width is not told to be another.
    pairs = zip(listed, task.places, strict=True)
    held = {was.key for was, now in pairs if (was.low, was.high) != (now.low, now.high)}
    return tuple(
        LayoutConflict(
            each.start,
            each.end,
            tuple(place.key for place in each.places),
            each.short,
            tuple(
                relief
                for relief in _all_reliefs(task, each)
                if relief.of != "place" or relief.key not in held
            ),
            each.after,
            each.before,
        )
        for each in _stretches(task)
        if each.short
    )


def _orders(task: WallTask) -> Iterator[WallTask]:
    """Each order that may be, as listed where nothing is held or there are too many to try."""
    listed = replace(task, is_free=False, beside=())
    found = False
    ordered = any(
        place.start is not None or any(place.needs) or any(place.corners) for place in task.places
    )
    if len(task.places) <= _TRIED and ordered:
        for places in permutations(task.places):
            at = {place.key: n for n, place in enumerate(places)}
            near = all(abs(at[one] - at[other]) == 1 for one, other in task.beside)
            bare = (places[0].opening and task.left) or (places[-1].opening and task.right)
            ends = {"left": places[0], "right": places[-1]}
            held = all(p.at_end is None or ends[p.at_end] is p for p in places)
            if near and held and not bare and _passes(places):
                found = True
                yield replace(listed, places=places)
    if not found:
        yield listed


def _passes(places: Sequence[RunPlace]) -> bool:
    """Whether the places at the ends may stand there, in corners that other runs stand round."""
    ends = (places[0].corners[0], places[-1].corners[1])
    return all(band is None or band[0] <= band[1] for band in ends)


def _with_doors(task: WallTask) -> WallTask:
    """The task with fillers wide enough, and cases no wider, for what opens at its ends."""
    places = list(task.places)
    for at, side in ((0, 0), (-1, 1)):
        band, place = places[at].corners[side], places[at]
        low, high = band or (place.low, place.high)
        if max(low, place.low) <= min(high, place.high):
            places[at] = replace(place, low=max(low, place.low), high=min(high, place.high))
    task = replace(task, places=tuple(places))
    first, last = task.places[0], task.places[-1]
    needs = zip((task.left, task.right), (first.needs[0], last.needs[1]), strict=True)
    left, right = (
        replace(end, low=max(end.low, need), clears=need) if end is not None else None
        for end, need in needs
    )
    return replace(task, left=left, right=right)


def _shortage(task: WallTask) -> int:
    return sum(abs(each.short) for each in _stretches(task))


def _stretches(task: WallTask) -> Iterator[_Stretch]:
    start, held, left, after = 0, list[RunPlace](), task.left, ""
    for place in task.places:
        if place.start is not None:
            if held or left is not None or place.start != start:
                yield _Stretch(start, place.start, tuple(held), left, None, after, place.key)
            start, held, left, after = place.start, [], None, place.key
        held.append(place)
    yield _Stretch(start, task.length, tuple(held), left, task.right, after)


def _moved_seams(task: WallTask, stretch: _Stretch) -> Iterator[Relief]:
    """Pinned seams at its ends that could move without making anything beyond them worse."""
    most = _shortage(task) - abs(stretch.short)
    for key, steps in ((stretch.before, stretch.short), (stretch.after, -stretch.short)):
        relief = Relief("seam", key, steps)
        if key and _shortage(_with_seam(task, relief)) <= most:
            yield relief


def _with_seam(task: WallTask, relief: Relief) -> WallTask:
    """The task with one pinned start moved."""
    places = tuple(
        replace(place, start=place.start + relief.steps)
        if place.key == relief.key and place.start is not None
        else place
        for place in task.places
    )
    return replace(task, places=places)


def _all_reliefs(task: WallTask, stretch: _Stretch) -> Iterator[Relief]:
    """What would do alone; where much lacks, a case more or less rather than one thing shaved."""
    yield from _moved_seams(task, stretch)
    counted = list(_more_or_less(task, stretch))
    yield from counted
    large = task.another is not None and abs(stretch.short) > task.another[0]
    if not (counted and large):
        yield from _reliefs(stretch, task.another[0] if task.another is not None else 1)


def _more_or_less(task: WallTask, stretch: _Stretch) -> Iterator[Relief]:
    """The fewest more cases, or one case less."""
    short, another = stretch.short, task.another
    if another is None:
        return
    more = stretch.more(another) if short < 0 else 0
    if more:
        yield Relief("another", "", short, more)
    for place in reversed(stretch.places) if short * _LARGE > another[0] else ():
        relief = Relief("without", place.key, short)
        rest = task.places if place.opening else _without(task, place.key).places
        if any(not each.opening for each in rest) and len(rest) < len(task.places):
            left = _with_doors(replace(task, places=rest))
            if not any(each.short for each in _stretches(left)):
                yield relief
                return


def _without(task: WallTask, key: str) -> WallTask:
    rest = tuple(each for each in task.places if each.key != key)
    beside = tuple(pair for pair in task.beside if key not in pair)
    kept = tuple(each for each in task.proportions if key not in each[:2])
    return replace(task, places=rest, beside=beside, proportions=kept)


def _reliefs(stretch: _Stretch, least: int) -> Iterator[Relief]:
    """One thing wider or narrower; no case narrower than one is made here [steps]."""
    short = stretch.short
    yield Relief("wall", "", short)
    for place in stretch.places:
        if not place.opening and (short < 0 or place.low - short >= least):
            yield Relief("place", place.key, short)
    ends: tuple[tuple[ReliefOf, EndFiller | None], ...] = (
        ("left filler", stretch.left), ("right filler", stretch.right),
    )  # fmt: skip
    for of, filler in ends:
        if filler is not None and (short < 0 or filler.low - short >= filler.clears):
            yield Relief(of, "", short)


def relieved(task: WallTask, found: LayoutConflict, relief: Relief) -> WallTask:
    """The task with one fact changed as a relief says.

    A longer wall moves what stands right of the stretch along with it.
    """
    if relief.of in ("another", "without"):
        return _with_other_places(task, found, relief)
    if relief.of == "seam":
        return _with_seam(task, relief)
    if relief.of == "wall":
        places = tuple(
            replace(place, start=place.start + relief.steps)
            if place.start is not None
            and place.start >= found.end
            and place.key not in found.places
            else place
            for place in task.places
        )
        return replace(task, length=task.length + relief.steps, places=places)
    if relief.of == "left filler" and task.left is not None:
        return replace(task, left=_moved(task.left, relief.steps))
    if relief.of == "right filler" and task.right is not None:
        return replace(task, right=_moved(task.right, relief.steps))
    places = tuple(
        replace(place, low=low, high=high) if place.key == relief.key else place
        for place in task.places
        for low, high in [_widened(place.low, place.high, relief.steps)]
    )
    return replace(task, places=places)


def _with_other_places(task: WallTask, found: LayoutConflict, relief: Relief) -> WallTask:
    """The task with more cases right of a stretch, or without one."""
    if relief.of == "without" or task.another is None:
        return _without(task, relief.key)
    last = max((n for n, p in enumerate(task.places) if p.key in found.places), default=-1)
    more = (RunPlace("another", *task.another),) * relief.count
    return replace(task, places=(*task.places[: last + 1], *more, *task.places[last + 1 :]))


def _widened(low: int, high: int, steps: int) -> tuple[int, int]:
    return low - max(steps, 0), high - min(steps, 0)


def _moved(filler: EndFiller, steps: int) -> EndFiller:
    low, high = _widened(filler.low, filler.high, steps)
    return replace(filler, low=low, high=high)
