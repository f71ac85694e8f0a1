"""Pieces within pieces: sheets divided to any depth, taken apart and put back.

A sheet is divided along one axis, its pieces along the other, and so on. What is free of a
division lies together, so that it may grow when its neighbours go; around defects it stays where
it is. Sizes are grown by a kerf; see `casewright.cutting.shapes` for u and v.
"""

from __future__ import annotations

import random  # noqa: TID251 - only for the type: the caller seeds it
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from casewright.cutting.shapes import Bin

__all__ = ["FreePiece", "Nook", "cleared", "ground_of_bin", "part_ways", "places_in", "put"]

_FREE, _SPOILT = -1, -2

_Spot = tuple[int, int, int, int]
"""A defect: low and high ends along u and v (u0, v0, u1, v1)."""


@dataclass(slots=True)
class Nook:
    """A piece of a sheet: divided, a part, free, or spoilt by a defect.

    Parameters
    ----------
    du, dv
        Its sides.
    shape
        Of the part it is; below 0: none.
    axis, inner
        Along which its pieces follow each other, u for 0 and v for 1; none for a part or a free
        piece.
    stays
        Whether it is divided because of a defect: its pieces stay as and where they are.
    """

    du: int
    dv: int
    shape: int = _FREE
    axis: int = 0
    inner: list[Nook] = field(default_factory=list)
    stays: bool = False

    @property
    def is_free(self) -> bool:
        """Whether a part may be put into it."""
        return self.shape == _FREE and not self.inner

    @property
    def is_empty(self) -> bool:
        """Whether no part lies in it."""
        return self.shape < 0 and all(one.is_empty for one in self.inner)

    def copy(self) -> Nook:
        """A copy that shares nothing."""
        inner = [one.copy() for one in self.inner]
        return Nook(self.du, self.dv, self.shape, self.axis, inner, self.stays)


class FreePiece(NamedTuple):
    """A free piece with the way to it from the whole sheet."""

    way: tuple[int, ...]
    du: int
    dv: int


def ground_of_bin(b: Bin, sides: Sequence[int], kerf: int, rng: random.Random) -> Nook:
    """An empty sheet; where it has defects, sound pieces are cut off beside them by chance.

    Parameters
    ----------
    sides
        Of parts: so much is cut off where it is not all that is sound.
    """
    return _sound(b.du, b.dv, b.defects, _Chance(sides, kerf, rng))


class _Chance(NamedTuple):
    sides: Sequence[int]
    kerf: int
    rng: random.Random


def _sound(du: int, dv: int, spots: Sequence[_Spot], chance: _Chance) -> Nook:
    """A piece whose defects are told from its corner.

    On one side of a defect after the other something is cut off, in any order. The blade may run
    through the defect, as what it takes is no part of a piece.
    """
    kerf, rng = chance.kerf, chance.rng
    near = [s for s in spots if s[0] < du - kerf and s[1] < dv - kerf and s[2] > 0 and s[3] > 0]
    if not near:
        return Nook(du, dv)
    offers = list(_offers((du, dv), rng.choice(near), chance))
    if not offers:
        return Nook(du, dv, _SPOILT)
    axis, at = rng.choice(offers)
    low, high = ((at, dv), (du - at, dv)) if axis == 0 else ((du, at), (du, dv - at))
    by = (at, 0) if axis == 0 else (0, at)
    beyond = [(s[0] - by[0], s[1] - by[1], s[2] - by[0], s[3] - by[1]) for s in near]
    inner = [_sound(*low, near, chance), _sound(*high, beyond, chance)]
    return Nook(du, dv, _FREE, axis, inner, stays=True)


def _offers(whole: tuple[int, int], spot: _Spot, chance: _Chance) -> Iterator[tuple[int, int]]:
    """Cuts beside a defect: the axis, and how far from the corner the piece beyond begins."""
    kerf, rng = chance.kerf, chance.rng
    for axis, size in enumerate(whole):
        for most, is_low in (
            (spot[axis] + kerf if spot[axis] > 0 else 0, True),
            (size - max(spot[axis + 2], kerf), False),
        ):
            if most > kerf:
                fitting = [side for side in chance.sides if side < most]
                off = rng.choice(fitting) if fitting and rng.randrange(2) else most
                yield axis, off if is_low else size - off


def _walk(root: Nook) -> Iterator[tuple[tuple[int, ...], Nook]]:
    """All pieces of a sheet that are not divided, with the way to each."""
    waiting: list[tuple[tuple[int, ...], Nook]] = [((), root)]
    while waiting:
        way, nook = waiting.pop()
        if nook.inner:
            waiting += [((*way, n), one) for n, one in enumerate(nook.inner)]
        else:
            yield way, nook


def places_in(root: Nook) -> list[FreePiece]:
    """All free pieces of a sheet."""
    return [FreePiece(way, nook.du, nook.dv) for way, nook in _walk(root) if nook.is_free]


def part_ways(root: Nook) -> list[tuple[int, ...]]:
    """The ways to all parts of a sheet."""
    return [way for way, nook in _walk(root) if nook.shape >= 0]


def put(
    root: Nook, way: tuple[int, ...], shape: int, size: tuple[int, int], *, turns: bool
) -> Nook:
    """Put a part into the free piece at the end of a way; the whole sheet afterwards.

    The first cut runs so that the larger piece that is left stays whole, or the other way.
    """
    chain = _chain(root, way)
    spot = chain[-1]
    whole = spot.du, spot.dv
    beside = (whole[0] - size[0]) * whole[1], (whole[1] - size[1]) * whole[0]
    first = int((beside[0] < beside[1]) != turns)
    block = _divided(Nook(*size, shape), 1 - first, whole[1 - first])
    return _replaced(chain, way, _divided(block, first, whole[first]))


def _divided(nook: Nook, axis: int, size: int) -> Nook:
    """A piece with what is free beside it along an axis, up to a size."""
    own = (nook.du, nook.dv)[axis]
    if own == size:
        return nook
    rest = Nook(size - own, nook.dv) if axis == 0 else Nook(nook.du, size - own)
    sides = (size, nook.dv) if axis == 0 else (nook.du, size)
    return Nook(*sides, _FREE, axis, [nook, rest])


def cleared(root: Nook, way: tuple[int, ...]) -> tuple[Nook, list[int]]:
    """A sheet without all that lies at the end of a way, and the parts that lay there."""
    chain = _chain(root, way)
    gone = [nook.shape for _, nook in _walk(chain[-1]) if nook.shape >= 0]
    return _replaced(chain, way, _blank(chain[-1])), gone


def _blank(nook: Nook) -> Nook:
    """A piece without its parts, still divided around its defects."""
    if nook.stays:
        return Nook(nook.du, nook.dv, _FREE, nook.axis, list(map(_blank, nook.inner)), stays=True)
    return nook if nook.shape == _SPOILT else Nook(nook.du, nook.dv)


def _chain(root: Nook, way: tuple[int, ...]) -> list[Nook]:
    chain = [root]
    for step in way:
        chain.append(chain[-1].inner[step])
    return chain


def _replaced(chain: list[Nook], way: tuple[int, ...], nook: Nook) -> Nook:
    """The whole sheet with another piece at the end of a way; like divisions become one."""
    for parent, step in zip(reversed(chain[:-1]), reversed(way), strict=True):
        if parent.stays:
            parent.inner[step] = nook
            nook = parent
            continue
        others = [one for n, one in enumerate(parent.inner) if n != step]
        is_like = bool(nook.inner) and nook.axis == parent.axis
        parent.inner = _joined([*others, *(nook.inner if is_like else [nook])], parent.axis)
        nook = parent.inner[0] if len(parent.inner) == 1 else parent
    return nook


def _joined(pieces: list[Nook], axis: int) -> list[Nook]:
    """Pieces along an axis with all that is free as one."""
    free = [one for one in pieces if one.is_free]
    if len(free) < 2:
        return pieces
    du = sum(one.du for one in free) if axis == 0 else free[0].du
    dv = sum(one.dv for one in free) if axis == 1 else free[0].dv
    return [*(one for one in pieces if not one.is_free), Nook(du, dv)]
