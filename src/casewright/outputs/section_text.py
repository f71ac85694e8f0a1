"""Sections as JSON text, in pieces that can be printed apart."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

__all__ = ["SectionText", "printing_text"]


@dataclass(frozen=True, slots=True)
class SectionText:
    """A section as JSON text, its blocks apart, so that it can be printed in several goes."""

    head: str
    blocks: tuple[str, ...]

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
        """Length of the text [characters]."""
        return sum(map(len, self.blocks))


def printing_text(head: str, sections: Iterable[str]) -> str:
    """What the typesetter is given: what all sections share, and some of them."""
    return f'{head[:-1]},"sections":[{",".join(sections)}]}}'
