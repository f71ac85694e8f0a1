"""Names in a plan: in as many lines as the shape of what they name asks for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from textwrap import wrap

from casewright.drawing.marks import Tag
from casewright.drawing.notes import Text
from casewright.drawing.pens import Ink
from casewright.drawing.shapes import Element, Point

__all__ = ["wrapped", "written"]

_HEIGHT = 2.3  # of lettering [mm on paper]
_LINE = 1.5  # from line to line, in heights of lettering
_LETTER = 0.6  # width of one letter, in heights of lettering


def wrapped(title: str, across: float, down: float) -> tuple[str, ...]:
    """The lines that fill a place across by down best, whatever the scale.

    Parameters
    ----------
    across, down
        Of the place as it lies on paper, in one unit; above zero.
    """
    longest = max(len(word) for word in title.split())
    widths = range(longest, max(longest, len(title)) + 1)
    ways = [tuple(wrap(title, width, break_on_hyphens=False)) for width in widths]
    return min(ways, key=lambda lines: _reach(lines, across, down))


def _reach(lines: Sequence[str], across: float, down: float) -> float:
    """How much of the place is used, in its tighter direction."""
    wide = max(len(line) for line in lines) * _LETTER
    return max(wide / across, len(lines) * _LINE / down)


def written(lines: Sequence[str], at: Point, tag: Tag, *, soft: bool = False) -> Iterator[Element]:
    """Lines of a name round their middle, on paper of their own; soft ones stand back."""
    first = (len(lines) - 1) / 2
    for number, line in enumerate(lines):
        yield Text(at, line, _HEIGHT, weight=400 if soft else 600,
                   ink=Ink.SOFT if soft else Ink.INK, ground=Ink.PAPER, tag=tag,
                   shift_mm=(0.0, (first - number) * _LINE * _HEIGHT))  # fmt: skip
