"""Pieces to cut: parts of the model, and what the work needs besides."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from casewright.casework.parts import EdgeTreatment, Part

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
    length, width
        What is cut, length along the grain [mm].
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
    length: Fraction
    width: Fraction
    turns: bool = False
    group: str = ""
    rough: bool = False
    case: str = ""
    serves: tuple[str, ...] = field(default=())


def part_piece(part: Part, *, longer: Fraction = Fraction(0)) -> Piece:
    """The blank of a part.

    Parameters
    ----------
    longer
        Extra length, sawn off when the part is fitted [mm].
    """
    return Piece(
        id=part.path,
        kind="part",
        title=part.title,
        mark=part.mark,
        length=part.blank.length.value + longer,
        width=part.blank.width.value,
        turns=not part.grain,
        group=f"{part.case} {part.group}" if part.group else "",
        rough=longer > 0,
        case=part.case,
        serves=(part.path,),
    )


def lipped_edges(part: Part) -> Iterator[tuple[EdgeTreatment, Fraction]]:
    """Edges of a part that get a solid lip, with the length of each [mm]."""
    size = part.finished
    for edge in part.edges:
        if edge.kind == "lip":
            across = edge.edge in ("l0", "l1")
            yield edge, size.width.value if across else size.length.value
