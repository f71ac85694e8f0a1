"""The fullest filling of one room: the sum of lengths nearest below it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from casewright.cutting.board_task import Counts

__all__ = ["Batch", "batches", "fullest"]

_MOST_BITS = 2**31


class Batch(NamedTuple):
    """So many pieces of one length, taken together or not at all."""

    kind: int
    pieces: int
    size: int


def batches(sizes: Sequence[int], counts: Sequence[int], room: int) -> Iterator[Batch]:
    """Pieces in batches of 1, 2, 4 and so on, of which every number can be put together."""
    for kind, (size, count) in enumerate(zip(sizes, counts, strict=True)):
        left, pieces = min(count, room // size), 1
        while left:
            pieces = min(pieces, left)
            yield Batch(kind, pieces, pieces * size)
            left -= pieces
            pieces *= 2


def fullest(sizes: Sequence[int], counts: Sequence[int], room: int) -> Counts:
    """Pieces of the greatest length together that a room holds, long pieces before short ones.

    Parameters
    ----------
    sizes, counts
        Lengths, longest first, and how many of each there are.

    Returns
    -------
    How many of each; none when the search would take too much memory.
    """
    taken: list[Batch] = []
    found = [0] * len(sizes)
    # Bit n of a mask: whether the batches so far can be n long in all.
    masks = [1]
    within = (1 << room + 1) - 1
    for batch in batches(sizes, counts, room):
        if masks[-1] >> room or (len(masks) + 1) * room > _MOST_BITS:
            break
        taken.append(batch)
        masks.append(masks[-1] | masks[-1] << batch.size & within)
    length = masks[-1].bit_length() - 1
    for batch, mask in zip(reversed(taken), reversed(masks[:-1]), strict=True):
        if not mask >> length & 1:
            found[batch.kind] += batch.pieces
            length -= batch.size
    return tuple(found)
