"""Walls to be laid out, in sixteenths of an inch, and small ones at random."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import Literal

from hypothesis import strategies as st

from casewright.layout.tasks import EndFiller, KeepClear, Preferences, RunPlace, WallTask

SMALL = Preferences(
    off_centre=50, width=16, mirror=5, fillers=3, wish=2, filler_wish=1, orphan=40, narrow=6,
    seam=12, clash=70, proportion=4, spread=1,
)  # fmt: skip

_places = st.builds(
    lambda low, more, wished, centre, opening: (low, low + more, wished, centre, opening),
    st.integers(2, 8), st.integers(0, 5), st.none() | st.integers(2, 12),
    st.none() | st.integers(0, 60), st.booleans(),
)  # fmt: skip
_ends: st.SearchStrategy[Literal["left", "right"]] = st.sampled_from(("left", "right"))
_pipes = st.lists(st.tuples(st.integers(0, 30), st.integers(1, 6)), max_size=2)
_bands = st.tuples(st.integers(1, 2), st.integers(0, 2), st.none() | st.integers(0, 4))
_needs = st.tuples(*(st.sampled_from((0, 0, 1, 2, 3)),) * 2)
_fillers = st.none() | _bands.map(lambda row: EndFiller(row[0], row[0] + row[1], row[2]))


@st.composite
def tasks(draw: st.DrawFn) -> WallTask:
    """A wall of up to four places and some 40 steps; not all of them can be filled."""
    places = []
    for n, (low, high, wished, centre, opening) in enumerate(
        draw(st.lists(_places, min_size=1, max_size=4))
    ):
        high = low if opening else high
        needs = draw(_needs) if not opening else (0, 0)
        places.append(
            RunPlace(f"p{n}", low, high, wished, None, centre, opening=opening, needs=needs)
        )
    if draw(st.booleans()):
        held = draw(st.integers(0, len(places) - 1))
        start = sum(each.low for each in places[:held]) + draw(st.integers(0, 4))
        places[held] = replace(places[held], start=start)
    length = sum(p.low for p in places) + draw(st.integers(-2, 12))
    seams = tuple(draw(st.lists(st.integers(1, 40), max_size=3, unique=True)))
    ends = [
        _wide_enough(draw(_fillers), [place.needs[side] for place in places]) for side in (0, 1)
    ]
    clear = tuple(
        KeepClear(f"t{n}", low, low + wide) for n, (low, wide) in enumerate(draw(_pipes))
    )
    built = [place.key for place in places if not place.opening]
    parts = draw(st.tuples(st.integers(1, 3), st.integers(1, 3)))
    compared = ((built[0], built[-1], *parts),) if len(built) > 1 and draw(st.booleans()) else ()
    return WallTask(
        max(length, 1),
        tuple(places),
        ends[0],
        ends[1],
        SMALL,
        seams=seams,
        another=(2, 6),
        clear=clear,
        proportions=compared,
    )


def _wide_enough(filler: EndFiller | None, needs: list[int]) -> EndFiller | None:
    return None if filler is None else replace(filler, high=max(filler.high, *needs))


def inches(value: str) -> int:
    """Inches as sixteenths: '33 1/2'."""
    whole, _, part = value.partition(" ")
    over, _, under = part.partition("/")
    return int(whole) * 16 + (int(over) * 16 // int(under) if part else 0)


def case(key: str, low: str = "9", high: str = "36") -> RunPlace:
    """A case whose width is free between two sizes in inches."""
    return RunPlace(key, inches(low), inches(high))


FILLER = EndFiller(inches("0 3/4"), inches("2"))
USUAL = Preferences.usual(16)


@st.composite
def free_tasks(draw: st.DrawFn) -> WallTask:
    """A wall of up to four places that may be put in any order, some of them neighbours."""
    task = draw(tasks())
    keys = [place.key for place in task.places]
    beside = tuple(pairwise(keys))[: draw(st.integers(0, 2))]
    if draw(st.booleans()):
        end = draw(_ends)
        task = replace(task, places=(*task.places[:-1], replace(task.places[-1], at_end=end)))
    return replace(task, is_free=True, beside=beside)


def said(steps: int, _: str) -> str:
    """A number of steps as it is, whichever number it is."""
    return str(steps)
