"""What the jigs of a job are: templates, marking sticks, spacers, squares."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import Dim

__all__ = [
    "CornerTemplate",
    "Hole",
    "Jigs",
    "LineMark",
    "MarkingStick",
    "Spacer",
    "Square",
    "Template",
]


@dataclass(frozen=True, slots=True)
class Hole:
    """A hole of a template, from its two stops [mm].

    Parameters
    ----------
    along, across
        From the stop at the end, from the stop at the edge.
    diameter
        Of the hole, which guides the drill.
    """

    along: Dim
    across: Dim
    diameter: Dim


@dataclass(frozen=True, slots=True)
class Template:
    """A plate with a stop along two sides and the holes that a piece gets.

    Parameters
    ----------
    path
        Under which its numbers stand on the chain.
    title, how
        What it is for; how it is laid on.
    length, width
        Of the plate without its stops [mm].
    uses
        Paths of the pieces that are bored through it.
    middles
        Where its holes come in pairs, middles of the pairs from the stop at the end [mm].
    pitch
        From one hole of a pair to the other [mm]; None: no pairs.
    """

    path: str
    title: str
    how: str
    length: Dim
    width: Dim
    holes: tuple[Hole, ...]
    uses: tuple[str, ...]
    middles: tuple[Dim, ...] = ()
    pitch: Dim | None = None


@dataclass(frozen=True, slots=True)
class LineMark:
    """A line across a marking stick, from its end [mm]."""

    at: Dim
    says: str


@dataclass(frozen=True, slots=True)
class MarkingStick:
    """A stick that is stood in a corner, and what is marked from it.

    Parameters
    ----------
    length
        To which it is cut [mm].
    uses
        Paths of the pieces that are marked from it.
    """

    path: str
    title: str
    how: str
    length: Dim
    marks: tuple[LineMark, ...]
    uses: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Spacer:
    """Strips as thick as a gap, put between while fronts are hung.

    Parameters
    ----------
    thickness
        [mm].
    count
        How many at once [-].
    """

    path: str
    title: str
    how: str
    thickness: Dim
    count: int


@dataclass(frozen=True, slots=True)
class Square:
    """Two triangles that hold a corner square while glue sets.

    Parameters
    ----------
    long, short, across
        Its legs and what is measured between their ends: 4, 3 and 5 parts [mm].
    """

    path: str
    title: str
    how: str
    long: Dim
    short: Dim
    across: Dim


@dataclass(frozen=True, slots=True)
class CornerTemplate:
    """What corners of panes are rounded by: routed round it with a guide bush, or marked round it.

    Its edges lie the offset inside those of the pane, so that its own corner is rounder by less:
    the radius of the pane's corner less the offset.

    Parameters
    ----------
    radius
        Of the pane's corner [mm].
    offset
        How far the guide bush holds the bit off its edge [mm]; None: it is marked round.
    inner
        Radius of its own corner [mm].
    leg
        Length of its edges from the pane's corner [mm].
    uses
        Paths of the panes.
    """

    path: str
    title: str
    how: str
    radius: Dim
    offset: Dim | None
    inner: Dim
    leg: Dim
    uses: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Jigs:
    """All jigs of a job."""

    templates: tuple[Template, ...]
    sticks: tuple[MarkingStick, ...]
    spacers: tuple[Spacer, ...]
    squares: tuple[Square, ...]
    corners: tuple[CornerTemplate, ...]

    @property
    def has_any(self) -> bool:
        """Whether there is anything to make."""
        return any((self.templates, self.sticks, self.spacers, self.squares, self.corners))


UNIT_PARTS = (Fraction(4), Fraction(3), Fraction(5))
"""The sides of a right triangle in whole parts (Euclid I.47)."""
