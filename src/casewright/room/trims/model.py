"""What the trims of a run are made of."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Literal

from casewright.casework.parts import Part
from casewright.dims import Dim
from casewright.room.board_screws import BoardScrews
from casewright.room.trims.saw_settings import CornerSetting, Spring

__all__ = ["SQUARE", "EndCut", "EndKind", "Trim", "TrimKind", "TrimPiece"]

TrimKind = Literal[
    "toe skin", "light rail", "scribe moulding", "crown", "backing", "frieze", "seam strip",
    "seat lid",
]  # fmt: skip
EndKind = Literal["square", "inside mitre", "outside mitre", "cope", "scarf"]


_SQUARE = 900
"""A square corner [1/10 deg]."""


@dataclass(frozen=True, slots=True)
class EndCut:
    """How one end of a piece is cut.

    Parameters
    ----------
    kind
        A cope is cut as an inside mitre first, then sawn along the profile.
    corner
        Of the corner it turns [1/10 deg]; None: it turns none.
    is_read
        Whether that corner was read, or is taken as square.
    setting
        Of the saw; None: square, or a scarf at 45.
    planned
        What the corner is by the plan [1/10 deg].
    """

    kind: EndKind
    corner: int | None = None
    is_read: bool = True
    setting: CornerSetting | None = None
    planned: int = _SQUARE

    @property
    def turns(self) -> bool:
        """Whether it meets another piece round a corner."""
        return self.corner is not None

    @property
    def is_bend(self) -> bool:
        """Whether it turns across the face of a diagonal corner."""
        return self.planned != _SQUARE


SQUARE = EndCut("square")


@dataclass(frozen=True, slots=True)
class TrimPiece:
    """One piece of a trim.

    Parameters
    ----------
    part
        Its length is that of its long points.
    left, right
        How its ends are cut, as one stands before it.
    rear
        From the wall to where a return begins that does not reach it [mm].
    read
        Of a return, what is read for it [mm].
    """

    part: Part
    left: EndCut = SQUARE
    right: EndCut = SQUARE
    rear: Dim | None = None
    read: Dim | None = None


@dataclass(frozen=True, slots=True)
class Trim:
    """One trim of a run.

    Parameters
    ----------
    path
        Permanent name: `run.below.toe_skin`.
    title
        In words: 'toe skin'.
    open_lengths
        Sizes that its pieces are cut to, each read once it stands [mm].
    pieces
        Left to right; returns, and pieces across diagonal corners, first and last.
    start
        Left end of what it runs along, from the run's left datum [mm]; None: it stands upright.
    sprung
        How much longer it is cut than that [mm]; None: no longer.
    spring
        Of a moulding that stands off the wall; None: it does not.
    screws
        What holds it down, where that is counted: a fixed lid over several seats.
    """

    path: str
    kind: TrimKind
    title: str
    open_lengths: tuple[Dim, ...]
    pieces: tuple[TrimPiece, ...]
    start: Dim | None = None
    sprung: Dim | None = None
    spring: Spring | None = None
    screws: tuple[BoardScrews, ...] = ()

    @property
    def parts(self) -> tuple[Part, ...]:
        """Its pieces as parts."""
        return tuple(piece.part for piece in self.pieces)

    @property
    def is_read(self) -> bool:
        """Whether everything it is cut to was read as it stands."""
        return all(length.built is not None for length in self.open_lengths)

    @property
    def along(self) -> tuple[TrimPiece, ...]:
        """The pieces that run along the wall, left to right."""
        return tuple(
            piece for piece in self.pieces
            if piece.part.placed.orientation.length.axis == 0 and not piece.part.turned
        )  # fmt: skip

    @property
    def across(self) -> tuple[TrimPiece, ...]:
        """The pieces across the faces of diagonal corners, left to right."""
        return tuple(piece for piece in self.pieces if piece.part.turned)

    def with_parts(self, change: Callable[[Part], Part]) -> Trim:
        """The same with every part changed."""
        pieces = tuple(replace(piece, part=change(piece.part)) for piece in self.pieces)
        return replace(self, pieces=pieces)
