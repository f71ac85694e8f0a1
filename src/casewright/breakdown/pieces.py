"""Pieces to cut: parts of the model, and what the work needs besides."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from casewright.casework.parts import EdgeTreatment, Part
from casewright.dims import Dim

__all__ = ["Piece", "PieceKind", "lipped_edges", "part_piece"]

PieceKind = Literal["part", "lip", "spare", "test piece", "strip blank"]


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece that a saw cuts out of stock.

    Parameters
    ----------
    id
        Path of the part, or a path of its own.
    kind
        part; lip: a solid strip for an edge; spare; test piece; strip blank: a rip that is
        resawn into strips.
    title
        In words, for the step and the label.
    mark
        Number on the label; empty when it gets none.
    long, wide
        What is cut, length along the grain, as numbers of the chain.
    turns
        Whether it may lie across the sheet's grain.
    group
        Match group, empty for none.
    rough
        Cut long and sawn to length when it is fitted.
    case
        Key of its case, empty for what belongs to none.
    serves
        Paths of the parts it is for.
    """

    id: str
    kind: PieceKind
    title: str
    mark: str
    long: Dim
    wide: Dim
    turns: bool = False
    group: str = ""
    rough: bool = False
    case: str = ""
    serves: tuple[str, ...] = field(default=())

    @property
    def length(self) -> Fraction:
        """What is cut along the grain [mm]."""
        return self.long.value

    @property
    def width(self) -> Fraction:
        """What is cut across the grain [mm]."""
        return self.wide.value


def part_piece(part: Part, *, longer: Dim | None = None) -> Piece:
    """The blank of a part.

    Parameters
    ----------
    longer
        Extra length, sawn off when the part is fitted; None or 0: none.
    """
    rough = longer is not None and longer.value > 0
    length = part.blank.length
    return Piece(
        id=part.path,
        kind="part",
        title=part.title,
        mark=part.mark,
        long=length + longer if rough and longer is not None else length,
        wide=part.blank.width,
        turns=not part.grain,
        group=f"{part.case} {part.group}" if part.group else "",
        rough=rough,
        case=part.case,
        serves=(part.path,),
    )


def lipped_edges(part: Part) -> Iterator[tuple[EdgeTreatment, Dim]]:
    """Edges of a part that get a solid lip, with the length of each."""
    size = part.finished
    for edge in part.edges:
        if edge.kind == "lip":
            across = edge.edge in ("l0", "l1")
            yield edge, size.width if across else size.length
