"""Sections as JSON text, in pieces that can be printed apart."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import NamedTuple

__all__ = ["SectionText", "block_weight", "printing_text"]

_DRAWING = re.compile(r'"svg":"[^"\\]*(?:\\.[^"\\]*)*"')


class SectionText(NamedTuple):
    """A section as JSON text, its blocks apart, so that it can be printed in several goes.

    Parameters
    ----------
    weights
        What laying out each block asks for [characters].
    sheets
        Whether each block fills its pages.
    """

    head: str
    blocks: tuple[str, ...]
    weights: tuple[int, ...]
    sheets: bool = False

    @property
    def whole(self) -> str:
        """The section from its heading to its last block."""
        return self.part(0, len(self.blocks))

    def part(self, start: int, end: int) -> str:
        """Some of its blocks; without the heading when others stand before them."""
        continued = "true" if start else "false"
        blocks = ",".join(self.blocks[start:end])
        return f'{self.head[:-1]},"continued":{continued},"blocks":[{blocks}]}}'

    @property
    def weight(self) -> int:
        """What laying it out asks for [characters]."""
        return sum(self.weights)


def block_weight(block: str) -> int:
    """What laying out a block asks for [characters]; a drawing takes less than as many words."""
    return len(block) - sum(3 * len(drawing) // 4 for drawing in _DRAWING.findall(block))


def printing_text(head: str, sections: Iterable[str]) -> str:
    """What the typesetter is given: what all sections share, and some of them."""
    return f'{head[:-1]},"sections":[{",".join(sections)}]}}'
