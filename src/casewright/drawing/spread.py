"""Making room on a line: things that want to stand somewhere, moved apart as little as can be."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate, pairwise
from typing import NamedTuple

__all__ = ["spread"]

_FIRM = 1e6  # weight of what should not move against what may


class _Thing(NamedTuple):
    wished: float
    half: float
    weight: float


def spread(
    wished: Sequence[float],
    halves: Sequence[float],
    gap: float = 0.0,
    *,
    obstacles: Sequence[float] = (),
) -> list[float]:
    """Places nearest to the wished ones (least squares) at which nothing overlaps.

    The order of the wishes is kept; equal wishes keep the order given.

    Parameters
    ----------
    wished
        Middle of each thing.
    halves
        Half the room each needs.
    gap
        Room left between two.
    obstacles
        Lines that run across, to stay clear of where there is room. Between two obstacles too
        close together a thing lies over both.

    Returns
    -------
    Middle of each thing, in the order given.
    """
    things = [_Thing(w, h, 1.0) for w, h in zip(wished, halves, strict=True)]
    things += [_Thing(place, 0.0, _FIRM) for place in obstacles]
    order = sorted(range(len(things)), key=lambda i: (things[i].wished, i))
    placed = _placed([things[i] for i in order], gap)
    places = dict(zip(order, placed, strict=True))
    return [places[i] for i in range(len(wished))]


def _placed(things: Sequence[_Thing], gap: float) -> list[float]:
    """Places of things in order, by pooling neighbours that would overlap."""
    steps = (a.half + gap + b.half for a, b in pairwise(things))
    offsets = list(accumulate(steps, initial=0.0))[: len(things)]
    blocks: list[tuple[float, float, int]] = []  # where its first wants to be, weight, members
    for thing, offset in zip(things, offsets, strict=True):
        mean, weight, count = thing.wished - offset, thing.weight, 1
        while blocks and blocks[-1][0] >= mean:
            other, heavy, many = blocks.pop()
            mean = (mean * weight + other * heavy) / (weight + heavy)
            weight, count = weight + heavy, count + many
        blocks.append((mean, weight, count))
    firsts = (mean for mean, _, count in blocks for _ in range(count))
    return [first + offset for first, offset in zip(firsts, offsets, strict=True)]
