"""Up to five answers that differ in kind, each with its trade in words, the best first."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from itertools import product

from casewright.dims import Told, joined, tell
from casewright.layout.costs import clashes, stray_seams
from casewright.layout.demands import FillersAsked, LayoutDemand
from casewright.layout.one_wall import lay_out
from casewright.layout.tasks import Say, WallTask
from casewright.layout.wall_layout import WallLayout
from casewright.layout.wall_order import order_kind

__all__ = ["LayoutAnswer", "LayoutKind", "answers", "kind_of"]

_MOST = 5
_ORDERS = 2
"""Other orders looked for beside the best."""

_FAR_OFF = 200
"""An answer is not worth a look that costs as much more than the best as if a middle stood so
many half steps off what it is to stand on."""


@dataclass(frozen=True, slots=True)
class LayoutKind:
    """What makes two answers unlike; shifts within a band do not.

    Parameters
    ----------
    off
        Keys of places that do not stand on what they are to stand on.
    fillers
        Where the filler goes.
    widths
        How many different widths are built [-].
    on_seams
        Whether every seam stands on one of those it is best to stand on.
    order
        What the places look like, left to right or right to left; empty where their order is
        given.
    met
        Keys of what was to be kept clear and has a side of a case before it.
    """

    off: tuple[str, ...]
    fillers: FillersAsked | None
    widths: int
    on_seams: bool
    order: tuple[int, ...] = ()
    met: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class LayoutAnswer:
    """An answer with its trade.

    Parameters
    ----------
    layout
        The best of its kind.
    trade
        What it gives and what it takes, in words.
    """

    layout: WallLayout
    kind: LayoutKind
    trade: tuple[Told, ...]


def kind_of(asked: WallTask, layout: WallLayout) -> LayoutKind:
    """The kind of an answer to a task."""
    task = layout.task
    off = tuple(
        place.key for n, place in enumerate(task.places) if layout.off_centre(n) not in (0, 1)
    )
    order = order_kind(asked, layout.order)
    on_seams = not stray_seams(task, layout.left, layout.widths)
    met = tuple(sorted(set(clashes(task, layout.left, layout.widths))))
    return LayoutKind(off, _fillers(layout), len(_built(layout)), on_seams, order, met)


def _fillers(layout: WallLayout) -> FillersAsked | None:
    if not layout.task.has_like_fillers:
        return None
    if abs(layout.left - layout.right) <= layout.task.unseen:
        return "equal"
    # On a bare wall the mirror image is no other answer.
    return "left" if layout.left > layout.right or not layout.task.has_marks else "right"


def _built(layout: WallLayout) -> tuple[int, ...]:
    """Different widths to build, the greatest first [steps]."""
    pairs = zip(layout.task.places, layout.widths, strict=True)
    return tuple(sorted({width for place, width in pairs if not place.opening}, reverse=True))


def answers(task: WallTask, say: Say, *, best_alone: bool = False) -> tuple[LayoutAnswer, ...]:
    """The best answer and up to four of other kinds, by what they cost.

    Parameters
    ----------
    say
        How a number of steps is told: '33 1/2'.
    best_alone
        Whether the first of them is enough.
    """
    first = lay_out(task)
    if first is None:
        return ()
    best = {kind_of(task, first): first}
    for found in () if best_alone else _others(task, first):
        kind = kind_of(task, found)
        known = best.get(kind)
        if known is None or (known is not first and _rank(found) < _rank(known)):
            best[kind] = found
    ordered = sorted(best.items(), key=lambda pair: (pair[1] is not first, _rank(pair[1])))
    most = first.cost + _FAR_OFF * task.preferences.off_centre
    near = [(kind, layout) for kind, layout in ordered[:_MOST] if layout.cost <= most]
    return tuple(
        LayoutAnswer(layout, kind, tuple(_trade(layout, kind, _of(say, number))))
        for number, (kind, layout) in enumerate(near, start=1)
    )


def _of(say: Say, number: int) -> Say:
    """How the numbers of one answer are told."""
    return lambda steps, name: say(steps, f"answer_{number}.{name}")


def _rank(layout: WallLayout) -> tuple[int, tuple[int, ...]]:
    return layout.cost, (layout.left, *layout.widths)


def _others(task: WallTask, first: WallLayout) -> Iterator[WallLayout]:
    """The best that meets each demand which the best of all does not meet."""
    orders = [first.order]
    while task.is_free and len(orders) <= _ORDERS:
        found = lay_out(task, LayoutDemand(unlike=tuple(orders)))
        if found is None:
            break
        yield found
        orders.append(found.order)
    kind = kind_of(task, first)
    for demand in _demands(task):
        if not _meets(kind, first, demand):
            found = lay_out(task, demand)
            if found is not None:
                yield found


def _meets(kind: LayoutKind, layout: WallLayout, demand: LayoutDemand) -> bool:
    """Whether an answer is as demanded already: then no better one is."""
    centred = demand.on_centre is None or (demand.on_centre and not kind.off)
    on_seams = kind.on_seams or not demand.on_seams
    fillers = demand.fillers is None or demand.fillers == kind.fillers
    pairs = zip(layout.task.places, layout.widths, strict=True)
    free = {width for place, width in pairs if not place.opening and place.low < place.high}
    return centred and fillers and on_seams and (not demand.one_width or len(free) <= 1)


def _demands(task: WallTask) -> Iterator[LayoutDemand]:
    """What is insisted on: one thing or two at a time, only one where the order is free."""
    centred: tuple[bool | None, ...] = (None,)
    if any(place.centre is not None for place in task.places):
        centred = (None, True, False)
    ends: tuple[FillersAsked | None, ...] = (None,)
    if task.has_like_fillers:
        ends = (None, "equal", "left", "right") if task.has_marks else (None, "equal", "left")
    free = sum(not place.opening and place.low < place.high for place in task.places)
    alike = (False, True) if free > 1 else (False,)
    seams = (False, True) if task.seams else (False,)
    for on_centre, fillers, one_width, on_seams in product(centred, ends, alike, seams):
        asked = (on_centre is not None) + (fillers is not None) + one_width + on_seams
        if asked <= (1 if task.is_free else 2):
            yield LayoutDemand(on_centre, fillers, one_width, on_seams)


def _trade(layout: WallLayout, kind: LayoutKind, say: Say) -> Iterator[Told]:
    task = layout.task
    if layout.order:
        yield Told(f"in the order {', '.join(place.key for place in task.places)}")
    yield from _centres(layout, kind, say)
    built, first = _built(layout), _first_of(layout)
    told = {width: say(width, first[width]) for width in built}
    if len(built) == 1:
        yield tell("every case {}", told[built[0]])
    elif built:
        yield tell("{} widths of cases: {}", len(built), joined(", ", told.values()))
    if kind.met:
        yield Told(f"a side of a case before {' and '.join(kind.met)}")
    narrow = [each for each in built if each < task.preferences.narrow]
    if narrow:
        yield tell("a narrow case of {}", told[narrow[-1]])
    left, right = (partial(say, *each) for each in (
        (layout.left, "left_filler"), (layout.right, "right_filler")
    ))  # fmt: skip
    if abs(layout.left - layout.right) <= 1 and kind.fillers is not None:
        yield tell("fillers alike, {}", left())
    elif kind.fillers is not None:
        yield tell("fillers of {} at the left and {} at the right", left(), right())
    else:
        yield from _one_filler(task, layout, say)


def _first_of(layout: WallLayout) -> dict[int, str]:
    """By width, key of the first case that is as wide."""
    pairs = list(zip(layout.task.places, layout.widths, strict=True))
    return {width: place.key for place, width in reversed(pairs) if not place.opening}


def _one_filler(task: WallTask, layout: WallLayout, say: Say) -> Iterator[Told]:
    """The filler at the only wall that a run ends at."""
    for side, end, width in (
        ("left", task.left, layout.left),
        ("right", task.right, layout.right),
    ):
        if end is not None and not end.in_corner:
            yield tell("a filler of {} at the {}", say(width, f"{side}_filler"), side)


def _centres(layout: WallLayout, kind: LayoutKind, say: Say) -> Iterator[Told]:
    """What stands where it is to stand."""
    task = layout.task
    for number, place in enumerate(task.places):
        if place.centre is None:
            continue
        off = layout.off_centre(number)
        if place.key not in kind.off:
            yield Told(f"{place.key} on its centre")
        else:
            side, by = "right" if off > 0 else "left", say(abs(off) // 2, f"off_{place.key}")
            yield tell("{} {} {} of its centre", place.key, by, side)
    stray = stray_seams(task, layout.left, layout.widths)
    if task.seams:
        yield Told(_stray(stray) if stray else "every seam on one below")


def _stray(count: int) -> str:
    return f"{count} seam{'s stand' if count > 1 else ' stands'} over no seam below"
