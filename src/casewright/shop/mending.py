"""Minutes that mending and measuring take, by which it is worth measuring before a cut."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["Mending"]


@dataclass(frozen=True, slots=True)
class Mending:
    """What it takes to put right what does not fit, and to measure first.

    The usual figures are touch time of one skilled person: common practice, from memory; stock
    comes on top.

    Parameters
    ----------
    measure
        To read one thing in two places, write it down and set the saw up once more [min].
    drawer
        A glued drawer planed, or packed on both sides [min].
    front
        A front cut, edged and bored again [min].
    box
        A box out of size made up for by its neighbours [min].
    back, shelf, filler, piece
        Cut again; of any other piece [min].
    """

    measure: int = 8
    drawer: int = 45
    front: int = 40
    box: int = 30
    back: int = 20
    shelf: int = 10
    filler: int = 15
    piece: int = 20
