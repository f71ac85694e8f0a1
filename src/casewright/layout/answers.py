"""Up to five answers that differ in kind, each with its trade in words, the best first."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import product

from casewright.layout.one_wall import FillersAsked, LayoutDemand, WallLayout, lay_out
from casewright.layout.tasks import WallTask

__all__ = ["LayoutAnswer", "LayoutKind", "answers", "kind_of"]

_MOST = 5


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
    """

    off: tuple[str, ...]
    fillers: FillersAsked | None
    widths: int


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
    trade: tuple[str, ...]


def kind_of(layout: WallLayout) -> LayoutKind:
    """The kind of an answer."""
    task = layout.task
    off = tuple(
        place.key for n, place in enumerate(task.places) if layout.off_centre(n) not in (0, 1)
    )
    fillers: FillersAsked | None = None
    if task.left is not None and task.right is not None:
        fillers = "left" if layout.left > layout.right else "right"
        if abs(layout.left - layout.right) <= 1:
            fillers = "equal"
    return LayoutKind(off, fillers, len(_built(layout)))


def _built(layout: WallLayout) -> tuple[int, ...]:
    """Different widths to build, the greatest first [steps]."""
    pairs = zip(layout.task.places, layout.widths, strict=True)
    return tuple(sorted({width for place, width in pairs if not place.opening}, reverse=True))


def answers(task: WallTask, text: Callable[[int], str]) -> tuple[LayoutAnswer, ...]:
    """The best answer and up to four of other kinds, by what they cost.

    Parameters
    ----------
    text
        How a number of steps is written: '33 1/2'.
    """
    best: dict[LayoutKind, WallLayout] = {}
    for demand in _demands(task):
        found = lay_out(task, demand)
        if found is None:
            continue
        kind = kind_of(found)
        known = best.get(kind)
        if known is None or _rank(found) < _rank(known):
            best[kind] = found
    ordered = sorted(best.items(), key=lambda pair: _rank(pair[1]))
    return tuple(
        LayoutAnswer(layout, kind, tuple(_trade(layout, kind, text)))
        for kind, layout in ordered[:_MOST]
    )


def _rank(layout: WallLayout) -> tuple[int, tuple[int, ...]]:
    return layout.cost, (layout.left, *layout.widths)


def _demands(task: WallTask) -> Iterator[LayoutDemand]:
    """What is insisted on in turn: nothing first, which gives the best answer of all."""
    centred: tuple[bool | None, ...] = (None,)
    if any(place.centre is not None for place in task.places):
        centred = (None, True, False)
    ends: tuple[FillersAsked | None, ...] = (None,)
    if task.left is not None and task.right is not None:
        ends = (None, "equal", "left", "right")
    free = sum(not place.opening and place.low < place.high for place in task.places)
    alike = (False, True) if free > 1 else (False,)
    for on_centre, fillers, one_width in product(centred, ends, alike):
        yield LayoutDemand(on_centre, fillers, one_width)


def _trade(layout: WallLayout, kind: LayoutKind, text: Callable[[int], str]) -> Iterator[str]:
    task = layout.task
    for number, place in enumerate(task.places):
        if place.centre is None:
            continue
        off = layout.off_centre(number)
        if place.key not in kind.off:
            yield f"{place.key} on its centre"
        else:
            side = "right" if off > 0 else "left"
            yield f"{place.key} {text(abs(off) // 2)} {side} of its centre"
    built = _built(layout)
    if len(built) == 1:
        yield f"every case {text(built[0])}"
    elif built:
        yield f"{len(built)} widths of cases: {', '.join(text(each) for each in built)}"
    narrow = [each for each in built if each < task.preferences.narrow]
    if narrow:
        yield f"a narrow case of {text(narrow[-1])}"
    if kind.fillers == "equal":
        yield f"fillers alike, {text(layout.left)}"
    elif kind.fillers is not None:
        yield f"fillers of {text(layout.left)} at the left and {text(layout.right)} at the right"
